/** One argument of one call: its range, and a reader that remembers what texts were read as. */
import { isRefusal, type Outcome } from '../core/outcome';
import { CellError, isBlank, type Cell, type Matrix } from './cell';
import { readGiven, type Parameter } from './parameter';

const LEFT_OUT: Matrix = [[null]];

/** So many texts of a column are remembered; one of names, where hardly any comes twice, is not worth remembering. */
const MOST_REMEMBERED = 256;

/** Stands for a cell that holds no value to compute with: a blank that is needed, an error, nothing readable. */
export const NO_VALUE = Symbol('no value');

export class Argument {
  readonly rows: number;
  readonly columns: number;
  private readonly matrix: Matrix;
  private besideArgument: Argument | undefined;
  private lastText: string | undefined;
  private lastRead: unknown;
  /** What texts were read as, beside `lastBeside`. */
  private texts: Map<string, unknown> | undefined;
  private remembered = 0;
  private isWorthRemembering = true;
  private lastBeside: unknown;

  constructor(
    readonly parameter: Parameter,
    given: Matrix | undefined,
  ) {
    this.matrix = given ?? LEFT_OUT;
    let columns = 1;
    for (const row of this.matrix) if (row.length > columns) columns = row.length;
    this.rows = Math.max(1, this.matrix.length);
    this.columns = columns;
  }

  /** Ties it to the argument of the same call that says how its texts are read. */
  standBeside(all: readonly Argument[]): void {
    const { besideName } = this.parameter;
    if (besideName === undefined) return;
    this.besideArgument = all.find(({ parameter }) => parameter.name === besideName);
  }

  get isOneCell(): boolean {
    return this.rows === 1 && this.columns === 1;
  }

  /** Whether what it says is the same everywhere in the call. */
  get isFixed(): boolean {
    return this.isOneCell && (this.besideArgument?.isOneCell ?? true);
  }

  /** The cell that counts at a place of the common shape; undefined where the range has no such row or column. */
  cellAt(row: number, column: number): Cell | undefined {
    const useRow = this.rows === 1 ? 0 : row;
    const useColumn = this.columns === 1 ? 0 : column;
    if (useRow >= this.rows || useColumn >= this.columns) return undefined;
    return this.matrix[useRow]?.[useColumn] ?? null;
  }

  /** What a cell of it says that is neither blank nor an error, beside what that other argument says there. */
  read(cell: unknown, beside?: unknown): unknown {
    if (typeof cell !== 'string') return readGiven(this.parameter, cell, beside);
    if (beside !== this.lastBeside) {
      this.lastText = undefined;
      this.texts?.clear();
      this.lastBeside = beside;
    }
    if (cell === this.lastText) return this.lastRead;
    this.lastRead = this.isWorthRemembering
      ? this.recall(cell, beside)
      : this.parameter.read(cell, beside);
    this.lastText = cell;
    return this.lastRead;
  }

  private recall(text: string, beside: unknown): unknown {
    const texts = (this.texts ??= new Map<string, unknown>());
    const known = texts.get(text);
    if (known !== undefined) {
      this.remembered += 1;
      return known;
    }
    if (texts.size >= MOST_REMEMBERED) {
      this.isWorthRemembering = this.remembered > MOST_REMEMBERED;
      this.remembered = 0;
      texts.clear();
    }
    const read = this.parameter.read(text, beside);
    texts.set(text, read);
    return read;
  }

  /** The same at a place of the common shape, for a cell that stands there. */
  readAt(cell: Cell, row: number, column: number): Outcome<unknown> {
    return this.besideArgument === undefined || typeof cell !== 'string'
      ? this.read(cell)
      : this.read(cell, this.besideArgument.saysAt(row, column));
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
    const read = this.readAt(cell, row, column);
    return isRefusal(read) ? NO_VALUE : read;
  }

  /** What it says at a place, its default where that is blank. */
  private saysAt(row: number, column: number): unknown {
    const cell = this.cellAt(row, column) ?? null;
    return isBlank(cell) ? this.parameter.fallback : this.read(cell);
  }
}
