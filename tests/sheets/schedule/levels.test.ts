/** Five levels, counted apart and coloured apart, on the screen and on paper. */
import { describe, expect, test } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { addInSheets } from '../../../src/sheets/book';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { area } from '../../../src/sheets/plan/area';
import { HIGHLIGHT_STYLES } from '../../../src/sheets/plan/highlight-styles';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import { LEGEND } from '../../../src/sheets/rules/sheet';
import { scheduleHighlights } from '../../../src/sheets/schedule/highlights';
import { columnOf, ROW } from '../../../src/sheets/schedule/layout';
import { readSchedule, countLevels } from '../../../src/sheets/schedule/reading';
import { scheduleSheet } from '../../../src/sheets/schedule/sheet';
import { stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { type ColumnKey } from '../../../src/sheets/station/schedule-keys';
import { LEVELS, VERDICTS, WORD } from '../../../src/sheets/station/verdicts';

const names = scheduleNames();
const layout = (rows: number) => ({ names, references: 'cells' as const, rows });
const planOf = (content: StationContent) => scheduleSheet(layout(content.runs.length), content);

/** A station with a run of every level: an overloaded one, a starved one, one without length, good ones. */
const MIXED: StationContent = {
  title: 'Mixed',
  runs: [
    { run: 'Hot', peak: 40, length: 1, ownSize: '14 AWG' },
    { run: 'Far', peak: 5, length: 60, ownSize: '10 AWG' },
    { run: 'Unmeasured', peak: 5 },
    { run: 'Sound', peak: 5, length: 3 },
    {},
    { run: 'Also sound', peak: 2, length: 3 },
  ],
};

/** The sentence of counts over the schedule. */
function countsSaid(content: StationContent): string {
  return String(stationValues(content).sheets.at(names.sheet, ROW.title, columnOf('verdict')));
}

/** The figure before each level's word; a level that no run has is not named. */
function countsOn(content: StationContent) {
  const said = countsSaid(content);
  return Object.fromEntries(
    LEVELS.map((level) => [level, Number(new RegExp(`(\\d+) ${level}`).exec(said)?.[1] ?? 0)]),
  );
}

describe('levels are counted apart', () => {
  test.each([
    ['the demonstration', DEMO],
    ['a mixed station', MIXED],
  ])('in the head of the schedule: %s', (_, content) => {
    const station = stationValues(content);
    const levels = station.runs.map(({ level }) => level);
    const counts = countsOn(content);
    for (const [index, level] of LEVELS.entries()) {
      expect(counts[level], level).toBe(levels.filter((one) => one === index + 1).length);
    }
    const judged = levels.filter((level) => level !== '').length;
    expect(countsSaid(content)).toMatch(new RegExp(`^${judged} runs: `));
    expect(Object.values(counts).reduce((sum: number, count) => sum + Number(count), 0)).toBe(
      judged,
    );
  });

  test('with what is left to confirm neither among the good nor the bad', () => {
    expect(countsOn(MIXED)).toEqual({ danger: 1, fails: 1, unclear: 1, check: 2, ok: 0 });
    const stated = { ...MIXED, supply: { chemistry: 'lead-acid', ampHours: 20 } };
    expect(countsOn(stated)).toMatchObject({ check: 0 });
  });

  test('as the reader of a sheet counts them', () => {
    const { sheets } = stationValues(MIXED);
    const values = Array.from({ length: ROW.first + MIXED.runs.length }, (_, row) =>
      Array.from({ length: columnOf('level') + 1 }, (_unused, column) => {
        const cell = sheets.at(names.sheet, row, column);
        return cell instanceof CellError ? cell.code : cell;
      }),
    );
    expect(countLevels(readSchedule(values)!)).toEqual(countsOn(MIXED));
  });

  test('and share no cell with anything else of the head', () => {
    const { blocks, hiddenColumns = [] } = planOf(MIXED);
    const texts = blocks.flatMap(({ area: of, cells }) =>
      of.row < ROW.header
        ? (cells ?? []).flatMap((row, down) =>
            row.flatMap((content, right) =>
              content === null ? [] : [`${of.row + down} ${of.column + right}`],
            ),
          )
        : [],
    );
    const inSight = texts.filter((at) => !hiddenColumns.includes(Number(at.split(' ')[1])));
    expect(inSight).toHaveLength(4);
    expect(new Set(texts).size).toBe(texts.length);
  });
});

describe('levels are coloured apart', () => {
  const highlights = scheduleHighlights(10);
  const ofVerdict = highlights.filter(({ area }) => area.column === columnOf('verdict'));

  test('every one but ok, gravest first', () => {
    expect(ofVerdict.map(({ meaning }) => meaning)).toEqual(LEVELS.slice(0, -1));
    const fills = ofVerdict.map(({ style }) => style.fill);
    expect(new Set(fills).size).toBe(fills.length);
  });

  test('and said in words, so that a print without colours tells them too', () => {
    const words = Object.values(VERDICTS).map(({ word }) => word);
    expect(new Set(words).size).toBe(words.length);
    expect(words).not.toContain('');
  });

  test('with their meanings in the verdicts’ own words', () => {
    const meanings = highlights.map(({ meaning }) => meaning);
    for (const key of ['heat', 'fuse', 'drop', 'tooFewVolts'] as const) {
      expect(meanings).toContain(WORD[key]);
    }
  });

  /** What the highlights of a column come to in the first row. */
  function heldIn(key: ColumnKey, content: StationContent) {
    const [schedule, ...others] = addInSheets(layout(content.runs.length), content);
    const own = scheduleHighlights(1).filter(({ area: of }) => of.column === columnOf(key));
    const aside = columnOf('level') + 20;
    const cells = [own.map(({ formula }) => ({ formula: `=${formula}` }))];
    const block = { area: area(ROW.first, aside, 1, own.length), cells };
    const sheets = calculate([{ ...schedule!, blocks: [...schedule!.blocks, block] }, ...others]);
    return own.flatMap(({ meaning }, index) =>
      sheets.at(names.sheet, ROW.first, aside + index) === true ? [meaning] : [],
    );
  }

  test('a fuse as a danger where no fuse protects the wire, and not where an entry cannot be read', () => {
    const one = (run: StationContent['runs'][number]) =>
      heldIn('fuse', { title: 'One', runs: [run] });
    expect(one({ run: 'Thin', peak: 40, length: 1, ownSize: '18 AWG' })).toEqual([WORD.fuse]);
    expect(one({ run: 'Far', peak: 'much', length: 6 })).toEqual([]);
    expect(one({ run: 'Sound', peak: 5, length: 3 })).toEqual([]);
  });

  test('a drop where the target is held against it: to the load, or in each run', () => {
    const far = { title: 'Far', runs: [{ run: 'Far', peak: 5, length: 60, ownSize: '10 AWG' }] };
    const near = { title: 'Near', runs: [{ run: 'Near', peak: 5, length: 33, ownSize: '10 AWG' }] };
    for (const [content, meaning] of [
      [far, WORD.drop],
      [near, 'close to the drop target'],
    ] as const) {
      const each = { ...content, rules: { counts: 'in each run' } };
      expect(heldIn('pathDrop', content)).toEqual([meaning]);
      expect(heldIn('dropShare', content)).toEqual([]);
      expect(heldIn('pathDrop', each)).toEqual([]);
      expect(heldIn('dropShare', each)).toEqual([meaning]);
    }
    expect(heldIn('verdict', far)).toEqual(['fails']);
    expect(heldIn('verdict', near)).toEqual(['check']);
  });

  test('and explained in the legend, which is printed', () => {
    const plan = addInSheets(layout(DEMO.runs.length), DEMO)[1]!;
    const legend = layBlocks(plan.blocks).filter(({ content }) =>
      LEGEND.some(({ text }) => text === content),
    );
    const inLegend = legend.map(({ style }) => style?.fill);
    for (const { fill } of Object.values(HIGHLIGHT_STYLES)) expect(inLegend).toContain(fill);
    const { area: printed } = plan.print;
    for (const { column } of legend) expect(column).toBeLessThan(printed.column + printed.columns);
    for (const { row } of legend) expect(row).toBeLessThan(printed.row + printed.rows);
  });
});

describe('a battery that is only assumed', () => {
  const told = (content: StationContent) =>
    stationValues(content).sheets.at(names.sheet, ROW.title, columnOf('size'));

  test('is explained once at the top, with what its fuses would have to break', () => {
    const breaks = Math.round(Number(stationValues(MIXED).supply.cells.breakAmps));
    expect(breaks).toBeGreaterThan(100);
    expect(told(MIXED)).toBe(
      `Battery assumed (100 Ah lead-acid): a fuse right at it would have to break ${breaks} A. Describe yours on the Supply sheet.`,
    );
    expect(told(DEMO)).toBe('');
  });
});
