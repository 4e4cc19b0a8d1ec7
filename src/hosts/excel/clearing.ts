/** Taking an insertion back: stubbornly, and never more than it added. */
import type { Added, Traces } from './added';
import { request } from './request';

/** How long to wait before each further try; something that blocks Excel is often over in a moment. */
const PAUSES_MS: readonly number[] = [200, 1000];

/** Waits; tests do without. */
export type Pause = (ms: number) => Promise<void>;

/** Tries an action again after a moment, and again. */
export async function stubbornly<T>(action: () => Promise<T>, pause: Pause): Promise<T> {
  for (const ms of PAUSES_MS) {
    try {
      return await action();
    } catch {
      await pause(ms);
    }
  }
  return action();
}

type Removal = (context: Excel.RequestContext) => {
  delete(): void;
  readonly isNullObject: boolean;
};

async function remove(removals: readonly Removal[]): Promise<void> {
  await request(async (context) => {
    const found = removals.map((removal) => removal(context));
    await context.sync();
    for (const item of found) {
      if (!item.isNullObject) item.delete();
    }
    await context.sync();
  });
}

/** All in one request; where that fails each alone, and each again. */
async function removeEach(removals: readonly Removal[], pause: Pause): Promise<void> {
  if (removals.length === 0) return;
  try {
    await remove(removals);
    return;
  } catch {
    // One that cannot be removed must not keep the others.
  }
  for (const removal of removals) {
    await stubbornly(() => remove([removal]), pause).catch(() => undefined);
  }
}

export interface Rest extends Traces {
  /** Whether Excel still told what is there; if not, the rest is what may be there. */
  readonly isCertain: boolean;
}

/** Removes what an insertion added: sheets first, tables go with them, then names. Resolves to what is left. */
export async function takeBack(added: Added, pause: Pause): Promise<Rest> {
  try {
    const traces = await stubbornly(() => added.find(), pause);
    // Excel would choose a sheet to show in place of one that goes; the person's own is the right one.
    if (traces.isInView) await added.bringBack().catch(() => undefined);
    await removeEach(
      traces.sheets.map(
        ({ id }) =>
          ({ workbook }) =>
            workbook.worksheets.getItemOrNullObject(id),
      ),
      pause,
    );
    await removeEach(
      traces.names.map(
        (name) =>
          ({ workbook }) =>
            workbook.names.getItemOrNullObject(name),
      ),
      pause,
    );
    if (traces.sheets.length + traces.names.length === 0) return { ...traces, isCertain: true };
    return { ...(await stubbornly(() => added.find(), pause)), isCertain: true };
  } catch {
    return { ...added.possible, isInView: false, isCertain: false };
  }
}
