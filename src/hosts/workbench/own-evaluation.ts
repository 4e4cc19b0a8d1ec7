/** Our own evaluation of the planned sheets of a grid, gone on from with each edit. */
import type { Univer } from '@univerjs/core';
import { IFormulaRuntimeService } from '@univerjs/engine-formula';
import { BeyondThis, Workbook, type Sheet } from '../../sheets/calculate/workbook';
import type { EngineData } from './engine-data';
import { OwnRules, type Rules, type Where } from './own-rules';
import {
  KnownFormulas,
  putStanding,
  takeChanges,
  type PutIn,
  type Reading,
} from './standing-sheets';
import { Turns } from './turns';

/** Cells between looks at the time. */
const CELLS_A_LOOK = 32;

/** A sheet that our evaluation reads. */
export interface Opened {
  readonly sheetId: string;
  readonly putIn: PutIn;
}

/** All planned sheets as they stand, to be evaluated. */
export interface Evaluation {
  readonly book: Workbook;
  readonly opened: ReadonlyMap<string, Opened>;
  /** The sheets and names that there were. */
  readonly index: string;
  readonly rules: Rules;
}

/** Thrown where the engine was told to stop. */
export class Stopped extends Error {}

export class OwnEvaluation {
  readonly rules: OwnRules;
  private readonly known = new KnownFormulas();
  private readonly runtime: IFormulaRuntimeService;
  /** The last evaluation, to be gone on from. */
  private last: Evaluation | undefined = undefined;
  /** The ids of the sheets that the last evaluation read. */
  private read: ReadonlySet<string> = new Set();

  constructor(
    univer: Univer,
    private readonly data: EngineData,
  ) {
    this.runtime = univer.__getInjector().get(IFormulaRuntimeService);
    this.rules = new OwnRules(univer, this.known, (formula, columns) =>
      data.shifted(formula, columns),
    );
  }

  /** Begins anew with the next evaluation, and tries again the formulas that asked for more than is known here. */
  beginAnew(): void {
    this.known.forget();
    this.last = undefined;
  }

  /** Whether the last evaluation read a sheet. */
  hasRead(sheetId: string): boolean {
    return this.read.has(sheetId);
  }

  /** Evaluates all planned sheets; formulas that ask for more than is known here are left to the engine. */
  async evaluated(names: readonly string[]): Promise<Evaluation> {
    for (;;) {
      const last = this.last;
      this.last = undefined;
      const evaluation = last !== undefined && this.takeChanges(last) ? last : undefined;
      const asked = evaluation ?? this.open();
      try {
        await this.evaluate(asked, names);
      } catch (fault) {
        if (fault instanceof Stopped) this.last = asked;
        if (!(fault instanceof BeyondThis) || fault.formula === undefined) throw fault;
        this.known.leave(fault.formula.text);
        continue;
      }
      this.read = new Set([...asked.opened.values()].map(({ sheetId }) => sheetId));
      if (!asked.book.metCircle) this.last = asked;
      // What comes of a circle hangs on who asked first: as where all is new.
      if (asked.book.metCircle && evaluation !== undefined) continue;
      return asked;
    }
  }

  /** Takes into an earlier evaluation what stands in the grid now; false where it cannot be gone on from. */
  private takeChanges({ book, opened, index }: Evaluation): boolean {
    if (index !== this.data.index()) return false;
    book.revise();
    return [...opened].every(([name, { sheetId, putIn }]) => {
      const standing = this.data.standing(sheetId);
      if (this.data.sheetId(name) !== sheetId || standing === undefined) return false;
      return takeChanges(book.sheet(name), standing, putIn, this.reading());
    });
  }

  private async evaluate(evaluation: Evaluation, names: readonly string[]): Promise<void> {
    const { book, opened } = evaluation;
    const turns = new Turns();
    const goOn = async () => {
      if (!turns.isDue()) return;
      await turns.take();
      if (this.runtime.isStopExecution()) throw new Stopped();
    };
    for (const name of names) {
      book.sheet(name);
      const { sheetId, putIn } = opened.get(name)!;
      for (const [asked, { row, column }] of putIn.own.entries()) {
        book.at(name, row, column);
        if (asked % CELLS_A_LOOK === 0) await goOn();
      }
      const coloured = this.rules.cells(this.data.unitId, sheetId, this.where(evaluation, name));
      for (const [asked, { value }] of coloured.entries()) {
        value();
        if (asked % CELLS_A_LOOK === 0) await goOn();
      }
    }
  }

  /** Where the formulas of a sheet's rules are evaluated. */
  where({ book, opened, rules }: Evaluation, name: string): Where {
    const { sheetId } = opened.get(name)!;
    const { rowCount = 0, columnCount = 0 } = this.data.data(sheetId) ?? {};
    return { book, sheet: book.sheet(name), rules, rowCount, columnCount };
  }

  private open(): Evaluation {
    const opened = new Map<string, Opened>();
    const fill = (sheet: Sheet): boolean => {
      const sheetId = this.data.sheetId(sheet.name);
      const standing = sheetId === undefined ? undefined : this.data.standing(sheetId);
      if (sheetId === undefined || standing === undefined) return false;
      const putIn = putStanding(sheet, standing, this.reading());
      opened.set(sheet.name, { sheetId, putIn });
      return true;
    };
    const named = (name: string) => this.data.named(name);
    return {
      book: new Workbook({ fill, named }, true),
      opened,
      index: this.data.index(),
      rules: new Map(),
    };
  }

  private reading(): Reading {
    return {
      known: this.known,
      styles: this.data.styles,
      shifted: (formula, columns) => this.data.shifted(formula, columns),
    };
  }
}
