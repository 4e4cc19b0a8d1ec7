/** What must hold of the drop of any run. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import {
  anyAmps,
  anyConductor,
  anyInstallation,
  anyLength,
  anyRoute,
  anySize,
  anyTarget,
  anyUnit,
  anyVolts,
} from './arbitrary-runs';
import { call, callNumber } from './call';

/** Undoing a computation costs a few roundings. */
const ROUNDINGS = 1e-12;
/** The slack by which a limit may be passed before it counts (a meter sees none of it), with room for roundings. */
const LIMIT_SLACK = 1e-8;

/** Insulation, ambient, conductors, installed, continuous and fuse limit left out. */
const NO_INSTALLATION = [null, null, null, null, null, null];

test('through a chassis one conductor counts, the joints, and the chassis', () => {
  fc.assert(
    fc.property(
      anyLength,
      anyUnit,
      anySize,
      anyConductor,
      fc.double({ min: 0.01, max: 40, noNaN: true }),
      (length, unit, size, [material, tempC, joints], chassis) => {
        const one = callNumber('CONDUCTOR_OHMS', size, length, unit, material, tempC);
        const fixed = ((typeof joints === 'number' ? joints : 0) + chassis) / 1000;
        const ohms = callNumber('RUN_OHMS', length, unit, size, material, tempC, joints, chassis);
        expect(Math.abs(ohms / (one + fixed) - 1)).toBeLessThan(ROUNDINGS);
      },
    ),
    { seed: 10, numRuns: 500 },
  );
});

test('the drop grows with current, with length and with joints', () => {
  fc.assert(
    fc.property(
      anyAmps,
      anyLength,
      anyUnit,
      anySize,
      anyRoute,
      fc.double({ min: 1.0001, max: 3, noNaN: true }),
      (amps, length, unit, size, route, more) => {
        const [material, tempC, joints, back] = route;
        const drop = callNumber('DCDROP', amps, length, unit, size, ...route);
        expect(drop).toBeGreaterThan(0);
        expect(callNumber('DCDROP', amps * more, length, unit, size, ...route)).toBeGreaterThan(
          drop,
        );
        expect(callNumber('DCDROP', amps, length * more, unit, size, ...route)).toBeGreaterThan(
          drop,
        );
        const moreJoints = (typeof joints === 'number' ? joints : 0) + more;
        expect(
          callNumber('DCDROP', amps, length, unit, size, material, tempC, moreJoints, back),
        ).toBeGreaterThan(drop);
      },
    ),
    { seed: 11, numRuns: 500 },
  );
});

test('drop, share, volts left, resistance and heat are one run told five ways', () => {
  fc.assert(
    fc.property(
      anyAmps,
      anyLength,
      anyUnit,
      anySize,
      anyVolts,
      anyRoute,
      (amps, length, unit, size, volts, route) => {
        const ohms = callNumber('RUN_OHMS', length, unit, size, ...route);
        const drop = callNumber('DCDROP', amps, length, unit, size, ...route);
        expect(Math.abs(drop / (amps * ohms) - 1)).toBeLessThan(ROUNDINGS);
        const share = callNumber('DCDROP_PCT', amps, length, unit, size, volts, ...route);
        expect(Math.abs((share * volts) / drop - 1)).toBeLessThan(ROUNDINGS);
        expect(Math.abs(callNumber('LOSS_WATTS', amps, ohms) / (amps * drop) - 1)).toBeLessThan(
          ROUNDINGS,
        );
        const left = call('LOAD_VOLTS', volts, amps, length, unit, size, ...route);
        if (drop > volts) expect(left).toMatchObject({ code: '#N/A' });
        else expect(Math.abs((left as number) + drop - volts)).toBeLessThan(volts * ROUNDINGS);
      },
    ),
    { seed: 12, numRuns: 500 },
  );
});

test('MAX_LENGTH undoes DCDROP_PCT; at exactly that length the verdict does not say over target, past it it does', () => {
  const found = { length: 0, none: 0 };
  fc.assert(
    fc.property(
      anyAmps,
      anyUnit,
      anySize,
      anyVolts,
      anyTarget,
      anyRoute,
      anyInstallation,
      (amps, unit, size, volts, target, route, installation) => {
        const longest = call('MAX_LENGTH', amps, unit, size, volts, target, ...route);
        const share = (length: number) =>
          callNumber('DCDROP_PCT', amps, length, unit, size, volts, ...route);
        if (longest instanceof CellError) {
          found.none += 1;
          expect(longest.code).toBe('#N/A');
          expect(share(0)).toBeGreaterThan(target);
          return;
        }
        found.length += 1;
        expect(Math.abs(share(longest as number) / target - 1)).toBeLessThan(ROUNDINGS);
        const verdict = (length: number) =>
          call(
            'RUN_VERDICT',
            amps,
            length,
            unit,
            volts,
            target,
            size,
            ...route.slice(0, -1),
            ...installation,
            null,
            ...route.slice(-1),
          );
        const atLongest = verdict(longest as number);
        if (atLongest instanceof CellError) return; // no published ampacity to judge by
        expect(atLongest).not.toContain('drop over target');
        if ((longest as number) > 0) {
          // Where joints lose nearly all that the target allows, 1 % of length may be less than the slack.
          const longer = (longest as number) * 1.01;
          if (share(longer) > target * (1 + LIMIT_SLACK)) {
            expect(verdict(longer)).toContain('drop over target');
          }
        }
      },
    ),
    { seed: 13, numRuns: 1000 },
  );
  expect(found.length).toBeGreaterThan(100);
  expect(found.none).toBeGreaterThan(5);
});

test('MAX_AMPS undoes DCDROP_PCT; at exactly that current the verdict does not say over target, past it it does', () => {
  fc.assert(
    fc.property(
      anyLength,
      anyUnit,
      anySize,
      anyVolts,
      anyTarget,
      anyRoute,
      (length, unit, size, volts, target, route) => {
        const most = callNumber('MAX_AMPS', length, unit, size, volts, target, ...route);
        const share = callNumber('DCDROP_PCT', most, length, unit, size, volts, ...route);
        expect(Math.abs(share / target - 1)).toBeLessThan(ROUNDINGS);
        const verdict = (amps: number) =>
          call(
            'RUN_VERDICT',
            amps,
            length,
            unit,
            volts,
            target,
            size,
            ...route.slice(0, -1),
            ...NO_INSTALLATION,
            ...route.slice(-1),
          );
        const atMost = verdict(most);
        if (atMost instanceof CellError) return; // no published ampacity to judge by
        expect(atMost).not.toContain('drop over target');
        expect(verdict(most * (1 + LIMIT_SLACK))).toContain('drop over target');
      },
    ),
    { seed: 14, numRuns: 1000 },
  );
});

test('DRAW_AMPS solves I (V - I R) = P, and no load of steady power gets more than V^2 / 4R', () => {
  const anyOhms = fc.double({ min: 1e-6, max: 2, noNaN: true });
  const shareOfMost = fc.double({ min: 1e-6, max: 2, noNaN: true });
  fc.assert(
    fc.property(anyVolts, anyOhms, shareOfMost, (volts, ohms, share) => {
      const watts = (share * volts ** 2) / (4 * ohms);
      const amps = call('DRAW_AMPS', watts, volts, ohms);
      if (share > 1 + LIMIT_SLACK) {
        expect(amps).toMatchObject({ code: '#N/A' });
      } else if (share < 1 - LIMIT_SLACK) {
        const drawn = amps as number;
        // The smaller of the two roots: at most half of the volts are lost.
        expect(drawn * ohms).toBeLessThanOrEqual(volts / 2);
        expect(Math.abs((drawn * (volts - drawn * ohms)) / watts - 1)).toBeLessThan(ROUNDINGS);
      }
    }),
    { seed: 15, numRuns: 1000 },
  );
});
