import fc from 'fast-check';
import { expect, test } from 'vitest';
import { dutyAmps, heatingAmps } from '../../src/core/duty';

const states = fc
  .array(
    fc.record({
      amps: fc.oneof(fc.constant(0), fc.double({ min: 1e-3, max: 100, noNaN: true })),
      weight: fc.integer({ min: 1, max: 100 }),
    }),
    { minLength: 1, maxLength: 6 },
  )
  .map((list) => {
    const whole = list.reduce((sum, { weight }) => sum + weight, 0);
    return list.map(({ amps, weight }) => ({ amps, share: weight / whole }));
  });

test('one state all the time is itself', () => {
  expect(dutyAmps([{ amps: 7, share: 1 }])).toBe(7);
  expect(heatingAmps([{ amps: 7, share: 1 }])).toBe(7);
});

test('on half the time: half the mean current, but heat as of 0.707 of it', () => {
  expect(dutyAmps([{ amps: 10, share: 0.5 }])).toBe(5);
  expect(heatingAmps([{ amps: 10, share: 0.5 }])).toBeCloseTo(Math.sqrt(50), 12);
});

test('the heating current lies between the mean and the peak', () => {
  fc.assert(
    fc.property(states, (list) => {
      const mean = dutyAmps(list) as number;
      const heating = heatingAmps(list) as number;
      expect(heating).toBeGreaterThanOrEqual(mean * (1 - 1e-9));
      expect(heating).toBeLessThanOrEqual(Math.max(...list.map(({ amps }) => amps)) * (1 + 1e-9));
    }),
  );
});

test('shares that sum to the whole but for rounding are the whole; more is refused', () => {
  const tenths = Array.from({ length: 10 }, () => ({ amps: 3, share: 0.1 }));
  expect(dutyAmps(tenths)).toBeCloseTo(3, 12);
  const tooMuch = [...tenths, { amps: 3, share: 0.2 }];
  for (const answer of [dutyAmps(tooMuch), heatingAmps(tooMuch)]) {
    expect(answer).toMatchObject({
      refused: 'invalid',
      why: "share: the shares sum to 1.2; they are parts of one load's time, at most 1 together",
    });
  }
});
