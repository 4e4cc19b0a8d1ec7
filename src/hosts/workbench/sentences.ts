/**
 * The sentences behind error values, by cell. The grid stores an error as its bare code; Excel shows the reason at
 * the cell, and so does the workbench, from what is kept here.
 */
import { CellError, type ResultMatrix } from '../../functions/cell';

interface Left {
  /** The calculation in which these were left; a later one of the same cell starts afresh. */
  readonly round: number;
  readonly errors: { row: number; column: number; error: CellError }[];
}

export class Sentences {
  private round = 0;
  private readonly sheets = new Map<string, Map<string, Left>>();

  /** Says that a calculation begins: what a cell's functions leave from now on replaces what they left before. */
  newRound(): void {
    this.round += 1;
  }

  /** Keeps the errors of one function's result, called from a formula in that cell. */
  keep(sheetId: string, row: number, column: number, result: ResultMatrix): void {
    const sheet = this.sheets.get(sheetId) ?? new Map<string, Left>();
    this.sheets.set(sheetId, sheet);
    const key = `${row},${column}`;
    const earlier = sheet.get(key);
    const errors = earlier?.round === this.round ? earlier.errors : [];
    for (const [down, cells] of result.entries()) {
      for (const [across, cell] of cells.entries()) {
        if (cell instanceof CellError) {
          errors.push({ row: row + down, column: column + across, error: cell });
        }
      }
    }
    if (errors.length > 0) sheet.set(key, { round: this.round, errors });
    else sheet.delete(key);
  }

  /** The sentence for a cell that shows this error code, or null where none of our functions said anything. */
  find(sheetId: string, row: number, column: number, code: string): string | null {
    const sheet = this.sheets.get(sheetId);
    if (sheet === undefined) return null;
    // First the cell's own formula, then a formula that spills over it.
    const own = sheet.get(`${row},${column}`);
    for (const left of own === undefined ? sheet.values() : [own, ...sheet.values()]) {
      const said = left.errors
        .filter((at) => at.row === row && at.column === column && at.error.code === code)
        .map((at) => at.error.sentence);
      if (said.length > 0) return [...new Set(said)].join('; or ');
    }
    return null;
  }

  /** Forgets what the formula of one cell left: its content was replaced. */
  forgetCell(sheetId: string, row: number, column: number): void {
    this.sheets.get(sheetId)?.delete(`${row},${column}`);
  }

  /** Goes along with lines that are put into a sheet before a place, or taken out from there on (a negative count). */
  moveLines(sheetId: string, of: 'row' | 'column', at: number, count: number): void {
    const moved = (place: number) =>
      place < at ? place : place < at - count ? undefined : place + count;
    const before = this.sheets.get(sheetId);
    if (before === undefined) return;
    const after = new Map<string, Left>();
    for (const [key, left] of before) {
      const [row, column] = key.split(',').map(Number) as [number, number];
      const cell = { row, column };
      const place = moved(cell[of]);
      if (place === undefined) continue;
      const errors = left.errors.flatMap((error) => {
        const to = moved(error[of]);
        return to === undefined ? [] : [{ ...error, [of]: to }];
      });
      const to = { ...cell, [of]: place };
      after.set(`${to.row},${to.column}`, { ...left, errors });
    }
    this.sheets.set(sheetId, after);
  }

  /** Forgets everything, as after cells were put in another order; a full calculation brings it back. */
  forgetAll(): void {
    this.sheets.clear();
  }
}
