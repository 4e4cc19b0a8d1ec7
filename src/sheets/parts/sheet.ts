/** The Parts sheet of a schedule: fuses and holders to buy, contacts and lugs, and what each run takes of them. */
import { sizeAreaMm2 } from '../../core/size';
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent, SheetPlan } from '../plan/plan';
import { runsFollowed } from '../schedule/layout';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { namedCellBlocks, namedCellEntries } from '../station/named-cells';
import {
  CONTACT_KEYS,
  PARTS_CELL_KEYS,
  type PartsTyped,
  type RunContactKey,
} from '../station/parts';
import { PARTS_CELLS } from './cells';
import { COLUMN_WIDTHS, CONTACT_COLUMNS, FUSE_COLUMNS, PART_RUN_COLUMNS } from './columns';
import {
  contactFormulas,
  fuseFormulas,
  partRunFormulas,
  partsMissingFormula,
  partsWorkingFormulas,
} from './formulas';
import { partsHighlights } from './highlights';
import {
  CELL_PLACES,
  CONTACT_COLUMN_KEYS,
  contactArea,
  FUSE_KEYS,
  fuseColumn,
  knownSizes,
  LINES,
  PART_RUN_KEYS,
  partRunArea,
  partRunColumn,
  PARTS_ROW as ROW,
  PARTS_WORKING_COLUMNS,
  PARTS_WORKING_KEYS,
  partsCellArea,
  partsName,
  partsReferences,
  partsWorkingArea,
  type PartRunKey,
  type PartsReferences,
} from './layout';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const partsOf = (sheet: string) =>
  `Parts of the runs on the sheet "${sheet}". Green cells are yours: list your contacts and lugs with the figures of their makers; all else follows the schedule. A contact must take its wire and bear its amps.`;

type Known = ReturnType<typeof knownSizes>;

function headBlocks(layout: Layout, references: PartsReferences, typed: PartsTyped): Block[] {
  return [
    {
      area: area(ROW.title, 0),
      cells: [[EXTRAS.parts.sheetName]],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    { area: area(ROW.about, 0), cells: [[partsOf(layout.names.sheet)]], style: QUIET_STYLE },
    ...namedCellBlocks(PARTS_CELLS, PARTS_CELL_KEYS, CELL_PLACES, typed.cells ?? {}),
    {
      area: area(ROW.missing, 0),
      cells: [[{ formula: `=${partsMissingFormula(layout, references)}` }]],
      style: { bold: true, fontColour: PALETTE.danger },
      afterTable: true,
    },
  ];
}

function fuseBlocks(references: PartsReferences): Block[] {
  const formulas = fuseFormulas(references);
  return FUSE_KEYS.flatMap((key): Block[] => {
    const { heading, style } = FUSE_COLUMNS[key];
    return [
      { area: area(ROW.header, fuseColumn(key)), cells: [[heading]], style: HEADING_STYLE },
      {
        area: area(ROW.firstLine, fuseColumn(key), LINES, 1),
        fill: [`=${formulas[key]}`],
        style: { ...style, border: 'all' },
        afterTable: true,
      },
    ];
  });
}

/** What is typed of a run, by the column that it is typed in. */
const RUN_ENTRIES = {
  mine: 'sourceEnd',
  farMine: 'farEnd',
} as const satisfies Partial<Record<PartRunKey, RunContactKey>>;
const isRunEntry = (key: PartRunKey): key is keyof typeof RUN_ENTRIES => key in RUN_ENTRIES;

const isContactEntry = (key: string): key is (typeof CONTACT_KEYS)[number] =>
  (CONTACT_KEYS as readonly string[]).includes(key);

function contactBlocks(references: PartsReferences, { contacts = [] }: PartsTyped): Block[] {
  const formulas = contactFormulas(references);
  return CONTACT_COLUMN_KEYS.flatMap((key): Block[] => {
    const { heading, style } = CONTACT_COLUMNS[key];
    const of = contactArea(key);
    const contentOf = (place: number): CellContent =>
      isContactEntry(key) ? (contacts[place]?.[key] ?? null) : null;
    return [
      { area: area(ROW.header, of.column), cells: [[heading]], style: HEADING_STYLE },
      isContactEntry(key)
        ? {
            area: of,
            cells: Array.from({ length: LINES }, (_, place) => [contentOf(place)]),
            style: { ...style, border: 'all', fill: PALETTE.input },
          }
        : {
            area: of,
            fill: [`=${formulas[key]}`],
            style: { ...style, border: 'all' },
            afterTable: true,
          },
    ];
  });
}

function runBlocks(layout: Layout, references: PartsReferences, { runs = [] }: PartsTyped) {
  const rows = runsFollowed(layout);
  const formulas = partRunFormulas(layout, references);
  return PART_RUN_KEYS.flatMap((key): Block[] => {
    const { heading, style } = PART_RUN_COLUMNS[key];
    const of = partRunArea(key, rows);
    return [
      { area: area(ROW.runHeader, of.column), cells: [[heading]], style: HEADING_STYLE },
      isRunEntry(key)
        ? {
            area: of,
            cells: Array.from({ length: rows }, (_, index) => [
              runs[index]?.[RUN_ENTRIES[key]] ?? null,
            ]),
            style: { ...style, border: 'all', fill: PALETTE.input },
          }
        : {
            area: of,
            fill: [`=${formulas[key]}`],
            style: { ...style, border: 'all' },
            afterTable: true,
          },
    ];
  });
}

function workingBlocks(layout: Layout, references: PartsReferences, known: Known): Block[] {
  const formulas = partsWorkingFormulas(layout, references);
  return PARTS_WORKING_KEYS.flatMap((key): Block[] => {
    const of = partsWorkingArea(key, layout, known.length);
    const heading: Block = {
      area: area(of.row - 1, of.column),
      cells: [[key]],
      style: SMALL_STYLE,
    };
    if (key === 'sizeName' || key === 'sizeMm2') {
      const cells = known.map(({ size, name }) => [key === 'sizeName' ? name : sizeAreaMm2(size)]);
      const format = key === 'sizeName' ? { numberFormat: '@' } : {};
      return [heading, { area: of, cells, style: { ...SMALL_STYLE, ...format } }];
    }
    return [
      heading,
      { area: of, fill: [`=${formulas[key]}`], style: SMALL_STYLE, afterTable: true },
    ];
  });
}

/** The plan of the Parts sheet. */
export function partsSheet(layout: Layout, content: StationContent): SheetPlan {
  const typed = content.parts ?? {};
  const known = knownSizes([
    ...content.runs.flatMap(({ ownSize }) => (ownSize === undefined ? [] : [ownSize])),
    ...(typed.contacts ?? []).flatMap(({ thinnest, thickest }) =>
      [thinnest, thickest].flatMap((size) => (size === undefined ? [] : [String(size)])),
    ),
  ]);
  const references = partsReferences(layout, known.length);
  const rows = runsFollowed(layout);
  const named = layout.names.named(EXTRAS.parts.stem, PARTS_CELL_KEYS);
  const names = contactArea('name');
  return {
    name: partsName(layout.names),
    columnWidths: [...COLUMN_WIDTHS, 3, ...PARTS_WORKING_KEYS.map(() => 7)],
    hiddenColumns: PARTS_WORKING_COLUMNS,
    blocks: [
      ...headBlocks(layout, references, typed),
      ...fuseBlocks(references),
      ...contactBlocks(references, typed),
      ...runBlocks(layout, references, typed),
      ...workingBlocks(layout, references, known),
    ],
    names: PARTS_CELL_KEYS.map((key) => ({ name: named[key], area: partsCellArea(key) })),
    entries: [
      ...namedCellEntries(PARTS_CELLS, PARTS_CELL_KEYS, CELL_PLACES),
      ...CONTACT_KEYS.map((key) => {
        const { heading, note, parameter } = CONTACT_COLUMNS[key];
        // Sizes are texts; numbers alone are bounded.
        const bounded = key === 'amps' || key === 'milliohms' ? { parameter } : {};
        return entry(contactArea(key), { title: heading, sentences: [note] }, bounded);
      }),
      ...PART_RUN_KEYS.filter(isRunEntry).map((key) => {
        const { heading, note } = PART_RUN_COLUMNS[key];
        const told = { title: heading, sentences: [note] };
        return { ...entry(partRunArea(key, rows), told, {}), choicesFrom: names };
      }),
    ],
    highlights: partsHighlights(references, rows),
    notes: [
      ...FUSE_KEYS.map((key) => ({
        area: area(ROW.header, fuseColumn(key)),
        text: FUSE_COLUMNS[key].note,
      })),
      ...CONTACT_COLUMN_KEYS.map((key) => ({
        area: area(ROW.header, contactArea(key).column),
        text: CONTACT_COLUMNS[key].note,
      })),
      ...PART_RUN_KEYS.map((key) => ({
        area: area(ROW.runHeader, partRunColumn(key)),
        text: PART_RUN_COLUMNS[key].note,
      })),
    ],
    frozenRows: 0,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 30, [ROW.runHeader]: 30 },
    print: {
      landscape: true,
      area: area(0, 0, ROW.firstRun + (layout.printedRows ?? rows), PART_RUN_KEYS.length),
      repeatRows: { first: ROW.runHeader, last: ROW.runHeader },
      footer: PRINT_FOOTER,
    },
  };
}
