/** Why a run is judged as it is: the text agrees with the sheet's own cells and verdicts, over the demonstration. */
import { describe, expect, it, test } from 'vitest';
import { whyOfRun, type RunWhy } from '../../src/sheets/run-why';
import { stationValues } from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { COUNTS } from '../../src/sheets/station/parameters';
import { DEMO } from '../../src/sheets/station/demo';
import { levelOf, VERDICTS } from '../../src/sheets/station/verdicts';

const placeOf = (name: string, { runs }: StationContent = DEMO) =>
  runs.findIndex(({ run }) => run === name);

function why(content: StationContent, run: number): RunWhy {
  const shown = String(stationValues({ ...content, extras: [] }).runs[run]!.verdict);
  const found = whyOfRun(content, run, shown);
  if (found === undefined) throw new Error(`no reasons for "${shown}"`);
  return found;
}

/** The one line of a head. */
function line(lines: readonly string[], head: string): string {
  const found = lines.filter((each) => each.startsWith(`${head}: `));
  expect(found, head).toHaveLength(1);
  return found[0]!.slice(head.length + 2);
}

/** The demonstration with entries of one run changed. */
const changed = (name: string, entries: StationContent['runs'][number]): StationContent => ({
  ...DEMO,
  runs: DEMO.runs.map((one) => (one.run === name ? { ...one, ...entries } : one)),
});

describe('every run of the demonstration', () => {
  const values = stationValues({ ...DEMO, extras: [] });
  const all = DEMO.runs.map((_, run) => why(DEMO, run));

  it('has for each word of its verdict why and what to do', () => {
    for (const [run, { said }] of all.entries()) {
      expect(said.map(({ word }) => word).sort()).toEqual(
        String(values.runs[run]!.verdict).split('; ').sort(),
      );
      for (const { word, why: reason, remedy } of said) {
        expect(reason).not.toBe('');
        expect(remedy === '').toBe(word === VERDICTS.ok.word);
      }
    }
  });

  it('says over, too few or too late where its verdict does, and nowhere else', () => {
    for (const [run, { limits, said }] of all.entries()) {
      const words = said.map(({ word }) => word);
      const has = (...of: readonly (keyof typeof VERDICTS)[]) =>
        of.some((key) => words.includes(VERDICTS[key].word));
      const about = (head: string) => limits.filter((each) => each.startsWith(head)).join(' ');
      const name = `${DEMO.runs[run]!.run}: ${words.join('; ')}`;
      expect(about('Drop: ').includes('over it by'), name).toBe(has('drop'));
      expect(about('Volts: ').includes('too few'), name).toBe(has('tooFewVolts', 'fewerVolts'));
      expect(about('While a load starts: ').includes('too few'), name).toBe(has('startVolts'));
      expect(about('Heat: ').includes('over it by'), name).toBe(has('heat'));
      expect(about('A short ').includes('too late'), name).toBe(has('fuseTooSlow'));
      expect(
        about('Fuse: ').includes('does not protect it') ||
          about('Fuse: ').includes('no standard rating'),
        name,
      ).toBe(has('needsFuse', 'fuse'));
    }
  });

  it('is worked with the figures of its row, and judged nowhere by itself', () => {
    for (const [run, { working, called }] of all.entries()) {
      const row = values.runs[run]!;
      if (typeof row.size !== 'string') continue;
      expect(working[0], called).toContain(
        `${Number(Number(row.runAmps).toPrecision(6))} A over ${Number(Number(row.oneWay).toPrecision(6))} ft of ${String(row.size)} `,
      );
      expect(line(working, 'Drop'), called).toContain(
        `= ${Number(Number(row.dropVolts).toPrecision(4))} V`,
      );
      expect(working.join('\n'), called).not.toMatch(/: ok\.|target of|fuse of|no fuse fits/);
      expect(working.at(-1)).toMatch(/^A help for planning/);
    }
  });
});

test('a branch over the target is told from the source, though its own wire would keep it', () => {
  const { limits, working, fix } = why(DEMO, placeOf('Hut lights'));
  expect(line(limits, 'Drop')).toBe(
    '0.5259 V is lost between the source and its end, 4.17 % of 12.6 V; the target of 3 % allows 0.378 V: over it by 0.148 V.',
  );
  expect(line(limits, 'Fuse')).toBe(
    'none of its own; the nearest above it has 30 A; the wire may carry 12 A, and NFPA 70 240.4(D) allows so small a wire 7 A: that does not protect it.',
  );
  expect(limits).toContain('A short at the far end draws 32.7 A; the fuse need not open at that.');
  expect(line(working, 'Drop')).toBe('1.5 A x 0.292 ohm = 0.438 V, 3.48 % of 12.6 V.');
  expect(fix).toBe('its own fuse of 2 A; thicker Hut lights: 16 AWG');
});

test('a run that no size fits is worked for the thickest of the series', () => {
  const { limits, working } = why(DEMO, placeOf('Sluice motor'));
  expect(line(limits, 'Wire')).toBe(
    'no size of the series fits; the working is for 4/0 AWG, the thickest.',
  );
  expect(line(limits, 'Drop')).toBe(
    'the target of 3 % allows 0.72 V between the source and its end.',
  );
  expect(working[0]).toBe('70 A over 420 ft of 4/0 AWG copper from 24 V.');
});

test('volts with the battery low are held against the minimum of the load', () => {
  expect(line(why(DEMO, placeOf('Relay set')).limits, 'Volts')).toBe(
    '11.37 V at the load with the battery low; the load works with 11.5 V: 0.132 V too few.',
  );
});

test('the target that counts in each run is held against that run alone', () => {
  const content = { ...DEMO, rules: { ...DEMO.rules, counts: COUNTS[1] } };
  const { limits } = why(content, placeOf('Relay set'));
  expect(line(limits, 'Drop')).toMatch(/^0\.2451 V is lost in this run/);
});

test.each([
  ['a length that cannot be read', { length: 'far' }],
  ['no length', { length: '' }],
  ['no load', { peak: '' }],
  ['a feeder that is not there', { fedFrom: 'Nowhere' }],
  ['an unreadable wire', { ownSize: 'thick' }],
  ['a loop', { fedFrom: 'Relay set' }],
] as const)('a row with %s says what is missing and no figure', (_, entries) => {
  const content = changed('Relay set', entries);
  const { said, limits, working } = why(content, placeOf('Relay set'));
  expect(levelOf(said.at(-1)!.word)).toBe('unclear');
  expect(said.every(({ remedy }) => remedy !== '')).toBe(true);
  expect(limits).toEqual([]);
  expect(working).toEqual([]);
});

test('a sheet that shows another verdict is told no reasons for it', () => {
  expect(whyOfRun(DEMO, placeOf('Relay set'), 'ok')).toBeUndefined();
  expect(whyOfRun(DEMO, placeOf('Relay set'), '#VALUE!')).toBeUndefined();
  expect(whyOfRun(DEMO, DEMO.runs.length, 'ok')).toBeUndefined();
});
