/**
 * Drop-down lists. A list of up to 255 characters stands in the rule itself; a longer one, or one whose texts hold a
 * comma or a quote, stands in a column of a hidden sheet that travels along.
 */
import type { Workbook, Worksheet } from 'exceljs';
import { area, areaAddress, quotedSheetName } from '../../sheets/plan/area';
import type { EntryPlan, SheetPlan } from '../../sheets/plan/plan';

/** Longest list that a rule holds itself (ECMA-376 part 1, 18.3.1.32, as Excel reads it). */
const INLINE_MOST = 255;

function fitsInline(choices: readonly string[]): boolean {
  return (
    choices.join(',').length <= INLINE_MOST &&
    choices.every((choice) => !/[",]/.test(choice) && choice === choice.trim())
  );
}

/** Keeps the lists of one workbook. */
export class ChoiceLists {
  private sheet: Worksheet | undefined;
  private readonly written = new Map<string, string>();

  constructor(
    private readonly workbook: Workbook,
    private readonly plans: readonly SheetPlan[],
  ) {}

  /** The formula of a list rule over these choices. */
  formulaFor(choices: NonNullable<EntryPlan['choices']>): string {
    if (fitsInline(choices)) return `"${choices.join(',')}"`;
    const key = JSON.stringify(choices);
    let formula = this.written.get(key);
    if (formula === undefined) {
      formula = this.write(choices);
      this.written.set(key, formula);
    }
    return formula;
  }

  private write(choices: readonly string[]): string {
    this.sheet ??= this.workbook.addWorksheet(this.freeName(), { state: 'hidden' });
    const column = this.written.size;
    for (const [row, choice] of choices.entries()) {
      const cell = this.sheet.getCell(row + 1, column + 1);
      cell.value = choice;
      // Text, so that 1/0 is no date to anyone who edits the list.
      cell.numFmt = '@';
    }
    const where = areaAddress(area(0, column, choices.length, 1), 'both');
    return `${quotedSheetName(this.sheet.name)}!${where}`;
  }

  private freeName(): string {
    const taken = new Set(this.plans.map((plan) => plan.name.toLowerCase()));
    for (let number = 1; ; number += 1) {
      const name = number === 1 ? 'Lists' : `Lists ${number}`;
      if (!taken.has(name.toLowerCase())) return name;
    }
  }
}
