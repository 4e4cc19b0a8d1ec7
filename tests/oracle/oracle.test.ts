import { expect, it } from 'vitest';
import { stationValues } from '../../src/sheets/station-values';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { compare, newTally } from './comparison';
import { oracle } from './oracle';
import { ordinaryStation } from './ordinary-stations';
import { SET_ASIDE, type SetAside } from './set-aside';

const STATIONS = 700;
const FIRST_SEED = 20_261;

/** What can be wrong with a run whose entries are understood; each has to come up, or nothing is held to anything. */
const FOUND: readonly VerdictKey[] = [
  'ok',
  'heat',
  'tooHot',
  'fuse',
  'needsFuse',
  'mainFuse',
  'mainBreaks',
  'mainVolts',
  'mayNotBreak',
  'fuseVolts',
  'fuseTooSlow',
  'faultTooWeak',
  'unfusedTooLong',
  'noAmpacity',
  'mainSmall',
  'noSize',
  'noRoom',
  'tooFewVolts',
  'fewerVolts',
  'drop',
  'batteryVolts',
  'notJudged',
  'tiedToAnother',
  'voltsUnknown',
  'wattsUnknown',
  'coveredByMain',
  'batteryAssumed',
  'voltsDiffer',
  'panelMissing',
  'tooDeep',
  'inLoop',
  'checkEntries',
];

it('agrees with the sheets on ordinary stations', () => {
  const tally = newTally();
  let rows = 0;
  for (let seed = FIRST_SEED; seed < FIRST_SEED + STATIONS; seed += 1) {
    const content = ordinaryStation(seed);
    rows += content.runs.length;
    const sheets = stationValues(content);
    const assumed = sheets.runs.map(({ assumedVolts }) => Number(assumedVolts));
    compare(tally, `seed ${seed}`, oracle(content, assumed), sheets);
  }
  console.log(
    `oracle: ${STATIONS} stations, ${rows} rows, ${tally.cells} cells compared (${tally.withoutAnswer} without an answer), ${tally.differences.length} differ; rows by verdict:`,
    Object.fromEntries(tally.verdicts),
    'set aside:',
    Object.fromEntries(tally.setAside),
  );
  expect(tally.differences).toEqual([]);
  expect(rows).toBeGreaterThan(2000);
  // A fault that is fixed is taken out of the list.
  for (const key of Object.keys(SET_ASIDE) as SetAside[]) {
    expect(tally.setAside.get(key) ?? 0, `${key} no longer occurs`).toBeGreaterThan(0);
  }
  expect(tally.assumed.length).toBeGreaterThan(100);
  // Rarer: a load near the most that its path can deliver, and a craft fuse above the ampacity.
  for (const key of ['cannotBeServed', 'craftFuse'] as const) {
    expect(tally.verdicts.get(key) ?? 0, key).toBeGreaterThan(2);
  }
  for (const key of FOUND) expect(tally.verdicts.get(key) ?? 0, key).toBeGreaterThan(10);
}, 180_000);
