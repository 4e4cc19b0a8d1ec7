/**
 * ABYC E-11, conductor sizes for boats: the formula CM = K I L / E (circular mils; K 10.75; L out and back, ft; E volts
 * lost) with two examples, and the size table for 3 % at 12 V. Both read in marine catalogues, not in the standard.
 *
 * K = 10.75 ohm cmil per ft is copper at about 29 degC (10.371 at 20 degC, IACS): our functions are given that
 * conductor temperature. The standard's boat cable may be of SAE sizes, 4 to 12 % thinner than AWG of the same number;
 * the table was made with those.
 *
 * Misprints: the copy's rows of 25 and 30 ft are shifted (its 30 ft row is the formula's 25 ft row); left out.
 */
import { describe, expect, test } from 'vitest';
import { call, callNumber } from '../functions/call';

const K_ABYC = 10.75;
/** 1/58 ohm mm2 per m in ohm cmil per ft. */
const K_20_C = 10.371215;
const TEMP_C = 20 + (K_ABYC / K_20_C - 1) / 0.00393;

/** Circuits under 50 V in boats, 105 degC boat cable: heat never decides in these examples. */
const IN_A_BOAT = [105, undefined, undefined, 'craft'] as const;

describe('examples: 12 V, 10 A, 21 ft out and back', () => {
  const size = (maxDrop: number, series: string) =>
    call(
      'MINGAUGE',
      10,
      21 / 2,
      'ft',
      12,
      maxDrop,
      'copper',
      TEMP_C,
      0,
      ...IN_A_BOAT,
      true,
      series,
    );

  // 6271 cmil wanted: 12 AWG has 6530. (SAE 12 has 5833, and SAE 10 would be needed.)
  test('3 %: 12 AWG by AWG areas', () => {
    expect(size(0.03, 'AWG')).toBe('12 AWG');
  });

  // 1881 cmil wanted: 16 AWG has 2580, 18 AWG has 1620.
  test('10 %: 16 AWG by AWG and by SAE areas', () => {
    expect(size(0.1, 'AWG')).toBe('16 AWG');
  });

  test('the areas that the formula wants', () => {
    const cmil = (maxDrop: number) =>
      (callNumber('RUN_OHMS', 21 / 2, 'ft', '10 AWG', 'copper', TEMP_C) * 10380 * 10) /
      (12 * maxDrop);
    // 0.05 %: 10 AWG is 10380 cmil to four figures.
    expect(Math.abs(cmil(0.03) / 6271 - 1)).toBeLessThan(0.0005);
    expect(Math.abs(cmil(0.1) / 1881 - 1)).toBeLessThan(0.0005);
  });
});

const AMPS = [5, 10, 15, 20, 25, 30, 40, 50, 60, 70, 80, 90, 100];

/** Feet out and back; AWG number for each of AMPS, 3 % of 12 V. Rows end where the table does. */
const THREE_PER_CENT_AT_12_V: readonly (readonly [number, readonly string[]])[] = [
  [10, ['18', '14', '12', '12', '10', '10', '8', '8', '6', '6', '6', '4', '4']],
  [15, ['16', '12', '10', '10', '8', '8', '6', '6', '4', '4', '4', '2', '2']],
  [20, ['14', '10', '10', '8', '6', '6', '6', '4', '4', '2', '2', '2', '2']],
  [40, ['10', '8', '6', '6', '4', '4', '2', '2', '1', '0', '0', '2/0', '2/0']],
  [50, ['10', '6', '6', '4', '4', '2', '2', '1', '0', '2/0', '2/0', '4/0', '4/0']],
  [60, ['10', '6', '6', '4', '2', '2', '1', '0', '2/0', '3/0', '3/0', '4/0', '4/0']],
  [70, ['8', '6', '4', '2', '2', '1', '0', '2/0', '3/0', '3/0', '4/0', '4/0']],
  [80, ['8', '6', '4', '2', '2', '1', '0', '2/0', '3/0', '4/0', '4/0']],
  [100, ['8', '4', '2', '2', '1', '0', '2/0', '3/0', '4/0', '4/0']],
];

/** The sizes the table lists, thinnest first, with SAE J1127/J1128 metal areas in cmil (read in a cable catalogue). */
const LISTED: readonly (readonly [string, number])[] = [
  ['18', 1537],
  ['16', 2336],
  ['14', 3702],
  ['12', 5833],
  ['10', 9343],
  ['8', 14810],
  ['6', 24538],
  ['4', 37360],
  ['2', 62450],
  ['1', 77790],
  ['0', 98980],
  ['2/0', 125100],
  ['3/0', 158600],
  ['4/0', 205500],
];

const MM2_PER_CMIL = (Math.PI / 4) * 0.0254 ** 2;

const CELLS = THREE_PER_CENT_AT_12_V.flatMap(([lengthFt, sizes]) =>
  sizes.map((size, index) => ({ lengthFt, amps: AMPS[index]!, size })),
);

/** Place in LISTED of the thinnest size whose drop is within 3 %; `name` says how a listed size is called. */
function pick(
  lengthFt: number,
  amps: number,
  name: (size: string, cmil: number) => string,
): number {
  return LISTED.findIndex(
    ([size, cmil]) =>
      callNumber('DCDROP_PCT', amps, lengthFt / 2, 'ft', name(size, cmil), 12, 'copper', TEMP_C) <=
      0.03,
  );
}

const byAwg = (size: string) => `${size} AWG`;
const bySae = (_size: string, cmil: number) => `${(cmil * MM2_PER_CMIL).toFixed(6)} mm2`;
const placeOf = (size: string) => LISTED.findIndex(([listed]) => listed === size);

test('the copy has 111 cells', () => {
  expect(CELLS).toHaveLength(111);
});

// A printed table is rounded to taste, and made for SAE areas: within one listed size.
test.each(CELLS)(
  '$lengthFt ft, $amps A: $size, within one listed size',
  ({ lengthFt, amps, size }) => {
    const ours = pick(lengthFt, amps, byAwg);
    expect(ours).toBeGreaterThanOrEqual(0);
    expect(Math.abs(ours - placeOf(size))).toBeLessThanOrEqual(1);
  },
);

test('with SAE areas all cells but seven are exact', () => {
  const others = CELLS.filter(
    ({ lengthFt, amps, size }) => pick(lengthFt, amps, bySae) !== placeOf(size),
  );
  expect(others.map(({ lengthFt, amps }) => [lengthFt, amps])).toEqual([
    [10, 20],
    [10, 50],
    [50, 90],
    [50, 100],
    [60, 15],
    [100, 5],
    [100, 70],
  ]);
});
