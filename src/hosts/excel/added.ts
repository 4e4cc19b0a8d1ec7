/**
 * What one insertion has added to a workbook, and nothing else: sheets by their ids, defined names by where they point.
 * New sheets first bear a name that nobody else would choose, so that even where Excel's answer is lost they can be told
 * from the sheets of other people; their own names come second.
 */
import type { NamePlan, SheetPlan } from '../../sheets/plan/plan';
import type { ChartPlan } from '../../sheets/plan/chart';
import { clearChart } from './charts';
import { rangeOf } from './range-of';
import { draw, request } from './request';
import { CALL_BYTES, intoRequests, type Placed } from './step';

interface AddedSheet {
  readonly plan: SheetPlan;
  readonly firstName: string;
  /** Known as soon as Excel has answered. */
  id: string | undefined;
}

export interface FoundSheet {
  readonly id: string;
  readonly name: string;
}

/** What is there of an insertion. */
export interface Traces {
  readonly sheets: readonly FoundSheet[];
  readonly names: readonly string[];
  /** Whether one of its sheets is in view. */
  readonly isInView: boolean;
}

function randomMark(): string {
  return [...crypto.getRandomValues(new Uint32Array(2))]
    .map((part) => part.toString(36).padStart(7, '0'))
    .join('');
}

/** Whether a defined name points at one of the sheets, or at nothing any more. */
function pointsAt(formula: unknown, sheets: ReadonlySet<string>): boolean {
  const text = String(formula);
  if (text.includes('#REF!')) return true;
  const [, quoted, plain = ''] = /^=(?:'((?:[^']|'')*)'|([^'!]+))!/.exec(text) ?? [];
  return sheets.has(quoted?.replaceAll("''", "'") ?? plain);
}

/** A rule as it is compared: Excel may give it back with other blanks and capitals. */
function ruleOf(formula: string): string {
  return formula.replace(/^=|\s+/g, '').toLowerCase();
}

export class Added {
  private readonly sheets: readonly AddedSheet[];
  /** Names that were asked for: of these alone some may be ours. */
  private readonly asked: NamePlan[] = [];
  /** The sheet that was in view before. */
  private inViewBefore: string | undefined;
  private naming: 'first names' | 'under way' | 'own names' = 'first names';

  constructor(plans: readonly SheetPlan[]) {
    const mark = randomMark();
    this.sheets = plans.map((plan, index) => ({
      plan,
      firstName: `Loomsheet ${mark} ${index + 1}`,
      id: undefined,
    }));
  }

  /** What the sheets and names may be called, where Excel does not answer any more. */
  get possible(): Omit<Traces, 'isInView'> {
    const called = ({ plan, firstName }: AddedSheet) =>
      ({
        'first names': firstName,
        'under way': `${firstName}” or “${plan.name}`,
        'own names': plan.name,
      })[this.naming];
    return {
      sheets: this.sheets.map((sheet) => ({ id: sheet.id ?? '', name: called(sheet) })),
      names: this.asked.map(({ name }) => name),
    };
  }

  /** The sheets of the plans in a request, each found once. */
  private sheetsIn(context: Excel.RequestContext): (index: number) => Excel.Worksheet {
    const found = new Map<number, Excel.Worksheet>();
    return (index) => {
      const sheet =
        found.get(index) ?? context.workbook.worksheets.getItem(this.sheets[index]!.id!);
      found.set(index, sheet);
      return sheet;
    };
  }

  async addSheets(): Promise<void> {
    const { added, inView } = await request(async (context) => {
      const { worksheets } = context.workbook;
      const active = worksheets.getActiveWorksheet();
      active.load('id');
      const sheets = this.sheets.map(({ firstName }) => {
        const sheet = worksheets.add(firstName);
        sheet.load('id');
        return sheet;
      });
      await context.sync();
      return { added: sheets.map((sheet) => sheet.id), inView: active.id };
    });
    this.inViewBefore = inView;
    for (const [index, id] of added.entries()) this.sheets[index]!.id = id;
  }

  async rename(): Promise<void> {
    this.naming = 'under way';
    await draw((context) => {
      const sheets = this.sheetsIn(context);
      for (const [index, { plan }] of this.sheets.entries()) sheets(index).name = plan.name;
    });
    this.naming = 'own names';
  }

  async addNames(): Promise<void> {
    const steps = this.sheets.flatMap(({ plan }, sheet) =>
      plan.names.map((named) => ({
        sheet,
        named,
        step: { bytes: 2 * CALL_BYTES, draw: () => undefined },
      })),
    );
    for (const names of intoRequests<Placed & { named: NamePlan }>(steps)) {
      this.asked.push(...names.map(({ named }) => named));
      await draw((context) => {
        const sheets = this.sheetsIn(context);
        for (const { sheet, named } of names) {
          context.workbook.names.add(named.name, rangeOf(sheets(sheet), named.area));
        }
      });
    }
  }

  /** Draws steps on the sheets in one request. */
  async draw(steps: readonly Placed[]): Promise<void> {
    await draw((context) => {
      const sheets = this.sheetsIn(context);
      for (const { sheet, step } of steps) step.draw(sheets(sheet));
    });
  }

  /** Shows the sheet again that was in view before the insertion. */
  async bringBack(): Promise<void> {
    const id = this.inViewBefore;
    if (id === undefined) return;
    await request(async (context) => {
      context.workbook.worksheets.getItem(id).activate();
      await context.sync();
    });
  }

  /** Adds a row to the table of a sheet, at its end; resolves to the formulas that Excel gives it. */
  addRow(sheet: number, table: string): Promise<readonly unknown[]> {
    return request(async (context) => {
      const { rows } = this.sheetsIn(context)(sheet).tables.getItem(table);
      const row = rows.add().getRange();
      row.load('formulas');
      await context.sync();
      return (row.formulas as unknown[][])[0] ?? [];
    });
  }

  /** Takes the row after so many rows out of the table again, where it is the only one. */
  removeRow(sheet: number, table: string, after: number): Promise<void> {
    return request(async (context) => {
      const { rows } = this.sheetsIn(context)(sheet).tables.getItem(table);
      rows.load('count');
      await context.sync();
      if (rows.count !== after + 1) return;
      rows.getItemAt(after).delete();
      await context.sync();
    });
  }

  /** Takes highlights off a sheet: those of these formulas, and half-made ones. Anybody else's stay. */
  async clearHighlights(sheet: number, formulas: readonly string[]): Promise<void> {
    const ours = new Set(['', ...formulas.map(ruleOf)]);
    await request(async (context) => {
      const formats = this.sheetsIn(context)(sheet).getRange().conditionalFormats;
      formats.load('items/type');
      await context.sync();
      const custom = formats.items.filter(({ type }) => String(type) === 'Custom');
      for (const format of custom) format.custom.rule.load('formula');
      await context.sync();
      for (const format of custom) {
        if (ours.has(ruleOf(format.custom.rule.formula))) format.delete();
      }
      await context.sync();
    });
  }

  /** Takes a chart of ours off a sheet, whole or begun. */
  clearChart(sheet: number, chart: ChartPlan): Promise<void> {
    return request((context) => clearChart(context, this.sheetsIn(context)(sheet), chart));
  }

  /** Looks for what this insertion added. */
  async find(): Promise<Traces> {
    const there = await request(async (context) => {
      const { worksheets, names } = context.workbook;
      const active = worksheets.getActiveWorksheet();
      active.load('id');
      worksheets.load('items/id,items/name');
      names.load('items/name,items/formula');
      await context.sync();
      return {
        inView: active.id,
        sheets: worksheets.items.map(({ id, name }) => ({ id, name })),
        names: names.items.map(({ name, formula }) => ({ name, formula: formula as unknown })),
      };
    });
    const sheets = there.sheets.filter(({ id, name }) =>
      this.sheets.some((sheet) =>
        sheet.id === undefined ? sheet.firstName === name : sheet.id === id,
      ),
    );
    const ourSheets = new Set(sheets.map(({ name }) => name));
    const asked = new Set(this.asked.map(({ name }) => name.toLowerCase()));
    const names = there.names
      // A name that points at someone else's cells is someone else's, whatever it is called.
      .filter(({ name, formula }) => asked.has(name.toLowerCase()) && pointsAt(formula, ourSheets))
      .map(({ name }) => name);
    return { sheets, names, isInView: sheets.some(({ id }) => id === there.inView) };
  }
}
