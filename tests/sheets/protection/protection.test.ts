import { describe, expect, test } from 'vitest';
import { fuseGuards, fuseSeconds } from '../../../src/core/fuse-time';
import { isRefusal } from '../../../src/core/outcome';
import { parseSize, SERIES_SIZES, sizeAreaMm2 } from '../../../src/core/size';
import { FUSE_RATINGS } from '../../../src/core/tables/iso-8820-ratings';
import { assumedFuseType } from '../../../src/core/tables/iso-8820-types';
import { NAMESPACE } from '../../../src/functions/catalogue';
import { DEMO } from '../../../src/sheets/station/demo';
import { MULTIPLES, timesAt } from '../../../src/sheets/protection/fuse-points';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { PROTECTION_FORMULAS, type GuardData } from '../../../src/sheets/protection/formulas';
import {
  PROTECTION_KEYS,
  PROTECTION_SHOWN_KEYS,
} from '../../../src/sheets/station/protection-keys';
import { protectionReferences } from '../../../src/sheets/protection/layout';
import { PROTECTION_WORDS, STATE } from '../../../src/sheets/station/protection-words';
import { scheduleNames } from '../../../src/sheets/station/naming';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { WORD } from '../../../src/sheets/station/verdicts';
import { newSchedule } from '../../../src/sheets/new-schedule';
import type { StationContent } from '../../../src/sheets/station/content';
import { stationValues } from '../../../src/sheets/station-values';
import { sharedCopy } from '../../../src/sheets/shared-copy';

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const OUR_CALL = new RegExp(`\\b${NAMESPACE}\\.[A-Z_]+\\(`, 'g');
const NO_SIZES: GuardData = {
  sizes: 'S',
  areaMm2: 'A',
  ohmsPerM: 'O',
  choose: 'C',
  order: 'P',
  chooseFuseA: 'M',
  metresPer: 'U',
};

const textsOf = (plan: SheetPlan) =>
  plan.blocks
    .flatMap(({ cells }) => (cells ?? []).flat())
    .filter((cell) => typeof cell === 'string');

function rowOf(content: StationContent, run: string) {
  const values = stationValues(content);
  const index = content.runs.findIndex((one) => one.run === run);
  return { ...values.protection.rows[index]!, schedule: values.runs[index]! };
}

describe('the sheet', () => {
  const layout = { names: scheduleNames(), references: 'cells', rows: 30 } as const;

  test('stands fourth in a new schedule, and fifth in a shared workbook, after the page for the crew', () => {
    expect(newSchedule('demo', 'table', NOTHING_TAKEN)[3]!.name).toBe('Protection');
    expect(sharedCopy(DEMO, { rows: 30 }).plans[4]!.name).toBe('Protection');
  });

  test('asks our functions six times a row at most', () => {
    const row = protectionReferences(layout, NO_SIZES, 0);
    // Of the calls that one formula holds in its branches at most one is made.
    const calls = Object.values(PROTECTION_FORMULAS).map(
      (formula) => new Set(formula(row).match(OUR_CALL) ?? []).size,
    );
    expect(calls.reduce((sum, count) => sum + count, 0)).toBeLessThanOrEqual(6);
  });

  test('prints what is shown, has a heading for each column, and none twice', () => {
    const plan = newSchedule('demo', 'table', NOTHING_TAKEN)[3]!;
    expect(plan.print.area.columns).toBe(PROTECTION_SHOWN_KEYS.length);
    const header = plan.blocks.find(({ cells }) => cells?.[0]?.[0] === 'Run')!.cells![0]!;
    expect(new Set(header).size).toBe(PROTECTION_KEYS.length);
  });

  test('says by what it judges, what it assumes and what it does not claim', () => {
    const said = textsOf(sharedCopy(DEMO, { rows: 30 }).plans[4]!).join('\n');
    for (const part of [
      'by the published limits',
      'never an approval',
      'no fuse is promised to open sooner',
      'insert rows above the blank one and copy the last row down',
      'up to 40 A as types C and F',
      'type E fuse of 20 to 40 A may take longer: 1 s at 6 times',
      'from memory',
      'ISO 8820-3',
      'ISO 8820-5',
      '1000 A at 32 V',
      "Check the maker's sheet",
      'one conductor alone',
      'beyond about 5 s',
      'value at writing',
      'Advice, not approval',
    ]) {
      expect(said).toContain(part);
    }
    expect(said).not.toMatch(/\bapproved\b|\bis safe\b/i);
  });

  test('calls the steady heat a value at writing only where no function works it out', () => {
    const said = textsOf(newSchedule('demo', 'cells', NOTHING_TAKEN)[3]!).join('\n');
    expect(said).not.toContain('value at writing');
  });

  test('looks up the same longest times as the function gives', () => {
    for (const { ratingA } of FUSE_RATINGS) {
      const times = timesAt(assumedFuseType(ratingA));
      for (const [index, multiple] of MULTIPLES.entries()) {
        const answer = fuseSeconds(ratingA, ratingA * multiple);
        if (isRefusal(answer)) expect(times[index]).toBeNull();
        else expect(times[index]! / answer).toBeCloseTo(1, 12);
      }
    }
  });
});

describe('the demonstration', () => {
  const { runs, supply } = stationValues(DEMO);
  const verdicts = new Map(DEMO.runs.map(({ run }, index) => [run, runs[index]!.verdict]));

  test.each([
    ['Stile lamp', WORD.fuseTooSlow],
    ['Fog horn', WORD.unfusedTooLong],
    ['Bench inverter', WORD.wattsUnknown],
    ['Bank lamp', WORD.faultTooWeak],
    ['Gauge line', WORD.mayNotBreak],
    ['Case link', WORD.endUnfused],
    ['Van pump', WORD.startFuse],
    ['Case 2 charger', WORD.startVolts],
  ])('%s: %s, and nothing else', (run, word) => {
    expect(verdicts.get(run)).toBe(word);
  });

  test('leaves the ordinary runs of hut, van and cases well', () => {
    for (const run of [
      'Hut trunk',
      'Link radio',
      'Camera',
      'Hut panel',
      'Van feed',
      'Van set B',
      'Case 1 set',
      'Engine link',
      'Case 3 lamp',
      'Bench set',
      'Bench lamp',
    ]) {
      expect(verdicts.get(run), run).toBe('ok');
    }
  });

  test('still tells of the relay set that works from a full battery and not from a low one', () => {
    expect(verdicts.get('Relay set')).toBe(WORD.tooFewVolts);
    expect([supply.cells.fullShort, supply.cells.lowShort]).toEqual([0, 1]);
    const { mend } = rowOf(DEMO, 'Relay set').schedule;
    const size = /^thicker Relay set: (.+)$/.exec(String(mend))![1]!;
    const mended = DEMO.runs.map((run) =>
      run.run === 'Relay set' ? { ...run, ownSize: size } : run,
    );
    expect(rowOf({ ...DEMO, runs: mended }, 'Relay set').schedule.verdict).toBe('ok');
  });

  test('has the name of each run in its row', () => {
    expect(stationValues(DEMO).protection.rows.map(({ run }) => run)).toEqual(
      DEMO.runs.map(({ run }) => run),
    );
  });

  test('says what would put each right', () => {
    const fixes = {
      'Stile lamp': 'its own fuse of 1 A',
      'Gauge line': 'a fuse that breaks 1800 A for 24 V at its source end',
      'Van heater': 'use 10 AWG or thicker',
      'Case 2 charger': 'start of Case 2 pump',
    };
    for (const [run, fix] of Object.entries(fixes)) {
      expect(rowOf(DEMO, run).schedule.mend, run).toBe(fix);
    }
    // A branch without a fuse could also have the wire that the fuse upstream protects.
    expect(rowOf(DEMO, 'Stile lamp').guardedFrom).toBe('use 8 AWG or thicker');
  });

  test.each([
    ['Stile lamp', { fused: 'yes' }],
    ['Bank lamp', { fused: 'yes' }],
    ['Van heater', { ownSize: '10 AWG' }],
    ['Van set A', { ownSize: '8 AWG' }],
    ['Case link', { endFused: 'yes' }],
  ])('%s is put right by it', (run, change: Partial<ScheduleRun>) => {
    const runs = DEMO.runs.map((one) => (one.run === run ? { ...one, ...change } : one));
    expect(rowOf({ ...DEMO, runs }, run).schedule.verdict).toBe('ok');
  });
});

describe('what a run is judged by', () => {
  const station = (runs: readonly ScheduleRun[], milliohms = 20): StationContent => ({
    title: 'Judged',
    rules: { unit: 'm', volts: 12.6 },
    supply: { milliohms },
    runs,
  });

  test('the rested battery, or its own source, over milliohms and the whole path', () => {
    const content = station([
      { run: 'trunk', peak: 8, length: 3, ownSize: '10 AWG' },
      { run: 'branch', fedFrom: 'trunk', peak: 2, length: 4, ownSize: '14 AWG', joints: 5 },
      { run: 'other', peak: 2, length: 4, ownSize: '14 AWG', volts: 24 },
    ]);
    const { runs, supply } = stationValues(content);
    const [trunk, branch, other] = runs.map(({ ohms }) => Number(ohms));
    const [full, low] = [Number(supply.cells.fullRest), Number(supply.cells.lowRest)];
    // Twice the milliohms, and wire at 70 degC where the ohms of the schedule are for 30: the far fault at its weakest.
    const warm = (1 + 0.00393 * 50) / (1 + 0.00393 * 10);
    const [ofTrunk, ofBranch, ofOther] = [
      (trunk! - 0.003) * warm + 0.003,
      (branch! - 0.005) * warm + 0.005,
      (other! - 0.003) * warm + 0.003,
    ];
    expect(rowOf(content, 'branch').farFault).toBeCloseTo(low / (0.04 + ofTrunk + ofBranch), 9);
    // The milliohms are typed, so the near fault counts them as they are.
    expect(rowOf(content, 'branch').nearFault).toBeCloseTo(full / (0.02 + trunk!), 9);
    expect(rowOf(content, 'trunk').nearFault).toBeCloseTo(full / 0.02, 9);
    expect(rowOf(content, 'other').farFault).toBeCloseTo(24 / (0.04 + ofOther), 9);
  });

  test('the fuse upstream where the run has none', () => {
    const content = station([
      { run: 'trunk', peak: 22, length: 3, ownSize: '10 AWG' },
      { run: 'branch', fedFrom: 'trunk', peak: 1, length: 4, ownSize: '10 AWG', fused: 'no' },
    ]);
    // 23 A at 125 % asks for 28.75 A, which 10 AWG may have by NFPA 70 240.4(D).
    expect(rowOf(content, 'branch')).toMatchObject({ fuse: 30, fuseFrom: 'upstream' });
    expect(rowOf(content, 'trunk')).toMatchObject({ fuse: 30, fuseFrom: 'own' });
  });

  test('a bolt-in fuse: no published time, which is no verdict', () => {
    const content = station([{ run: 'big', peak: 120, length: 2, joints: 0.3, unfused: 0.1 }]);
    const big = rowOf(content, 'big');
    expect(big.words).toBe(PROTECTION_WORDS.noTime);
    expect(big.schedule.verdict).toBe('ok');
    expect(rowOf(station(content.runs, 6), 'big').schedule.verdict).toBe(WORD.mayNotBreak);
  });

  test('hotter than its insulation, where it stands in hot air', () => {
    const content = station([{ run: 'hot', peak: 34, length: 2, ownSize: '10 AWG' }]);
    const hot = { ...content, rules: { ...content.rules, insulationC: 60, ambientC: 55 } };
    expect(rowOf(hot, 'hot').words).toContain(WORD.tooHot);
    expect(rowOf(content, 'hot').words).not.toContain(WORD.tooHot);
  });

  test('nothing limits a source without milliohms at its own terminals', () => {
    const row = rowOf(station([{ run: 'stiff', peak: 2, length: 4 }], 0), 'stiff');
    expect(row.nearFault).toBe('no limit');
    expect(row.schedule.verdict).toBe(WORD.mayNotBreak);
  });

  test('what cannot be judged says so, and does not pass for well', () => {
    const chain = ['a', 'b', 'c', 'd', 'e', 'f'].map((run, index, all): ScheduleRun => ({
      run,
      ...(index === 0 ? {} : { fedFrom: all[index - 1]! }),
      peak: 1,
      length: 1,
      ownSize: '6 AWG',
    }));
    expect(rowOf(station(chain.slice(0, 5)), 'e').state).toBe(STATE.judged);
    expect(rowOf(station(chain), 'f').schedule.verdict).toBe(WORD.tooDeep);
    const senseless = { ...station(chain.slice(0, 1)), protection: { startC: 160, limitC: 70 } };
    expect(rowOf(senseless, 'a').schedule.verdict).toBe(WORD.notJudged);
  });

  test('a panel limits its own fault, and blank rows stay quiet', () => {
    const { supply, ...rest } = station([{ run: 'sun', fedFrom: 'panel', peak: 8, length: 5 }, {}]);
    const content = {
      ...rest,
      supply: { ...supply, panelVolts: 17, shortCircuitAmps: 9.5, openCircuitVolts: 21 },
    };
    expect(rowOf(content, 'sun')).toMatchObject({ words: PROTECTION_WORDS.panel, farOpens: '' });
    const blank = stationValues(content).protection.rows[1]!;
    for (const key of PROTECTION_SHOWN_KEYS) expect(blank[key], key).toBe('');
  });
});

test('a panel of which nothing is known has its fuse not judged, and says so', () => {
  const content: StationContent = {
    title: 'Sun',
    supply: { panelVolts: 17, panelTarget: 0.02 },
    runs: [{ run: 'sun', fedFrom: 'panel', peak: 8, length: 5 }],
  };
  expect(rowOf(content, 'sun').schedule.verdict).toBe(WORD.panelMissing);
});

describe('the thinnest guarded size', () => {
  const sizes = SERIES_SIZES['AWG'].map(sizeAreaMm2);

  // What the maker says of a fuse counts where it is more than the last published point too, and never beyond its time.
  test.each([
    [13, undefined, 2],
    [20, undefined, 2],
    [25, undefined, 2],
    [60, undefined, 2],
    [13, 20, 2],
    [13, 12_000, 1],
    [25, 1e6, 2],
  ])(
    'is guarded, and the next thinner is not: %d milliohms, I2t %s',
    (milliohms, i2t, weakTimes) => {
      let mended = 0;
      for (const length of [0.2, 1, 4, 12, 40, 120]) {
        for (const peak of [1, 5, 11, 16]) {
          const run: ScheduleRun = { run: 'thin', peak, length, ownSize: '18 AWG', fused: 'yes' };
          const content: StationContent = {
            title: 'Thin',
            rules: {
              unit: 'm',
              installed: 'air',
              insulationC: 90,
              target: 0.4,
              fuseLimit: 'none',
            },
            supply: { milliohms },
            protection: {
              weakTimes,
              ...(i2t !== undefined && { fuses: [{ i2t, forRun: 'thin' }] }),
            },
            runs: [run],
          };
          const { guarded, fuse, nearFault } = rowOf(content, 'thin');
          const at = parseSize(String(guarded));
          if (guarded === '' || isRefusal(at)) continue;
          mended += 1;
          const isGuarded = (index: number) => {
            const size = SERIES_SIZES['AWG'][index]!;
            const { farFault } = rowOf(
              { ...content, runs: [{ ...run, ownSize: `${sizes[index]} mm2` }] },
              'thin',
            );
            const span = { startC: 70, limitC: 160, material: 'copper' } as const;
            return [farFault, nearFault].every(
              (fault) => fuseGuards(Number(fuse), size, Number(fault), span, i2t) === true,
            );
          };
          const index = sizes.indexOf(sizeAreaMm2(at));
          expect(isGuarded(index), `${milliohms} ${length} ${peak} ${String(guarded)}`).toBe(true);
          expect(isGuarded(index - 1)).toBe(false);
        }
      }
      expect(mended).toBeGreaterThan(2);
    },
  );
});
