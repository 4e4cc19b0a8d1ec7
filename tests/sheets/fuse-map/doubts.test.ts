/** What the Fuse map shows where something is in doubt: its colours, a run that is not judged yet, a kind not given. */
import { describe, expect, it } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { MAP_WORDS } from '../../../src/sheets/fuse-map/formulas';
import { fuseMapName, MAP_KEYS, MAP_ROW, mapColumn } from '../../../src/sheets/fuse-map/layout';
import { columnArea } from '../../../src/sheets/schedule/layout';
import { area } from '../../../src/sheets/plan/area';
import type { Block, SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { StationContent } from '../../../src/sheets/station/content';
import { scheduleNames } from '../../../src/sheets/station/naming';

const names = scheduleNames();
const MAP = fuseMapName(names);
const LINES = 6;

/** 253 A in a dead short, which any blade breaks. */
const BANK = { name: 'Bank', kind: 'battery', chemistry: 'lead-acid', milliohms: 50 } as const;

const plansOf = (content: StationContent) =>
  sharedCopy({ ...content, extras: ['fuseMap'] }, { rows: 10 }).plans;

/** The plans with one more block on a sheet, above all that stands there. */
const withBlock = (plans: readonly SheetPlan[], sheet: string, block: Block) =>
  plans.map((plan) => (plan.name === sheet ? { ...plan, blocks: [...plan.blocks, block] } : plan));

/** The printed lines that have a run, as texts by the key of their column. */
function linesOf(plans: readonly SheetPlan[]) {
  const sheets = calculate(plans);
  return Array.from({ length: LINES }, (_, line) => {
    const told = MAP_KEYS.map((key) => {
      const value = sheets.at(MAP, MAP_ROW.first + line, mapColumn(key));
      return [key, value instanceof CellError ? value.code : String(value ?? '')] as const;
    });
    return Object.fromEntries(told) as Record<(typeof MAP_KEYS)[number], string>;
  }).filter(({ run }) => run !== '');
}

describe('the Fuse map', () => {
  const sound = { peak: 1, length: 2, unfused: 0.1 } as const;

  it('marks what its last column says of a fuse, and nothing where that is empty', () => {
    // 10 A through 80 m of 12 AWG (5.2 mOhm per m) lose 4 V; 20 A are more than 18 AWG bears; one position stands twice.
    const content: StationContent = {
      title: 'Hut',
      sources: [BANK],
      runs: [
        { run: 'Radio', ...sound },
        { run: 'Gate', peak: 10, length: 40, unfused: 0.1, ownSize: '12 AWG' },
        { run: 'Pump', peak: 20, length: 2, unfused: 0.1, ownSize: '18 AWG' },
        { run: 'Lamp', ...sound },
        { run: 'Fan', ...sound },
      ],
      fuseMap: { runs: ['1', '2', '3', '4', '4'].map((position) => ({ position })) },
    };
    const plans = plansOf(content);
    const { highlights } = plans.find(({ name }) => name === MAP)!;
    const ofSays = highlights.filter((one) => one.area.column === mapColumn('says'));
    expect(ofSays.map(({ meaning }) => meaning)).toEqual([
      'a fuse whose run is in danger',
      'a fuse whose run is not ok, or whose position is not clear',
    ]);
    // Beside the sheet's own columns, each highlight as the formula of a cell.
    const aside = 60;
    const coloured = ofSays.reduce<readonly SheetPlan[]>(
      (all, { formula }, at) =>
        withBlock(all, MAP, {
          area: area(MAP_ROW.first, aside + at, LINES, 1),
          fill: [`=${formula}`],
        }),
      plans,
    );
    const sheets = calculate(coloured);
    const marks = linesOf(plans).map(({ run, says }, line) => [
      run,
      says,
      ...ofSays.map((_, at) => sheets.at(MAP, MAP_ROW.first + line, aside + at)),
    ]);
    expect(marks).toEqual([
      ['Radio', '', false, false],
      ['Gate', 'NOT OK: fails', false, true],
      ['Pump', 'NOT OK: danger', true, true],
      ['Lamp', MAP_WORDS.twice, false, true],
      ['Fan', MAP_WORDS.twice, false, true],
    ]);
  });

  it('keeps its lines where the verdict of one run is an error, and says that this one is not clear', () => {
    const content: StationContent = {
      title: 'Hut',
      sources: [BANK],
      runs: [
        { run: 'Radio', ...sound },
        { run: 'Lamp', ...sound },
        { run: 'Fan', ...sound },
      ],
    };
    const level = columnArea('level', 10);
    const busy = withBlock(plansOf(content), names.sheet, {
      area: area(level.row + 1, level.column),
      cells: [[{ formula: '=NA()' }]],
    });
    expect(linesOf(busy).map(({ run, says }) => [run, says])).toEqual([
      ['Radio', ''],
      ['Lamp', 'NOT OK: unclear'],
      ['Fan', ''],
    ]);
  });

  it('takes the kind by the rating where nobody says it, in the house or of the fuse', () => {
    // 125 % of 1 and 110 A: 2 A, a blade, and 150 A, bolted in.
    const kinds = (fuseKind: string) =>
      linesOf(
        plansOf({
          title: 'Hut',
          sources: [BANK],
          protection: { fuseKind },
          runs: [
            { run: 'Radio', ...sound },
            { run: 'Inverter', peak: 110, length: 1, unfused: 0.1 },
          ],
        }),
      ).map(({ rating, kind }) => [rating, kind]);
    const byRating = [
      ['2', 'blade'],
      ['150', 'bolt-in'],
    ];
    expect(kinds('by rating')).toEqual(byRating);
    expect(kinds('')).toEqual(byRating);
    expect(kinds('bolt-in')).toEqual([
      ['2', 'bolt-in'],
      ['150', 'bolt-in'],
    ]);
  });
});
