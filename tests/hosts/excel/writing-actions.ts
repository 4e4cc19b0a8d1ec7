/**
 * Everything with which the pane writes into a workbook of Excel: for each action how to come to where it can be done, and
 * what must hold once it was done, or was not. A judge that finds a sentence false throws.
 */
import { expect } from 'vitest';
import type { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { InsertionFault, type Inserted } from '../../../src/hosts/sheet-host';
import type { RunsReport } from '../../../src/lists/read-runs';
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { insertReport, missingSentence, repairedSentence } from '../../../src/taskpane/insertion';
import { newRowsSentence } from '../../../src/taskpane/standing';
import type { RecordingExcel } from './recording-excel';
import { RememberedContent, type RememberedLooks } from './remembered';

/** What came of a try. */
export const CAME = [
  'done',
  'as before',
  /** The content stands, and the looks that it lacks are named. */
  'looks named',
  /** What is left is named, and a further try removes it. */
  'left, named',
  /** It is said that nobody knows whether it was done or something was left. */
  'said unknown',
] as const;
export type Came = (typeof CAME)[number];

export interface Try {
  /** Does it. What it rejects with is the sentence that a person reads. */
  act(): Promise<unknown>;
  /** Holds what was said against the workbook; `fault` where it was rejected. */
  judge(fault: Error | undefined): Came | Promise<Came>;
}

export interface WritingAction {
  readonly what: string;
  /** Whether it is done, or leaves the workbook as it was, where no more than one step or one answer fails. */
  readonly bearsOne?: true;
  /** In a workbook with other people's things in it. */
  prepare(excel: RecordingExcel, host: ExcelHost): Promise<Try>;
}

/** What an undisturbed insertion comes to. */
export interface Whole {
  readonly content: RememberedContent;
  readonly looks: RememberedLooks;
}

/** A sentence of ours: no code, no words of Excel's own, nothing left out. */
function expectSentence(text: string): void {
  expect(text).toMatch(/^[A-Z“].*\.$/s);
  expect(text).not.toMatch(/Excel's own words|undefined|\[object|Exception\b/);
}

/** An action that is done at once or not at all. */
function single(excel: RecordingExcel, act: () => Promise<unknown>, seen: () => unknown): Try {
  const [before, seenBefore] = [new RememberedContent(excel), seen()];
  return {
    act,
    judge(fault) {
      if (fault === undefined) {
        expect(seen()).not.toEqual(seenBefore);
        return 'done';
      }
      expectSentence(fault.message);
      expect(fault.message).not.toMatch(/as it was|nothing was/i);
      if (/^Excel did not say whether|^A row was added/.test(fault.message)) return 'said unknown';
      expect(seen()).toEqual(seenBefore);
      expect(before.isThat(excel), 'as before').toBe(true);
      return 'as before';
    },
  };
}

/**
 * All looks are there besides those that are named: a repair makes these alone, and then everything is there, and nothing
 * twice.
 */
async function judgeLooks(excel: RecordingExcel, whole: Whole, now: Inserted): Promise<Came> {
  expect(whole.content.isThat(excel), 'the content is whole').toBe(true);
  if (now.missing.length === 0) {
    expect(whole.looks.isThat(excel), 'the looks are whole').toBe(true);
    return 'done';
  }
  const again = await now.repair();
  expect(again.missing).toEqual([]);
  expect(whole.looks.isThat(excel), 'the looks are whole').toBe(true);
  expect(whole.content.isThat(excel), 'the content is whole').toBe(true);
  return 'looks named';
}

/** What is left of an insertion is named, neither more nor less, and the removal that is offered removes it. */
async function judgeRest(
  excel: RecordingExcel,
  without: {
    readonly state: RememberedContent;
    readonly sheets: readonly string[];
    names: readonly string[];
  },
  fault: InsertionFault,
): Promise<Came> {
  const { message: said, removeRest } = fault;
  const added = excel.sheetNames.filter((name) => !without.sheets.includes(name));
  const named = excel.definedNames.filter((name) => !without.names.includes(name));
  for (const name of added) expect(said).toContain(`“${name}”`);
  for (const name of named) {
    const isNamed = said.includes(name) || said.includes(/^[^_]*_/.exec(name)![0]);
    expect(isNamed, `${name} in: ${said}`).toBe(true);
  }
  const isKnown = said.includes('still there');
  if (isKnown) {
    expect(added.length + named.length).toBeGreaterThan(0);
    const sheetsSaid = /the sheets? (.*?)(?:(?: and|,)? the defined| (?:is|are) still)/.exec(said);
    expect([...(sheetsSaid?.[1] ?? '').matchAll(/“/g)]).toHaveLength(added.length);
    expect(said.includes('the defined name')).toBe(named.length > 0);
  } else expect(said).toMatch(/not known whether something was left/);
  expect(removeRest).toBeDefined();
  await removeRest!();
  expect(without.state.isThat(excel), 'nothing was left').toBe(true);
  return isKnown ? 'left, named' : 'said unknown';
}

const peoples = (excel: RecordingExcel) => ({
  state: new RememberedContent(excel),
  sheets: excel.sheetNames,
  names: excel.definedNames,
});

/** An insertion: told with the words of the pane. */
function insertion(
  excel: RecordingExcel,
  whole: () => Whole,
  insert: () => Promise<{ readonly sentence: string; readonly inserted: Inserted }>,
): Try {
  const without = peoples(excel);
  let told: Awaited<ReturnType<typeof insert>> | undefined;
  return {
    act: async () => {
      told = await insert();
    },
    async judge(fault) {
      if (told !== undefined) {
        const { sentence, inserted } = told;
        expectSentence(sentence + missingSentence(inserted));
        expect(newRowsSentence(inserted.fillsRows)).toBe('');
        return judgeLooks(excel, whole(), inserted);
      }
      if (!(fault instanceof InsertionFault)) throw fault ?? new Error('nothing was told');
      expectSentence(fault.message);
      if (!fault.message.includes('the workbook is as it was')) {
        return judgeRest(excel, without, fault);
      }
      expect(without.state.isThat(excel), 'nothing was left').toBe(true);
      expect(fault.removeRest).toBeUndefined();
      return 'as before';
    },
  };
}

function repair(
  what: string,
  lacking: RegExp,
  plans: readonly SheetPlan[],
  whole: () => Whole,
): WritingAction {
  return {
    what: `“Repair the sheet”: ${what}`,
    bearsOne: true,
    async prepare(excel, host) {
      excel.refuse = ({ path }) => (lacking.test(path) ? 'NotImplemented' : undefined);
      const inserted = await host.insert(plans);
      excel.refuse = () => undefined;
      expect(inserted.missing.length).toBeGreaterThan(0);
      let now = inserted;
      return {
        act: async () => {
          now = await inserted.repair();
        },
        judge(fault) {
          if (fault !== undefined) throw fault;
          expectSentence(repairedSentence(now));
          return judgeLooks(excel, whole(), now);
        },
      };
    },
  };
}

/** Taking an insertion back: `remove` is found once there is one. */
function removal(
  excel: RecordingExcel,
  without: ReturnType<typeof peoples>,
  remove: () => Promise<void>,
): Try {
  return {
    act: remove,
    judge(fault) {
      if (fault === undefined) {
        expect(without.state.isThat(excel), 'nothing was left').toBe(true);
        return 'done';
      }
      if (!(fault instanceof InsertionFault)) throw fault;
      expectSentence(fault.message);
      return judgeRest(excel, without, fault);
    },
  };
}

/** Inserting plans. */
export function insertingAction(
  what: string,
  plans: readonly SheetPlan[],
  whole: () => Whole,
): WritingAction {
  return {
    what,
    bearsOne: true,
    prepare: (excel, host) =>
      Promise.resolve(
        insertion(excel, whole, async () => ({
          sentence: 'Inserted.',
          inserted: await host.insert(plans),
        })),
      ),
  };
}

/** Taking a list in, as the pane does it, with the names that are free. */
export function takingInAction(report: RunsReport, whole: () => Whole): WritingAction {
  return {
    what: 'taking a list in',
    bearsOne: true,
    prepare: (excel, host) =>
      Promise.resolve(insertion(excel, whole, () => insertReport(host, 'hut.csv', report))),
  };
}

/** The other actions, on sheets that were inserted. */
export function writingActions(
  plans: readonly SheetPlan[],
  whole: () => Whole,
): readonly WritingAction[] {
  const [first] = plans;
  const sheet = first!.name;
  /** Inserts, and shows the person's own sheet again. */
  const inserted = async (excel: RecordingExcel, host: ExcelHost) => {
    const [own] = excel.sheets;
    const made = await host.insert(plans);
    excel.active = own!;
    return made;
  };
  return [
    repair('highlights', /conditionalFormats/, plans, whole),
    repair('print set-up', /pageLayout/, plans, whole),
    repair('chart', /charts/, plans, whole),
    repair('rules of entries and widths', /dataValidation|columnWidth/, plans, whole),
    {
      what: 'taking a whole insertion back',
      bearsOne: true,
      async prepare(excel, host) {
        const without = peoples(excel);
        const made = await host.insert(plans);
        return removal(excel, without, () => made.remove());
      },
    },
    {
      what: '“Remove what is left of it”',
      bearsOne: true,
      async prepare(excel, host) {
        const without = peoples(excel);
        // A sheet that cannot be deleted is left.
        excel.refuse = ({ path }) =>
          path.endsWith('formulas') || path === `${sheet}!delete` ? 'AccessDenied' : undefined;
        const fault: unknown = await host.insert(plans).catch((cause: unknown) => cause);
        excel.refuse = () => undefined;
        expect(excel.sheetNames).toContain(sheet);
        return removal(excel, without, () => (fault as InsertionFault).removeRest!());
      },
    },
    {
      what: '“Calculate now”',
      prepare: (excel, host) =>
        Promise.resolve(
          single(
            excel,
            () => host.calculate(),
            () => excel.application.calculated,
          ),
        ),
    },
    {
      what: '“Go to the worst run”',
      async prepare(excel, host) {
        await inserted(excel, host);
        return single(
          excel,
          () => host.select(sheet, area(9, 0)),
          () => excel.selected,
        );
      },
    },
    {
      what: 'sizes typed into rows of a column',
      async prepare(excel, host) {
        await inserted(excel, host);
        const column = 2;
        // So many that each code of a refusal falls on one in the midst.
        const rows = [3, 4, 5, 7];
        return single(
          excel,
          () =>
            host.edits.type(
              sheet,
              rows.map((row) => ({ row, column, content: '4 AWG' })),
            ),
          () => rows.map((row) => excel.sheetNamed(sheet)!.at(row, column)?.value),
        );
      },
    },
    {
      what: 'a cell that the check writes',
      async prepare(excel, host) {
        await inserted(excel, host);
        return single(
          excel,
          () => host.probe.write(sheet, area(2, 60), 7),
          () => excel.sheetNamed(sheet)!.at(2, 60)?.value,
        );
      },
    },
    {
      what: 'a table row that the check adds',
      async prepare(excel, host) {
        await inserted(excel, host);
        const [table] = excel.sheetNamed(sheet)!.tables;
        return single(
          excel,
          () => host.probe.addTableRow!(sheet, table!.name),
          () => table!.area.rows,
        );
      },
    },
    {
      what: 'the sheet that the check brings back',
      async prepare(excel, host) {
        const [own] = excel.sheets;
        const bringBack = await host.probe.keepView();
        await host.insert(plans);
        const act = bringBack;
        return {
          act,
          judge(fault) {
            if (fault === undefined) {
              expect(excel.active).toBe(own);
              return 'done';
            }
            expectSentence(fault.message);
            if (excel.active !== own) expect(fault.message).toMatch(/not|did not say/);
            else expect(fault.message).toMatch(/did not say|could not be told/);
            return excel.active === own ? 'said unknown' : 'as before';
          },
        };
      },
    },
    ...[
      'a sheet under a name that is taken',
      'a formula that cannot be read',
      'a cell of a protected sheet',
    ].map((what): WritingAction => ({
      what: `refusing ${what}`,
      async prepare(excel, host) {
        await inserted(excel, host);
        const before = new RememberedContent(excel);
        const { provoke, says } = host.probe.provocations.find((one) => one.what === what)!;
        let said: string | null = null;
        return {
          act: async () => {
            said = await provoke({ ownSheet: sheet });
          },
          judge(fault) {
            const isProtected = excel.sheetNamed(sheet)!.isProtected;
            excel.sheetNamed(sheet)!.isProtected = false;
            expect(before.isThat(excel), 'as before').toBe(true);
            if (fault !== undefined) {
              expectSentence(fault.message);
              expect(fault.message).toMatch(/protected|could not be removed/);
              return isProtected ? 'left, named' : 'as before';
            }
            // Whatever it was refused for, something was.
            expect(isProtected).toBe(false);
            expect(said).not.toBeNull();
            return says.test(String(said)) ? 'done' : 'as before';
          },
        };
      },
    })),
  ];
}
