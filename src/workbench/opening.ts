/** Opening the page's workbook: the one that was kept, or else the demonstration. */
import { CATALOGUE } from '../functions/catalogue';
import { openGrid, type Grid } from '../hosts/workbench/grid';
import { readKept } from '../hosts/workbench/kept';
import type { Shelf } from './shelf';

export interface Opening {
  readonly grid: Grid;
  /** Whether the grid holds what was kept; else it is blank, and waits for the demonstration. */
  readonly isKept: boolean;
  /** Why what was kept does not stand there; undefined where all is well. */
  readonly fault?: string;
}

function openKept(container: HTMLElement, text: string): Grid {
  const { workbook, inView } = readKept(text);
  const grid = openGrid(container, CATALOGUE, workbook);
  const sheet = grid.workbook.getSheetBySheetId(inView);
  if (sheet !== null) grid.workbook.setActiveSheet(sheet);
  return grid;
}

/** Opens what was kept; where that cannot be, it is set aside, and the grid is blank. */
export async function openWorkbook(container: HTMLElement, shelf: Shelf): Promise<Opening> {
  const blank = () => openGrid(container, CATALOGUE);
  if (shelf.kept === undefined) return { grid: blank(), isKept: false };
  try {
    if (shelf.neverOpened) throw new Error('it never came to stand here');
    return { grid: openKept(container, shelf.kept), isKept: true };
  } catch (fault) {
    await shelf.setAside();
    const why = fault instanceof Error ? fault.message : String(fault);
    return { grid: blank(), isKept: false, fault: why };
  }
}
