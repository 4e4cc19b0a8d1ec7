/**
 * What every cell of a set of sheets comes to, without any spreadsheet: the formulas of their plans, evaluated. Sheets
 * point at each other by address and by defined name, so they are calculated together.
 */
import { CellError, type Cell } from '../../functions/cell';
import type { NamePlan, SheetPlan } from '../plan/plan';
import { hasContent } from '../plan/lay-blocks';
import { compileFormula, type Compiled, type NamedArea, type Place, type Reader } from './compile';
import { isCells, type Cells } from './values';

/** Calculated sheets, read by zero-based place. */
export interface Calculated {
  /** The value of a cell; null where nothing stands. */
  at(sheet: string, row: number, column: number): Cell;
}

/** How deep cells may lead to one another before the rest is put off: far less than what a call stack bears. */
const DEEPEST = 120;

interface FormulaCell {
  readonly compute: Compiled;
  readonly place: Place;
  value: Cell | undefined;
  /** The whole answer of a formula that spills. */
  spilled?: Cells;
  isBusy: boolean;
}

/** Thrown where a cell is needed that lies too deep; it is computed first, and the others then start anew. */
class TooDeep extends Error {
  constructor(readonly cell: FormulaCell) {
    super('too deep');
  }
}

/** A cell: what was typed, a formula, or where in a spilled answer it lies. */
type Held = Exclude<Cell, CellError> | FormulaCell | SpilledCell;
class SpilledCell {
  constructor(
    readonly anchor: FormulaCell,
    readonly down: number,
  ) {}
}

const isFormulaCell = (held: Held | undefined): held is FormulaCell =>
  typeof held === 'object' && held !== null && !(held instanceof SpilledCell);

class Sheet {
  private readonly rows: (Held | undefined)[][] = [];

  put(row: number, column: number, held: Held | undefined): void {
    (this.rows[row] ??= [])[column] = held;
  }

  get(row: number, column: number): Held | undefined {
    return this.rows[row]?.[column];
  }
}

const circular = ({ place }: FormulaCell) =>
  new CellError('#REF!', `row ${place.row + 1} of ${place.sheet}: the reference is circular`);

class Workbook implements Reader, Calculated {
  private readonly sheets = new Map<string, Sheet>();
  private readonly names = new Map<string, NamedArea>();
  private readonly areas = new Map<string, Cells>();
  private depth = 0;

  constructor(plans: readonly SheetPlan[]) {
    for (const plan of plans) {
      this.sheets.set(plan.name, new Sheet());
      for (const named of plan.names) this.addName(plan.name, named);
    }
    for (const plan of plans) this.fill(plan);
  }

  private addName(sheet: string, { name, area }: NamePlan): void {
    this.names.set(name.toLowerCase(), { sheet, ...area });
  }

  private fill(plan: SheetPlan): void {
    const sheet = this.sheets.get(plan.name)!;
    for (const block of plan.blocks) {
      if (!hasContent(block)) continue;
      const { area, cells, fill, spillRows } = block;
      const filled = fill?.map((formula) =>
        formula === null ? undefined : compileFormula(formula),
      );
      for (let down = 0; down < area.rows; down += 1) {
        for (let across = 0; across < area.columns; across += 1) {
          const [row, column] = [area.row + down, area.column + across];
          const given = cells?.[down]?.[across] ?? null;
          const at = (compute: Compiled, rowsDown: number): FormulaCell => ({
            compute,
            place: { reader: this, sheet: plan.name, row, column, down: rowsDown },
            value: undefined,
            isBusy: false,
          });
          if (given !== null && typeof given === 'object') {
            const cell = at(compileFormula(given.formula), 0);
            sheet.put(row, column, cell);
            for (let below = 1; below < (spillRows ?? 1); below += 1) {
              sheet.put(row + below, column, new SpilledCell(cell, below));
            }
          } else if (given !== null) {
            sheet.put(row, column, given);
          } else {
            const compute = filled?.[across];
            sheet.put(row, column, compute === undefined ? undefined : at(compute, down));
          }
        }
      }
    }
  }

  named(name: string): NamedArea | undefined {
    return this.names.get(name);
  }

  cell(sheet: string, row: number, column: number): Cell {
    const held = this.sheets.get(sheet)?.get(row, column);
    if (held === undefined || typeof held !== 'object' || held === null) return held ?? null;
    if (!(held instanceof SpilledCell)) return this.valueOf(held);
    this.valueOf(held.anchor);
    const { spilled } = held.anchor;
    if (spilled === undefined) return null;
    return held.down < spilled.rows ? spilled.at(held.down, 0) : null;
  }

  cells(sheet: string, row: number, column: number, rows: number, columns: number): Cells {
    const key = `${sheet} ${row} ${column} ${rows} ${columns}`;
    let area = this.areas.get(key);
    if (area === undefined) {
      let whole: readonly Cell[] | undefined;
      const at = (down: number, across: number) => this.cell(sheet, row + down, column + across);
      area = {
        rows,
        columns,
        at,
        all: () =>
          (whole ??= Array.from({ length: rows * columns }, (_, index) =>
            at(Math.floor(index / columns), index % columns),
          )),
      };
      this.areas.set(key, area);
    }
    return area;
  }

  private valueOf(cell: FormulaCell): Cell {
    if (cell.value !== undefined) return cell.value;
    if (cell.isBusy) return circular(cell);
    if (this.depth >= DEEPEST) throw new TooDeep(cell);
    cell.isBusy = true;
    this.depth += 1;
    try {
      const value = cell.compute(cell.place);
      if (isCells(value)) {
        cell.spilled = value;
        cell.value = value.at(0, 0);
      } else {
        // A formula that only points at an empty cell shows 0, as spreadsheets have it.
        cell.value = value ?? 0;
      }
      return cell.value;
    } finally {
      cell.isBusy = false;
      this.depth -= 1;
    }
  }

  /** Computes a cell, and first whatever lies too deep below it. */
  private settle(cell: FormulaCell): void {
    const waiting = [cell];
    for (let next = waiting.at(-1); next !== undefined; next = waiting.at(-1)) {
      try {
        this.valueOf(next);
        waiting.pop();
      } catch (reason) {
        if (!(reason instanceof TooDeep)) throw reason;
        if (waiting.includes(reason.cell)) reason.cell.value = circular(reason.cell);
        else waiting.push(reason.cell);
      }
    }
  }

  at(sheet: string, row: number, column: number): Cell {
    const held = this.sheets.get(sheet)?.get(row, column);
    if (isFormulaCell(held)) this.settle(held);
    else if (held instanceof SpilledCell) this.settle(held.anchor);
    return this.cell(sheet, row, column);
  }
}

/**
 * Calculates sheets, each cell when it is first asked for. Formulas are written in cell addresses; those of a table's own
 * columns (structured references) are not calculated. Throws FormulaSyntaxError for a formula that is none.
 */
export function calculate(plans: readonly SheetPlan[]): Calculated {
  return new Workbook(plans);
}
