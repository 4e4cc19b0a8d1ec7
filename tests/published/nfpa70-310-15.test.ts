/**
 * NFPA 70 (National Electrical Code), 310.15, corrections of ampacity.
 *
 * Ambient, table 310.15(B)(1)(1) of the 2020 edition (reference 30 degC): from memory, its 75 degC column from 31 to
 * 60 degC read. Ambient, the table with reference 40 degC (310.15(B)(2)(b) of the 2011 to 2017 editions): read in full.
 * Each factor stands for a band of 5 degC and is right at its hot end. Bundling, 310.15(C)(1): read, 2014 edition.
 */
import { describe, expect, test } from 'vitest';
import { ambientShare } from '../../src/core/ampacity';
import { CellError } from '../../src/functions/cell';
import { call, callNumber } from '../functions/call';

/** 0.005: two printed decimals. */
const HALF_A_PRINTED_UNIT = 0.005;

const COLUMNS_C = [60, 75, 90] as const;

type Factor = number | undefined;
/** Hot end of the band; factors for 60, 75 and 90 degC insulation. */
type Band = readonly [number, Factor, Factor, Factor];

const REFERENCE_30_C: readonly Band[] = [
  [10, 1.29, 1.2, 1.15],
  [15, 1.22, 1.15, 1.12],
  [20, 1.15, 1.11, 1.08],
  [25, 1.08, 1.05, 1.04],
  [30, 1.0, 1.0, 1.0],
  [35, 0.91, 0.94, 0.96],
  [40, 0.82, 0.88, 0.91],
  [45, 0.71, 0.82, 0.87],
  [50, 0.58, 0.75, 0.82],
  [55, 0.41, 0.67, 0.76],
  [60, undefined, 0.58, 0.71],
  [65, undefined, 0.47, 0.65],
  [70, undefined, 0.33, 0.58],
  [75, undefined, undefined, 0.5],
  [80, undefined, undefined, 0.41],
  [85, undefined, undefined, 0.29],
];

const REFERENCE_40_C: readonly Band[] = [
  [10, 1.58, 1.36, 1.26],
  [15, 1.5, 1.31, 1.22],
  [20, 1.41, 1.25, 1.18],
  [25, 1.32, 1.2, 1.14],
  [30, 1.22, 1.13, 1.1],
  [35, 1.12, 1.07, 1.05],
  [40, 1.0, 1.0, 1.0],
  [45, 0.87, 0.93, 0.95],
  [50, 0.71, 0.85, 0.89],
  [55, 0.5, 0.76, 0.84],
  [60, undefined, 0.65, 0.77],
  [65, undefined, 0.53, 0.71],
  [70, undefined, 0.38, 0.63],
  [75, undefined, undefined, 0.55],
  [80, undefined, undefined, 0.45],
];

function cellsOf(bands: readonly Band[]) {
  return bands.flatMap(([ambientC, ...factors]) =>
    COLUMNS_C.map((columnC, index) => [ambientC, columnC, factors[index]] as const),
  );
}

describe('ambient, reference 30 degC', () => {
  const cells = cellsOf(REFERENCE_30_C);
  const printed = cells.filter(([, , factor]) => factor !== undefined);
  const dashes = cells.filter(([, , factor]) => factor === undefined);

  test.each(printed)('%i degC, insulation of %i degC: %d', (ambientC, columnC, factor) => {
    const amps = (c: number) => callNumber('AMPACITY', '4/0 AWG', columnC, c);
    expect(Math.abs(amps(ambientC) / amps(30) - factor!)).toBeLessThan(HALF_A_PRINTED_UNIT);
  });

  test.each(dashes)(
    '%i degC, insulation of %i degC: a dash, nothing to carry',
    (ambientC, columnC) => {
      const answer = call('AMPACITY', '4/0 AWG', columnC, ambientC);
      expect(answer).toBeInstanceOf(CellError);
      expect(answer).toMatchObject({ code: '#N/A' });
    },
  );
});

/** The coldest row is "10 or less": colder air earns no more. */
describe.each(['cable', 'air'])('colder than the coldest row, installed "%s"', (installed) => {
  test.each(COLUMNS_C.map((columnC, index) => [columnC, [1.29, 1.2, 1.15][index]!] as const))(
    'insulation of %i degC: %d at 10 degC and below',
    (columnC, factor) => {
      const amps = (c: number) => callNumber('AMPACITY', '4/0 AWG', columnC, c, 3, installed);
      expect(Math.abs(amps(10) / amps(30) - factor)).toBeLessThan(HALF_A_PRINTED_UNIT);
      for (const ambientC of [9.9, 0, -40, -100]) expect(amps(ambientC)).toBe(amps(10));
      expect(amps(10.1)).toBeLessThan(amps(10));
    },
  );
});

// No function of ours starts from a table at 40 degC; the equation is held against it, since a table read in full
// judges the equation better than one from memory.
describe('ambient, reference 40 degC, the equation alone', () => {
  const printed = cellsOf(REFERENCE_40_C).filter(([, , factor]) => factor !== undefined);

  test.each(printed)('%i degC, insulation of %i degC: %d', (ambientC, columnC, factor) => {
    const ours = ambientShare(columnC, ambientC, 40);
    expect(Math.abs(ours - factor!)).toBeLessThan(HALF_A_PRINTED_UNIT);
  });
});

/** First and last of each band of conductors together, and the share that remains. */
const TABLE_310_15_C_1: readonly (readonly [number, number, number])[] = [
  [1, 3, 1],
  [4, 6, 0.8],
  [7, 9, 0.7],
  [10, 20, 0.5],
  [21, 30, 0.45],
  [31, 40, 0.4],
  [41, 400, 0.35], // 41 and above
];

describe.each(['cable', 'air'])('bundling, installed "%s"', (installed) => {
  test.each(TABLE_310_15_C_1)('%i to %i conductors: %d', (first, last, share) => {
    const amps = (conductors: number) =>
      callNumber('AMPACITY', '4 AWG', 75, 30, conductors, installed);
    // Exact but for the last binary digit of one multiplication.
    expect(amps(first)).toBeCloseTo(amps(1) * share, 10);
    expect(amps(last)).toBeCloseTo(amps(1) * share, 10);
  });
});
