/** One argument of one call: its range, and a reader that remembers what texts were read as. */
import { isRefusal, type Outcome } from '../core/outcome';
import { CellError, isBlank, type Cell, type Matrix } from './cell';
import { readGiven, type Parameter } from './parameter';

const LEFT_OUT: Matrix = [[null]];

/** So many texts of a column are remembered; a column of more different ones is read as if each were new. */
const MOST_REMEMBERED = 256;

/** Stands for a cell that holds no value to compute with: a blank that is needed, an error, nothing readable. */
export const NO_VALUE = Symbol('no value');

export class Argument {
  readonly rows: number;
  readonly columns: number;
  private readonly matrix: Matrix;
  /** The argument that says how a text of this one is read. */
  private beside: Argument | undefined;
  private remembers: boolean;
  private lastText: string | undefined;
  private lastRead: unknown;
  private texts: Map<string, unknown> | undefined;

  constructor(
    readonly parameter: Parameter,
    given: Matrix | undefined,
  ) {
    this.matrix = given ?? LEFT_OUT;
    let columns = 1;
    for (const row of this.matrix) if (row.length > columns) columns = row.length;
    this.rows = Math.max(1, this.matrix.length);
    this.columns = columns;
    this.remembers = parameter.besideName === undefined;
  }

  /** Ties an argument to the one beside it, which it reads its texts by. */
  standBeside(all: readonly Argument[]): void {
    const { besideName } = this.parameter;
    if (besideName === undefined) return;
    this.beside = all.find(({ parameter }) => parameter.name === besideName);
    this.remembers = this.beside?.isOneCell !== false;
  }

  get isOneCell(): boolean {
    return this.rows === 1 && this.columns === 1;
  }

  /** Whether what it says is the same everywhere in the call. */
  get isFixed(): boolean {
    return this.isOneCell && (this.beside === undefined || this.beside.isOneCell);
  }

  /** The cell that counts at a place of the common shape; undefined where the range has no such row or column. */
  cellAt(row: number, column: number): Cell | undefined {
    const useRow = this.rows === 1 ? 0 : row;
    const useColumn = this.columns === 1 ? 0 : column;
    if (useRow >= this.rows || useColumn >= this.columns) return undefined;
    return this.matrix[useRow]?.[useColumn] ?? null;
  }

  /** What a cell of it, neither blank nor an error, says at a place. */
  read(cell: unknown, row: number, column: number): Outcome<unknown> {
    if (typeof cell !== 'string') return readGiven(this.parameter, cell);
    if (!this.remembers) return this.parameter.read(cell, this.beside!.saysAt(row, column));
    if (cell === this.lastText) return this.lastRead;
    const texts = (this.texts ??= new Map<string, unknown>());
    let read = texts.get(cell);
    if (read === undefined) {
      read = this.parameter.read(cell, this.beside?.saysAt(row, column));
      if (texts.size >= MOST_REMEMBERED) texts.clear();
      texts.set(cell, read);
    }
    this.lastText = cell;
    this.lastRead = read;
    return read;
  }

  /** What it says at a place, its default where that is blank. */
  saysAt(row: number, column: number): unknown {
    const cell = this.cellAt(row, column) ?? null;
    return isBlank(cell) ? this.parameter.fallback : this.read(cell, row, column);
  }

  /** The value at a place, or NO_VALUE, whose reason is then asked for elsewhere. */
  valueAt(row: number, column: number): unknown {
    const cell = this.cellAt(row, column);
    if (typeof cell === 'number') {
      const read = this.parameter.read(cell);
      return isRefusal(read) ? NO_VALUE : read;
    }
    if (cell === undefined || cell instanceof CellError) return NO_VALUE;
    if (cell === null || (cell !== this.lastText && isBlank(cell))) {
      return this.parameter.fallbackText === undefined ? NO_VALUE : this.parameter.fallback;
    }
    const read = this.read(cell, row, column);
    return isRefusal(read) ? NO_VALUE : read;
  }
}
