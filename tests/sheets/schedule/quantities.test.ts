/** Loads and lengths as people write them, read by the sheet's own formulas. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { METRES_PER, type LengthUnit } from '../../../src/core/length';
import { isRefusal } from '../../../src/core/outcome';
import { inBaseUnit, readMeasures } from '../../../src/core/quantity';
import { plainDigits } from '../../../src/sheets/plan/plain-digits';
import { stationValues, type RunValues } from '../../../src/sheets/station-values';
import { protectionStations } from '../protection-stations';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { WORD } from '../../../src/sheets/station/verdicts';

/** One run with these cells, in a house of feet unless told otherwise. */
function runOf(typed: Partial<ScheduleRun>, unit: LengthUnit = 'ft'): RunValues {
  const run = { run: 'Lamp', peak: 5, length: 10, ...typed };
  return stationValues({ title: 'One', rules: { unit }, runs: [run] }).runs[0]!;
}

/** One in 10^12: sums of feet and inches are rounded once or twice. */
const CLOSE = 12;

describe('a peak load', () => {
  test.each([
    ['22', 22, 'A'],
    ['22 A', 22, 'A'],
    ['22a', 22, 'A'],
    ['5 A', 5, 'A'],
    ['12 A', 12, 'A'],
    ['12 amps', 12, 'A'],
    ['60 W', 60, 'W'],
    ['60watts', 60, 'W'],
    ['800 mA', 0.8, 'A'],
    ['1.2 kW', 1200, 'W'],
    ['2,5', 2.5, 'A'],
    ['2,5 A', 2.5, 'A'],
    ['0.125', 0.125, 'A'],
    ['0,125 A', 0.125, 'A'],
    ['1 250 W', 1250, 'W'],
    ['.5 A', 0.5, 'A'],
  ])('%s is %d %s', (peak, amount, kind) => {
    const run = runOf({ peak });
    expect(run.draw).toBeCloseTo(amount, CLOSE);
    expect(run.kind).toBe(kind);
  });

  test.each([
    '1,250',
    '1.250 W',
    '1,250.5',
    '1.250,5',
    '5 V',
    '5 ft',
    'five',
    '-5',
    '5-6',
    '5 A 3',
    'A',
    '.',
    '5e3',
    '5:00',
    '5 %',
    '12V 5A',
  ])('%s is refused with what to write', (peak) => {
    const { verdict, mend } = runOf({ peak });
    expect(verdict).toBe(WORD.checkEntries);
    expect(mend).toMatch(/Peak load \(as 22 A, 60 W or 800 mA; no mark for thousands\)/);
  });

  test('that became a time of day is refused, and a fraction of an amp is not', () => {
    for (const hour of [1, 2, 4, 5, 7, 8, 10, 11, 13, 22]) {
      expect(runOf({ peak: hour / 24 }).verdict, `${hour} o'clock`).toBe(WORD.checkEntries);
    }
    for (const amps of [0.2, 0.21, 0.35, 0.5, 0.75, 0.9])
      expect(runOf({ peak: amps }).draw).toBe(amps);
  });
});

describe('a length', () => {
  test.each([
    ['10', 10],
    ['10 ft', 10],
    ['10 feet', 10],
    ["10'", 10],
    ['8\' 6"', 8.5],
    ['8′ 6″', 8.5],
    ['8 ft 6 in', 8.5],
    ["8'6", 8.5],
    ["8' 6''", 8.5],
    ['18 in', 1.5],
    ['18"', 1.5],
    ['3.048 0m', 10],
    ['304.8 cm', 10],
    ['304,8 cm', 10],
    ['3048 mm', 10],
    ['2 yards', 6],
  ])('%s is %d ft', (length, feet) => {
    expect(runOf({ length }).oneWay).toBeCloseTo(feet, CLOSE);
  });

  test.each([
    '1,250',
    '1.250 m',
    '10 miles',
    '10 A',
    'far',
    "8' 6' 2",
    '8\'-6"',
    '10 x 2',
    '-3 ft',
    '1/2',
  ])('%s is refused with what to write', (length) => {
    const { verdict, mend } = runOf({ length });
    expect(verdict).toBe(WORD.checkEntries);
    expect(mend).toMatch(/One-way length \(as 10 ft, 2\.5 m or 8' 6"; no mark for thousands\)/);
  });

  test('of one sheet mix in feet and metres, and a bare number is of the house', () => {
    for (const unit of Object.keys(METRES_PER) as LengthUnit[]) {
      expect(runOf({ length: '7' }, unit).oneWay).toBe(7);
      expect(runOf({ length: 7 }, unit).oneWay).toBe(7);
      expect(runOf({ length: '7 m' }, unit).oneWay).toBeCloseTo(7 / METRES_PER[unit], 9);
      expect(runOf({ length: `7 ${unit}` }, unit).oneWay).toBe(7);
    }
  });
});

test('any amount written out is read back as it was', () => {
  const amount = fc.oneof(
    fc.double({ min: 1e-6, max: 1e6, noNaN: true }),
    fc.integer({ min: 1, max: 100_000 }).map((thousandths) => thousandths / 1000),
  );
  fc.assert(
    fc.property(fc.array(amount, { minLength: 1, maxLength: 20 }), (amounts) => {
      const { runs } = stationValues({
        title: 'Many',
        runs: amounts.map((number, index) => ({
          run: `Run ${index}`,
          peak: `${plainDigits(number)} A`,
          length: `${plainDigits(number)} ft`,
        })),
      });
      for (const [index, number] of amounts.entries()) {
        const { draw, oneWay } = runs[index]!;
        // The digits of a double, seventeen at most, over a power of ten.
        expect(draw instanceof CellError ? draw : Number(draw) / number).toBeCloseTo(1, CLOSE);
        expect(Number(oneWay) / number).toBeCloseTo(1, CLOSE);
      }
    }),
    { numRuns: 30 },
  );
});

describe('a length with its unit', () => {
  const { demo, thin1, thin3 } = protectionStations();
  test.each([
    ['the demonstration', demo!],
    ['a thin station', thin1!],
    ['another', thin3!],
  ])('comes to the same figures, faults and fixes as a bare one: %s', (_, station) => {
    const typed = station.runs.map((run) =>
      typeof run.length === 'number'
        ? { ...run, length: `${run.length} ${String(station.rules?.unit)}` }
        : run,
    );
    const bare = stationValues(station);
    const united = stationValues({ ...station, runs: typed });
    expect(united.protection.rows).toEqual(bare.protection.rows);
    expect(united.runs.map(({ mend }) => mend)).toEqual(bare.runs.map(({ mend }) => mend));
    expect(bare.protection.rows.some(({ guarded }) => guarded !== '')).toBe(true);
  });
});

describe('a bare figure in a cell of per cent', () => {
  test.each([
    ['target', 3, /Drop target \(as 3%, which is 0\.03\)/],
    ['target', 0.5, /Drop target \(as 3%/],
    ['target', '3', /Drop target \(as 3%/],
    ['atOnce', 40, /At once \(as 50%, which is 0\.5\)/],
    ['efficiency', 85, /Efficiency \(as 85%, which is 0\.85\)/],
  ] as const)(
    '%s %j is refused with how to write it, never taken for hundreds',
    (key, figure, how) => {
      const { verdict, mend, size } = runOf({ peak: '60 W', [key]: figure });
      expect(verdict).toBe(WORD.checkEntries);
      expect(mend).toMatch(how);
      expect(size).toBeInstanceOf(CellError);
    },
  );

  test('that the house rules give is refused in every row', () => {
    const run = { run: 'Lamp', peak: 5, length: 10 };
    const { runs } = stationValues({ title: 'One', rules: { target: 3 }, runs: [run] });
    expect(runs[0]?.verdict).toBe(WORD.checkEntries);
    expect(runs[0]?.mend).toMatch(/Drop target \(as 3%/);
  });
});

test('what a function takes, the sheet reads as the same; what it refuses as two numbers, so does the sheet', () => {
  const digits = fc.oneof(
    fc.integer({ min: 0, max: 99_999 }).map((number) => String(number)),
    fc
      .tuple(
        fc.nat(999),
        fc.constantFrom('.', ','),
        fc.oneof(fc.nat(9999), fc.integer({ min: 100, max: 999 })),
      )
      .map(([whole, mark, part]) => `${whole}${mark}${part}`),
    fc.nat(99).map((part) => `.${part}`),
  );
  const gap = fc.constantFrom('', ' ', '\u00a0');
  const joined = (...parts: fc.Arbitrary<string>[]) =>
    fc.tuple(...parts).map((texts) => texts.join(''));
  const one = (spellings: string) => fc.constantFrom(...spellings.split('|'));
  const current = joined(digits, gap, one('A|a|amps|mA|milliamps|adc|W|kW|watts'));
  const length = fc.oneof(
    joined(digits, gap, one('ft|foot|feet|\'|′|’|in|inches|"|″|”|m|metres|cm|mm|yd|yards')),
    joined(digits, gap, one("ft|'|′|’|feet"), gap, digits, gap, one('in|"|″|”|inch|')),
  );
  const typed = fc.array(fc.tuple(current, length), { minLength: 20, maxLength: 20 });
  let [read, refused] = [0, 0];
  fc.assert(
    fc.property(typed, (texts) => {
      const { runs } = stationValues({
        title: 'Many',
        rules: { unit: 'm' },
        runs: texts.map(([peak, long], at) => ({ run: `Run ${at}`, peak, length: long })),
      });
      for (const [at, [peak, long]] of texts.entries()) {
        for (const [text, cell] of [
          [peak, runs[at]!.draw],
          [long, runs[at]!.oneWay],
        ] as const) {
          const measures = readMeasures(text);
          if (measures === undefined || isRefusal(measures)) {
            refused += 1;
            // Feet and hundreds of inches without their mark are the one thing that only the sheet takes.
            if (!/['’′]\s*\d{3}$/.test(text)) expect(typeof cell, text).toBe('string');
          } else {
            read += 1;
            for (const measure of measures) {
              expect(Number(cell), text).toBeCloseTo(inBaseUnit(measure), 9);
            }
          }
        }
      }
    }),
    { numRuns: 30, seed: 41 },
  );
  expect(read).toBeGreaterThan(500);
  expect(refused).toBeGreaterThan(50);
});
