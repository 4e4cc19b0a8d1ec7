/**
 * What every cell of a set of sheets comes to, without any spreadsheet: the formulas of their plans, evaluated. Sheets
 * point at each other by address and by defined name, so they are calculated together.
 */
import { CellError, type Cell } from '../../functions/cell';
import type { NamePlan, SheetPlan } from '../plan/plan';
import { hasContent } from '../plan/lay-blocks';
import {
  compileFormula,
  type Compiled,
  type NamedArea,
  type Place,
  type Reader,
  type SheetReader,
} from './compile';
import { isCells, type Cells } from './values';

/** Calculated sheets, read by zero-based place. */
export interface Calculated {
  /** The value of a cell; null where nothing stands. */
  at(sheet: string, row: number, column: number): Cell;
}

/** How deep cells may lead to one another before the rest is put off: far less than what a call stack bears. */
const DEEPEST = 120;

/** A formula in its cell, which is also the place that it is computed at. */
class FormulaCell implements Place {
  value: Cell | undefined = undefined;
  /** The whole answer of a formula that spills. */
  spilled: Cells | undefined = undefined;
  isBusy = false;

  constructor(
    readonly reader: Workbook,
    readonly sheet: Sheet,
    readonly row: number,
    readonly column: number,
    readonly down: number,
    readonly compute: Compiled,
  ) {}
}

/** Thrown where a cell is needed that lies too deep; it is computed first, and the others then start anew. */
class TooDeep extends Error {
  constructor(readonly cell: FormulaCell) {
    super('too deep');
  }
}

/**
 * A formula as a plan has it, for all the cells that it is filled down to: made a cell's own, and compiled, where a cell is
 * first asked for. Most cells of a sheet never are.
 */
class Formula {
  private compute: Compiled | undefined = undefined;

  constructor(
    private readonly text: string,
    private readonly firstRow: number,
  ) {}

  in(reader: Workbook, sheet: Sheet, row: number, column: number): FormulaCell {
    this.compute ??= compileFormula(this.text);
    return new FormulaCell(reader, sheet, row, column, row - this.firstRow, this.compute);
  }
}

/** A cell: what was typed, a formula, or where in a spilled answer it lies. */
type Held = Exclude<Cell, CellError> | Formula | FormulaCell | SpilledCell;
class SpilledCell {
  constructor(
    readonly anchorRow: number,
    readonly down: number,
  ) {}
}

/** Areas are kept by one number: their place and size side by side, as far as those go. */
const MOST = { columns: 2 ** 10, rows: 2 ** 16, width: 2 ** 6 } as const;

class Sheet implements SheetReader {
  private readonly rows: (Held | undefined)[][] = [];
  private readonly areas = new Map<number, Cells>();

  constructor(
    readonly name: string,
    private readonly workbook: Workbook,
  ) {}

  put(row: number, column: number, held: Held | undefined): void {
    (this.rows[row] ??= [])[column] = held;
  }

  /** What stands in a cell, a formula as the cell's own. */
  get(row: number, column: number): Exclude<Held, Formula> | undefined {
    const held = this.rows[row]?.[column];
    if (!(held instanceof Formula)) return held;
    const cell = held.in(this.workbook, this, row, column);
    this.put(row, column, cell);
    return cell;
  }

  cell(row: number, column: number): Cell {
    const held = this.get(row, column);
    if (held instanceof FormulaCell) return held.value ?? this.workbook.valueOf(held);
    if (held instanceof SpilledCell) {
      const anchor = this.anchorOf(held, column);
      this.workbook.valueOf(anchor);
      const { spilled } = anchor;
      return spilled !== undefined && held.down < spilled.rows ? spilled.at(held.down, 0) : null;
    }
    return held ?? null;
  }

  /** The formula whose answer spills over a cell. */
  anchorOf({ anchorRow }: SpilledCell, column: number): FormulaCell {
    return this.get(anchorRow, column) as FormulaCell;
  }

  hasFormula(row: number, column: number): boolean {
    const held = this.rows[row]?.[column];
    return held instanceof FormulaCell || held instanceof Formula;
  }

  cells(row: number, column: number, rows: number, columns: number): Cells {
    if (column >= MOST.columns || rows >= MOST.rows || columns >= MOST.width) {
      return this.area(row, column, rows, columns);
    }
    const key = ((row * MOST.columns + column) * MOST.rows + rows) * MOST.width + columns;
    let known = this.areas.get(key);
    if (known === undefined) {
      this.areas.set(key, (known = this.area(row, column, rows, columns)));
    }
    return known;
  }

  private area(row: number, column: number, rows: number, columns: number): Cells {
    let whole: readonly Cell[] | undefined;
    const at = (down: number, across: number) => this.cell(row + down, column + across);
    const all = () => {
      const cells = new Array<Cell>(rows * columns);
      for (let down = 0, index = 0; down < rows; down += 1) {
        for (let across = 0; across < columns; across += 1, index += 1) {
          cells[index] = at(down, across);
        }
      }
      return cells;
    };
    return { rows, columns, at, all: () => (whole ??= all()) };
  }
}

const circular = ({ row, sheet }: FormulaCell) =>
  new CellError('#REF!', `row ${row + 1} of ${sheet.name}: the reference is circular`);

class Workbook implements Reader, Calculated {
  private readonly sheets = new Map<string, Sheet>();
  private readonly names = new Map<string, NamedArea>();
  private depth = 0;

  constructor(plans: readonly SheetPlan[]) {
    for (const plan of plans) {
      const sheet = new Sheet(plan.name, this);
      this.sheets.set(plan.name, sheet);
      for (const named of plan.names) this.addName(sheet, named);
    }
    for (const plan of plans) this.fill(plan);
  }

  private addName(sheet: Sheet, { name, area }: NamePlan): void {
    this.names.set(name.toLowerCase(), { sheet, ...area });
  }

  private fill(plan: SheetPlan): void {
    const sheet = this.sheets.get(plan.name)!;
    for (const block of plan.blocks) {
      if (!hasContent(block)) continue;
      const { area, cells, fill, spillRows } = block;
      const filled = fill?.map((formula) =>
        formula === null ? undefined : new Formula(formula, area.row),
      );
      for (let down = 0; down < area.rows; down += 1) {
        const typed = cells?.[down];
        for (let across = 0; across < area.columns; across += 1) {
          const [row, column] = [area.row + down, area.column + across];
          const given = typed?.[across] ?? null;
          if (given === null) {
            sheet.put(row, column, filled?.[across]);
          } else if (typeof given === 'object') {
            sheet.put(row, column, new Formula(given.formula, row));
            for (let below = 1; below < (spillRows ?? 1); below += 1) {
              sheet.put(row + below, column, new SpilledCell(row, below));
            }
          } else sheet.put(row, column, given);
        }
      }
    }
  }

  named(name: string): NamedArea | undefined {
    return this.names.get(name);
  }

  sheet(name: string): SheetReader {
    return this.sheets.get(name) ?? new Sheet(name, this);
  }

  valueOf(cell: FormulaCell): Cell {
    if (cell.value !== undefined) return cell.value;
    if (cell.isBusy) return circular(cell);
    if (this.depth >= DEEPEST) throw new TooDeep(cell);
    cell.isBusy = true;
    this.depth += 1;
    try {
      const value = cell.compute(cell);
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

  at(name: string, row: number, column: number): Cell {
    const sheet = this.sheets.get(name);
    if (sheet === undefined) return null;
    const held = sheet.get(row, column);
    if (held instanceof FormulaCell) this.settle(held);
    else if (held instanceof SpilledCell) this.settle(sheet.anchorOf(held, column));
    return sheet.cell(row, column);
  }
}

/**
 * Calculates sheets, each cell when it is first asked for. Formulas are written in cell addresses; those of a table's own
 * columns (structured references) are not calculated. A formula that is none throws FormulaSyntaxError where its cell is
 * asked for.
 */
export function calculate(plans: readonly SheetPlan[]): Calculated {
  return new Workbook(plans);
}
