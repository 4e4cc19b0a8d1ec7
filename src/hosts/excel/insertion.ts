/** The course of an insertion: what is added, what is taken back, and what is said of it. */
import type { SheetPlan } from '../../sheets/plan/plan';
import { InsertionFault, type Inserted, type TakenNames, type Watch } from '../sheet-host';
import { Added } from './added';
import { takeBack, type Pause, type Rest } from './clearing';
import { contentSteps, type Content } from './content';
import { codeOf, reasonOf } from './failure';
import { looksOf, type Look } from './looks';
import { fillsNewRows } from './new-row';
import type { Queue } from '../one-at-a-time';
import { intoRequests, type Placed } from './step';

/** What an insertion needs besides Excel. */
export interface Means {
  readonly taken: () => Promise<TakenNames>;
  readonly writing: Queue;
  readonly pause: Pause;
}

/** Thrown where the insertion is to stop. */
class Stopped extends Error {}

/** How Excel says that a name is taken; a name that it takes for no name is among them. */
const NAME_REFUSALS: ReadonlySet<string | undefined> = new Set([
  'ItemAlreadyExists',
  'InvalidArgument',
  'Conflict',
]);

/** A plan that is tried again is taken apart once. */
const contents = new WeakMap<SheetPlan, Content>();

function contentOf(plan: SheetPlan): Content {
  const known = contents.get(plan) ?? contentSteps(plan);
  contents.set(plan, known);
  return known;
}

/** Inserts the plans, while no other action writes. */
export async function insertPlans(
  plans: readonly SheetPlan[],
  watch: Watch,
  means: Means,
): Promise<Inserted> {
  if (plans.length === 0) {
    const nothing: Inserted = {
      missing: [],
      repair: () => Promise.resolve(nothing),
      remove: () => Promise.resolve(),
    };
    return nothing;
  }
  const taken = await means.taken().catch((cause: unknown) => {
    throw new InsertionFault(
      `Nothing was inserted, the workbook is as it was: ${reasonOf(cause)}.`,
      { cause },
    );
  });
  const clash = firstClash(plans, taken);
  if (clash !== undefined) {
    throw new InsertionFault(`Nothing was inserted: the workbook already has a “${clash}”.`, {
      namesTaken: true,
    });
  }
  const content = plans.map(contentOf);
  const placed = (part: 'values' | 'formulas') =>
    content.flatMap((of, sheet) => of[part].map((step): Placed => ({ sheet, step })));
  const requests = intoRequests([...placed('values'), ...placed('formulas')]);
  const looks = looksOf(plans);
  const going = progressOf(watch, requests.length, intoRequests(looks).length);

  const added = new Added(plans);
  let namesTaken = false;
  try {
    going.on();
    await added.addSheets();
    going.on();
    await naming(() => added.rename());
    await naming(() => added.addNames());
    for (const steps of requests) {
      going.on();
      await added.draw(steps);
    }
    going.on();
    const fillsRows = await fillsNewRows(added, plans, means.pause);
    const failed = await makeLooks(added, looks, going.on);
    going.on();
    return { ...inserted(added, failed, means), ...(fillsRows !== undefined && { fillsRows }) };
  } catch (cause) {
    const rest = await takeBack(added, means.pause);
    const removeRest = removalOf(added, means);
    throw cause instanceof Stopped
      ? stopped(rest, removeRest)
      : failed(cause, rest, removeRest, namesTaken);
  }

  async function naming(action: () => Promise<void>): Promise<void> {
    going.on();
    try {
      await action();
    } catch (cause) {
      namesTaken = NAME_REFUSALS.has(codeOf(cause));
      throw cause;
    }
  }
}

/** Tells how far it is, and throws where it is to stop. */
function progressOf({ progress, signal }: Watch, contents: number, looks: number) {
  const all = 5 + contents + looks;
  let done = 0;
  const heed = () => {
    if (signal?.aborted === true) throw new Stopped();
  };
  return {
    on: () => {
      heed();
      progress?.(Math.min(1, done / all));
      done += 1;
      // Whoever hears of the progress may stop it.
      heed();
    },
  };
}

interface FailedLook extends Look {
  readonly reason: string;
}

/**
 * Makes looks, many at a time; where Excel refuses, each topic alone. Resolves to those it refused. Looks that were tried
 * before are made topic by topic.
 */
async function makeLooks(
  added: Added,
  looks: readonly Look[],
  on: () => void,
  isAgain = false,
): Promise<readonly FailedLook[]> {
  const failed: FailedLook[] = [];
  for (const together of isAgain ? [looks] : intoRequests(looks)) {
    if (!isAgain) {
      on();
      try {
        await added.draw(together);
        continue;
      } catch {
        // Something in it; which, is found out below.
      }
    }
    for (const topic of byTopic(together)) {
      on();
      try {
        // Once more where it fails: what is lost may be Excel's answer alone.
        await drawTopic(added, topic).catch(() => drawTopic(added, topic));
      } catch (cause) {
        const reason = `${reasonOf(cause)}${await leftOf(added, topic)}`;
        failed.push(...topic.map((look) => ({ ...look, reason })));
      }
    }
  }
  return failed;
}

/** A chart that was begun would look as if it were whole: it is taken away, or told. */
async function leftOf(added: Added, topic: readonly Look[]): Promise<string> {
  for (const { sheet, chart } of topic) {
    if (chart === undefined) continue;
    try {
      await added.clearChart(sheet, chart);
    } catch {
      return '; one that is not whole may stand there';
    }
  }
  return '';
}

/** Makes a topic anew. What is there of its highlights or its chart goes first, or it would be there twice. */
async function drawTopic(added: Added, topic: readonly Look[]): Promise<void> {
  const formulas = topic.flatMap(({ highlight }) => highlight ?? []);
  const sheet = topic[0]?.sheet;
  if (sheet !== undefined && formulas.length > 0) await added.clearHighlights(sheet, formulas);
  for (const look of topic) {
    if (look.chart !== undefined) await added.clearChart(look.sheet, look.chart);
  }
  await added.draw(topic);
}

function byTopic(looks: readonly Look[]): readonly (readonly Look[])[] {
  const topics = new Map<string, Look[]>();
  for (const look of looks) topics.set(look.what, [...(topics.get(look.what) ?? []), look]);
  return [...topics.values()];
}

function inserted(added: Added, failed: readonly FailedLook[], means: Means): Inserted {
  const missing = [...new Set(failed.map(({ what, reason }) => `${what} (${reason})`))];
  return {
    missing,
    repair: () =>
      means.writing(async () =>
        inserted(added, await makeLooks(added, failed, () => undefined, true), means),
      ),
    remove: removalOf(added, means),
  };
}

function removalOf(added: Added, means: Means): () => Promise<void> {
  return () =>
    means.writing(async () => {
      const rest = await takeBack(added, means.pause);
      if (isNothing(rest)) return;
      throw new InsertionFault(`It could not all be removed. ${restSentence(rest)}`, {
        removeRest: removalOf(added, means),
      });
    });
}

const isNothing = ({ sheets, names }: Rest) => sheets.length + names.length === 0;

function failed(
  cause: unknown,
  rest: Rest,
  removeRest: () => Promise<void>,
  namesTaken: boolean,
): InsertionFault {
  const reason = reasonOf(cause);
  return isNothing(rest)
    ? new InsertionFault(`Nothing was inserted, the workbook is as it was: ${reason}.`, {
        cause,
        namesTaken,
      })
    : new InsertionFault(`The insertion failed: ${reason}. ${restSentence(rest)}`, {
        cause,
        removeRest,
      });
}

function stopped(rest: Rest, removeRest: () => Promise<void>): InsertionFault {
  return isNothing(rest)
    ? new InsertionFault('Stopped: nothing was inserted, the workbook is as it was.')
    : new InsertionFault(`Stopped. ${restSentence(rest)}`, { removeRest });
}

const LIST = new Intl.ListFormat('en-GB');

/** Dozens of names are told by what they begin with. */
function namesInWords(names: readonly string[]): string {
  const stems = new Map<string, string[]>();
  for (const name of names) {
    const stem = /^[^_]*_/.exec(name)?.[0] ?? name;
    stems.set(stem, [...(stems.get(stem) ?? []), name]);
  }
  const told = [...stems].map(([stem, named]) =>
    named.length === 1 ? named[0]! : `${named.length} that begin with ${stem}`,
  );
  return `the defined ${names.length === 1 ? 'name' : 'names'} ${LIST.format(told)}`;
}

/** What is left, named. */
function restSentence({ sheets, names, isCertain }: Rest): string {
  const quoted = LIST.format(sheets.map(({ name }) => `“${name}”`));
  const parts = [
    ...(sheets.length === 0
      ? []
      : [`${sheets.length === 1 ? 'the sheet' : 'the sheets'} ${quoted}`]),
    ...(names.length === 0 ? [] : [namesInWords(names)]),
  ];
  const what = LIST.format(parts);
  const said = isCertain
    ? `Of what it had added, ${what} ${sheets.length + names.length === 1 ? 'is' : 'are'} still there.`
    : `Excel no longer answers, so it is not known whether something was left: it would be ${what}.`;
  return `${said} “Remove what is left of it” tries again.`;
}

/** The first name that the plans want and the workbook has. */
function firstClash(plans: readonly SheetPlan[], taken: TakenNames): string | undefined {
  for (const { name, names, table } of plans) {
    if (taken.sheets.has(name.toLowerCase())) return name;
    const wanted = [...names.map((named) => named.name), ...(table ? [table.name] : [])];
    const clash = wanted.find((candidate) => taken.names.has(candidate.toLowerCase()));
    if (clash !== undefined) return clash;
  }
  return undefined;
}
