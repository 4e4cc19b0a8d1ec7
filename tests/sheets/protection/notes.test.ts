/** What stands beside a row of the Protection sheet: how far it is judged and why no further, said by hand for each source. */
import { describe, expect, test } from 'vitest';
import type { ProtectionTyped } from '../../../src/sheets/station/protection';
import { PROTECTION_WORDS } from '../../../src/sheets/station/protection-words';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { stationValues } from '../../../src/sheets/station-values';
import type { SupplyValues } from '../../../src/sheets/station/supply';

type Word = keyof typeof PROTECTION_WORDS;

const BATTERY: SupplyValues = {
  name: 'battery',
  kind: 'battery',
  chemistry: 'lead-acid',
  milliohms: 50,
};
/** 310.16: 12 AWG bears 25 A; 5 A x 1.25 = 6.25, fuse 7.5, a blade of ISO 8820-3. */
const LAMP: ScheduleRun = { run: 'Lamp', peak: 5, length: 5, ownSize: '12 AWG', unfused: 0.1 };

function noteOf(
  run: Partial<ScheduleRun>,
  sources: readonly SupplyValues[] = [BATTERY],
  others: readonly ScheduleRun[] = [],
  protection?: ProtectionTyped,
): string {
  const { protection: sheet } = stationValues({
    title: 'Notes',
    runs: [...others, { ...LAMP, ...run }],
    sources,
    ...(protection && { protection }),
  });
  return String(sheet.rows[others.length]!.note);
}

const wordsIn = (note: string) =>
  (Object.keys(PROTECTION_WORDS) as Word[])
    .filter((word) => note.includes(PROTECTION_WORDS[word]))
    .sort();

describe('beside a run', () => {
  test('of a battery behind a blade nothing has to be said', () => {
    expect(noteOf({})).toBe('');
  });

  test.each<readonly [string, readonly Word[], string]>([
    // Times are published for blades alone.
    ['a bolt-in fuse', ['noTime'], noteOf({}, [BATTERY], [], { fuses: [{ kind: 'bolt-in' }] })],
    ['no fuse at all', ['noFuse'], noteOf({ fused: 'no' })],
    ['nothing said of the wire before the fuse', ['unfusedUnknown'], noteOf({ unfused: '' })],
    // Nothing is typed of the battery, so that the way to it is not asked for either.
    ['a battery of which nothing is said', [], noteOf({ unfused: '' }, [{ kind: 'battery' }])],
    [
      'a panel',
      ['panel'],
      noteOf({ fedFrom: 'panel' }, [
        BATTERY,
        { name: 'panel', kind: 'panel', shortCircuitAmps: 8, openCircuitVolts: 22, volts: 18 },
      ]),
    ],
    [
      // 40 A are more than the 25 A that the wire bears.
      'a power supply that gives more than the wire bears',
      ['supply'],
      noteOf({ fedFrom: 'bench' }, [
        BATTERY,
        { name: 'bench', kind: 'power supply', volts: 13.8, mostAmps: 40 },
      ]),
    ],
    [
      'a power supply that gives no more than the wire bears',
      ['supplyBears'],
      noteOf({ fedFrom: 'bench' }, [
        BATTERY,
        { name: 'bench', kind: 'power supply', volts: 13.8, mostAmps: 25 },
      ]),
    ],
    [
      'an alternator, with a fuse at its battery',
      ['charger', 'endFuse'],
      noteOf({ fedFrom: 'Engine', fused: 'no', endsAt: 'battery', endFused: 'yes' }, [
        BATTERY,
        { name: 'Engine', kind: 'alternator', volts: 14, mostAmps: 40, charges: 'battery' },
      ]),
    ],
    [
      'a battery at its other end',
      ['endFuse'],
      noteOf({ endsAt: 'case', endFused: 'yes' }, [
        BATTERY,
        { ...BATTERY, name: 'case', chemistry: 'LiFePO4' },
      ]),
    ],
    [
      'milliohms that are no number',
      ['sourceUnknown'],
      noteOf({}, [{ ...BATTERY, milliohms: '?' }]),
    ],
  ])('%s', (_, words, note) => {
    expect(wordsIn(note)).toEqual([...words].sort());
  });

  test('the rating at the other end is told', () => {
    const note = noteOf({ endsAt: 'case', endFused: 'yes' }, [
      BATTERY,
      { ...BATTERY, name: 'case', chemistry: 'LiFePO4' },
    ]);
    expect(note.endsWith('amps: 7.5')).toBe(true);
  });

  test('without a load, an empty row', () => {
    const { protection } = stationValues({ title: 'Notes', runs: [{}, LAMP], sources: [BATTERY] });
    expect(protection.rows[0]!.note).toBe('');
  });
});
