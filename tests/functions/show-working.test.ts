/** SHOW_WORKING: texts stated by hand, and that what it tells is what RUN_VERDICT and the other functions answer. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CellError, type Cell } from '../../src/functions/cell';
import {
  anyAmps,
  anyConductor,
  anyFuseLimit,
  anyInstallation,
  anyLength,
  anyReturn,
  anySize,
  anyTarget,
  anyUnit,
  anyVolts,
} from './arbitrary-runs';
import { call, callNumber, callRange } from './call';

function linesOf(...given: readonly Cell[]): readonly string[] {
  const text = call('SHOW_WORKING', ...given);
  if (typeof text !== 'string') throw new Error(String(text));
  return text.split('\n');
}

function line(lines: readonly string[], head: string): string {
  const found = lines.filter((each) => each.startsWith(`${head}: `));
  expect(found, head).toHaveLength(1);
  return found[0]!.slice(head.length + 2);
}

describe('stated by hand', () => {
  // 12 AWG: (pi / 4) (0.127 x 92^(24 / 39))^2 = 3.3088 mm2; 1 / 58 / 3.3088 = 5.2108 milliohm per m.
  test('a run too long, and its fuse more than the rule for small wires allows', () => {
    const fuseLimit = 'NFPA 70 240.4(D)';
    expect(
      linesOf(
        20,
        3,
        'm',
        13,
        0.03,
        '12 AWG',
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        true,
        fuseLimit,
      ),
    ).toEqual([
      '20 A over 3 m of 12 AWG copper from 13 V: drop over target; no fuse fits.',
      'Wire: 12 AWG copper, 0.01724 ohm mm2 per m over 3.309 mm2 (ASTM B258) is 0.005211 ohm per m at 20 degC.',
      'Run: 2 conductors x 3 m x 0.005211 ohm per m = 0.03126 ohm.',
      'Drop: 20 A x 0.03126 ohm = 0.6253 V, 4.81 % of 13 V. The target of 3 % allows 0.39 V: over it by 0.235 V.',
      'Heat: in a cable or bundle, air of 30 degC, 2 current-carrying conductors together. NFPA 70 table 310.16, row 12 AWG, 75 degC column: 25 A. 20 A is within it, 5 A to spare.',
      'Fuse: the load may run for hours, so at least 125 % of it (NFPA 70 210.20), 25 A. The next standard rating is 25 A (ISO 8820); the wire may carry 25 A, and NFPA 70 240.4(D) allows so small a wire 20 A: no fuse fits.',
      'Sources: copper: annealed copper, IEC 60028; NFPA 70 table 310.16: 2011 edition and later, four cells from memory; ratings: ISO 8820 series, 35 A, 100 A and all above from memory; NFPA 70 240.4(D): 2014 edition and later, copper-clad aluminium of 14 AWG from memory.',
      'A help for planning: local codes and licensed practice go first.',
    ]);
  });

  // Aluminium over copper: 1 / 0.61 = 1.6393; x 3.3 = 5.4098 milliohm per m; at 60 degC x (1 + 0.00403 x 40) = 1.1612.
  // sqrt((75 - 40) / (75 - 30)) = 0.88192; 30 x 0.88192 x 0.8 = 21.166.
  test('aluminium by a chassis, warm, in warm air and a bundle', () => {
    const lines = linesOf(
      5, 4, 'm', 12, 0.03, '6 mm2', 'aluminium', 60, 5, 75, 40, 4, 'cable', true, 'none', 2,
    ); // prettier-ignore
    expect(lines.slice(0, 6)).toEqual([
      '5 A over 4 m of 6 mm2 aluminium from 12 V: ok.',
      'Wire: 6 mm2 of plain copper may have 3.3 ohm per km (IEC 60228, class 5); by the ratio of resistivities aluminium has 0.00541 ohm per m at 20 degC. At 60 degC 1.161 times that: 0.006282 ohm per m.',
      'Run: 1 conductor x 4 m x 0.006282 ohm per m + 0.005 ohm of joints + 0.002 ohm of chassis = 0.03213 ohm.',
      'Drop: 5 A x 0.03213 ohm = 0.1606 V, 1.34 % of 12 V. The target of 3 % allows 0.36 V: within it, 0.199 V to spare.',
      'Heat: in a cable or bundle, air of 40 degC, 4 current-carrying conductors together. NFPA 70 table 310.16, row 10 AWG (the thickest not thicker than 6 mm2), 75 degC column: 30 A x 0.8819 for the air (NFPA 70 310.15(B)) x 0.8 for the bundle (NFPA 70 310.15(C)(1)) = 21.16 A. 5 A is within it, 16.2 A to spare.',
      'Fuse: the load may run for hours, so at least 125 % of it (NFPA 70 210.20), 6.25 A. The next standard rating is 7.5 A (ISO 8820); the wire may carry 21.16 A: a fuse of 7.5 A fits.',
    ]);
  });

  test('an area that IEC 60228 lists, another that it does not, and a cell that is not printed', () => {
    expect(line(linesOf(5, 4, 'm', 12, 0.03, '2.5 mm2'), 'Wire')).toBe(
      '2.5 mm2 copper may have 7.98 ohm per km (IEC 60228, class 5), 0.00798 ohm per m at 20 degC.',
    );
    expect(line(linesOf(5, 4, 'm', 12, 0.03, '25 mm2', 'aluminium'), 'Wire')).toBe(
      '25 mm2 aluminium may have 1.2 ohm per km (IEC 60228, class 2), 0.0012 ohm per m at 20 degC.',
    );
    // 1 / 58 / 3 = 5.747 milliohm per m.
    expect(line(linesOf(5, 4, 'm', 12, 0.03, '3 mm2'), 'Wire')).toBe(
      '3 mm2 copper, 0.01724 ohm mm2 per m over 3 mm2 is 0.005747 ohm per m at 20 degC.',
    );
    // 18 AWG: 14 A at 90 degC; 14 sqrt(45 / 60) = 12.1.
    expect(line(linesOf(5, 4, 'm', 12, 0.03, '18 AWG'), 'Heat')).toContain(
      'row 18 AWG, 75 degC column, computed from a hotter one by NFPA 70 310.15(B): 12 A. 5 A is within it, 7 A to spare.',
    );
  });

  test('more than any fuse, in an engine space, in short bursts', () => {
    const lines = linesOf(600, 3, 'm', 48, 0.03, '4/0', null, null, null, 105, null, null, 'engine space', false); // prettier-ignore
    expect(line(lines, 'Heat')).toMatch(
      /^single conductors in an engine space, air of 50 degC\. 33 CFR 183\.425 table 5, row 4\/0 AWG, 105 degC column: 445 A x 0\.85 .* = 378\.25 A\. 600 A is over it by 222 A\.$/,
    );
    expect(line(lines, 'Sources')).toContain('; 33 CFR 183.425 table 5: read in full; ');
    expect(line(lines, 'Fuse')).toBe(
      'the load comes in short bursts, so at least all of it, 600 A. The largest standard rating is 500 A (ISO 8820): no fuse fits.',
    );
  });

  test('a limit met to the digit is kept, and an ampacity is never rounded up to its fuse', () => {
    const longest = callNumber('MAX_LENGTH', 20, 'm', '10 AWG', 13, 0.03);
    expect(line(linesOf(20, longest, 'm', 13, 0.03, '10 AWG'), 'Drop')).toMatch(
      /: just within it\.$/,
    );
    // 25 sqrt(44.999 / 45) = 24.9997 A.
    const hot = linesOf(20, 1, 'm', 13, 0.03, '12 AWG', null, null, null, 75, 30.001);
    expect(line(hot, 'Fuse')).toMatch(/the wire may carry 24\.99 A: no fuse fits\.$/);
  });

  test('numbers past all counting are told in words', () => {
    const text = linesOf(1e308, 1e308, 'm', 12, 0.03, '18 AWG').join('\n');
    expect(text).toContain('= countless V, countless % of 12 V');
    expect(text).not.toMatch(/NaN|Infinity/);
  });

  test('where no verdict can be given it says why, as RUN_VERDICT does, and blank rows stay quiet', () => {
    const run = [10, 1, 'm', 12, 0.03, '20 AWG'] as const;
    expect(call('SHOW_WORKING', ...run)).toBeInstanceOf(CellError);
    expect(call('SHOW_WORKING', ...run)).toEqual(call('RUN_VERDICT', ...run));
    expect(callRange('SHOW_WORKING', [[null], [10]], 1, 'm', 12, 0.03, '10 AWG')[0]).toEqual(['']);
  });
});

describe('it tells what the other functions answer', () => {
  const anyRun = fc.tuple(
    fc.tuple(anyAmps, anyLength, anyUnit, anyVolts, anyTarget, anySize),
    anyConductor,
    anyInstallation,
    anyFuseLimit,
    anyReturn,
  );

  test('the verdict, and each of its words in the line of its limit alone', () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(anyRun, ([run, conductor, installation, fuseLimit, back]) => {
        const given = [...run, ...conductor, ...installation, fuseLimit, back];
        const verdict = call('RUN_VERDICT', ...given);
        if (typeof verdict !== 'string') {
          expect(call('SHOW_WORKING', ...given)).toEqual(verdict);
          return;
        }
        seen.set(verdict, (seen.get(verdict) ?? 0) + 1);
        const lines = linesOf(...given);
        expect(lines[0]!.endsWith(`: ${verdict}.`)).toBe(true);
        const words = verdict.split('; ');
        const isOver = (head: string) => line(lines, head).includes('over it by');
        expect(isOver('Drop')).toBe(words.includes('drop over target'));
        expect(isOver('Heat')).toBe(words.includes('over ampacity'));
        expect(line(lines, 'Fuse').endsWith('no fuse fits.')).toBe(words.includes('no fuse fits'));
        expect(lines.join('\n')).not.toMatch(/NaN|Infinity|undefined/);
      }),
      { numRuns: 2000, seed: 15 },
    );
    // Each kind came up, or little was shown.
    for (const verdict of [
      'ok',
      'drop over target',
      'no fuse fits',
      'over ampacity; no fuse fits',
    ]) {
      expect(seen.get(verdict), verdict).toBeGreaterThan(10);
    }
  });

  test('ohms, volts lost, ampacity and fuse, to the figures told', () => {
    fc.assert(
      fc.property(anyRun, ([run, conductor, installation, fuseLimit, back]) => {
        const [amps, length, unit, volts, , size] = run;
        const [insulationC, ambientC, together, installed, continuous] = installation;
        const [material = null] = conductor;
        const given = [...run, ...conductor, ...installation, fuseLimit, back];
        if (typeof call('RUN_VERDICT', ...given) !== 'string') return;
        const lines = linesOf(...given);
        const figures = (text: string, pattern: RegExp) => Number(pattern.exec(text)?.[1]);
        const isNear = (told: number, exact: number) =>
          expect(Math.abs(told - exact)).toBeLessThanOrEqual(0.0006 * exact);
        const ohms = callNumber('RUN_OHMS', length, unit, size, ...conductor, back);
        isNear(figures(line(lines, 'Run'), / = (\S+) ohm\.$/), ohms);
        const lost = callNumber('DCDROP', amps, length, unit, size, ...conductor, back);
        isNear(figures(line(lines, 'Drop'), / = (\S+) V, /), lost);
        isNear(figures(line(lines, 'Drop'), / of (\S+) V\. /), volts);
        const conditions = [insulationC, ambientC, together, installed] as Cell[];
        const ampacity = callNumber('AMPACITY', size, ...conditions, material);
        const told = figures(line(lines, 'Heat'), /(?: = |: )(\d+(?:\.\d+)?) A\. /);
        expect(told).toBeLessThanOrEqual(ampacity * (1 + 1e-9));
        expect(told).toBeGreaterThan(ampacity - 0.0101);
        const fuse = call('FUSE_FOR', amps, size, ...conditions, material, continuous, fuseLimit);
        const fits = /a fuse of (\S+) A fits\.$/.exec(line(lines, 'Fuse'))?.[1];
        if (typeof fuse === 'number') expect(Number(fits)).toBe(fuse);
        else expect(fits).toBeUndefined();
      }),
      { numRuns: 2000, seed: 16 },
    );
  });
});
