/**
 * A sheet laid out for more rows than it stands with: which of its cells become something else. Pure: it compares two
 * layouts of one sheet, and leaves alone what a person typed.
 */
import type { ICellData, IStyleData, Nullable } from '@univerjs/core';
import { filledDown } from '../../sheets/plan/fill-down';

/** Cells of a sheet as the grid keeps them, by row and column. */
export type SheetCells = Readonly<
  Record<number, Readonly<Record<number, Nullable<ICellData>>> | undefined>
>;
export type ChangedCells = Record<number, Record<number, ICellData>>;

/** What stands on the sheet now. */
export interface Standing {
  readonly cellAt: (row: number, column: number) => Nullable<ICellData>;
  /** Whether what stands in a cell is one of the entries for which the sheet is laid out anew. */
  readonly isTaken: (row: number, column: number) => boolean;
  /** Whether a person may type into a cell of the new layout. */
  readonly isEntry: (row: number, column: number) => boolean;
}

/** The cells that change, or the first that would be lost by it. */
export type Relaid =
  | { readonly cells: ChangedCells }
  | { readonly inTheWay: { readonly row: number; readonly column: number } };

const isBlank = (cell: Nullable<ICellData>) => (cell?.v ?? '') === '' && !hasFormula(cell);

/** Whether both are numbers: one that a layout has stands for what it was worked out to be. */
const isFigure = (a: Nullable<ICellData>, b: Nullable<ICellData>) =>
  typeof a?.v === 'number' && typeof b?.v === 'number';

/** Whether a formula computes a cell. */
export function hasFormula(cell: Nullable<ICellData>): boolean {
  return (cell?.f ?? cell?.si ?? '') !== '';
}

/** The formulas of a layout, written out: a filled one stands in its first cell alone. */
export function formulasOf(cells: SheetCells): (row: number, column: number) => string {
  const firsts = new Map<string, { readonly at: (down: number) => string; readonly row: number }>();
  for (const [row, line] of Object.entries(cells)) {
    for (const cell of Object.values(line ?? {})) {
      if (typeof cell?.f !== 'string' || typeof cell.si !== 'string') continue;
      firsts.set(cell.si, { at: filledDown(cell.f), row: Number(row) });
    }
  }
  return (row, column) => {
    const cell = cells[row]?.[column];
    const first = typeof cell?.si === 'string' ? firsts.get(cell.si) : undefined;
    return first?.at(row - first.row) ?? cell?.f ?? '';
  };
}

/** The looks of a cell where another had others: what only those had is taken away. */
function looks(before: Nullable<ICellData>, after: Nullable<ICellData>): Pick<ICellData, 's'> {
  const [old, now] = [before?.s, after?.s].map((style) => (style ?? {}) as IStyleData);
  if (JSON.stringify(old) === JSON.stringify(now)) return {};
  const gone = Object.keys(old!).filter((key) => !(key in now!));
  return { s: { ...Object.fromEntries(gone.map((key) => [key, null])), ...now } };
}

const EMPTY: ICellData = { v: null, t: null, f: null, si: null, p: null };

/**
 * Compares the layouts before and after. `mark` tells the filled formulas of the new one from those that stand.
 */
export function relaid(
  before: SheetCells,
  after: SheetCells,
  { cellAt, isTaken, isEntry }: Standing,
  mark: string,
): Relaid {
  const cells: ChangedCells = {};
  const [formulaBefore, formulaAfter] = [formulasOf(before), formulasOf(after)];
  /** Filled formulas of which a cell was written already: the first holds the formula, the others share it. */
  const written = new Set<string>();
  const content = (row: number, column: number, cell: Nullable<ICellData>): ICellData => {
    const formula = formulaAfter(row, column);
    if (formula === '') return { ...EMPTY, v: cell?.v ?? null, t: cell?.t ?? null };
    if (typeof cell?.si !== 'string') return { f: formula, si: null, p: null };
    const si = `${cell.si} ${mark}`;
    const isFirst = !written.has(si);
    written.add(si);
    return { f: isFirst ? formula : null, si, p: null };
  };

  for (const row of rowsOf(before, after)) {
    for (const column of rowsOf(before[row] ?? {}, after[row] ?? {})) {
      const [old, now] = [before[row]?.[column], after[row]?.[column]];
      const look = looks(old, now);
      const [formulaOld, formulaNow] = [formulaBefore(row, column), formulaAfter(row, column)];
      const isSame = formulaOld === formulaNow && (formulaNow !== '' || old?.v === now?.v);
      if (isSame) {
        if ('s' in look) (cells[row] ??= {})[column] = look;
        continue;
      }
      const stands = cellAt(row, column);
      // What stands there is ours where it is what the layout before had there.
      const isOurs =
        formulaOld === ''
          ? isBlank(stands) || stands?.v === old?.v || isFigure(old, stands)
          : hasFormula(stands);
      const isBlankEntry = isEntry(row, column) && isBlank(stands);
      // A formula that came along with a copied row points at the rows that there were.
      const isCopied = isTaken(row, column) && (!isEntry(row, column) || hasFormula(stands));
      if (isOurs || isBlankEntry || isCopied) {
        (cells[row] ??= {})[column] = { ...content(row, column, now), ...look };
      } else if (isTaken(row, column) || (formulaOld !== '' && isEntry(row, column))) {
        // A figure that a person typed, in place of a usual one too.
        if ('s' in look) (cells[row] ??= {})[column] = look;
      } else return { inTheWay: { row, column } };
    }
  }
  return { cells };
}

function rowsOf(...of: readonly object[]): number[] {
  const keys = new Set(of.flatMap((one) => Object.keys(one).map(Number)));
  return [...keys].sort((a, b) => a - b);
}
