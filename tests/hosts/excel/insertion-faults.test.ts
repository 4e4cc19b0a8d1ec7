/**
 * An insertion of the demonstration, failed at every step: the workbook is as before or what is left is named truly.
 * What fails in the looks alone leaves the schedule, and names what is missing.
 */
import { describe, expect, it } from 'vitest';
import { newSchedule } from '../../../src/sheets/new-schedule';
import type { RecordingExcel, Step } from './recording-excel';
import { outcomeOf, patientHost, stateOf, workbook, type Outcome } from './stand-in';

const SLOW_MS = 600_000;

/** `npm run faults` refuses every step; the test command those at both ends and some between, to be done in a minute. */
const EVERY_STEP = process.env['LOOM_EVERY_STEP'] === '1';

/** How far the next step to refuse lies from one: the first and last of an insertion are all tried. */
function stride(place: number, steps: number, between: number): number {
  return EVERY_STEP || place < 40 || place > steps - 40 ? 1 : between;
}
const host = patientHost();
const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const plans = newSchedule('demo', 'table', FREE);

/** A workbook with other people's things in it, under names that are near ours. */
function peoplesWorkbook(): RecordingExcel {
  const excel = workbook({ Notes: { rowIndex: 0, columnIndex: 0, values: [['Loom', 1]] } });
  excel.define('LoomRules9_volts', excel.active, { row: 0, column: 1, rows: 1, columns: 1 });
  excel.weighs = false;
  return excel;
}

async function insertion(refuse?: (step: Step, index: number) => string | undefined) {
  const excel = peoplesWorkbook();
  const before = stateOf(excel);
  if (refuse !== undefined) excel.refuse = refuse;
  const outcome = await outcomeOf(host.insert(plans));
  excel.refuse = () => undefined;
  return { excel, before, outcome };
}

/** Checks that nothing said is false; gives what came of it in a word. */
function judged(excel: RecordingExcel, before: string, { inserted, said, fault }: Outcome): string {
  const there = excel.sheetNames.filter((name) => name !== 'Notes');
  const names = excel.definedNames.filter((name) => name !== 'LoomRules9_volts');
  if (inserted !== undefined) {
    expect(there).toEqual(plans.map(({ name }) => name));
    return inserted.missing.length === 0 ? 'inserted' : 'looks missing';
  }
  if (said.includes('the workbook is as it was')) {
    expect(stateOf(excel)).toBe(before);
    expect(fault.removeRest).toBeUndefined();
    return 'as it was';
  }
  for (const name of there) expect(said).toContain(name);
  for (const name of names) expect(said).toContain(/^[^_]*_/.exec(name)![0]);
  expect(fault.removeRest).toBeDefined();
  const isCertain = said.includes('still there');
  if (isCertain) expect(there.length + names.length).toBeGreaterThan(0);
  else expect(said).toMatch(/not known whether something was left/);
  return isCertain ? 'left, named' : 'not known, named';
}

const counts = (words: readonly string[]) => {
  const counted: Record<string, number> = {};
  for (const word of words) counted[word] = (counted[word] ?? 0) + 1;
  return counted;
};

/** The steps of an undisturbed insertion, and where its parts begin. */
async function undisturbed() {
  const { excel, outcome } = await insertion();
  expect(outcome.inserted?.missing).toEqual([]);
  const paths = excel.done.map(({ path }) => path);
  // The first request of the looks begins with its two calls to hold still and the way to its sheets.
  const dressing = paths.findIndex((path) => path.includes('.format.')) - 4;
  return { steps: paths.length, dressing };
}

describe('failed at one step', () => {
  it(
    'leaves the workbook as it was; in the looks it is made good',
    async () => {
      const { steps, dressing } = await undisturbed();
      expect(steps).toBeGreaterThan(2500);
      const words: string[] = [];
      const places: number[] = [];
      for (let place = 0; place < steps; place += stride(place, steps, 13)) places.push(place);
      for (const place of places) {
        const { excel, before, outcome } = await insertion((_, index) =>
          index === place ? 'GeneralException' : undefined,
        );
        words.push(judged(excel, before, outcome));
      }
      const inContent = places.filter((place) => place < dressing).length;
      expect(counts(words.slice(0, inContent))).toEqual({ 'as it was': inContent });
      // A single refusal of looks is over when its topic is made by itself.
      expect(counts(words.slice(inContent))).toEqual({ inserted: places.length - inContent });
      expect(inContent).toBeGreaterThan(60);
    },
    SLOW_MS,
  );
});

describe('failed from a step on, for a while or for good', () => {
  it.each([
    // Taking back is tried three times over: two refusals more or less are borne.
    [2, ['as it was', 'inserted', 'looks missing']],
    [10, ['as it was', 'inserted', 'looks missing', 'not known, named', 'left, named']],
    [Number.POSITIVE_INFINITY, ['as it was', 'looks missing', 'not known, named']],
  ])(
    'for %d steps says truly what is left',
    async (length, allowed) => {
      const { steps } = await undisturbed();
      const words: string[] = [];
      for (let place = 0; place < steps; place += stride(place, steps, 31)) {
        const { excel, before, outcome } = await insertion((_, index) =>
          index >= place && index < place + length ? 'RequestAborted' : undefined,
        );
        words.push(judged(excel, before, outcome));
      }
      expect(allowed).toEqual(expect.arrayContaining([...new Set(words)]));
      expect(words.length).toBeGreaterThan(140);
    },
    SLOW_MS,
  );
});

/** One step of each request of an insertion, as a class of its own: nothing in a request knows of its other steps. */
async function stepOfEachRequest(): Promise<readonly number[]> {
  const excel = peoplesWorkbook();
  const firsts = new Map<number, number>();
  excel.refuse = (_, index) => {
    if (!firsts.has(excel.syncs)) firsts.set(excel.syncs, index);
    return undefined;
  };
  await host.insert(plans);
  return [...firsts.values()];
}

describe('failed again while it is taken back', () => {
  it(
    'is as it was, or what is left is named and removed by a later try',
    async () => {
      const places = await stepOfEachRequest();
      expect(places.length).toBeGreaterThan(6);
      const words: string[] = [];
      for (const place of places) {
        for (const length of [1, 3, 40]) {
          // The steps of taking back come after the failing one; there are about seventy where names are there.
          for (let after = 1; after < 90; after += EVERY_STEP ? 1 : 8) {
            const isRefused = (index: number) =>
              index === place || (index >= place + after && index < place + after + length);
            const { excel, before, outcome } = await insertion((_, index) =>
              isRefused(index) ? 'Conflict' : undefined,
            );
            words.push(judged(excel, before, outcome));
            if (outcome.fault?.removeRest === undefined) continue;
            await outcome.fault.removeRest();
            expect(stateOf(excel)).toBe(before);
          }
        }
      }
      expect(new Set(words)).toContain('as it was');
    },
    SLOW_MS,
  );

  it('keeps the other removals going where one sheet cannot be deleted, and says which', async () => {
    const isStuck = ({ path }: Step) => path === 'Supply!delete';
    const { excel, before, outcome } = await insertion((step) =>
      step.path.endsWith('copyFrom') || isStuck(step) ? 'AccessDenied' : undefined,
    );
    expect(excel.sheetNames).toEqual(['Notes', 'Supply']);
    expect(outcome.said).toMatch(/the sheet “Supply” is still there\./);
    expect(outcome.said).toMatch(/protected/);
    await outcome.fault!.removeRest!();
    expect(stateOf(excel)).toBe(before);
  });

  it('names defined names that stay', async () => {
    const { excel, before, outcome } = await insertion(({ path }) =>
      path.endsWith('copyFrom') || path.startsWith('workbook.names.getItemOrNullObject("LoomFeed_')
        ? 'Conflict'
        : undefined,
    );
    expect(excel.sheetNames).toEqual(['Notes']);
    expect(outcome.said).toMatch(/the defined names \d that begin with LoomFeed_ are still there/);
    await outcome.fault!.removeRest!();
    expect(stateOf(excel)).toBe(before);
  });
});

describe('an answer that is lost', () => {
  it('is no reason to leave anything, whichever request it belongs to', async () => {
    const { excel: whole } = await insertion();
    const words: string[] = [];
    for (let sync = 0; sync < whole.syncs; sync += 1) {
      const excel = peoplesWorkbook();
      const before = stateOf(excel);
      excel.loseAnswer = (number) => (number === sync ? 'RequestAborted' : undefined);
      words.push(judged(excel, before, await outcomeOf(host.insert(plans))));
    }
    // Its names, its sheets, their own names, what they are for, the content; then the looks, which are made again.
    expect(counts(words)).toEqual({ 'as it was': 5, inserted: whole.syncs - 5 });
  });
});

describe('looks that Excel refuses for good', () => {
  it('are named, and made by “Repair the sheet” once they can be', async () => {
    const { excel, outcome } = await insertion(({ path }) =>
      /^Supply!pageLayout|^Protection!.*conditionalFormats/.test(path)
        ? 'NotImplemented'
        : undefined,
    );
    const inserted = outcome.inserted!;
    expect(inserted.missing).toEqual([
      expect.stringMatching(/^the print set-up of “Supply” \(this version of Excel cannot/),
      expect.stringMatching(/^the highlights of “Protection” \(/),
    ]);
    excel.refuse = ({ path }) => (path.startsWith('Protection!') ? 'AccessDenied' : undefined);
    const again = await inserted.repair();
    expect(again.missing).toEqual([expect.stringMatching(/highlights of “Protection”.*protected/)]);
    excel.refuse = () => undefined;
    expect((await again.repair()).missing).toEqual([]);
    expect([...excel.sheetNamed('Supply')!.looks.keys()]).toContain('pageLayout.orientation');
  });

  it('say so where their sheet was deleted meanwhile', async () => {
    const { excel, outcome } = await insertion(({ path }) =>
      path.includes('pageLayout') ? 'NotImplemented' : undefined,
    );
    const supply = excel.sheetNamed('Supply')!;
    supply.isGone = true;
    excel.sheets.splice(excel.sheets.indexOf(supply), 1);
    expect((await outcome.inserted!.repair()).missing).toEqual([
      expect.stringMatching(
        /print set-up of “Supply” \(the sheet or the cells are no longer there/,
      ),
    ]);
  });
});
