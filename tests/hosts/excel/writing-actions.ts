/**
 * Everything with which the pane writes into a workbook of Excel, besides an insertion from nothing: for each how to come
 * to where it can be done, and what must hold once it was, or was not.
 */
import { expect } from 'vitest';
import type { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { InsertionFault, type Inserted } from '../../../src/hosts/sheet-host';
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import type { RecordingExcel } from './recording-excel';
import { stateOf } from './stand-in';

/** What came of a try, in a word. */
export type Came =
  | 'done'
  | 'as before'
  /** Excel did it and its answer was lost, or a step after it failed. */
  | 'done, told as refused'
  | 'missing named'
  | 'left, named'
  | 'not known, named';

export interface Try {
  readonly excel: RecordingExcel;
  /** Does it. What it rejects with is the sentence that a person reads. */
  act(): Promise<unknown>;
  /** Holds what was said against the workbook; `fault` where it was rejected. */
  judge(fault: Error | undefined): Came | Promise<Came>;
}

export interface WritingAction {
  readonly what: string;
  /** In a workbook with other people's things in it. */
  prepare(excel: RecordingExcel, host: ExcelHost): Promise<Omit<Try, 'excel'>>;
}

/** A sentence of ours: no code, no words of Excel's own. */
function expectSentence(fault: Error): void {
  expect(fault.message).toMatch(/^[A-Z].*\.$/s);
  expect(fault.message).not.toMatch(/Excel's own words|undefined|\[object|Exception\b/);
}

/** The workbook is as before or the action is done in full; a refusal says no more than that it could not be done. */
function single(
  excel: RecordingExcel,
  act: () => Promise<unknown>,
  isDone: () => boolean,
): Omit<Try, 'excel'> {
  const before = stateOf(excel);
  return {
    act,
    judge(fault) {
      if (fault === undefined) {
        expect(isDone()).toBe(true);
        return 'done';
      }
      expectSentence(fault);
      expect(fault.message).not.toMatch(/as it was|nothing was/i);
      if (isDone()) return 'done, told as refused';
      expect(stateOf(excel)).toBe(before);
      return 'as before';
    },
  };
}

/** Everything of the looks, highlights among them in their order. */
export function looksOf(excel: RecordingExcel): string {
  return JSON.stringify(
    excel.sheets.map(({ name, looks, highlights }) => [
      name,
      [...looks].sort(),
      highlights.map(({ area: of, formula, format }) => [of, formula, [...format]]),
    ]),
  );
}

/** Inserts, the looks of a kind refused, and then allows them. */
async function insertLacking(
  excel: RecordingExcel,
  host: ExcelHost,
  plans: readonly SheetPlan[],
  lacking: RegExp,
): Promise<Inserted> {
  excel.refuse = ({ path }) => (lacking.test(path) ? 'NotImplemented' : undefined);
  const inserted = await host.insert(plans);
  excel.refuse = () => undefined;
  return inserted;
}

/** What was taken back leaves nothing, or names what it leaves, and is there to be tried again. */
function judgeRemoval(excel: RecordingExcel, without: string, plans: readonly SheetPlan[]) {
  return async (fault: Error | undefined): Promise<Came> => {
    if (fault === undefined) {
      expect(stateOf(excel)).toBe(without);
      return 'done';
    }
    if (!(fault instanceof InsertionFault)) throw fault;
    expectSentence(fault);
    const isCertain = fault.message.includes('still there');
    const ours = new Set(plans.map(({ name }) => name));
    const there = excel.sheetNames.filter((name) => ours.has(name));
    for (const name of there) expect(fault.message).toContain(name);
    if (!isCertain) expect(fault.message).toMatch(/not known whether something was left/);
    await fault.removeRest!();
    expect(stateOf(excel)).toBe(without);
    return isCertain ? 'left, named' : 'not known, named';
  };
}

/** `whole` are the looks of an insertion that nothing disturbed. */
function judgeRepair(
  excel: RecordingExcel,
  whole: () => string,
  result: () => Inserted | undefined,
  before: Inserted,
) {
  const content = stateOf(excel);
  return async (fault: Error | undefined): Promise<Came> => {
    expect(stateOf(excel)).toBe(content);
    if (fault !== undefined) expectSentence(fault);
    const now = result();
    if (now?.missing.length === 0) {
      expect(looksOf(excel)).toBe(whole());
      return 'done';
    }
    // What is not there is said to be missing, by the names that it had before.
    const said = (now ?? before).missing.map((text) => text.replace(/ \(.*$/s, ''));
    const known = before.missing.map((text) => text.replace(/ \(.*$/s, ''));
    expect(known).toEqual(expect.arrayContaining(said));
    expect(said.length).toBeGreaterThan(0);
    expect(looksOf(excel)).not.toBe(whole());
    // Nothing stands in the way of the next try, and nothing is there twice after it.
    const again = await (now ?? before).repair();
    expect(again.missing).toEqual([]);
    expect(looksOf(excel)).toBe(whole());
    return 'missing named';
  };
}

/** The actions, on a station's sheets; `whole` are the looks of an undisturbed insertion of the same. */
export function writingActions(
  plans: readonly SheetPlan[],
  whole: () => string,
): readonly WritingAction[] {
  const [first] = plans;
  const sheet = first!.name;
  const repair = (what: string, lacking: RegExp): WritingAction => ({
    what,
    async prepare(excel, host) {
      const inserted = await insertLacking(excel, host, plans, lacking);
      expect(inserted.missing.length).toBeGreaterThan(0);
      let result: Inserted | undefined;
      return {
        act: async () => {
          result = await inserted.repair();
        },
        judge: judgeRepair(excel, whole, () => result, inserted),
      };
    },
  });
  return [
    repair('“Repair the sheet”: highlights', /conditionalFormats/),
    repair('“Repair the sheet”: print set-up', /pageLayout/),
    repair('“Repair the sheet”: rules of entries and widths', /dataValidation|columnWidth/),
    {
      what: 'taking a whole insertion back',
      async prepare(excel, host) {
        const without = stateOf(excel);
        const inserted = await host.insert(plans);
        return { act: () => inserted.remove(), judge: judgeRemoval(excel, without, plans) };
      },
    },
    {
      what: '“Remove what is left of it”',
      async prepare(excel, host) {
        const without = stateOf(excel);
        // A sheet that cannot be deleted is left, and with it the names that point at it.
        excel.refuse = ({ path }) =>
          path.endsWith('copyFrom') || path === `${sheet}!delete` ? 'AccessDenied' : undefined;
        const fault = await host.insert(plans).then(
          () => undefined,
          (cause: unknown) => cause as InsertionFault,
        );
        excel.refuse = () => undefined;
        expect(excel.sheetNames).toContain(sheet);
        return { act: () => fault!.removeRest!(), judge: judgeRemoval(excel, without, plans) };
      },
    },
    {
      what: 'calculating',
      prepare: (excel, host) =>
        Promise.resolve(
          single(
            excel,
            () => host.calculate(),
            () => excel.application.calculated === 1,
          ),
        ),
    },
    {
      what: 'selecting a run',
      async prepare(excel, host) {
        await host.insert(plans);
        return single(
          excel,
          () => host.select(sheet, area(9, 0)),
          () => excel.active.name === sheet,
        );
      },
    },
    {
      what: 'writing a cell of the check',
      async prepare(excel, host) {
        await host.insert(plans);
        const at = excel.sheetNamed(sheet)!;
        return single(
          excel,
          () => host.probe.write(sheet, area(2, 60), 7),
          () => at.at(2, 60)?.value === 7,
        );
      },
    },
    {
      what: 'adding a row to the table of the check',
      async prepare(excel, host) {
        await host.insert(plans);
        const [table] = excel.sheetNamed(sheet)!.tables;
        const { rows } = table!.area;
        return single(
          excel,
          () => host.probe.addTableRow!(sheet, table!.name),
          () => table!.area.rows === rows + 1,
        );
      },
    },
    ...['a cell of a protected sheet', 'a formula that cannot be read'].map(
      (what): WritingAction => ({
        what: `provoking the refusal of ${what}`,
        async prepare(excel, host) {
          await host.insert(plans);
          const before = stateOf(excel);
          const { provoke } = host.probe.provocations.find((one) => one.what === what)!;
          return {
            act: () => provoke({ ownSheet: sheet }),
            judge(fault) {
              if (fault !== undefined) throw fault;
              expect(stateOf(excel)).toBe(before);
              return 'done';
            },
          };
        },
      }),
    ),
  ];
}
