/** Inserting a new schedule, and the sentence that says what came of it. */
import type { SheetHost } from '../hosts/sheet-host';
import { newSchedule, type ScheduleFilling } from '../sheets/new-schedule';

const OUTCOMES: Readonly<Record<ScheduleFilling, string>> = {
  demo: 'with the demonstration: a volunteer river flood watch, some of its runs deliberately bad',
  empty: 'empty: fill in the green cells, and each row computes',
};

const LIST = new Intl.ListFormat('en-GB');

/** Adds a schedule under names that are free; resolves to the sentence, rejects with the host's. */
export async function insertSchedule(host: SheetHost, filling: ScheduleFilling): Promise<string> {
  const plans = newSchedule(filling, host.references, await host.taken());
  await host.insert(plans);
  const named = LIST.format(plans.map(({ name }) => `“${name}”`));
  return `Inserted ${named}, ${OUTCOMES[filling]}.`;
}
