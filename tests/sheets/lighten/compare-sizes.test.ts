/** A run with each of its sizes: its figures by our functions in a cell, its verdict, and what others would suffer. */
import { describe, expect, it } from 'vitest';
import { comparing, type SizeComparison } from '../../../src/sheets/compare-sizes';
import type { StationContent } from '../../../src/sheets/station/content';
import { call, callNumber } from '../../functions/call';

function compared(content: StationContent, run: number): SizeComparison | undefined {
  const tries = comparing(content, run);
  for (;;) {
    const { done, value } = tries.next();
    if (done === true) return value;
  }
}

const HUT: StationContent = {
  title: 'Hut',
  rules: { unit: 'ft', volts: 12, target: 0.03, tempC: 30 },
  supply: { chemistry: 'lead-acid', ampHours: 80, milliohms: 20 },
  wireList: { prices: [{ size: '10 AWG', price: 0.5 }] },
  runs: [
    { run: 'Trunk', length: 6, unfused: 0.3, joints: 2, ownSize: '6 AWG' },
    { run: 'Radio', fedFrom: 'Trunk', peak: 20, length: 10, joints: 3, ownSize: '10 AWG' },
    { run: 'Lamp', fedFrom: 'Trunk', peak: 1, length: 3, ownSize: '14 AWG', fused: 'no' },
  ],
};

describe('a run of a branch', () => {
  const found = compared(HUT, 1)!;
  const at = (name: string) => found.sizes.find((size) => size.name === name)!;

  it('has every size of the series, the one in use marked', () => {
    expect(found.called).toBe('Radio');
    expect(found.sizes.map(({ name }) => name)).toEqual(
      '18 16 14 12 10 8 6 4 2 1/0 2/0 3/0 4/0'.split(' ').map((name) => `${name} AWG`),
    );
    expect(found.sizes.filter(({ isInUse }) => isInUse).map(({ name }) => name)).toEqual([
      '10 AWG',
    ]);
  });

  it('has the figures of our functions', () => {
    for (const name of ['14 AWG', '10 AWG', '4 AWG']) {
      const trunk = callNumber('DCDROP', 21, 6, 'ft', '6 AWG', 'copper', 30, 2);
      const own = callNumber('DCDROP', 20, 10, 'ft', name, 'copper', 30, 3);
      expect(at(name).volts, name).toBeCloseTo(trunk + own, 9);
      expect(at(name).share, name).toBeCloseTo((trunk + own) / 12, 9);
      expect(at(name).ampacityA, name).toBe(call('AMPACITY', name, 75, 30));
      expect(at(name).kg, name).toBeCloseTo(2 * callNumber('CONDUCTOR_MASS', name, 10, 'ft'), 9);
    }
    expect(at('10 AWG').fuseA).toBe(
      call('FUSE_FOR', 20, '10 AWG', 75, 30, 2, 'cable', 'copper', true, 'NFPA 70 240.4(D)'),
    );
    expect(at('10 AWG').cost).toBeCloseTo(2 * 10 * 0.5, 9);
    expect(at('8 AWG').cost).toBeUndefined();
  });

  it('says in words why a size is refused', () => {
    expect(at('18 AWG').level).toBe('danger');
    expect(at('18 AWG').why).toEqual(
      expect.arrayContaining(['over ampacity', 'no fuse fits', 'drop over target']),
    );
    expect([at('18 AWG').isOffered, at('4 AWG').isOffered]).toEqual([false, true]);
    // Trunk 6.93 mohm at 21 A; the radio's 6 AWG 11.2 mohm at 20 A, its 4 AWG 8.2: of 0.36 V.
    const ok = found.sizes.filter(({ level }) => level === 'ok').map(({ name }) => name);
    expect(ok).toEqual('4 2 1/0 2/0 3/0 4/0'.split(' ').map((name) => `${name} AWG`));
  });

  it('has a chart whose lines pass through the figures', () => {
    const { at0, lines, oneWay, target, unit } = found.chart!;
    expect([oneWay, target, unit]).toEqual([10, 0.03, 'ft']);
    expect(lines.map(({ name }) => name)).toEqual(['12 AWG', '10 AWG', '8 AWG']);
    for (const { name, perLength } of lines) {
      expect(at0 + perLength * oneWay, name).toBeCloseTo(at(name).share!, 9);
    }
    const joints = (20 * 3e-3 + callNumber('DCDROP', 21, 6, 'ft', '6 AWG', 'copper', 30, 2)) / 12;
    expect(at0).toBeCloseTo(joints, 9);
  });
});

describe('what others would suffer', () => {
  it('is named: a thinner trunk, and a lamp that leans on its fuse', () => {
    const [trunkRun, radio, lamp] = HUT.runs;
    const short = { ...radio!, length: 5, ownSize: '8 AWG' };
    const trunk = compared({ ...HUT, runs: [trunkRun!, short, lamp!] }, 0)!;
    const thin = trunk.sizes.find(({ name }) => name === '10 AWG')!;
    expect(thin.worse.join()).toContain('Radio: ');
    expect(thin.isOffered).toBe(false);
    const same = trunk.sizes.find(({ isInUse }) => isInUse)!;
    expect(same.worse).toEqual([]);
  });
});

describe('a run that no size cures', () => {
  it('is offered the sizes that nothing else speaks against', () => {
    const runs = [{ run: 'Horn', peak: 12, length: 5, unfused: 9 }];
    const { sizes } = compared({ ...HUT, runs }, 0)!;
    const said = (name: string) => sizes.find((size) => size.name === name)!;
    expect(said('18 AWG').why).toEqual(
      expect.arrayContaining(['too long without a fuse', 'no fuse fits']),
    );
    expect(said('18 AWG').isOffered).toBe(false);
    expect(said('8 AWG').why).toEqual(['too long without a fuse']);
    expect(said('8 AWG').level).toBe('danger');
    expect(said('8 AWG').isOffered).toBe(true);
  });
});

describe('a run that cannot be computed', () => {
  it('has nothing to compare', () => {
    expect(compared({ ...HUT, runs: [{ run: 'Far', peak: 3 }] }, 0)).toBeUndefined();
    expect(compared(HUT, 9)).toBeUndefined();
  });

  it('has no chart where it has no length', () => {
    const runs = [{ run: 'Stub', peak: 3, length: 0 }];
    expect(compared({ ...HUT, runs }, 0)?.chart).toBeUndefined();
  });
});

describe('where the target counts in each run', () => {
  it('its own drop alone is held against it', () => {
    const found = compared({ ...HUT, rules: { ...HUT.rules, counts: 'in each run' } }, 1)!;
    const own = callNumber('DCDROP', 20, 10, 'ft', '10 AWG', 'copper', 30, 3);
    expect(found.sizes.find(({ isInUse }) => isInUse)?.volts).toBeCloseTo(own, 9);
    expect(found.chart!.at0).toBeCloseTo((20 * 3e-3) / 12, 9);
  });
});
