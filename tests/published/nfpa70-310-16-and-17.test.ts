/**
 * NFPA 70 (National Electrical Code), 2011 edition and later, ampacity at 30 degC ambient of insulated conductors.
 *
 * Table 310.16 (310.15(B)(16) in 2011 to 2017), not more than three current-carrying conductors together, copper:
 * read in reproductions of the edition before 2011; the four cells that changed in 2011 (noted below) and all of
 * aluminium from memory. Table 310.17 (310.15(B)(17)), single conductors in free air: from memory; 60 and 75 degC
 * from 6 AWG up are those of 33 CFR 183.425 table 5, which was read.
 */
import { describe, expect, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import { call, callNumber } from '../functions/call';

type Row = readonly [string, number | undefined, number | undefined, number];

const COLUMNS_C = [60, 75, 90] as const;

const TABLE_310_16_COPPER: readonly Row[] = [
  ['18', undefined, undefined, 14],
  ['16', undefined, undefined, 18],
  ['14', 15, 20, 25], // 60 degC: 20 before 2011
  ['12', 20, 25, 30], // 60 degC: 25 before 2011
  ['10', 30, 35, 40],
  ['8', 40, 50, 55],
  ['6', 55, 65, 75],
  ['4', 70, 85, 95],
  ['3', 85, 100, 115], // 90 degC: 110 before 2011
  ['2', 95, 115, 130],
  ['1', 110, 130, 145], // 90 degC: 150 before 2011
  ['1/0', 125, 150, 170],
  ['2/0', 145, 175, 195],
  ['3/0', 165, 200, 225],
  ['4/0', 195, 230, 260],
];

const TABLE_310_16_ALUMINIUM: readonly Row[] = [
  ['12', 15, 20, 25],
  ['10', 25, 30, 35],
  ['8', 35, 40, 45],
  ['6', 40, 50, 55],
  ['4', 55, 65, 75],
  ['3', 65, 75, 85],
  ['2', 75, 90, 100],
  ['1', 85, 100, 115],
  ['1/0', 100, 120, 135],
  ['2/0', 115, 135, 150],
  ['3/0', 130, 155, 175],
  ['4/0', 150, 180, 205],
];

const TABLE_310_17_COPPER: readonly Row[] = [
  ['18', undefined, undefined, 18],
  ['16', undefined, undefined, 24],
  ['14', 25, 30, 35],
  ['12', 30, 35, 40],
  ['10', 40, 50, 55],
  ['8', 60, 70, 80],
  ['6', 80, 95, 105],
  ['4', 105, 125, 140],
  ['3', 120, 145, 165],
  ['2', 140, 170, 190],
  ['1', 165, 195, 220],
  ['1/0', 195, 230, 260],
  ['2/0', 225, 265, 300],
  ['3/0', 260, 310, 350],
  ['4/0', 300, 360, 405],
];

const TABLES = [
  ['310.16 copper', 'cable', 'copper', TABLE_310_16_COPPER],
  ['310.16 aluminium', 'cable', 'aluminium', TABLE_310_16_ALUMINIUM],
  ['310.17 copper', 'air', 'copper', TABLE_310_17_COPPER],
] as const;

describe.each(TABLES)('table %s', (_name, installed, material, rows) => {
  const cells = rows.flatMap(([gauge, ...amps]) =>
    COLUMNS_C.flatMap((columnC, index) => {
      const printed = amps[index];
      return printed === undefined ? [] : [[gauge, columnC, printed] as const];
    }),
  );

  // Exact: a table look-up with all corrections at 1.
  test.each(cells)('%s AWG, %i degC insulation: %i A', (gauge, columnC, amps) => {
    expect(callNumber('AMPACITY', `${gauge} AWG`, columnC, 30, 3, installed, material)).toBe(amps);
  });
});

/**
 * 18 and 16 AWG are printed in the 90 degC column alone. In the cooler columns the correction equation of 310.15(B)
 * gives what raises the conductor to 60 or 75 degC only, I x sqrt((Tc - 30) / (90 - 30)); computed here, rounded down.
 */
describe.each([
  ['310.16', 'cable', '18', 9, 12], // 9.90, 12.12
  ['310.16', 'cable', '16', 12, 15], // 12.73, 15.59
  ['310.17', 'air', '18', 12, 15], // 12.73, 15.59
  ['310.17', 'air', '16', 16, 20], // 16.97, 20.78
] as const)('table %s (%s), %s AWG, by the equation', (_table, installed, gauge, at60C, at75C) => {
  test.each([
    [60, at60C],
    [75, at75C],
  ])('%i degC insulation: %i A', (columnC, amps) => {
    expect(callNumber('AMPACITY', `${gauge} AWG`, columnC, 30, 2, installed)).toBe(amps);
  });
});

describe('rows that the tables do not have', () => {
  test.each([
    ['20 AWG', 'cable', 'copper'],
    ['5 AWG', 'cable', 'copper'],
    ['14 AWG', 'cable', 'aluminium'],
    ['18 AWG', 'air', 'aluminium'],
    ['12 AWG', 'craft', 'aluminium'],
    ['0.5 mm2', 'cable', 'copper'],
  ])('%s in %s, %s: #N/A', (size, installed, material) => {
    const answer = call('AMPACITY', size, 75, 30, 2, installed, material);
    expect(answer).toBeInstanceOf(CellError);
    expect(answer).toMatchObject({ code: '#N/A' });
    expect((answer as CellError).sentence).toContain(`has no row for ${size} in ${material}`);
  });
});

/** Square millimetres have no row of their own: the largest tabulated conductor that is not thicker. Ours. */
describe('square millimetres borrow the row that is not thicker', () => {
  test.each([
    ['2.5 mm2', '14 AWG'], // 2.08 mm2; 12 AWG has 3.31
    ['4 mm2', '12 AWG'], // 10 AWG has 5.26
    ['6 mm2', '10 AWG'], // 8 AWG has 8.37
    ['16 mm2', '6 AWG'], // 13.3 mm2; 4 AWG has 21.2
    ['95 mm2', '3/0 AWG'], // 85.0 mm2; 4/0 has 107.2
    ['400 mm2', '4/0 AWG'],
  ])('%s as %s', (area, gauge) => {
    expect(callNumber('AMPACITY', area)).toBe(callNumber('AMPACITY', gauge));
  });
});
