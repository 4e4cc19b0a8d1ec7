/** What a row says of itself when not everything is there. */
import { describe, expect, test } from 'vitest';
import { FORMER_WORDS } from '../../../src/sheets/station/former';
import { FIX_WORDS, LEVELS, levelOf, WORD } from '../../../src/sheets/station/verdicts';
import type { StationContent } from '../../../src/sheets/station/content';
import { stationValues } from '../../../src/sheets/station-values';
import type { SupplyValues } from '../../../src/sheets/station/supply';
import { generatedStations } from '../generated-stations';

const SOUND = { run: 'Lamp', peak: 1, length: 12, ownSize: '12 AWG' } as const;

const verdictOf = (content: Partial<StationContent>) =>
  stationValues({ title: 'One run', runs: [SOUND], supply: { milliohms: 20 }, ...content }).runs[0]!
    .verdict;

test('a sound run is ok', () => {
  expect(verdictOf({})).toBe('ok');
});

test('a battery of which nothing is typed is asked for beside the verdict', () => {
  const [run] = stationValues({ title: 'One run', runs: [SOUND] }).runs;
  expect(run!.verdict).toBe(WORD.batteryAssumed);
  expect(run!.mend).toBe(FIX_WORDS.tellBattery);
});

test('columns of the Supply sheet in which nothing is typed say nothing', () => {
  const sources = [{ name: 'Bench', kind: 'power supply', volts: 13.8, mostAmps: 20 }];
  const said = stationValues({ title: 'One run', runs: [SOUND], sources }).supply.sources;
  expect(said.length).toBeGreaterThan(1);
  expect(said.map(({ says }) => says)).toEqual(said.map(() => ''));
});

/** Common practice: a pack of 100 Ah has some 5 milliohms of lead-acid, 8 of either lithium, and more where it is smaller. */
test.each([
  ['lead-acid', 100, 5],
  ['LiFePO4', 100, 8],
  ['LiFePO4', 20, 40],
  ['Li-ion', 100, 8],
] as const)('%s of %i Ah is taken for %i milliohms', (chemistry, ampHours, milliohms) => {
  const sources = [{ kind: 'battery', chemistry, ampHours }];
  const [source] = stationValues({ title: 'One run', runs: [SOUND], sources }).supply.sources;
  expect(source!.milliohms).toBeCloseTo(milliohms, 9);
});

describe('volts that the source itself does not give', () => {
  const HUNGRY = { ...SOUND, leastVolts: 14 } as const;
  const mendOf = (source: SupplyValues) =>
    stationValues({ title: 'One run', runs: [HUNGRY], sources: [source] }).runs[0]!.mend;

  test('are told of a power supply as of a source, with no charge', () => {
    expect(mendOf({ kind: 'power supply', volts: 13.8, mostAmps: 20 })).toBe(
      'no wire fixes it: the source itself gives 13.8 V',
    );
  });

  test('are told of a battery with the charge at which it gives no more', () => {
    // LiFePO4 at 20 %: 12.95 V, less 1 A x 50 mohm.
    expect(mendOf({ kind: 'battery', chemistry: 'LiFePO4', milliohms: 50 })).toBe(
      'no wire fixes it: the battery itself gives 12.9 V at 20 %',
    );
  });
});

test.each(Object.values(FORMER_WORDS))('a workbook that still says “%s” is understood', (word) => {
  expect(levelOf(word)).toBe('check');
});

describe('ok is earned', () => {
  test.each([
    ['an emptied length unit', { rules: { unit: '' } }, WORD.checkEntries],
    ['a length unit nobody knows', { rules: { unit: 'furlong' } }, WORD.checkEntries],
    ['emptied source volts', { rules: { volts: '' } }, WORD.voltsMissing],
    ['an emptied target', { rules: { target: '' } }, WORD.voltsMissing],
    ['a target of 3', { rules: { target: 3 } }, WORD.checkEntries],
    [
      'a panel of which nothing is known',
      { runs: [{ ...SOUND, fedFrom: 'panel' }] },
      WORD.panelMissing,
    ],
    ['no length', { runs: [{ run: 'Lamp', peak: 1 }] }, WORD.lengthMissing],
    ['no load', { runs: [{ run: 'Lamp', length: 12 }] }, WORD.peakMissing],
    ['a load that is no number', { runs: [{ ...SOUND, peak: 'abc' }] }, WORD.checkEntries],
  ] as const)('not by %s', (_, content, verdict) => {
    expect(verdictOf(content)).toBe(verdict);
  });
});

test('an empty schedule brings no figures of a panel that nobody has', () => {
  const { supply } = stationValues({ title: 'Empty', runs: [] });
  for (const key of ['panelVolts', 'panelDesignAmps', 'panelColdVolts', 'panelDailyAh'] as const) {
    expect(supply.cells[key], key).toBe('');
  }
  expect(supply.cells.dailyBalance).toBe(0);
});

test('a sheet ranks its verdicts as the table does', () => {
  const rows = generatedStations({ stations: 6, rows: 50, watts: true }).flatMap(
    (content) => stationValues(content).runs,
  );
  const levels = rows.filter(({ verdict }) => verdict !== '');
  expect(levels.length).toBeGreaterThan(250);
  for (const { verdict, level } of levels) {
    expect(LEVELS[Number(level) - 1], String(verdict)).toBe(levelOf(String(verdict)));
  }
  expect(new Set(levels.map(({ level }) => level))).toEqual(new Set([1, 2, 3, 5]));
});

test('a load that gets no current for its watts is told where the ohms are', () => {
  const winch = { run: 'Winch', length: 1, peak: 60, ownSize: '1/0 AWG' };
  const load = { peak: '60 W', leastVolts: 7, ownSize: '14 AWG' };
  const content = { rules: { target: 0.45 }, supply: { milliohms: 50 }, title: 'Unserved' };
  const fixOf = (runs: StationContent['runs']) =>
    stationValues({ ...content, runs: [winch, ...runs] }).runs.at(-1)!;
  const alone = fixOf([{ ...load, run: 'Load', length: 90 }]);
  expect([alone.verdict, alone.mend]).toEqual([WORD.cannotBeServed, `${FIX_WORDS.lessOhms}Load`]);
  const trunk = { run: 'Trunk', length: 80, ownSize: '14 AWG' };
  const fed = fixOf([trunk, { ...load, run: 'Load', fedFrom: 'Trunk', length: 10 }]);
  expect(fed.verdict).toContain(WORD.cannotBeServed);
  expect(fed.mend).toContain(`${FIX_WORDS.lessOhms}Trunk`);
});

test('whatever is wrong, something is said under Fix', () => {
  const stations = [
    ...generatedStations({ stations: 10, rows: 30, watts: true }),
    ...generatedStations({ stations: 10, rows: 30, watts: false }),
  ];
  const unsaid = stations
    .flatMap((station) => stationValues(station).runs)
    .filter(({ verdict, mend }) => verdict !== '' && verdict !== WORD.ok && !mend);
  expect(unsaid.map(({ verdict }) => String(verdict))).toEqual([]);
});
