/** The As built sheet: readings of finished runs, and whether their joints are sound. */
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, HighlightPlan, SheetPlan } from '../plan/plan';
import { text } from '../plan/formula';
import { runsFollowed } from '../schedule/layout';
import {
  BUILT_CELL_KEYS,
  READING_KEYS,
  type AsBuiltTyped,
  type ReadingKey,
} from '../station/as-built';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import { FOR_RUN, forRunCells } from '../station/for-run';
import type { Layout } from '../station/layout';
import { namedCellBlocks, namedCellEntries } from '../station/named-cells';
import { builtCells } from './cells';
import { BUILT_COLUMNS } from './columns';
import { BUILT_WORDS, builtFormulas, summaryFormula } from './formulas';
import {
  asBuiltName,
  BUILT_KEYS,
  BUILT_ROW as ROW,
  BUILT_SHOWN_KEYS,
  BUILT_WORKING_KEYS,
  builtArea,
  builtCellArea,
  builtColumn,
  builtReferences,
  CELL_PLACES,
  type BuiltKey,
  type BuiltReferences,
} from './layout';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const builtOf = (sheet: string) =>
  `Readings of the finished runs of the sheet "${sheet}". Write the name of the run under "${FOR_RUN.heading}" beside them: they stay in their row when a spreadsheet sorts the runs.`;

const HOW =
  'Read both ends while the load runs, meter leads on the conductors themselves. Do not touch a joint that may be hot; if one is, switch off and cut it out.';

const BUILT_ENTRY_KEYS = ['forRun', ...READING_KEYS] as const;

const isReading = (key: BuiltKey): key is ReadingKey =>
  (READING_KEYS as readonly string[]).includes(key);

function headBlocks(layout: Layout, references: BuiltReferences, typed: AsBuiltTyped): Block[] {
  const cells = builtCells(layout.names.rule);
  return [
    {
      area: area(ROW.title, 0),
      cells: [[EXTRAS.asBuilt.sheetName]],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    {
      area: area(ROW.about, 0, 2, 1),
      cells: [[builtOf(layout.names.sheet)], [HOW]],
      style: QUIET_STYLE,
    },
    ...namedCellBlocks(cells, BUILT_CELL_KEYS, CELL_PLACES, typed.cells ?? {}),
    {
      area: area(ROW.summary, 0),
      cells: [[{ formula: `=${summaryFormula(layout, references)}` }]],
      style: { bold: true },
      afterTable: true,
    },
    {
      area: area(ROW.header, 0, 1, BUILT_KEYS.length),
      cells: [BUILT_KEYS.map((key) => BUILT_COLUMNS[key].heading)],
      style: HEADING_STYLE,
    },
  ];
}

function rowBlocks(
  layout: Layout,
  references: BuiltReferences,
  { asBuilt: typed = {}, runs: named }: StationContent,
): Block[] {
  const rows = runsFollowed(layout);
  const formulas = builtFormulas(layout, references);
  const working = new Set<string>(BUILT_WORKING_KEYS);
  const runs = typed.runs ?? [];
  return BUILT_KEYS.map((key): Block => {
    const of = builtArea(key, rows);
    const style = { ...BUILT_COLUMNS[key].style, border: 'all', atTop: true } as const;
    return key === 'forRun' || isReading(key)
      ? {
          area: of,
          cells:
            key === 'forRun'
              ? forRunCells(rows, runs, named)
              : Array.from({ length: rows }, (_, index) => [runs[index]?.[key] ?? null]),
          style: { ...style, fill: PALETTE.input },
        }
      : {
          area: of,
          fill: [`=${formulas[key]}`],
          style: working.has(key) ? SMALL_STYLE : style,
          afterTable: true,
        };
  });
}

function highlights({ cell }: BuiltReferences, rows: number): HighlightPlan[] {
  const found = (word: string) => `${cell.finding}=${text(word)}`;
  const of = builtArea('verdict', rows);
  return [
    {
      area: of,
      formula: found(BUILT_WORDS.look),
      style: HIGHLIGHT_STYLES.danger,
      meaning: BUILT_WORDS.look,
    },
    {
      area: of,
      formula: `LEN(${cell.wrong})>0`,
      style: HIGHLIGHT_STYLES.unclear,
      meaning: 'readings that cannot be used',
    },
    {
      area: of,
      formula: `OR(${found(BUILT_WORDS.unsure)},${found(BUILT_WORDS.less)})`,
      style: HIGHLIGHT_STYLES.check,
      meaning: `${BUILT_WORDS.unsure}, or less than the wire`,
    },
  ];
}

/** The plan of the As built sheet. */
export function asBuiltSheet(layout: Layout, content: StationContent): SheetPlan {
  const typed = content.asBuilt ?? {};
  const references = builtReferences(layout);
  const rows = runsFollowed(layout);
  const named = layout.names.named(EXTRAS.asBuilt.stem, BUILT_CELL_KEYS);
  return {
    name: asBuiltName(layout.names),
    columnWidths: BUILT_KEYS.map((key) => BUILT_COLUMNS[key].widthChars),
    hiddenColumns: BUILT_WORKING_KEYS.map(builtColumn),
    blocks: [...headBlocks(layout, references, typed), ...rowBlocks(layout, references, content)],
    names: BUILT_CELL_KEYS.map((key) => ({ name: named[key], area: builtCellArea(key) })),
    entries: [
      ...namedCellEntries(builtCells(layout.names.rule), BUILT_CELL_KEYS, CELL_PLACES),
      ...BUILT_ENTRY_KEYS.map((key) => {
        const { heading, note, parameter } = BUILT_COLUMNS[key];
        return entry(builtArea(key, rows), { title: heading, sentences: [note] }, { parameter });
      }),
    ],
    highlights: highlights(references, rows),
    notes: BUILT_KEYS.map((key) => ({
      area: area(ROW.header, builtColumn(key)),
      text: BUILT_COLUMNS[key].note,
    })),
    frozenRows: ROW.first,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 46 },
    print: {
      landscape: true,
      area: area(0, 0, ROW.first + (layout.printedRows ?? rows), BUILT_SHOWN_KEYS.length),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PRINT_FOOTER,
    },
  };
}
