import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  awg,
  formatSize,
  LEAST_AREA_MM2,
  mm2,
  MOST_AREA_MM2,
  parseSize,
  type ConductorSize,
} from '../../src/core/size';

describe('spellings of a gauge', () => {
  test.each([
    [12, 12],
    ['12', 12],
    ['12 AWG', 12],
    ['12AWG', 12],
    ['AWG 12', 12],
    ['AWG12', 12],
    ['awg 12', 12],
    ['#12', 12],
    ['# 12', 12],
    ['AWG #12', 12],
    ['  12 awg  ', 12],
    [1, 1],
    [40, 40],
    ['40', 40],
    ['0', 0],
    ['0 AWG', 0],
    ['1/0', 0],
    ['1/0 AWG', 0],
    ['AWG 1/0', 0],
    ['1 / 0', 0],
    ['#1/0', 0],
    ['00', -1],
    ['2/0', -1],
    ['000', -2],
    ['3/0', -2],
    ['0000', -3],
    ['AWG 0000', -3],
    ['4/0', -3],
    ['4/0 awg', -3],
  ])('%j is gauge %i', (given, gauge) => {
    expect(parseSize(given)).toEqual(awg(gauge));
  });
});

describe('spellings of an area', () => {
  test.each([
    ['2.5 mm2', 2.5],
    ['2.5 mm²', 2.5],
    ['2.5 mm^2', 2.5],
    ['2.5mm2', 2.5],
    ['2,5mm2', 2.5],
    ['2,5 mm²', 2.5],
    ['.5 mm2', 0.5],
    [' 6 MM2 ', 6],
    ['0.05 mm2', 0.05],
    ['400 mm2', 400],
  ])('%j is %d mm2', (given, areaMm2) => {
    expect(parseSize(given)).toEqual(mm2(areaMm2));
  });
});

describe('refusals say what to write', () => {
  test.each([
    [2.5, '2.5 is not an AWG number; for square millimetres write "2.5 mm2"'],
    ['2.5', '2.5 is not an AWG number; for square millimetres write "2.5 mm2"'],
    ['2,5', '2,5 is not an AWG number; for square millimetres write "2.5 mm2"'],
    [50, '50 is not an AWG number; for square millimetres write "50 mm2"'],
    ['+6', '+6 is not an AWG number; for square millimetres write "6 mm2"'],
    [0, 'the number 0 may be a blank cell; for 1/0 AWG write "1/0" or "0 AWG"'],
    [-0, 'the number 0 may be a blank cell; for 1/0 AWG write "1/0" or "0 AWG"'],
    [-2, '-2 is not an AWG number; write 4/0 to 40, or an area such as "2.5 mm2"'],
    [1000, '1000 is not an AWG number; write 4/0 to 40, or an area such as "2.5 mm2"'],
    ['00000', '00000 is not an AWG number; write 4/0 to 40, or an area such as "2.5 mm2"'],
    [Number.NaN, 'NaN is not an AWG number; write 4/0 to 40, or an area such as "2.5 mm2"'],
    ['0.04 mm2', '0.04 mm2 is outside 0.05 to 400 mm2'],
    ['401 mm2', '401 mm2 is outside 0.05 to 400 mm2'],
    [
      '5/0',
      '"5/0" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"',
    ],
    [
      'thick',
      '"thick" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"',
    ],
    [
      '-2.5 mm2',
      '"-2.5 mm2" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"',
    ],
    [
      '12 AWG 2.5 mm2',
      '"12 AWG 2.5 mm2" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"',
    ],
  ])('%j', (given, why) => {
    expect(parseSize(given)).toEqual({ refused: 'invalid', why });
  });
});

/** "2 x 6 mm2" is two conductors, and no thinner than it says: a size is the whole text or none. */
test.each(['12', '12 AWG', 'AWG 12', '#12', '0', '1/0', '0000 AWG', '2.5 mm2', '2,5mm²'])(
  'a text that only begins or ends with the size %j is refused',
  (size) => {
    expect(parseSize(size)).toHaveProperty('kind');
    for (const more of ['2 x ', '2x', 'red ', '6 mm2 ', '6 AWG ', '+'])
      expect(parseSize(more + size)).toHaveProperty('refused', 'invalid');
    for (const more of [' x 2', 'x2', ' red', ' 6 mm2', ' 6 AWG', '+'])
      expect(parseSize(size + more)).toHaveProperty('refused', 'invalid');
  },
);

const anySize: fc.Arbitrary<ConductorSize> = fc.oneof(
  fc.integer({ min: -3, max: 40 }).map(awg),
  fc.double({ min: LEAST_AREA_MM2, max: MOST_AREA_MM2, noNaN: true }).map(mm2),
);

test('a size written out reads back as itself', () => {
  fc.assert(
    fc.property(anySize, (size) => {
      expect(parseSize(formatSize(size))).toEqual(size);
    }),
    { seed: 31, numRuns: 2000 },
  );
});

test('whatever a refusal says to write can be read', () => {
  const given = fc.oneof(
    fc.double(),
    fc.integer({ min: -500, max: 500 }),
    fc.stringMatching(/^[+-]?[0-9]{0,4}[.,]?[0-9]{1,4}$/),
  );
  fc.assert(
    fc.property(given, (one) => {
      const size = parseSize(one);
      if (!('why' in size)) return;
      const remedies = [...size.why.matchAll(/"([^"]+)"/g)].map(([, remedy]) => remedy!);
      expect(remedies.length).toBeGreaterThan(0);
      for (const remedy of remedies) expect(parseSize(remedy)).toHaveProperty('kind');
    }),
    { seed: 32, numRuns: 2000 },
  );
});
