/** The Crew sheet: one page for whoever lays the wires, those that are not ok on top with their fix. */
import { area, cellAddress } from '../plan/area';
import { CREW_FOOTER } from '../plan/cautions';
import { LEVEL_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellStyle, HighlightPlan, SheetPlan } from '../plan/plan';
import { perLayout, type Layout } from '../station/layout';
import { LEVELS } from '../station/verdicts';
import { headFormulas, printedFormulas, workingFormulas } from './formulas';
import {
  CREW_KEYS,
  CREW_ROW,
  CREW_WORKING_KEYS,
  crewColumn,
  crewReferences,
  HEAD_AREAS,
  lineCount,
  linesToPrint,
  PAGE_LINES,
  workingArea,
  WORKING_COLUMNS,
  type CrewKey,
  type CrewWorkingKey,
} from './layout';

/** Large enough to be read at arm's length at the scale that the page is printed at. */
const TYPE_SIZE_PT = 10.6;
const LINE_HEIGHT_PT = 13.5;

const COLUMNS: Readonly<
  Record<
    CrewKey,
    { readonly heading: string; readonly widthChars: number; readonly style?: CellStyle }
  >
> = {
  done: { heading: 'Done', widthChars: 6, style: { align: 'centre' } },
  run: { heading: 'Run', widthChars: 15.5, style: { bold: true } },
  route: { heading: 'From → to; what is wrong, and the fix', widthChars: 50 },
  length: { heading: 'How long', widthChars: 7.5, style: { align: 'centre' } },
  wire: { heading: 'Wire', widthChars: 9, style: { align: 'centre', bold: true } },
  fuse: {
    heading: 'Fuse, at the from end unless said',
    widthChars: 19,
    style: { align: 'centre' },
  },
  volts: {
    heading: 'Volts at load',
    widthChars: 7,
    style: { align: 'centre', numberFormat: '0.0 "V"' },
  },
};

/** Words that print in grey as they do in colour. */
const LEVEL_WORDS = LEVELS.map((level) =>
  level === 'ok' ? '' : level === 'check' ? level : level.toUpperCase(),
);

/** What the columns that count down begin with. */
const SEEDS: Readonly<Partial<Record<CrewWorkingKey, number>>> = {
  count1: 0,
  count2: 0,
  count3: 0,
  count4: 0,
  count5: 0,
  begins: 1,
  lines: 0,
  of: 0,
};

function headBlocks(layout: Layout): Block[] {
  const { title, summary, warning, counts, all, used, wanted } = headFormulas(layout);
  const line = (row: number, formula: string, style: CellStyle): Block => ({
    area: area(row, 0),
    cells: [[{ formula: `=${formula}` }]],
    style,
    afterTable: true,
  });
  const ahead = LEVELS.map((_, index) => {
    const { row, column } = HEAD_AREAS.ahead;
    const [before, counted] = [row, HEAD_AREAS.counts.row].map((of) =>
      cellAddress(of, column + index - 1),
    );
    return index === 0 ? 0 : { formula: `=${before}+${counted}` };
  });
  const single = (key: 'all' | 'used' | 'wanted', formula: string): Block => ({
    area: HEAD_AREAS[key],
    cells: [[{ formula: `=${formula}` }]],
    style: SMALL_STYLE,
    afterTable: true,
  });
  return [
    line(CREW_ROW.title, title, { bold: true, fontSizePt: 16, fontColour: PALETTE.title }),
    line(CREW_ROW.summary, summary, { fontSizePt: TYPE_SIZE_PT }),
    line(CREW_ROW.warning, warning, {
      bold: true,
      fontColour: PALETTE.danger,
      fontSizePt: TYPE_SIZE_PT,
    }),
    { area: HEAD_AREAS.words, cells: [LEVEL_WORDS], style: SMALL_STYLE },
    {
      area: HEAD_AREAS.counts,
      cells: [counts.map((formula) => ({ formula: `=${formula}` }))],
      style: SMALL_STYLE,
      afterTable: true,
    },
    { area: HEAD_AREAS.ahead, cells: [ahead], style: SMALL_STYLE, afterTable: true },
    single('all', all),
    single('used', used),
    single('wanted', wanted),
    { area: HEAD_AREAS.printed, cells: [[lineCount(layout)]], style: SMALL_STYLE },
  ];
}

function lineBlocks(layout: Layout): Block[] {
  const formulas = printedFormulas(layout);
  return CREW_KEYS.map((key) => ({
    area: area(CREW_ROW.first, crewColumn(key), lineCount(layout), 1),
    fill: [`=${formulas[key]}`],
    style: { fontSizePt: TYPE_SIZE_PT, shrink: true, ...COLUMNS[key].style },
    afterTable: true,
  }));
}

function workingBlocks(layout: Layout): Block[] {
  const formulas = workingFormulas(layout);
  return CREW_WORKING_KEYS.flatMap((key): Block[] => {
    const of = workingArea(key, layout);
    return [
      {
        area: area(CREW_ROW.header, of.column),
        cells: [[SEEDS[key] ?? key]],
        style: SMALL_STYLE,
      },
      { area: of, fill: [`=${formulas[key]}`], style: SMALL_STYLE, afterTable: true },
    ];
  });
}

/** Lines of what is wrong in the colour of their level; every second run on a light ground, to lead the eye. */
function highlights(layout: Layout): HighlightPlan[] {
  const { cell } = crewReferences(layout);
  const lines = lineCount(layout);
  const said = area(CREW_ROW.first, crewColumn('run'), lines, 2);
  return [
    ...LEVELS.flatMap((level, index): HighlightPlan[] =>
      level === 'ok'
        ? []
        : [
            {
              area: said,
              formula: `AND(${cell.line}>0,${cell.ofLevel}=${index + 1})`,
              style: { ...LEVEL_STYLES[level], bold: false },
              meaning: `what is wrong: ${level}`,
            },
          ],
    ),
    {
      area: area(CREW_ROW.first, 0, lines, CREW_KEYS.length),
      formula: `AND(${cell.of}>0,${cell.of}=2*INT(${cell.of}/2))`,
      style: { fill: PALETTE.band },
      meaning: 'every second run',
    },
  ];
}

/** The plan of the Crew sheet; how much of it is printed follows from what its lines come to (see forLines). */
export const crewSheet = perLayout((layout): SheetPlan => {
  const lines = lineCount(layout);
  return {
    name: layout.names.crewSheet,
    columnWidths: [
      ...CREW_KEYS.map((key) => COLUMNS[key].widthChars),
      3,
      ...CREW_WORKING_KEYS.map(() => 6),
    ],
    hiddenColumns: WORKING_COLUMNS,
    blocks: [
      ...headBlocks(layout),
      {
        area: area(CREW_ROW.header, 0, 1, CREW_KEYS.length),
        cells: [CREW_KEYS.map((key) => COLUMNS[key].heading)],
        style: { ...HEADING_STYLE, fontSizePt: TYPE_SIZE_PT },
      },
      ...lineBlocks(layout),
      ...workingBlocks(layout),
    ],
    names: [],
    entries: [],
    highlights: highlights(layout),
    notes: [],
    frozenRows: CREW_ROW.first,
    frozenColumns: 0,
    rowHeightsPt: {
      [CREW_ROW.title]: 24,
      [CREW_ROW.header]: 30,
      ...Object.fromEntries(
        Array.from({ length: lines }, (_, line) => [CREW_ROW.first + line, LINE_HEIGHT_PT]),
      ),
    },
    print: printFor(lines),
  };
});

function printFor(printed: number): SheetPlan['print'] {
  return {
    landscape: false,
    area: area(0, 0, CREW_ROW.first + printed, CREW_KEYS.length),
    repeatRows: { first: CREW_ROW.header, last: CREW_ROW.header },
    footer: CREW_FOOTER,
    pagesHigh: Math.ceil(printed / PAGE_LINES),
  };
}

/** How many lines of the sheet are printed. */
export function linesPrinted({ print }: SheetPlan): number {
  return print.area.rows - CREW_ROW.first;
}

/** The sheet with so many of its lines printed. */
export function printing(plan: SheetPlan, lines: number): SheetPlan {
  return {
    ...plan,
    blocks: [...plan.blocks, { area: HEAD_AREAS.printed, cells: [[lines]] }],
    print: printFor(lines),
  };
}

/** The sheet with as much of it printed as so many lines want, where it has them. */
export function forLines(plan: SheetPlan, wanted: number): SheetPlan {
  return printing(plan, Math.min(linesToPrint(wanted), linesPrinted(plan)));
}
