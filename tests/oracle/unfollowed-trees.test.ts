/** Trees that cannot be followed are told alike with and without the add-in, and leave the others as they are. */
import { describe, expect, test } from 'vitest';
import { calculate } from '../../src/sheets/calculate/calculate';
import { sharedCopy } from '../../src/sheets/shared-copy';
import {
  readStationValues,
  stationValues,
  type StationValues,
} from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { scheduleNames } from '../../src/sheets/station/naming';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { verdictsIn } from '../../src/sheets/station/verdicts';
import { distance, RELATIVE, told } from '../closeness';
import { oracle } from './oracle';

const station = (runs: readonly ScheduleRun[]): StationContent => ({
  title: 'Trees',
  rules: { unit: 'm' },
  supply: { chemistry: 'lead-acid', ampHours: 400, milliohms: 0.01, batteryShortAmps: 900 },
  runs,
});

const run = (name: string, fedFrom?: string, peak = 2): ScheduleRun => ({
  run: name,
  length: 1,
  peak,
  ...(fedFrom !== undefined && { fedFrom }),
});

/** A run for each name, fed from the one before it. */
const chain = (...names: readonly string[]) => names.map((name, at) => run(name, names[at - 1]));

/** First of each list what cannot be followed. */
const TREES: Readonly<Record<string, readonly ScheduleRun[]>> = {
  'six in a row, one beside them': [
    ...chain('Mast', 'Shelf', 'Rack', 'Bus', 'Radio', 'Lamp'),
    run('Gauge', 'Shelf'),
  ],
  'six in a row from another source': [
    { ...run('Van'), volts: 24 },
    ...chain('Van', 'Shelf', 'Rack', 'Bus', 'Radio', 'Lamp').slice(1),
  ],
  'a run that feeds itself and another': [run('Mast', 'Mast'), run('Radio', 'Mast')],
  'two that feed each other and one below': [
    run('Mast', 'Shelf'),
    run('Shelf', 'Mast'),
    run('Radio', 'Shelf'),
  ],
  'four in a loop': [
    run('Mast', 'Bus'),
    run('Shelf', 'Mast'),
    run('Rack', 'Shelf'),
    run('Bus', 'Rack'),
  ],
};

const WELL = [run('Trunk'), run('Siren', 'Trunk', 5), run('Beacon', undefined, 3)];

function withoutAddIn(content: StationContent): StationValues {
  const { plans } = sharedCopy(content, { rows: content.runs.length });
  return readStationValues(calculate(plans), content, scheduleNames());
}

const FORMS = { 'with the add-in': stationValues, 'without it': withoutAddIn };

describe.each(Object.entries(TREES))('%s', (_, unfollowed) => {
  test.each(Object.entries(FORMS))('are told %s', (__, valuesOf) => {
    const content = station([...unfollowed, ...WELL]);
    const ours = oracle(content, []).runs;
    const alone = valuesOf(station(WELL)).runs;
    for (const [row, shown] of valuesOf(content).runs.entries()) {
      const where = `row ${row + 1}: ${told(shown.verdict)}`;
      expect([...verdictsIn(String(shown.verdict))].sort(), where).toEqual(
        [...ours[row]!.verdict].sort(),
      );
      const well = alone[row - unfollowed.length];
      if (well === undefined) {
        expect(typeof shown.runAmps, where).not.toBe('number');
        continue;
      }
      for (const key of ['runAmps', 'size', 'pathDrop', 'fuse', 'loadVolts', 'lowVolts'] as const) {
        expect(distance(well[key], shown[key]), `${where}, ${key}`).toBeLessThanOrEqual(RELATIVE);
      }
    }
  });
});
