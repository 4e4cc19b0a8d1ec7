/**
 * Every writing action of the pane besides insertion, which has a test of its own, failed at every step: once, for a while,
 * for good, and with the answer of a request lost. The workbook is as before, or what is left is named truly, and a further
 * try makes it whole. The table that it prints tells how many steps and what came of them.
 */
import { describe, expect, it } from 'vitest';
import { newSchedule, scheduleSheets } from '../../../src/sheets/new-schedule';
import type { RecordingExcel } from './recording-excel';
import { patientHost, workbook } from './stand-in';
import { looksOf, writingActions, type Came, type WritingAction } from './writing-actions';

const SLOW_MS = 600_000;
/** `npm run faults` takes the demonstration and every step of it; the test command a small schedule, and of long actions some. */
const EVERY_STEP = process.env['LOOM_EVERY_STEP'] === '1';
/** So many steps of an action are tried in the test command. */
const MOST_TRIED = 24;

const host = patientHost();
const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const PLANS = EVERY_STEP
  ? newSchedule('demo', 'table', FREE)
  : scheduleSheets({ title: 'Small', runs: [{ run: 'Lamp', peak: 2, length: 6 }] }, 'table', FREE);

function peoplesWorkbook(): RecordingExcel {
  const excel = workbook({ Notes: { rowIndex: 0, columnIndex: 0, values: [['Loom', 1]] } });
  excel.define('LoomRules9_volts', excel.active, { row: 0, column: 1, rows: 1, columns: 1 });
  excel.weighs = false;
  return excel;
}

async function undisturbedLooks(): Promise<string> {
  const excel = peoplesWorkbook();
  expect((await host.insert(PLANS)).missing).toEqual([]);
  return looksOf(excel);
}

/** Does an action once; `disturb` is told the first step and the first request of it. */
async function tried(
  action: WritingAction,
  disturb: (excel: RecordingExcel, step: number, sync: number) => void,
): Promise<{ readonly came: Came; readonly steps: number; readonly syncs: number }> {
  const excel = peoplesWorkbook();
  const { act, judge } = await action.prepare(excel, host);
  const [step, sync] = [excel.steps, excel.syncs];
  disturb(excel, step, sync);
  const fault = await act().then(
    () => undefined,
    (cause: unknown) => (cause instanceof Error ? cause : new Error(String(cause))),
  );
  const [steps, syncs] = [excel.steps - step, excel.syncs - sync];
  excel.refuse = () => undefined;
  excel.loseAnswer = () => undefined;
  return { came: await judge(fault), steps, syncs };
}

/** First and last steps, and some between. */
function places(steps: number): readonly number[] {
  const all = Array.from({ length: steps }, (_, place) => place);
  if (EVERY_STEP || steps <= MOST_TRIED) return all;
  const stride = Math.ceil(steps / (MOST_TRIED / 2));
  const ends = MOST_TRIED / 4;
  return all.filter((place) => place < ends || place >= steps - ends || place % stride === 0);
}

const WAYS = [
  ['once', 1],
  ['three times', 3],
  ['ten times', 10],
  ['for good', Number.POSITIVE_INFINITY],
] as const;

const CODES = ['GeneralException', 'RequestAborted', 'AccessDenied'] as const;

/** Found within the first test: the stand-in belongs to one. */
let whole = '';
const actions = writingActions(PLANS, () => whole);

describe.each(actions.map((action) => [action.what, action] as const))('%s', (what, action) => {
  it(
    'is done, or said truly not to be',
    async () => {
      whole ||= await undisturbedLooks();
      const { came, steps, syncs } = await tried(action, () => undefined);
      expect(came).toBe('done');
      const counted: Record<string, Partial<Record<Came, number>>> = {};
      const count = (way: string, word: Came) => {
        const of = (counted[way] ??= {});
        of[word] = (of[word] ?? 0) + 1;
      };
      for (const place of places(steps)) {
        for (const [way, length] of WAYS) {
          const code = CODES[place % CODES.length]!;
          const disturbed = await tried(action, (excel, first) => {
            excel.refuse = (_, index) =>
              index >= first + place && index < first + place + length ? code : undefined;
          });
          count(way, disturbed.came);
        }
      }
      for (let sync = 0; sync < syncs; sync += 1) {
        const disturbed = await tried(action, (excel, _, first) => {
          excel.loseAnswer = (number) => (number === first + sync ? 'RequestAborted' : undefined);
        });
        count('answer lost', disturbed.came);
      }
      console.log(`${what}: ${steps} steps, ${syncs} requests`, JSON.stringify(counted));
    },
    SLOW_MS,
  );
});
