/**
 * Every writing action of the pane, failed: at every step once, for a while and for good; again while it clears up; with
 * the answers of requests lost. The workbook is as before or what is left is named truly, a further try makes it good, and
 * no sentence is false. `npm run faults` does all of it on the demonstration, every step, and prints the table; the test
 * command does every step on two small sheets that use every part a plan can have, and of the demonstration an insertion
 * at one step of each kind in each request.
 */
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { readRuns } from '../../../src/lists/read-runs';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { EVERY_STEP } from './every-step';
import { FaultTable } from './fault-table';
import type { RecordingExcel, Step } from './recording-excel';
import { RememberedContent, RememberedLooks } from './remembered';
import { samplePlan } from './sample-plan';
import { patientHost, workbook } from './stand-in';
import {
  insertingAction,
  takingInAction,
  writingActions,
  type Came,
  type Whole,
  type WritingAction,
} from './writing-actions';

const SLOW_MS = 7_200_000;
const host = patientHost();
const table = new FaultTable();

/** A workbook with other people's things in it, under names that are near ours. */
function peoplesWorkbook(): RecordingExcel {
  const excel = workbook({ Notes: { rowIndex: 0, columnIndex: 0, values: [['Loom', 1]] } });
  excel.define('LoomRules9_volts', excel.active, { row: 0, column: 1, rows: 1, columns: 1 });
  excel.weighs = false;
  return excel;
}

type Refuse = RecordingExcel['refuse'];
/** Places count from the first step, or request, of the action. */
interface Disturbance {
  readonly refused?: (place: number) => boolean;
  readonly lost?: (request: number) => boolean;
  /** Told of every step of the action. */
  readonly hears?: (step: Step, request: number) => void;
}

const CODES = ['GeneralException', 'RequestAborted', 'AccessDenied'] as const;

/** Does an action once, disturbed. Resolves to what came of it, and how many steps and requests it took. */
async function tried(action: WritingAction, { refused, lost, hears }: Disturbance) {
  const excel = peoplesWorkbook();
  const { act, judge } = await action.prepare(excel, host);
  const [firstStep, firstRequest] = [excel.steps, excel.syncs];
  let firstRefused: number | undefined;
  const refuse: Refuse = (step, index) => {
    const place = index - firstStep;
    hears?.(step, excel.syncs - firstRequest - 1);
    if (refused?.(place) !== true) return undefined;
    firstRefused ??= place;
    return CODES[firstRefused % CODES.length];
  };
  excel.refuse = refuse;
  excel.loseAnswer = (request) =>
    lost?.(request - firstRequest) === true ? 'RequestAborted' : undefined;
  const fault = await act().then(
    () => undefined,
    (cause: unknown) => (cause instanceof Error ? cause : new Error(String(cause))),
  );
  const [steps, requests] = [excel.steps - firstStep, excel.syncs - firstRequest];
  excel.refuse = () => undefined;
  excel.loseAnswer = () => undefined;
  return { came: await judge(fault), steps, requests };
}

/** The undisturbed course of an action: its steps, and places that stand for all. */
async function courseOf(action: WritingAction) {
  const requests: number[] = [];
  const kinds = new Map<string, number>();
  let steps = 0;
  const hears = ({ path, kind }: Step, request: number) => {
    requests[request] ??= steps;
    const member = path.replace(/\([^()]*\)/g, '').replace(/^.*[.!]/, '');
    const key = `${request} ${kind} ${member}`;
    if (!kinds.has(key)) kinds.set(key, steps);
    steps += 1;
  };
  const { came } = await tried(action, { hears });
  expect(came, action.what).toBe('done');
  return { steps, firstOfRequests: requests.filter(() => true), ofEachKind: [...kinds.values()] };
}

const WAYS = [
  ['once', 1],
  ['three times', 3],
  ['ten times', 10],
  ['for good', Number.POSITIVE_INFINITY],
] as const;

/** So many steps further an action that failed fails again, while it clears up. */
const LENGTHS_AGAIN = [1, 3, 40] as const;

/** What an action may come to that bears one fault: it is done all the same, or it is as if it had not begun. */
const BORNE: ReadonlySet<Came> = new Set<Came>(['done', 'as before']);

/** Tries an action in all ways. `isSampled`: at one step of each kind in each request, and fewer of them. */
async function tryAll(action: WritingAction, isSampled: boolean): Promise<void> {
  const { steps, firstOfRequests, ofEachKind } = await courseOf(action);
  const row = table.row(action.what, steps, firstOfRequests.length);
  const attempt = (way: string, disturbance: Disturbance, isOne = false) =>
    row.count(way, async () => {
      const { came } = await tried(action, disturbance);
      if (isOne && action.bearsOne) expect(BORNE, 'of one fault alone').toContain(came);
      return came;
    });
  const all = isSampled ? ofEachKind : Array.from({ length: steps }, (_, place) => place);
  const ways = isSampled && !EVERY_STEP ? [WAYS[0], WAYS[3]] : WAYS;
  for (const place of all) {
    for (const [way, length] of ways) {
      await attempt(way, { refused: (at) => at >= place && at < place + length }, length === 1);
    }
  }
  for (const first of firstOfRequests) {
    // Steps that follow on a failure at this one: looking for what is there, taking it away.
    const { steps: inAll } = await tried(action, { refused: (at) => at === first });
    const after = inAll - first - 1;
    const stride = EVERY_STEP ? 1 : Math.max(1, Math.floor(after / (isSampled ? 6 : 20)));
    for (const length of isSampled ? LENGTHS_AGAIN.slice(1) : LENGTHS_AGAIN) {
      for (let by = 1; by <= after; by += stride) {
        const again = first + by;
        await attempt('again while clearing up', {
          refused: (at) => at === first || (at >= again && at < again + length),
        });
      }
    }
  }
  for (const request of firstOfRequests.keys()) {
    for (const [way, length] of [
      ['an answer lost', 1],
      ['two answers lost', 2],
      ['all answers lost', Number.POSITIVE_INFINITY],
    ] as const) {
      const lost = (at: number) => at >= request && at < request + length;
      await attempt(way, { lost }, length === 1);
    }
  }
  expect(row.falsehoods).toEqual([]);
  expect(row.tries).toBeGreaterThan(2 * all.length);
}

/** What an undisturbed insertion comes to; found before the first try that asks. */
async function wholeOf(action: (whole: () => Whole) => WritingAction): Promise<Whole> {
  const excel = peoplesWorkbook();
  const remembered = () => ({
    content: new RememberedContent(excel),
    looks: new RememberedLooks(excel),
  });
  const { act } = await action(remembered).prepare(excel, host);
  await act();
  return remembered();
}

const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const SMALL = [samplePlan('Runs'), samplePlan('Data')];
const DEMONSTRATION = newSchedule('demo', 'table', FREE);

describe.each(
  EVERY_STEP
    ? ([['the demonstration', DEMONSTRATION]] as const)
    : ([['two small sheets', SMALL]] as const),
)('on %s', (on, plans) => {
  const inserting = (whole: () => Whole) => insertingAction(`inserting ${on}`, plans, whole);
  let whole: Whole;
  const given = () => whole;
  it.each(
    [inserting(given), ...writingActions(plans, given)].map(
      (action) => [action.what, action] as const,
    ),
  )(
    '%s',
    async (_, action) => {
      whole ??= await wholeOf(inserting);
      await tryAll(action, false);
    },
    SLOW_MS,
  );
});

describe('at one step of each kind in each request', () => {
  let action: (whole: () => Whole) => WritingAction;
  beforeAll(async () => {
    const csv = 'Name,Current (A),Length (ft)\nHut lamp,2,20\nVan radio,8,12\n';
    const report = await readRuns(new TextEncoder().encode(csv), 'hut.csv');
    action = EVERY_STEP
      ? (given) => takingInAction(report, given)
      : (given) => insertingAction('inserting the demonstration', DEMONSTRATION, given);
  });
  it(
    EVERY_STEP ? 'taking a list in' : 'inserting the demonstration',
    async () => {
      const whole = await wholeOf(action);
      await tryAll(
        action(() => whole),
        true,
      );
    },
    SLOW_MS,
  );
});

afterAll(() => {
  if (EVERY_STEP) console.log(table.text());
});
