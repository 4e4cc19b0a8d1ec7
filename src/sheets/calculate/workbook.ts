/**
 * Sheets whose cells are computed when they are first asked for. They are filled by whoever knows what stands in them: the
 * plans of new sheets, or a grid that holds them already.
 */
import { CellError, type Cell } from '../../functions/cell';
import type { Area } from '../plan/area';
import { compileFormula } from './compile';
import { hasChangedSince } from './kept';
import type { Compiled, NamedArea, Place, Reader, SheetReader, Source } from './place';
import { isCells, isUnchanged, type Cells, type Value } from './values';

/** How deep cells may lead to one another before the rest is put off: far less than what a call stack bears. */
const DEEPEST = 120;

/** A formula in its cell, which is also the place that it is computed at. */
class FormulaCell implements Place, Source {
  value: Cell | undefined = undefined;
  /** The whole answer of a formula that spills. */
  spilled: Cells | undefined = undefined;
  isBusy = false;
  sources: readonly Source[] = [];
  verifiedAt = 0;
  changedAt = 0;

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

  refresh(): number {
    this.reader.valueOf(this);
    return this.changedAt;
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

/** A cell with a value that comes from outside: typed, or of a formula that somebody else calculates. */
export class GivenCell implements Source {
  changedAt = 0;

  constructor(
    public value: Cell,
    readonly hasFormula: boolean,
  ) {}

  refresh(): number {
    return this.changedAt;
  }
}

/** A cell: what was typed, a formula, or where in a spilled answer it lies. */
export type Held = Cell | Formula | FormulaCell | SpilledCell | GivenCell;

/** Areas are kept by one number: their place and size side by side, as far as those go. */
const MOST = { columns: 2 ** 10, rows: 2 ** 16, width: 2 ** 6 } as const;

/** Cells side by side, read when they are asked for. */
class CellArea implements Cells, Source {
  private whole: readonly Cell[] | undefined = undefined;
  private verifiedAt = 0;
  private changedAt = 0;

  constructor(
    private readonly workbook: Workbook,
    private readonly sheet: Sheet,
    private readonly row: number,
    private readonly column: number,
    readonly rows: number,
    readonly columns: number,
  ) {}

  at(down: number, across: number): Cell {
    return this.sheet.cell(this.row + down, this.column + across);
  }

  all(): readonly Cell[] {
    this.workbook.noted?.push(this);
    this.refresh();
    return this.whole!;
  }

  /** The list stays the same one while no cell of it changes, for all that is kept with it. */
  refresh(): number {
    const { workbook } = this;
    if (this.verifiedAt === workbook.revision) return this.changedAt;
    const before = workbook.noted;
    workbook.noted = undefined;
    try {
      const { rows, columns, whole } = this;
      const cells = new Array<Cell>(rows * columns);
      let isSame = whole !== undefined;
      for (let down = 0, index = 0; down < rows; down += 1) {
        for (let across = 0; across < columns; across += 1, index += 1) {
          const cell = this.at(down, across);
          isSame &&= isUnchanged(whole![index], cell);
          cells[index] = cell;
        }
      }
      if (!isSame) {
        this.whole = cells;
        this.changedAt = workbook.revision;
      }
      this.verifiedAt = workbook.revision;
      return this.changedAt;
    } finally {
      workbook.noted = before;
    }
  }
}

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
    if (held instanceof FormulaCell) {
      this.workbook.noted?.push(held);
      return this.workbook.valueOf(held);
    }
    if (held instanceof SpilledCell) {
      const anchor = this.anchorOf(held, column);
      this.workbook.noted?.push(anchor);
      this.workbook.valueOf(anchor);
      const { spilled } = anchor;
      return spilled !== undefined && held.down < spilled.rows ? spilled.at(held.down, 0) : null;
    }
    if (this.workbook.noted !== undefined) {
      const given = this.given(row, column);
      this.workbook.noted.push(given);
      return given.value;
    }
    return held instanceof GivenCell ? held.value : (held ?? null);
  }

  /** The formula whose answer spills over a cell. */
  anchorOf({ anchorRow }: SpilledCell, column: number): FormulaCell {
    return this.get(anchorRow, column) as FormulaCell;
  }

  source(row: number, column: number): Source | undefined {
    const held = this.get(row, column);
    if (held instanceof SpilledCell) return undefined;
    return held instanceof FormulaCell ? held : this.given(row, column);
  }

  /** A cell without a formula of ours as one that values may hang on. */
  private given(row: number, column: number): GivenCell {
    const held = this.rows[row]?.[column];
    if (held instanceof GivenCell) return held;
    const given = new GivenCell((held ?? null) as Cell, false);
    this.put(row, column, given);
    return given;
  }

  /** What stands in a cell that has no formula of ours, by itself or by one that spills; undefined where it has. */
  givenAt(row: number, column: number): Cell | undefined {
    const held = this.rows[row]?.[column];
    if (held instanceof GivenCell) return held.value;
    const isOurs =
      held instanceof Formula || held instanceof FormulaCell || held instanceof SpilledCell;
    return isOurs ? undefined : (held ?? null);
  }

  /** Gives a cell without a formula of ours another value, in this revision. */
  giveAnew(row: number, column: number, value: Cell): void {
    if (isUnchanged(this.givenAt(row, column), value)) return;
    const given = this.given(row, column);
    given.value = value;
    given.changedAt = this.workbook.revision;
  }

  hasFormula(row: number, column: number): boolean {
    const held = this.rows[row]?.[column];
    if (held instanceof GivenCell) return held.hasFormula;
    return held instanceof FormulaCell || held instanceof Formula;
  }

  cells(row: number, column: number, rows: number, columns: number): Cells {
    const area = () => new CellArea(this.workbook, this, row, column, rows, columns);
    if (column >= MOST.columns || rows >= MOST.rows || columns >= MOST.width) return area();
    const key = ((row * MOST.columns + column) * MOST.rows + rows) * MOST.width + columns;
    let known = this.areas.get(key);
    if (known === undefined) this.areas.set(key, (known = area()));
    return known;
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
  revision = 1;
  noted: Source[] | undefined = undefined;
  /** Whether a reference turned out to be circular: what comes of it hangs on who asked first. */
  metCircle = false;
  /** How often a formula of a cell was worked out. */
  workedOut = 0;
  private readonly sheets = new Map<string, Sheet>();
  private readonly names = new Map<string, NamedArea>();
  private depth = 0;

  /**
   * Without `elsewhere`, a sheet that is not there is empty, and an unknown name an error. A workbook that `keeps` may be
   * given other values in a next revision.
   */
  constructor(
    private readonly elsewhere?: Elsewhere,
    readonly keeps = false,
  ) {}

  /** Begins another revision: cells are given other values now, and whoever asks is answered by them. */
  revise(): void {
    this.revision += 1;
  }

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
    if (cell.verifiedAt === this.revision) return cell.value!;
    if (cell.isBusy) {
      this.metCircle = true;
      return circular(cell);
    }
    if (this.depth >= DEEPEST) throw new TooDeep(cell);
    const before = this.noted;
    cell.isBusy = true;
    this.depth += 1;
    try {
      if (cell.value === undefined || hasChangedSince(this, cell.sources, cell.verifiedAt)) {
        const sources: Source[] = [];
        this.noted = this.keeps ? sources : undefined;
        this.workedOut += 1;
        this.take(cell, cell.compute(cell), sources);
      }
      cell.verifiedAt = this.revision;
      return cell.value!;
    } catch (reason) {
      if (reason instanceof BeyondThis) reason.formula ??= cell.formula;
      throw reason;
    } finally {
      this.noted = before;
      cell.isBusy = false;
      this.depth -= 1;
    }
  }

  private take(cell: FormulaCell, value: Value, sources: readonly Source[]): void {
    if (isCells(value) && this.elsewhere !== undefined) hold(cell.formula, value);
    // A formula that only points at an empty cell shows 0, as spreadsheets have it.
    const first = isCells(value) ? value.at(0, 0) : (value ?? 0);
    if (isCells(value) || !isUnchanged(cell.value, first)) cell.changedAt = this.revision;
    cell.spilled = isCells(value) ? value : undefined;
    cell.value = first;
    cell.sources = sources;
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
        if (waiting.includes(reason.cell)) this.takeCircle(reason.cell);
        else waiting.push(reason.cell);
      }
    }
  }

  private takeCircle(cell: FormulaCell): void {
    this.metCircle = true;
    this.take(cell, circular(cell), []);
    cell.verifiedAt = this.revision;
  }

  /** A formula at a place without being its content, as those of colours are; what it comes to, whenever that is asked. */
  beside(sheet: Sheet, formula: Formula, row: number, column: number): () => Cell {
    const cell = formula.in(this, sheet, row, column);
    return () => {
      this.settle(cell);
      return cell.value!;
    };
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
