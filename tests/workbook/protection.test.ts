/** The Protection sheet without the add-in, cell by cell beside the functions' own values. */
import { beforeAll, describe, expect, it } from 'vitest';
import { FUSE_TYPES } from '../../src/core/tables/iso-8820-types';
import { DEMO } from '../../src/sheets/station/demo';
import { scheduleNames } from '../../src/sheets/station/naming';
import { PROTECTION_COLUMNS } from '../../src/sheets/protection/columns';
import { PROTECTION_CELL_KEYS, PROTECTION_KEYS } from '../../src/sheets/station/protection-keys';
import {
  PROTECTION_ROW,
  protectionCell,
  protectionColumn,
} from '../../src/sheets/protection/layout';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { WORD } from '../../src/sheets/station/verdicts';
import { cellsOf, type WorkbookCells } from './cells';
import { distance, RELATIVE } from './comparison';
import { generatedStations } from './generated-stations';
import { recalculated } from './libreoffice';
import type { StationContent } from '../../src/sheets/station/content';
import { stationValues } from '../../src/sheets/station-values';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';

/** Batteries stiff and weak, spans of heat usual and tight, so that every kind of failing comes up. */
const SOURCES = [
  { supply: { milliohms: 6 } },
  { supply: { milliohms: 40 }, protection: { startC: 90, limitC: 250 } },
  { supply: { milliohms: 250 }, protection: { startC: 150 } },
  { supply: { milliohms: 0 } },
  { supply: { milliohms: 15 }, protection: { startC: 160, limitC: 70 } },
  { supply: { milliohms: 12 } },
] as const;

const GENERATED: readonly StationContent[] = generatedStations({
  stations: SOURCES.length,
  rows: 80,
  watts: false,
}).map((content, index) => {
  const { supply, ...more } = SOURCES[index]!;
  return { ...content, ...more, supply: { ...content.supply, ...supply } };
});

/** Thin wires behind fuses of every type, by themselves and as branches that lean on the fuse of a feeder. */
const thin = (series: string, milliohms: number): StationContent => ({
  title: `Thin, ${series}`,
  rules: { unit: 'm', series, insulationC: 90, installed: 'air' },
  supply: { milliohms },
  runs: [2, 12, 20, 30, 38, 45, 80].flatMap((peak, feeder): ScheduleRun[] => {
    const name = `Feed ${feeder + 1}`;
    const sizes = ['18 AWG', '14 AWG', '4 mm2', '8 AWG'];
    return [
      { run: name, peak, length: 1.5, joints: 1 },
      ...sizes.map((ownSize, index): ScheduleRun => ({
        run: `${name}, branch ${index + 1}`,
        fedFrom: name,
        peak: 0.3,
        length: 2 * 3 ** index + feeder,
        joints: index,
        ownSize,
        fused: index % 2 === 0 ? 'no' : 'yes',
      })),
    ];
  }),
});

const STATIONS: Readonly<Record<string, StationContent>> = {
  demo: DEMO,
  thin1: thin('AWG', 14),
  thin2: thin('AWG all', 22),
  thin3: thin('mm2', 9),
  ...Object.fromEntries(GENERATED.map((content, index) => [`generated${index + 1}`, content])),
};

const names = scheduleNames();

/** Every computed cell of the sheet, and the schedule's own that hang on it. */
function pairsOf(content: StationContent, cells: WorkbookCells) {
  const { protection, runs } = stationValues(content);
  return [
    ...PROTECTION_CELL_KEYS.map((key) => {
      const { row, column } = protectionCell(key);
      return {
        where: key,
        ours: protection.cells[key],
        theirs: cells.at(names.protectionSheet, row, column),
      };
    }),
    ...protection.rows.flatMap((row, index) => [
      ...PROTECTION_KEYS.map((key) => ({
        where: `row ${index + 1}, ${PROTECTION_COLUMNS[key].heading}`,
        ours: row[key],
        theirs: cells.at(
          names.protectionSheet,
          PROTECTION_ROW.first + index,
          protectionColumn(key),
        ),
      })),
      ...(['protection', 'guardedFrom'] as const).map((key) => ({
        where: `row ${index + 1}, schedule ${key}`,
        ours: runs[index]![key],
        theirs: cells.at(names.sheet, ROW.first + index, columnOf(key)),
      })),
    ]),
  ];
}

describe('the Protection sheet of a workbook that needs no add-in', () => {
  let after: Readonly<Record<string, WorkbookCells>> = {};

  beforeAll(async () => {
    const written: Record<string, Uint8Array> = {};
    for (const [name, content] of Object.entries(STATIONS)) {
      const rows = content.runs.length + 2;
      written[name] = await sharedFile(content, { rows });
    }
    const judged = recalculated(written);
    after = Object.fromEntries(
      await Promise.all(
        Object.entries(judged).map(async ([name, bytes]) => [name, await cellsOf(bytes)] as const),
      ),
    );
  }, 300_000);

  it.each(Object.keys(STATIONS))('comes to the same as the functions: %s', (name) => {
    const pairs = pairsOf(STATIONS[name]!, after[name]!);
    expect(pairs.length).toBeGreaterThan(DEMO.runs.length * PROTECTION_KEYS.length);
    const differing = pairs.filter(({ ours, theirs }) => distance(ours, theirs) > RELATIVE);
    expect(
      differing.map(({ where, ours, theirs }) => `${where}: ${JSON.stringify([ours, theirs])}`),
    ).toEqual([]);
  });

  it('has met every kind of failing, and sizes that mend it', () => {
    const rows = Object.values(STATIONS).flatMap(
      (content) => stationValues(content).protection.rows,
    );
    for (const word of [
      WORD.fuseTooSlow,
      WORD.faultTooWeak,
      WORD.mayNotBreak,
      WORD.tooHot,
      WORD.notJudged,
    ]) {
      expect(rows.filter(({ wrong }) => String(wrong).includes(word)).length, word).toBeGreaterThan(
        0,
      );
    }
    const mended = new Set(rows.map(({ guardedFrom }) => guardedFrom));
    expect(mended.size, [...mended].join(', ')).toBeGreaterThan(9);
    const types = new Set(rows.map(({ fuseType }) => fuseType));
    for (const { name } of FUSE_TYPES) expect(types).toContain(name);
  });

  it('stays quiet where the schedule has no run', () => {
    const last = PROTECTION_ROW.first + DEMO.runs.length;
    for (const key of ['run', 'size', 'fuse', 'farFault', 'steady', 'words'] as const) {
      expect(after['demo']!.at(names.protectionSheet, last, protectionColumn(key)) ?? '').toBe('');
    }
  });
});
