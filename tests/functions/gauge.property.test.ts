/** What must hold of any size that MINGAUGE chooses, and of fuses and ampacity with it. */
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { CellError, type Cell } from '../../src/functions/cell';
import {
  anyAmps,
  anyConductor,
  anyFuseLimit,
  anyInstallation,
  anyLength,
  anyReturn,
  anySeries,
  anySize,
  anyTarget,
  anyUnit,
  anyVolts,
  SIZES_OF_SERIES,
} from './arbitrary-runs';
import { call, callNumber } from './call';

/** What the verdict says where a limit is broken. */
const WORDS_OF_LIMIT = { drop: 'drop over target', heat: 'over ampacity', fuse: 'no fuse fits' };
type Limit = keyof typeof WORDS_OF_LIMIT;
const LIMITS: readonly Limit[] = ['drop', 'heat', 'fuse'];

interface Demand {
  readonly run: readonly Cell[];
  readonly conductor: readonly Cell[];
  readonly installation: readonly Cell[];
  readonly series: keyof typeof SIZES_OF_SERIES;
  readonly fuseLimit: Cell;
  readonly back: Cell;
}

const anyDemand: fc.Arbitrary<Demand> = fc
  .tuple(
    fc.tuple(anyAmps, anyLength, anyUnit, anyVolts, anyTarget),
    anyConductor,
    anyInstallation,
    anySeries,
    anyFuseLimit,
    anyReturn,
  )
  .map(([run, conductor, installation, series, fuseLimit, back]) => ({
    run,
    conductor,
    installation,
    series,
    fuseLimit,
    back,
  }));

const choose = (
  id: 'MINGAUGE' | 'GAUGE_LIMIT',
  { run, conductor, installation, series, fuseLimit, back }: Demand,
) => call(id, ...run, ...conductor, ...installation, series, fuseLimit, back);
const verdictOf = ({ run, conductor, installation, fuseLimit, back }: Demand, size: string) =>
  call('RUN_VERDICT', ...run, size, ...conductor, ...installation, fuseLimit, back);

/** Place in its series, thinnest first; beyond all sizes where none serves. */
const placeOf = (answer: Cell, series: Demand['series']) =>
  answer instanceof CellError ? Infinity : SIZES_OF_SERIES[series].indexOf(answer as string);

test("MINGAUGE's size is ok, the next thinner is not, and GAUGE_LIMIT says why", () => {
  const seen = { drop: 0, heat: 0, fuse: 0, none: 0, thinnest: 0 };
  fc.assert(
    fc.property(anyDemand, (demand) => {
      const size = choose('MINGAUGE', demand);
      const limit = choose('GAUGE_LIMIT', demand);
      const sizes = SIZES_OF_SERIES[demand.series];

      if (size instanceof CellError) {
        seen.none += 1;
        expect(size.code).toBe('#N/A');
        expect(limit).toEqual(size);
        for (const candidate of sizes) expect(verdictOf(demand, candidate)).not.toBe('ok');
        return;
      }

      const index = sizes.indexOf(size as string);
      expect(index).toBeGreaterThanOrEqual(0);
      expect(verdictOf(demand, size as string)).toBe('ok');
      expect(LIMITS).toContain(limit);
      seen[limit as Limit] += 1;

      // The next thinner that has a published ampacity: sizes without one are never suggested.
      const thinner = sizes
        .slice(0, index)
        .map((candidate) => verdictOf(demand, candidate))
        .findLast((verdict) => !(verdict instanceof CellError));
      if (thinner === undefined) {
        // The thinnest of all: every limit asks for it alike, the first is named.
        seen.thinnest += 1;
        expect(limit).toBe('drop');
        return;
      }
      expect(thinner).toContain(WORDS_OF_LIMIT[limit as Limit]);
      for (const earlier of LIMITS.slice(0, LIMITS.indexOf(limit as Limit))) {
        expect(thinner).not.toContain(WORDS_OF_LIMIT[earlier]);
      }
    }),
    { seed: 21, numRuns: 2000 },
  );
  for (const [what, times] of Object.entries(seen)) {
    expect(times, `runs that met ${what}`).toBeGreaterThan(10);
  }
});

test('a stricter target, more current or a longer run never gets a thinner size', () => {
  fc.assert(
    fc.property(anyDemand, fc.double({ min: 1, max: 2, noNaN: true }), (demand, factor) => {
      const [amps, length, unit, volts, target] = demand.run as [
        number,
        number,
        string,
        number,
        number,
      ];
      const place = placeOf(choose('MINGAUGE', demand), demand.series);
      for (const run of [
        [amps * factor, length, unit, volts, target],
        [amps, length * factor, unit, volts, target],
        [amps, length, unit, volts, target / factor],
      ]) {
        expect(
          placeOf(choose('MINGAUGE', { ...demand, run }), demand.series),
        ).toBeGreaterThanOrEqual(place);
      }
    }),
    { seed: 22, numRuns: 500 },
  );
});

test('the limit of small wires never gives a thinner size, a larger fuse or a milder verdict', () => {
  const seen = { thicker: 0, same: 0 };
  fc.assert(
    fc.property(anyDemand, anySize, (demand, size) => {
      const without = { ...demand, fuseLimit: 'none' };
      const limited = { ...demand, fuseLimit: 'NFPA 70 240.4(D)' };
      const place = placeOf(choose('MINGAUGE', without), demand.series);
      const limitedPlace = placeOf(choose('MINGAUGE', limited), demand.series);
      expect(limitedPlace).toBeGreaterThanOrEqual(place);
      seen[limitedPlace > place ? 'thicker' : 'same'] += 1;

      if (verdictOf(limited, size) === 'ok') expect(verdictOf(without, size)).toBe('ok');

      const [insulationC, ambientC, conductors, installed, continuous] = demand.installation;
      const fuse = (limit: Cell) =>
        call(
          'FUSE_FOR',
          demand.run[0],
          size,
          insulationC,
          ambientC,
          conductors,
          installed,
          demand.conductor[0],
          continuous,
          limit,
        );
      const fuseA = fuse('NFPA 70 240.4(D)');
      if (!(fuseA instanceof CellError)) expect(fuse('none')).toBe(fuseA);
    }),
    { seed: 26, numRuns: 1000 },
  );
  for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(10);
});

test('a fuse carries the load and protects the conductor, or #N/A says which it cannot', () => {
  const seen = { fits: 0, tooBig: 0, beyond: 0 };
  const amps = fc.double({ min: 0.05, max: 700, noNaN: true });
  fc.assert(
    fc.property(
      amps,
      anySize,
      anyInstallation,
      (load, size, [insulationC, ambientC, conductors, installed, continuous]) => {
        const where = [insulationC, ambientC, conductors, installed] as const;
        const ampacity = call('AMPACITY', size, ...where);
        const fuse = call('FUSE_FOR', load, size, ...where, 'copper', continuous);
        if (ampacity instanceof CellError) {
          expect(fuse).toEqual(ampacity);
        } else if (fuse instanceof CellError) {
          expect(fuse.code).toBe('#N/A');
          if (fuse.sentence.includes('largest standard rating')) seen.beyond += 1;
          else {
            expect(fuse.sentence).toContain('the conductor may carry');
            seen.tooBig += 1;
          }
        } else {
          seen.fits += 1;
          expect(fuse).toBeGreaterThanOrEqual(
            load * (continuous === false ? 1 : 1.25) * (1 - 1e-8),
          );
          expect(fuse).toBeLessThanOrEqual((ampacity as number) * (1 + 1e-8));
        }
      },
    ),
    { seed: 23, numRuns: 2000 },
  );
  for (const [what, times] of Object.entries(seen)) expect(times, what).toBeGreaterThan(10);
});

test('ampacity never grows with ambient or with company, never shrinks with size', () => {
  fc.assert(
    fc.property(
      anySize,
      anyInstallation,
      anySize,
      fc.double({ min: 0.01, max: 20, noNaN: true }),
      (size, installation, other, warmer) => {
        const [insulationC, ambientC, conductors, installed] = installation as [
          Cell,
          number | null,
          number | null,
          Cell,
        ];
        const ampacity = (of: string, ambient: number, together: number) => {
          const amps = call('AMPACITY', of, insulationC, ambient, together, installed);
          return amps instanceof CellError ? undefined : (amps as number);
        };
        const ambient = ambientC ?? 30;
        const together = conductors ?? 2;
        const amps = ampacity(size, ambient, together);
        if (amps === undefined) return;
        expect(amps).toBeGreaterThan(0);
        const inWarmer = ampacity(size, ambient + warmer, together) ?? 0;
        expect(inWarmer).toBeLessThanOrEqual(amps);
        // Colder than this no table of corrections tells one degree from another.
        const coldestC = installed === 'craft' || installed === 'engine space' ? 30 : 10;
        if (ambient > coldestC + 1) expect(inWarmer).toBeLessThan(amps);
        expect(ampacity(size, ambient, together + 5)).toBeLessThanOrEqual(amps);
        const otherAmps = ampacity(other, ambient, together);
        if (otherAmps === undefined) return; // an odd gauge, which the tables pass over
        if (callNumber('CONDUCTOR_AREA', other) >= callNumber('CONDUCTOR_AREA', size)) {
          expect(otherAmps).toBeGreaterThanOrEqual(amps);
        }
      },
    ),
    { seed: 24, numRuns: 2000 },
  );
});

test('SIZE_AS is never thinner, the nearest such, and its own answer stays', () => {
  fc.assert(
    fc.property(anySize, anySeries, (size, series) => {
      const area = callNumber('CONDUCTOR_AREA', size);
      const sizes = SIZES_OF_SERIES[series];
      const answer = call('SIZE_AS', size, series);
      if (answer instanceof CellError) {
        expect(answer.code).toBe('#N/A');
        expect(callNumber('CONDUCTOR_AREA', sizes.at(-1))).toBeLessThan(area);
        return;
      }
      const index = sizes.indexOf(String(answer));
      expect(index).toBeGreaterThanOrEqual(0);
      expect(callNumber('CONDUCTOR_AREA', answer)).toBeGreaterThanOrEqual(area * (1 - 1e-8));
      if (index > 0) expect(callNumber('CONDUCTOR_AREA', sizes[index - 1])).toBeLessThan(area);
      expect(call('SIZE_AS', answer, series)).toBe(answer);
    }),
    { seed: 25, numRuns: 1000 },
  );
});
