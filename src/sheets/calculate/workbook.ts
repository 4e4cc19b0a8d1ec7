/**
 * Sheets whose cells are computed when they are first asked for. They are filled by whoever knows what stands in them: the
 * plans of new sheets, or a grid that holds them already.
 */
import { CellError, type Cell } from '../../functions/cell';
import type { Area } from '../plan/area';
import {
  compileFormula,
  type Compiled,
  type NamedArea,
  type Place,
  type Reader,
  type SheetReader,
} from './compile';
import { isCells, type Cells } from './values';

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
    readonly formula: Formula,
    readonly compute: Compiled,
  ) {}

  get down(): number {
    return this.row - this.formula.firstRow;
  }
}

/** Thrown where a cell is needed that lies too deep; it is computed first, and the others then start anew. */
class TooDeep extends Error {
  constructor(readonly cell: FormulaCell) {
    super('too deep');
  }
}

/** Thrown where a formula asks for what is not to be known here: another has to calculate it. */
export class BeyondThis extends Error {
  /** The formula that asked. */
  formula: Formula | undefined = undefined;
}

/**
 * A formula for all the cells that it is filled down to: made a cell's own, and compiled, where a cell is first asked for.
 * Most cells of a sheet never are.
 */
export class Formula {
  private compute: Compiled | undefined = undefined;

  /** `spillRows` says how many rows its answer fills, from its own cell on. */
  constructor(
    readonly text: string,
    readonly firstRow: number,
    readonly spillRows = 1,
  ) {}

  in(reader: Workbook, sheet: Sheet, row: number, column: number): FormulaCell {
    this.compute ??= compileFormula(this.text);
    return new FormulaCell(reader, sheet, row, column, this, this.compute);
  }
}

/** A cell that a formula of somebody else's spills over: one row of it. */
export class SpilledCell {
  constructor(
    readonly anchorRow: number,
    readonly down: number,
  ) {}
}

/** A cell whose formula somebody else calculates, with what that came to. */
export class CalculatedCell {
  constructor(readonly value: Cell) {}
}

/** A cell: what was typed, a formula, or where in a spilled answer it lies. */
export type Held = Cell | Formula | FormulaCell | SpilledCell | CalculatedCell;

/** Areas are kept by one number: their place and size side by side, as far as those go. */
const MOST = { columns: 2 ** 10, rows: 2 ** 16, width: 2 ** 6 } as const;

export class Sheet implements SheetReader {
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
    return held instanceof CalculatedCell ? held.value : (held ?? null);
  }

  /** The formula whose answer spills over a cell. */
  anchorOf({ anchorRow }: SpilledCell, column: number): FormulaCell {
    return this.get(anchorRow, column) as FormulaCell;
  }

  hasFormula(row: number, column: number): boolean {
    const held = this.rows[row]?.[column];
    return held instanceof FormulaCell || held instanceof Formula || held instanceof CalculatedCell;
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

/** What a workbook asks for where its own sheets and names do not say. */
export interface Elsewhere {
  /** Fills a sheet that formulas ask for by its name; false where there is none. */
  readonly fill: (sheet: Sheet) => boolean;
  /** The area that a name (in lower case) stands for; null where it stands for something else, undefined where there is none. */
  readonly named: (name: string) => (Area & { readonly sheet: string }) | null | undefined;
}

export class Workbook implements Reader {
  private readonly sheets = new Map<string, Sheet>();
  private readonly names = new Map<string, NamedArea>();
  private depth = 0;

  /** Without `elsewhere`, a sheet that is not there is empty, and an unknown name an error. */
  constructor(private readonly elsewhere?: Elsewhere) {}

  addSheet(name: string): Sheet {
    const sheet = new Sheet(name, this);
    this.sheets.set(name, sheet);
    return sheet;
  }

  addName(name: string, sheet: Sheet, area: Area): void {
    this.names.set(name.toLowerCase(), { sheet, ...area });
  }

  named(name: string): NamedArea | undefined {
    const known = this.names.get(name);
    if (known !== undefined || this.elsewhere === undefined) return known;
    const found = this.elsewhere.named(name);
    if (found === undefined) return undefined;
    if (found === null) throw new BeyondThis(`${name} is no area`);
    const named = { ...found, sheet: this.sheet(found.sheet) };
    this.names.set(name, named);
    return named;
  }

  sheet(name: string): Sheet {
    const known = this.sheets.get(name);
    if (known !== undefined) return known;
    if (this.elsewhere === undefined) return new Sheet(name, this);
    const sheet = this.addSheet(name);
    if (this.elsewhere.fill(sheet)) return sheet;
    this.sheets.delete(name);
    throw new BeyondThis(`there is no sheet named ${name}`);
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
        if (this.elsewhere !== undefined) hold(cell.formula, value);
        cell.spilled = value;
        cell.value = value.at(0, 0);
      } else {
        // A formula that only points at an empty cell shows 0, as spreadsheets have it.
        cell.value = value ?? 0;
      }
      return cell.value;
    } catch (reason) {
      if (reason instanceof BeyondThis) reason.formula ??= cell.formula;
      throw reason;
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

  /** What a cell comes to; null where nothing stands. */
  at(name: string, row: number, column: number): Cell {
    const sheet = this.sheets.get(name);
    if (sheet === undefined) return null;
    const held = sheet.get(row, column);
    if (held instanceof FormulaCell) this.settle(held);
    else if (held instanceof SpilledCell) this.settle(sheet.anchorOf(held, column));
    return sheet.cell(row, column);
  }
}

/** Whether an answer fills just the cells that are known to be its own. */
function hold({ spillRows }: Formula, { rows, columns }: Cells): void {
  if (columns !== 1 || rows !== spillRows) throw new BeyondThis(`${rows} rows are filled`);
}
