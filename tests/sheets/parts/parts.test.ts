/** The Parts sheet: rows judged by hand, what is wrong said in its row, with and without the add-in alike. */
import { describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../../src/hosts/xlsx/write';
import { readRuns } from '../../../src/lists/read-runs';
import { cellsInOrder } from '../../../src/lists/row-order';
import { CellError, type Cell } from '../../../src/functions/cell';
import { addInSheets } from '../../../src/sheets/book';
import { calculate } from '../../../src/sheets/calculate/calculate';
import {
  AT_END,
  CONTACT_WRONG,
  HOT_WORDS,
  LIST_THEM,
  NO_MILLIOHMS,
  PARTS_WRONG,
  UNKNOWN_KIND,
} from '../../../src/sheets/parts/formulas';
import {
  contactArea,
  CONTACT_COLUMN_KEYS,
  FUSE_KEYS,
  LINES,
  PART_RUN_KEYS,
  PARTS_ROW,
  partsName,
} from '../../../src/sheets/parts/layout';
import { PART_RUN_COLUMNS } from '../../../src/sheets/parts/columns';
import { scheduleSheets } from '../../../src/sheets/new-schedule';
import { FORMER_CONTACT_HEADING } from '../../../src/sheets/station/former';
import { openGrids } from '../../lists/open-grids';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import type { StationContent } from '../../../src/sheets/station/content';
import { DEMO } from '../../../src/sheets/station/demo';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { PARTS_IN_A_HURRY } from './parts-in-a-hurry';

const NAMES = scheduleNames();

function shown(cell: Cell): string | number {
  if (cell instanceof CellError) throw new Error(`${cell.code} on the Parts sheet`);
  return typeof cell === 'number' ? cell : String(cell ?? '');
}

type Shown<Key extends string> = Readonly<Record<Key, string | number>>;

function read(plans: readonly SheetPlan[], runs: number) {
  const sheets = calculate(plans);
  const at = (row: number, column: number) => shown(sheets.at(partsName(NAMES), row, column));
  const record = <Key extends string>(keys: readonly Key[], row: number, from = 0) =>
    Object.fromEntries(keys.map((key, index) => [key, at(row, from + index)])) as Shown<Key>;
  const lines = Array.from({ length: LINES }, (_, line) => PARTS_ROW.firstLine + line);
  return {
    missing: at(PARTS_ROW.missing, 0),
    fuses: lines.map((row) => record(FUSE_KEYS, row)).filter(({ kind }) => kind !== ''),
    contacts: lines.map((row) => record(CONTACT_COLUMN_KEYS, row, contactArea('name').column)),
    runs: Array.from({ length: runs }, (_, run) => record(PART_RUN_KEYS, PARTS_ROW.firstRun + run)),
  };
}

/** With the add-in; the copy without must show the same. */
function partsOf(content: StationContent, extraRows = 2) {
  const wanted: StationContent = { ...content, extras: ['parts'] };
  const rows = content.runs.length + extraRows;
  const found = read(addInSheets({ names: NAMES, references: 'cells', rows }, wanted), rows);
  const copied = read(sharedCopy(wanted, { rows }).plans, rows);
  const rounded = (value: unknown) =>
    JSON.parse(
      JSON.stringify(value, (_, one: unknown) =>
        typeof one === 'number' ? Number(one.toPrecision(9)) : one,
      ),
    ) as unknown;
  expect(rounded(copied)).toEqual(rounded(found));
  return found;
}

const PIN = { name: 'Pin', thinnest: '0.5 mm2', thickest: '1.5 mm2', amps: 8, milliohms: 0.8 };
const PLUG = { name: 'Plug', thinnest: '1.5 mm2', thickest: '4 mm2', amps: 30, milliohms: 0.6 };
const LUG = { name: 'Lug', thinnest: '6 mm2', thickest: '16 mm2', amps: 70 };

const VAN: StationContent = {
  title: 'Van',
  rules: { unit: 'm', volts: 12.6, series: 'mm2', fuseLimit: 'none', target: 0.1 },
  supply: { chemistry: 'lead-acid', ampHours: 90, milliohms: 15 },
  parts: { cells: { holder: 2, perEnd: 1, spares: 2 }, contacts: [PIN, PLUG, LUG] },
  runs: [],
};
const run = (name: string, peak: number, ownSize: string, others: object = {}) => ({
  run: name,
  peak,
  length: 2,
  ownSize,
  unfused: 0.1,
  ...others,
});

describe('the contact of a run', () => {
  it('is the first of the table that takes its wire and bears its amps, sums with the fuse', () => {
    const { runs, contacts, missing } = partsOf({
      ...VAN,
      runs: [
        run('Radio', 20, '4 mm2'),
        run('Lamp', 5, '1.5 mm2'),
        run('Heater', 10, '1.5 mm2'),
        run('Pump', 15, '10 mm2'),
      ],
    });
    expect(runs.slice(0, 4).map(({ taken }) => taken)).toEqual(['Plug', 'Pin', 'Plug', 'Lug']);
    // Four plugs of 0.6 and a fuse with its holder of 2: 4.4 mohm, at 20 A 1.76 W.
    expect(runs[0]).toMatchObject({ pieces: 4, farTaken: 'Plug', planned: 3, fuse: 25 });
    expect(runs[0]).toMatchObject({ kind: 'blade' });
    expect(runs[0]!.sum).toBeCloseTo(4.4, 9);
    expect(runs[0]!.heat).toBeCloseTo(1.76, 9);
    expect(runs[0]!.says).toBe('the schedule counts 3 mΩ: write 4.4 under "Joints mΩ" there');
    // Without milliohms no sum.
    expect(runs[3]).toMatchObject({ sum: '', heat: '', says: '' });
    expect(contacts.slice(0, 4).map(({ used, says }) => [used, says])).toEqual([
      [4, ''],
      [8, ''],
      [4, NO_MILLIOHMS],
      ['', ''],
    ]);
    expect(missing).toBe('');
    expect(runs[4]).toMatchObject({ run: '', says: '' });
  });

  it('counts one conductor with a chassis return, no holder without a fuse, two with one at each end', () => {
    const { runs } = partsOf({
      ...VAN,
      parts: { ...VAN.parts, cells: { holder: 2, perEnd: 2, spares: 0 } },
      runs: [
        run('Body', 5, '1.5 mm2', { returns: 'chassis' }),
        run('Trunk', 0, '4 mm2', { peak: undefined }),
        run('Leaning', 5, '1.5 mm2', { fedFrom: 'Trunk', fused: 'no' }),
        run('Link', 5, '1.5 mm2', { endFused: 'yes' }),
      ].map((one) => JSON.parse(JSON.stringify(one)) as typeof one),
    });
    // Two contacts at each end: 4 or 8 pins of 0.8, and 1, 0 or 2 fuses of 2.
    expect(runs[0]).toMatchObject({ pieces: 4, sum: 4 * 0.8 + 2 });
    expect(runs[2]).toMatchObject({ pieces: 8, fuse: 'none', kind: '', sum: 8 * 0.8 });
    expect(runs[3]!.sum).toBeCloseTo(8 * 0.8 + 4, 9);
  });

  it('shows no planned figure where what is typed for it is no number', () => {
    const { runs } = partsOf({ ...VAN, runs: [run('Radio', 20, '4 mm2', { joints: 'two' })] });
    expect(runs[0]).toMatchObject({ run: 'Radio', planned: '' });
  });

  it('agrees with the schedule where its sum stands there', () => {
    const { runs } = partsOf({ ...VAN, runs: [run('Radio', 20, '4 mm2', { joints: 4.4 })] });
    expect(runs[0]!.says).toBe('');
  });
});

describe('the contacts of the two ends of a run', () => {
  const ends = (sourceEnd: string | undefined, farEnd: string | undefined) => ({
    ...VAN.parts,
    contacts: [PIN, PLUG, { ...LUG, milliohms: 0.2 }],
    runs: [{ ...(sourceEnd && { sourceEnd }), ...(farEnd && { farEnd }) }],
  });
  const PLUGGED = { ...PLUG, thickest: '6 mm2' };

  it('add up, each with its own milliohms, and are counted at their ends', () => {
    const parts = { ...ends('Lug', 'Plug'), contacts: [PIN, PLUGGED, { ...LUG, milliohms: 0.2 }] };
    const { runs, contacts } = partsOf({ ...VAN, parts, runs: [run('Radio', 20, '6 mm2')] });
    expect(runs[0]).toMatchObject({ taken: 'Lug', farTaken: 'Plug', pieces: 4 });
    // Two lugs of 0.2, two plugs of 0.6, a fuse with its holder of 2.
    expect(runs[0]!.sum).toBeCloseTo(3.6, 9);
    expect(contacts.slice(0, 3).map(({ used }) => used)).toEqual([0, 2, 2]);
  });

  it.each([
    // On 6 mm2, whose first contact that fits is the lug.
    ['Plug', undefined, AT_END.source + PARTS_WRONG.smaller],
    [undefined, 'Plug', AT_END.far + PARTS_WRONG.smaller],
    ['Lug', 'Pin', `${AT_END.far}${PARTS_WRONG.smaller}; ${PARTS_WRONG.underrated}`],
    ['Plug', 'Plug', AT_END.both + PARTS_WRONG.smaller],
    [
      'Plug',
      'Bolt',
      `${AT_END.source}${PARTS_WRONG.smaller}; ${AT_END.far}${PARTS_WRONG.notListed}`,
    ],
    ['Lug', undefined, ''],
  ])('%s and %s: %s', (source, far, word) => {
    const { runs, missing } = partsOf({
      ...VAN,
      parts: ends(source, far),
      // Two contacts of 0.2 at either end and 2 of the fuse.
      runs: [run('Siren', 9, '6 mm2', { joints: 2.8 })],
    });
    expect(runs[0]!.says).toBe(word);
    expect(runs[0]!.sum === '').toBe(word !== '');
    expect(String(missing).includes('1 run has a contact that may grow hot')).toBe(word !== '');
  });

  it('are said of one end where the table has none for the other', () => {
    const parts = { ...ends(undefined, 'Lug'), contacts: [PIN, LUG] };
    const { runs } = partsOf({ ...VAN, parts, runs: [run('Radio', 20, '4 mm2')] });
    expect(runs[0]!.says).toBe(
      `${AT_END.source}${PARTS_WRONG.noneTakes}; ${AT_END.far}${PARTS_WRONG.larger}`,
    );
  });
});

describe('what is wrong with a contact', () => {
  const typed = (contact: string) => ({
    ...VAN.parts,
    runs: [{ sourceEnd: contact, farEnd: contact }],
  });

  it.each([
    // A thin pin on a thick wire, with more amps than it bears.
    ['Pin', 9, '4 mm2', `${PARTS_WRONG.smaller}; ${PARTS_WRONG.underrated}`],
    ['Pin', 7, '4 mm2', PARTS_WRONG.smaller],
    ['pin', 9, '1.5 mm2', PARTS_WRONG.underrated],
    ['Plug', 1, '1 mm2', PARTS_WRONG.larger],
    ['Bolt', 1, '1 mm2', PARTS_WRONG.notListed],
    // At its limits it may be used.
    ['Pin', 8, '1.5 mm2', ''],
    ['Plug', 30, '4 mm2', ''],
  ])('typed %s at %d A in %s: %s', (contact, amps, size, word) => {
    const { runs, missing } = partsOf({
      ...VAN,
      parts: typed(contact),
      runs: [run('Siren', amps, size, { joints: 5.2 })],
    });
    const says = String(runs[0]!.says);
    if (word === '') expect(Object.values(PARTS_WRONG)).not.toContain(says);
    else {
      expect(says).toBe(AT_END.both + word);
      expect(runs[0]!.sum).toBe('');
    }
    const isHot = HOT_WORDS.some((hot) => word.includes(hot));
    expect(String(missing).includes('may grow hot')).toBe(isHot);
    expect(String(missing).includes('no contact that may be used')).toBe(word !== '' && !isHot);
  });

  it('is said where none of the table does', () => {
    const { runs, missing } = partsOf({
      ...VAN,
      runs: [
        run('Winch', 60, '35 mm2'),
        run('Stove', 31, '4 mm2'),
        run('Dark', 5, ''),
        { run: 'Far', peak: 3 },
      ].map((one) => JSON.parse(JSON.stringify(one)) as ReturnType<typeof run>),
    });
    expect(runs[0]!.says).toBe(PARTS_WRONG.noneTakes);
    expect(runs[1]!.says).toBe(PARTS_WRONG.noneBears);
    expect(runs[3]!.says).toBe(PARTS_WRONG.noSize);
    expect(missing).toBe('3 runs have no contact that may be used: see their rows below. ');
  });

  it('is said where the table is empty, and of a head that cannot be used', () => {
    const radio = [run('Radio', 20, '4 mm2')];
    const empty = partsOf({ ...VAN, parts: {}, runs: radio });
    expect(empty.runs[0]!.says).toBe(PARTS_WRONG.noneYet);
    expect(empty.missing).toBe(LIST_THEM);
    const bad = partsOf({
      ...VAN,
      parts: { ...VAN.parts, cells: { holder: 'some' } },
      runs: radio,
    });
    expect(bad.runs[0]).toMatchObject({ says: PARTS_WRONG.badHead, sum: '' });
  });

  it('gives way to a verdict that is to be read first', () => {
    const { runs } = partsOf({ ...VAN, runs: [run('Radio', 29, '2.5 mm2', { length: 40 })] });
    expect(runs[0]).toMatchObject({ taken: 'Plug' });
    expect(runs[0]!.says).toMatch(/^its verdict is "(danger|fails)": read it before you buy$/);
  });
});

describe('a row of the table of contacts', () => {
  it('says why it is not taken', () => {
    const { contacts, runs } = partsOf({
      ...VAN,
      parts: PARTS_IN_A_HURRY,
      runs: [
        run('a', 1, '0.75 mm2'),
        run('b', 1, '10 AWG'),
        run('c', 1, '10 AWG'),
        run('d', 1, '10 AWG'),
        run('e', 1, '12 AWG'),
      ],
    });
    expect(contacts.map(({ says }) => says).filter((says) => says !== '')).toEqual([
      NO_MILLIOHMS,
      CONTACT_WRONG.noName,
      CONTACT_WRONG.twice,
      CONTACT_WRONG.twice,
      CONTACT_WRONG.noThinnest,
      CONTACT_WRONG.noThickest,
      CONTACT_WRONG.crossed,
      CONTACT_WRONG.noAmps,
      CONTACT_WRONG.badMilliohms,
    ]);
    // A bare number in the table is a gauge; names are the same in upper and lower case.
    expect(runs[4]!.taken).toBe('Plug');
    expect(runs[1]!.taken).toBe('Lug');
    expect(runs[2]!.says).toBe(AT_END.both + PARTS_WRONG.notListed);
    expect(runs[3]!.says).toBe(AT_END.source + PARTS_WRONG.notWhole);
  });
});

describe('fuses to buy', () => {
  it('are counted by kind and rating, with both ends, main fuses and spares', () => {
    const { fuses } = partsOf({
      ...VAN,
      supply: { ...VAN.supply, mainFuse: 150, mainFuseKind: 'bolt-in', mainCable: '50 mm2' },
      protection: { fuses: [{}, { kind: 'high-breaking' }, {}, { kind: 'clay' }] },
      runs: [
        run('a', 8, '1.5 mm2'),
        run('b', 8, '1.5 mm2'),
        run('c', 8, '1.5 mm2', { endFused: 'yes' }),
        run('d', 16, '4 mm2'),
        run('e', 16, '4 mm2', { fused: 'no' }),
      ],
    });
    // 8 A for hours want 10 A, 16 A want 20 A.
    expect(fuses).toEqual([
      { kind: 'blade', rating: 10, fitted: 3, spare: 2, toBuy: 5, holders: 3 },
      { kind: 'bolt-in', rating: 150, fitted: 1, spare: 2, toBuy: 3, holders: 1 },
      { kind: 'high-breaking', rating: 10, fitted: 1, spare: 2, toBuy: 3, holders: 1 },
      { kind: UNKNOWN_KIND, rating: 20, fitted: 1, spare: 2, toBuy: 3, holders: 1 },
    ]);
  });

  it('count 7.5 A as itself', () => {
    const { fuses } = partsOf({ ...VAN, runs: [run('a', 5.5, '1.5 mm2')] });
    expect(fuses.map(({ rating }) => rating)).toEqual([7.5]);
  });
});

describe('what is typed', () => {
  it('is read back from a written copy, and moves with its runs', async () => {
    const content: StationContent = { ...DEMO, extras: ['parts'] };
    const { plans, values } = sharedCopy(content);
    const report = await readRuns(await writeWorkbook(plans, values), 'copy.xlsx');
    expect(report.extras).toEqual(['parts']);
    expect(report.parts?.contacts).toEqual(DEMO.parts?.contacts);
    expect(report.parts?.runs).toEqual(DEMO.parts?.runs);
    expect(report.parts?.cells).toEqual({ holder: 2, perEnd: 1, spares: 2 });
  });

  describe('on a former sheet, which has one contact for both ends', () => {
    const far = PART_RUN_COLUMNS.farMine.heading;
    /** With the one heading that it had. */
    const asFormerly = (plan: SheetPlan): SheetPlan => ({
      ...plan,
      blocks: plan.blocks
        .filter(({ cells }) => cells?.[0]?.[0] !== far)
        .map(({ cells, ...block }) => ({
          ...block,
          ...(cells && {
            cells:
              cells[0]?.[0] === PART_RUN_COLUMNS.mine.heading ? [[FORMER_CONTACT_HEADING]] : cells,
          }),
        })),
    });
    const content: StationContent = {
      ...VAN,
      extras: ['parts'],
      parts: { ...VAN.parts, runs: [{ sourceEnd: 'Pin' }, {}, { sourceEnd: 'Lug' }] },
      runs: [run('a', 1, '1 mm2'), run('b', 1, '4 mm2'), run('c', 1, '10 mm2')],
    };

    it('is read for either end', async () => {
      const { plans, values } = sharedCopy(content);
      const file = await writeWorkbook(plans.map(asFormerly), values);
      const { parts } = await readRuns(file, 'copy.xlsx');
      expect(parts?.runs).toEqual([
        { sourceEnd: 'Pin', farEnd: 'Pin' },
        {},
        { sourceEnd: 'Lug', farEnd: 'Lug' },
      ]);
    });

    it('moves with its run', () => {
      const sheets = scheduleSheets(content, 'cells', { sheets: new Set(), names: new Set() });
      const moved = cellsInOrder(openGrids(sheets.map(asFormerly)), NAMES.sheet, [2, 1, 0]);
      const [parts] = moved.filter(({ sheetName }) => sheetName === partsName(NAMES));
      expect(parts?.cells.map(({ content: typed }) => typed)).toEqual(['Lug', 'Pin']);
    });
  });

  it('keeps empty rows of the table, and words where figures belong', async () => {
    const content: StationContent = {
      ...VAN,
      parts: PARTS_IN_A_HURRY,
      extras: ['parts'],
      runs: [run('a', 1, '4 mm2')],
    };
    const { plans, values } = sharedCopy(content);
    const report = await readRuns(await writeWorkbook(plans, values), 'copy.xlsx');
    expect(report.parts?.contacts).toEqual(PARTS_IN_A_HURRY.contacts);
  });
});

describe('the demonstration', () => {
  it('shows a contact that may grow hot, a size without one, and sums that differ', () => {
    const { runs, missing } = partsOf(DEMO);
    const said = (name: string) => runs[DEMO.runs.findIndex((one) => one.run === name)]!.says;
    expect(said('Van siren')).toBe(
      `${AT_END.far}${PARTS_WRONG.smaller}; ${PARTS_WRONG.underrated}`,
    );
    expect(said('Van feed')).toBe(PARTS_WRONG.noneTakes);
    expect(said('Van set B')).toContain('under "Joints mΩ" there');
    expect(missing).toContain('1 run has a contact that may grow hot');
  });
});
