/** The Labels sheet: what is said at either end of a run, and where labels stand on the stock. */
import { describe, expect, it } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { gridTable } from '../../../src/lists/raw-grid';
import { readLabels } from '../../../src/lists/labels';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { LABEL_ROW, labelsName, slotCells, slotsOf } from '../../../src/sheets/labels/layout';
import { drawnStock, typedStock } from '../../../src/sheets/labels/stock';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { openGrids } from '../../lists/open-grids';

const names = scheduleNames();
const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const ROWS = 6;

const STATION: StationContent = {
  title: 'Van',
  rules: { unit: 'm', volts: 12.6 },
  sources: [{ name: 'Van battery', kind: 'battery', ampHours: 95, milliohms: 13, volts: 12.6 }],
  runs: [
    { run: 'Feed', length: 2, ownSize: '10 mm2', unfused: 0.2 },
    {
      run: 'Radio',
      fedFrom: 'Feed',
      load: 'Radio, full power',
      peak: 10,
      length: 1.5,
      ownSize: '6 mm2',
    },
    { run: 'Pump', load: 'Cellar pump', peak: 40, length: 3, ownSize: '0.5 mm2' },
  ],
};

interface Label {
  readonly name: string;
  readonly lines: readonly string[];
}

const copyOf = (content: StationContent, rows = ROWS) =>
  sharedCopy({ ...content, extras: ['labels'] }, { rows }).plans;

/** The places of the stock as one reads. */
function labelsOf(plans: readonly SheetPlan[], content: StationContent, rows = ROWS) {
  const sheets = calculate(plans);
  const shown = (row: number, column: number) => {
    const cell = sheets.at(labelsName(names), row, column);
    if (cell instanceof CellError) throw new Error(`${cell.code} on a label`);
    return String(cell ?? '');
  };
  const stock = drawnStock(content.labels ?? {});
  const slots = slotsOf(stock, { names, references: 'cells', rows });
  const labels = Array.from({ length: slots.pages * slots.perPage }, (_, slot): Label => {
    const { name, text } = slotCells(slots, stock.columns, slot);
    const said = shown(text.row, text.column);
    return { name: shown(name.row, name.column), lines: said === '' ? [] : said.split('\n') };
  });
  return { labels, warning: shown(LABEL_ROW.warning, 0) };
}

describe('the labels of a run', () => {
  const { labels, warning } = labelsOf(copyOf(STATION), STATION);

  it('say at each end what stands at the other, the wire, the fuse and the length', () => {
    expect(labels.slice(0, 4)).toEqual([
      // 10 A in all; the smallest standard fuse for a continuous load of 10 A is 15 A.
      { name: 'Feed', lines: ['to Radio', '10 mm2, fuse 15 A blade after 0.2 m', '2 m'] },
      { name: 'Feed', lines: ['from Van battery', '10 mm2, fuse 15 A blade after 0.2 m', '2 m'] },
      { name: 'Radio', lines: ['to Radio, full power', '6 mm2, fuse 15 A blade', '1.5 m'] },
      { name: 'Radio', lines: ['from Feed', '6 mm2, fuse 15 A blade', '1.5 m'] },
    ]);
  });

  it('do not hide that a run is not well', () => {
    expect(labels.slice(4, 6)).toEqual([
      {
        name: 'Pump',
        lines: ['to Cellar pump', '0.5 mm2, fuse none fits', '3 m', 'NOT OK: danger'],
      },
      {
        name: 'Pump',
        lines: ['from Van battery', '0.5 mm2, fuse none fits', '3 m', 'NOT OK: danger'],
      },
    ]);
  });

  it('end with the last run, and nothing is amiss', () => {
    expect(labels.slice(6).every(({ name, lines }) => name === '' && lines.length === 0)).toBe(
      true,
    );
    expect(warning).toBe('');
  });

  it('are two for each run of the demonstration, in its order, with the add-in and without', () => {
    const rows = DEMO.runs.length;
    const ours = labelsOf(copyOf(DEMO, rows), DEMO, rows).labels;
    const used = ours.filter(({ name }) => name !== '');
    expect(used.map(({ name }) => name)).toEqual(DEMO.runs.flatMap(({ run }) => [run, run]));
    const plans = scheduleSheets({ ...DEMO, extras: ['labels'] }, 'cells', NOTHING_TAKEN);
    const withAddIn = labelsOf(plans, DEMO, rows).labels;
    expect(withAddIn.filter(({ name }) => name !== '')).toEqual(used);
  });

  it('skip rows without a run, and the places already used of the first sheet', () => {
    const runs = [STATION.runs[0]!, {}, ...STATION.runs.slice(1)];
    const content: StationContent = { ...STATION, runs, labels: { cells: { used: 5 } } };
    const { labels: later } = labelsOf(copyOf(content), content);
    expect(later.slice(0, 5).every(({ name }) => name === '')).toBe(true);
    expect(later.slice(5, 12).map(({ name }) => name)).toEqual([
      'Feed',
      'Feed',
      'Radio',
      'Radio',
      'Pump',
      'Pump',
      '',
    ]);
  });
});

it.each(['', 'none', -3])('begin at the first place where %j places are used', (used) => {
  const { labels } = labelsOf(copyOf({ ...STATION, labels: { cells: { used } } }), STATION);
  expect(labels.slice(0, 2).map(({ name }) => name)).toEqual(['Feed', 'Feed']);
});

describe('the stock', () => {
  it('has labels that fill the paper between its margins and gaps', () => {
    // 210 - 2 * 5 - 2 * 2.5 = 195 mm for three; 297 - 12 - 15 - 6 * 3 = 252 mm for seven.
    const stock = typedStock({
      cells: { columns: 3, rows: 7, left: 5, right: 5, across: 2.5, top: 12, bottom: 15, down: 3 },
    })!;
    expect([stock.labelWidthMm, stock.labelHeightMm]).toEqual([65, 36]);
    // Usually 210 / 3 and (297 - 17) / 8.
    const usual = typedStock({})!;
    expect([usual.labelWidthMm, usual.labelHeightMm]).toEqual([70, 35]);
  });

  it.each([
    { columns: 0 },
    { rows: 2.5 },
    { top: 290 },
    { left: -1 },
    { columns: 'three' },
    { paper: 'A0' },
    { widths: 3 },
    { columns: 12, across: 20 },
  ])('cannot be %o; the usual is drawn, and the sheet says so', (cells) => {
    expect(typedStock({ cells })).toBeUndefined();
    const content: StationContent = { ...STATION, labels: { cells } };
    const { labels, warning } = labelsOf(copyOf(content), content);
    expect(warning).toContain('not drawn for the figures above');
    expect(labels[0]!.name).toBe('Feed');
  });

  it('is followed by the drawing of the next copy, and typed figures are read back', () => {
    const cells = {
      columns: 2,
      rows: 5,
      across: 4,
      down: 2,
      top: 10,
      bottom: 10,
      paper: 'Letter',
      used: 1,
    };
    const content: StationContent = { ...STATION, labels: { cells } };
    const plans = copyOf(content);
    const { labels, warning } = labelsOf(plans, content);
    expect(warning).toBe('');
    expect(labels.slice(1, 3).map(({ name }) => name)).toEqual(['Feed', 'Feed']);
    const grids = openGrids(
      scheduleSheets({ ...content, extras: ['labels'] }, 'cells', NOTHING_TAKEN),
    );
    expect(readLabels(grids.map(gridTable), names.sheet)?.cells).toMatchObject(cells);
  });

  it('prints no more sheets than there are labels for', () => {
    const printed = (content: StationContent) =>
      copyOf(content).find(({ name }) => name === labelsName(names))!.print;
    const { area, stock } = printed(STATION);
    expect(area.rows).toBe(stock!.rowsPerPage);
    const many = {
      ...STATION,
      runs: Array.from({ length: 13 }, (_, at) => ({ ...STATION.runs[1]!, run: `r${at}` })),
    };
    // 26 labels on sheets of 24.
    expect(printed(many).area.rows).toBe(2 * stock!.rowsPerPage);
    const runs = STATION.runs;
    // 6 labels and 20 places used.
    expect(printed({ ...STATION, runs, labels: { cells: { used: 20 } } }).area.rows).toBe(
      2 * stock!.rowsPerPage,
    );
  });
});
