/** The sheets beyond the sizing, added to a schedule that stands already: the same as if they had come with it. */
import { describe, expect, it } from 'vitest';
import { newSchedule } from '../../src/sheets/new-schedule';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { EXTRA_KEYS, EXTRAS } from '../../src/sheets/station/extras';
import {
  addExtras,
  ALL_THERE,
  NO_SCHEDULE_IN_VIEW,
  NONE_TICKED,
  NOT_THIS_ONE,
} from '../../src/taskpane/add-extras';
import { openGrids } from '../lists/open-grids';
import { StandInHost } from './stand-in-host';

const NOTHING = { sheets: new Set<string>(), names: new Set<string>() };
const SHEETS = EXTRA_KEYS.map((key) => EXTRAS[key].sheetName);

/** A host with a workbook open, one of its sheets in view. */
class OpenHost extends StandInHost {
  constructor(
    private readonly sheets: readonly SheetPlan[],
    private readonly inView: string,
  ) {
    super();
  }
  override allGrids = () => Promise.resolve(openGrids(this.sheets));
  override activeGrid = () =>
    Promise.resolve(openGrids(this.sheets).find(({ sheetName }) => sheetName === this.inView)!);
  override taken = () =>
    Promise.resolve({
      sheets: new Set(this.sheets.map(({ name }) => name.toLowerCase())),
      names: new Set(
        this.sheets.flatMap(({ names }) => names.map(({ name }) => name.toLowerCase())),
      ),
    });
}

const formulasOf = (plans: readonly SheetPlan[]) =>
  plans
    .filter(({ name }) => SHEETS.includes(name))
    .map(({ name, blocks }) => [name, blocks.map(({ area, fill }) => ({ area, fill }))]);

describe('sheets that are added later', () => {
  const schedule = newSchedule('demo', 'cells', NOTHING);

  it('follow the schedule as those that are inserted with it', async () => {
    const host = new OpenHost(schedule, 'Run schedule');
    const { sentence } = await addExtras(host, EXTRA_KEYS);
    expect(sentence).toBe(
      'Added “Wire list”, “Parts”, “Labels”, “As built”, “Fuse map”, “Drawing” and “Drop chart” to “Run schedule”.',
    );
    const together = newSchedule('demo', 'cells', NOTHING, EXTRA_KEYS);
    expect(formulasOf(host.plans)).toEqual(formulasOf(together));
  });

  it('point at the schedule by the name that a person gave it', async () => {
    const renamed = schedule.map((plan) =>
      plan.name === 'Run schedule' ? { ...plan, name: 'Hut' } : plan,
    );
    const host = new OpenHost(renamed, 'Hut');
    await addExtras(host, ['asBuilt']);
    const said = JSON.stringify(host.plans);
    expect(said).toContain('Hut!$');
    expect(said).not.toContain('Run schedule');
  });

  it('are those alone that it has not', async () => {
    const some = newSchedule('demo', 'cells', NOTHING, ['labels']);
    const host = new OpenHost(some, 'Run schedule');
    await addExtras(host, ['labels', 'wireList']);
    expect(host.plans.map(({ name }) => name)).toEqual(['Wire list']);
    await expect(addExtras(new OpenHost(some, 'Run schedule'), ['labels'])).rejects.toThrow(
      ALL_THERE,
    );
  });

  it('are none where nothing is ticked, or no schedule is in view', async () => {
    await expect(addExtras(new OpenHost(schedule, 'Run schedule'), [])).rejects.toThrow(
      NONE_TICKED,
    );
    await expect(addExtras(new OpenHost(schedule, 'Supply'), ['labels'])).rejects.toThrow(
      NO_SCHEDULE_IN_VIEW,
    );
  });

  it('are none where the schedule cannot be told from another', async () => {
    const [first, second] = [schedule, newSchedule('demo', 'cells', takenBy(schedule))];
    const renamed = second.map((plan) =>
      plan.name === 'Run schedule 2' ? { ...plan, name: 'Hut' } : plan,
    );
    const host = new OpenHost([...first, ...renamed], 'Hut');
    await expect(addExtras(host, ['labels'])).rejects.toThrow(NOT_THIS_ONE);
    expect(host.plans).toEqual([]);
  });
});

function takenBy(plans: readonly SheetPlan[]) {
  return {
    sheets: new Set(plans.map(({ name }) => name.toLowerCase())),
    names: new Set(plans.flatMap(({ names }) => names.map(({ name }) => name.toLowerCase()))),
  };
}
