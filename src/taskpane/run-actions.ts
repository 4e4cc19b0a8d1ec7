/** What the pane does to a run of the schedule in view, over the spreadsheet and nothing of the page. */
import type { TypedCell } from '../hosts/edits';
import type { SheetHost } from '../hosts/sheet-host';
import { cellsInOrder, orderOf, ORDERS, type OrderKey } from '../lists/row-order';
import { entriesFor, type NamedThere } from '../lists/run-entries';
import { isSameName, readRunLine, type ReadLine } from '../lists/run-line';
import { area } from '../sheets/plan/area';
import type { ComputedGrid } from '../sheets/plan/grid';
import { readSchedule, type ReadRow } from '../sheets/schedule/reading';
import { extentOf, lackingRows, nextFreeRow, rowsBelow } from '../sheets/schedule/repair';
import { runSentence } from '../sheets/schedule/run-sentence';
import type { ColumnKey } from '../sheets/station/schedule-keys';

const NO_SCHEDULE = 'The sheet in view is no run schedule. Insert one, or select its sheet.';

/** The schedule in view with what computes in it. Rejects where there is none. */
async function scheduleInView(host: SheetHost): Promise<ComputedGrid> {
  const inView = await host.activeGrid();
  const grids = inView === null ? [] : await host.allGrids();
  const grid = grids.find(({ sheetName }) => sheetName === inView?.sheetName);
  if (grid === undefined || readSchedule(grid.values) === undefined) throw new Error(NO_SCHEDULE);
  return grid;
}

const listed = (parts: readonly string[]) => parts.map((part) => `“${part}”`).join(', ');

/** What was taken from a line, and what was not. */
export function understoodSentence({ understood, unclear }: ReadLine): string {
  const taken = understood.map(([heading, text]) => `${heading}: ${text}`).join('; ');
  return unclear.length === 0 ? `${taken}.` : `${taken}. Not understood: ${listed(unclear)}.`;
}

/** The row of a schedule as it stands now; undefined while it has no verdict. */
async function rowNow(host: SheetHost, row: number): Promise<ReadRow | undefined> {
  const { grid } = await host.view();
  return grid === null ? undefined : readSchedule(grid.values)?.rows.find((one) => one.row === row);
}

const TRIES = 20;
const PAUSE_MS = 150;

/** A run that was added: what was taken from its line, and how it was judged then. */
export interface AddedRun {
  readonly understood: string;
  readonly answer: string;
  readonly sheetName: string;
  readonly row: number;
}

/** Whether a run that was added is judged as it was then; true as well where its sheet is not in view. */
export async function isJudgedAsAdded(
  host: SheetHost,
  { sheetName, row, answer }: AddedRun,
): Promise<boolean> {
  const { grid, calculation } = await host.view();
  if (grid?.sheetName !== sheetName || calculation === 'under way') return true;
  const now = readSchedule(grid.values)?.rows.find((one) => one.row === row);
  return now !== undefined && runSentence(now) === answer;
}

/** Adds the run of a line to the schedule in view, and waits for its answer. Rejects with a sentence. */
export async function addRun(host: SheetHost, line: string): Promise<AddedRun> {
  const read = readRunLine(line);
  if (read.run.run === undefined && read.run.peak === undefined) {
    throw new Error('Write a name, a load and a length, such as: Van lamp, 2 A, 10 ft.');
  }
  const grid = await scheduleInView(host);
  const extent = extentOf(grid);
  // Where tables do not grow by themselves, the schedule takes in what is written below it.
  const grows = host.edits.takeInBelow !== undefined && rowsBelow(grid).length === 0;
  const row = nextFreeRow(grid) ?? (grows && extent !== undefined ? extent.last + 1 : undefined);
  if (extent === undefined || row === undefined) {
    throw new Error(
      'The schedule has no free row. Insert a row between its runs, and add the run again.',
    );
  }
  const cells = Object.entries(read.run).flatMap(([key, content]): TypedCell[] => {
    const column = extent.columnOf.get(key as ColumnKey);
    return column === undefined ? [] : [{ row, column, content }];
  });
  await host.edits.type(grid.sheetName, cells);
  await host.edits.showColumns(
    grid.sheetName,
    cells.map(({ column }) => column),
    true,
  );
  await host.select(grid.sheetName, area(row, extent.reading.columnOf.run));
  const added = { understood: understoodSentence(read), sheetName: grid.sheetName, row };
  for (let tries = 0; tries < TRIES; tries += 1) {
    const now = await rowNow(host, row);
    if (now !== undefined) return { ...added, answer: runSentence(now) };
    await new Promise((resolve) => setTimeout(resolve, PAUSE_MS));
  }
  return { ...added, answer: 'Its answer is still being calculated.' };
}

/** The sentence of the selected row; empty where no run is selected. */
export async function selectedSentence(host: SheetHost): Promise<string> {
  const selected = await host.edits.selected();
  if (selected === null) return '';
  const { grid } = await host.view();
  if (grid?.sheetName !== selected.sheetName) return '';
  const row = readSchedule(grid.values)?.rows.find((one) => one.row === selected.row);
  if (row === undefined) return '';
  const name = String(row.values.run ?? '').trim();
  return `${name === '' ? `Row ${row.row + 1}` : name}: ${runSentence(row)}`;
}

/** Takes in runs that stand below the last row of a schedule, where that can be, and says how it went; nothing where none do. */
async function takeIn(host: SheetHost, grid: ComputedGrid): Promise<string> {
  const [below] = rowsBelow(grid);
  if (below === undefined) return '';
  const stands = `Row ${below + 1} stands below the schedule and has no answer`;
  if (host.edits.takeInBelow === undefined) {
    return `${stands}. Drag the lower right corner of the table down over it.`;
  }
  try {
    await host.edits.takeInBelow(grid.sheetName);
    return 'The schedule has taken in what stood right below it.';
  } catch (fault) {
    return `${stands}: ${fault instanceof Error ? fault.message : String(fault)}`;
  }
}

/** Puts back the formulas and looks that rows of the schedule in view lack; entries stay. */
export async function repairSchedule(host: SheetHost): Promise<string> {
  const grid = await scheduleInView(host);
  const lacking = lackingRows(grid);
  if (lacking.length > 0) {
    const columns = Math.max(...(grid.values.map((cells) => cells.length) ?? [0]));
    await host.edits.fillRows(grid.sheetName, lacking, columns);
  }
  const below = await takeIn(host, grid);
  const rows =
    lacking.length === 1
      ? `Row ${lacking[0]!.to + 1} has its formulas again.`
      : `${lacking.length} rows have their formulas again.`;
  const whole = 'Every row of the schedule has its formulas; nothing was changed.';
  if (lacking.length > 0) return `${rows} ${below}`.trim();
  return below === '' ? whole : below;
}

/** Puts the runs of the schedule in view in another order, with their fuses on Protection. */
export async function putInOrder(host: SheetHost, key: OrderKey): Promise<string> {
  const { sheetName } = await scheduleInView(host);
  const grids = await host.allGrids();
  const grid = grids.find((one) => one.sheetName === sheetName)!;
  const order = orderOf(grid, key);
  const changes = order === undefined ? [] : cellsInOrder(grids, sheetName, order);
  if (changes.length === 0) return `The runs stand ${ORDERS[key]} already.`;
  await host.edits.rearrange(changes);
  return `The runs stand ${ORDERS[key]}. Undo puts them back.`;
}

/** A run that got another name while others are still fed from it by the old one, or entries on other sheets are for it. */
export interface Renamed {
  readonly before: string;
  readonly after: string;
  /** Cells that still name it as it was. */
  readonly cells: readonly TypedCell[];
  /** The same on Protection and As built. */
  readonly entries: readonly NamedThere[];
  readonly sheetName: string;
}

/** The names of the runs in view, by row. */
export interface RunNames {
  readonly sheetName: string;
  readonly byRow: ReadonlyMap<number, string>;
}

export async function namesInView(host: SheetHost): Promise<RunNames | undefined> {
  const { grid } = await host.view();
  const reading = grid === null ? undefined : readSchedule(grid.values);
  if (grid === null || reading === undefined) return undefined;
  const { run } = reading.columnOf;
  const byRow = new Map<number, string>();
  for (let row = reading.headerRow + 1; row < grid.values.length; row += 1) {
    const name = String(grid.values[row]?.[run] ?? '').trim();
    if (name !== '') byRow.set(row, name);
  }
  return { sheetName: grid.sheetName, byRow };
}

/**
 * The one run whose name changed since, if rows are still fed from the old name, or entries for it, and no other run has it. A list in which
 * more than one name changed was sorted or pasted over, and nobody was renamed.
 */
export async function renamedSince(
  host: SheetHost,
  before: RunNames | undefined,
  now: RunNames | undefined,
): Promise<Renamed | undefined> {
  if (before === undefined || now?.sheetName !== before.sheetName) return undefined;
  const changed = [...now.byRow].filter(([row, name]) => {
    const was = before.byRow.get(row);
    return was !== undefined && !isSameName(was, name);
  });
  const [first] = changed;
  if (first === undefined || changed.length > 1 || now.byRow.size !== before.byRow.size) {
    return undefined;
  }
  const [row, after] = first;
  const was = before.byRow.get(row)!;
  if ([...now.byRow.values()].some((name) => isSameName(name, was))) return undefined;
  const { grid } = await host.view();
  const reading = grid === null ? undefined : readSchedule(grid.values);
  if (grid === null || reading === undefined) return undefined;
  const column = reading.columnOf.fedFrom;
  const cells = [...now.byRow.keys()].flatMap((at): TypedCell[] =>
    isSameName(String(grid.values[at]?.[column] ?? ''), was)
      ? [{ row: at, column, content: after }]
      : [],
  );
  const { sheetName } = grid;
  const entries = entriesFor(await host.allGrids(), sheetName, was);
  return cells.length + entries.length === 0
    ? undefined
    : { before: was, after, cells, entries, sheetName };
}

/** Renames it in all those cells, in one step of undo. */
export async function renameThere(host: SheetHost, renamed: Renamed): Promise<void> {
  const { after: content, cells, entries, sheetName } = renamed;
  const changes = [
    { sheetName, cells, fills: [] },
    ...entries.map(({ sheetName: there, row, column }) => ({
      sheetName: there,
      cells: [{ row, column, content }],
      fills: [],
    })),
  ];
  await host.edits.rearrange(changes.filter((change) => change.cells.length > 0));
}

/** Where the old name stands still, in words. */
export function stillSays({ before, cells, entries }: Renamed): string {
  const fed = cells.length === 1 ? '1 row is' : `${cells.length} rows are`;
  const sheets = [...new Set(entries.map(({ sheetName }) => sheetName))].join(' and ');
  const said = [
    ...(cells.length === 0 ? [] : [`${fed} still fed from “${before}”`]),
    ...(entries.length === 0 ? [] : [`entries on ${sheets} are still for “${before}”`]),
  ];
  return said.join(', and ');
}
