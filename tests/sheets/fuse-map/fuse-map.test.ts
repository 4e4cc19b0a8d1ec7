/** The Fuse map: fuses block by block in the order of their positions, by hand. */
import { describe, expect, it } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { gridTable } from '../../../src/lists/raw-grid';
import { readFuseMap } from '../../../src/lists/fuse-map';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { MAP_COLUMNS } from '../../../src/sheets/fuse-map/columns';
import { MAP_WORDS } from '../../../src/sheets/fuse-map/formulas';
import {
  fuseMapName,
  MAP_KEYS,
  MAP_ROW,
  mapColumn,
  type MapKey,
} from '../../../src/sheets/fuse-map/layout';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { CREW_ROW, crewColumn, type CrewKey } from '../../../src/sheets/crew/layout';
import { stationDiagram } from '../../../src/sheets/station-diagram';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { readHeading } from '../../../src/lists/headings';
import { openGrids } from '../../lists/open-grids';

const names = scheduleNames();
const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };

/** Two blocks, runs of theirs mixed, one that leans on its feeder, one without a wire that fits. */
const STATION: StationContent = {
  title: 'Van',
  rules: { unit: 'm', volts: 12.6 },
  sources: [{ name: 'Van battery', kind: 'battery', chemistry: 'lead-acid', ampHours: 95 }],
  runs: [
    { run: 'Feed', load: 'Rear rack', length: 2, unfused: 0.1 },
    { run: 'Radio', fedFrom: 'Feed', load: 'Radio, full power', peak: 20, length: 1.5 },
    { run: 'Pump', load: 'Cellar pump', peak: 6, length: 3, unfused: 0.1 },
    {
      run: 'Lamp',
      fedFrom: 'Feed',
      load: 'Lamp',
      peak: 1,
      length: 1,
      fused: 'no',
      ownSize: '4 mm2',
    },
    { run: 'Fan', fedFrom: 'Feed', load: 'Fan', peak: 2, length: 2 },
    { run: 'Winch', load: 'Winch', peak: 300, length: 40, unfused: 0.1 },
  ],
};

type Line = Readonly<Record<MapKey, unknown>>;

/** The printed lines down to the last with something in it. */
function linesOf(plans: readonly SheetPlan[]): readonly Line[] {
  const sheets = calculate(plans);
  const lines = Array.from({ length: 12 }, (_, line) =>
    Object.fromEntries(
      MAP_KEYS.map((key) => {
        const value = sheets.at(fuseMapName(names), MAP_ROW.first + line, mapColumn(key));
        if (value instanceof CellError) throw new Error(`${value.code} under ${key}`);
        return [key, value ?? ''];
      }),
    ),
  ) as unknown as Line[];
  return lines.slice(
    0,
    lines.findLastIndex((line) => Object.values(line).some((value) => value !== '')) + 1,
  );
}

const copyOf = (content: StationContent) =>
  sharedCopy({ ...content, extras: ['fuseMap'] }, { rows: 10 }).plans;
const withAddIn = (content: StationContent) =>
  scheduleSheets({ ...content, extras: ['fuseMap'] }, 'cells', NOTHING_TAKEN);

const placesOf = (lines: readonly Line[]) =>
  lines.map(({ block, position, run }) => [block, position, run]);

describe('the Fuse map', () => {
  it.each([
    ['without the add-in', copyOf],
    ['with it', withAddIn],
  ])('has the fuses block by block, numbered in the order of the schedule, %s', (_, plansOf) => {
    const lines = linesOf(plansOf(STATION));
    expect(placesOf(lines)).toEqual([
      ['Van battery', 1, 'Feed'],
      ['Van battery', 2, 'Pump'],
      ['Van battery', 3, 'Winch'],
      ['Feed', 1, 'Radio'],
      ['Feed', 2, 'Fan'],
    ]);
    expect(lines.map(({ load }) => load)).toEqual([
      'Rear rack',
      'Cellar pump',
      'Winch',
      'Radio, full power',
      'Fan',
    ]);
    // 125 % of 23, 6, 20 and 2 A, and the next standard rating.
    expect(lines.map(({ rating }) => rating)).toEqual([30, 7.5, 'none fits', 25, 3]);
    expect(lines.map(({ kind }) => kind)).toEqual(['blade', 'blade', '', 'blade', 'blade']);
    expect(lines[2]!.says).toBe('NOT OK: fails');
  });

  it('puts positions that are typed in their order, and asks for those that are missing or there twice', () => {
    const runs = [
      { position: '3' },
      { position: 'A' },
      { position: '1' },
      {},
      {},
      { position: '3' },
    ];
    const lines = linesOf(copyOf({ ...STATION, fuseMap: { runs } }));
    expect(placesOf(lines)).toEqual([
      ['Van battery', '1', 'Pump'],
      ['Van battery', '3', 'Feed'],
      ['Van battery', '3', 'Winch'],
      ['Feed', 'A', 'Radio'],
      ['Feed', '?', 'Fan'],
    ]);
    const told = (words: string) =>
      lines.filter(({ says }) => String(says).endsWith(words)).map(({ run }) => run);
    expect(told(MAP_WORDS.twice)).toEqual(['Feed', 'Winch']);
    expect(told(MAP_WORDS.none)).toEqual(['Fan']);
    expect(lines[2]!.says).toBe('NOT OK: fails; position twice in block');
  });

  describe('of fuses at far ends', () => {
    const station = (fuseMap: StationContent['fuseMap'] = {}): StationContent => ({
      ...STATION,
      fuseMap,
      sources: [
        ...STATION.sources!,
        { name: 'Engine', kind: 'alternator', mostAmps: 60 },
        { name: 'Case', kind: 'battery', chemistry: 'LiFePO4', ampHours: 20 },
      ],
      runs: [
        { run: 'Radio', load: 'Radio', peak: 20, length: 1.5, unfused: 0.1 },
        {
          run: 'Link',
          fedFrom: 'Engine',
          peak: 30,
          length: 2,
          fused: 'no',
          endsAt: 'Van battery',
          endFused: 'yes',
        },
        { run: 'Charge', peak: 8, length: 3, unfused: 0.1, endsAt: 'Case', endFused: 'yes' },
      ],
    });

    it.each([
      ['without the add-in', copyOf],
      ['with it', withAddIn],
    ])('has them in the blocks where they sit, %s', (_, plansOf) => {
      const lines = linesOf(plansOf(station()));
      expect(
        lines.map(({ block, position, run, load, rating }) => [block, position, run, load, rating]),
      ).toEqual([
        // 125 % of 20, 30 and 8 A, and the next standard rating.
        ['Van battery', 1, 'Radio', 'Radio', 25],
        ['Van battery', 2, 'Link, far end', 'Engine', 40],
        ['Van battery', 3, 'Charge', 'Case', 10],
        ['Case', 1, 'Charge, far end', 'Van battery', 10],
      ]);
    });

    it('puts them at the positions that are typed for them, and reads these back', () => {
      const runs = [{ position: '2' }, { farPosition: '1' }, { position: '3', farPosition: 'A' }];
      const plans = copyOf(station({ runs }));
      expect(placesOf(linesOf(plans))).toEqual([
        ['Van battery', '1', 'Link, far end'],
        ['Van battery', '2', 'Radio'],
        ['Van battery', '3', 'Charge'],
        ['Case', 'A', 'Charge, far end'],
      ]);
      const read = readFuseMap(openGrids(plans).map(gridTable), 'Run schedule');
      expect(read).toEqual(new Map(runs.entries()));
    });
  });

  it('agrees with the Crew sheet and the drawing on every fuse of the demonstration', () => {
    const plans = sharedCopy({ ...DEMO, extras: ['fuseMap'] }).plans;
    const sheets = calculate(plans);
    const at = (sheet: string, row: number, column: number) =>
      String(sheets.at(sheet, row, column) ?? '');
    const rows = Array.from({ length: 2 * DEMO.runs.length }, (_, row) => row);
    const mapped = new Map(
      rows.map((row) => {
        const of = (key: MapKey) => at(fuseMapName(names), MAP_ROW.first + row, mapColumn(key));
        return [of('run'), of('kind') === '' ? of('rating') : `${of('rating')} A ${of('kind')}`];
      }),
    );
    mapped.delete('');
    const crew = new Map(
      Array.from({ length: 200 }, (_, row) => {
        const of = (key: CrewKey) => at(names.crewSheet, CREW_ROW.first + row, crewColumn(key));
        return [of('run'), of('fuse')] as const;
      }),
    );
    let fuses = 0;
    for (const { name, fuse, endFuse } of stationDiagram(DEMO).runs) {
      const said = crew.get(name)!;
      const [near, far] = [mapped.get(name), mapped.get(`${name}, far end`)];
      expect(near === undefined, name).toBe(fuse === undefined);
      expect(far === undefined, name).toBe(endFuse === undefined);
      if (near !== undefined) expect(said.startsWith(near), `${name}: ${said}, ${near}`).toBe(true);
      if (far !== undefined) expect(said).toMatch(/, (far end|both ends)$/);
      if (far !== undefined) expect(said.startsWith(far), `${name}: ${said}, ${far}`).toBe(true);
      for (const [drawn, of] of [
        [fuse, near],
        [endFuse, far],
      ]) {
        if (drawn === undefined) continue;
        fuses += 1;
        const [rating] = /^(none fits|[\d.]+ A)/.exec(drawn)!;
        expect(of?.startsWith(rating), `${name}: ${drawn}, ${of}`).toBe(true);
      }
    }
    expect(mapped.size).toBe(fuses);
    expect(fuses).toBe(23);
  });

  it('gives back the positions that were typed', () => {
    const runs = [{ position: '3' }, {}, { position: 'B2' }];
    const plans = copyOf({ ...STATION, fuseMap: { runs } });
    const read = readFuseMap(openGrids(plans).map(gridTable), 'Run schedule');
    expect([...(read ?? [])]).toEqual([
      [0, { position: '3' }],
      [2, { position: 'B2' }],
    ]);
    expect(readFuseMap(openGrids(sharedCopy(STATION).plans).map(gridTable), 'Run schedule')).toBe(
      undefined,
    );
  });

  it('has no heading that a list of runs could have', () => {
    expect(readHeading('Load').is).toBe('typed');
    for (const { heading } of Object.values(MAP_COLUMNS)) {
      expect(readHeading(heading).is, heading).toBe('unknown');
    }
  });
});
