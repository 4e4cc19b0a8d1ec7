/** The Fuse map: the fuses of each block by their positions, for the lid of the box. */
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { text } from '../plan/formula';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, SheetPlan } from '../plan/plan';
import { runsFollowed } from '../schedule/layout';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { FuseMapTyped, PositionKey } from '../station/fuse-map';
import type { Layout } from '../station/layout';
import { MAP_COLUMNS } from './columns';
import { MAP_WORDS, mapFormulas, mapWarning, mapWorkingFormulas } from './formulas';
import {
  fuseMapName,
  MAP_KEYS,
  MAP_ROW as ROW,
  MAP_WORKING_COLUMNS,
  MAP_WORKING_KEYS,
  mapArea,
  mapColumn,
  mapReferences,
  PLACE_KEYS,
  type MapKey,
  type MapReferences,
  type PlaceKey,
} from './layout';

/** How a line begins whose run is in danger. */
const DANGER = `${MAP_WORDS.notOk}danger`;

/** Fuses that a page takes in print that is readable at a fuse block. */
const PAGE_FUSES = 36;

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const mapOf = (sheet: string) =>
  `Fuses of the runs on the sheet "${sheet}", block by block, far ends too. Main fuses are on the Supply sheet. Pull a fuse only with its load switched off.`;

/** What is typed of a run, by the column that it is typed in. */
const TYPED = {
  own: 'position',
  ownFar: 'farPosition',
} as const satisfies Partial<Record<PlaceKey, PositionKey>>;
const isTyped = (key: MapKey | PlaceKey): key is keyof typeof TYPED => key in TYPED;

function shownBlocks(layout: Layout, references: MapReferences, typed: FuseMapTyped): Block[] {
  const formulas = mapFormulas(layout, references);
  const runs = typed.runs ?? [];
  return [...MAP_KEYS, ...PLACE_KEYS].map((key): Block => {
    const of = mapArea(key, layout);
    const style = { ...MAP_COLUMNS[key].style, border: 'all' } as const;
    return isTyped(key)
      ? {
          area: of,
          cells: Array.from({ length: of.rows }, (_, index) => [runs[index]?.[TYPED[key]] ?? null]),
          style: { ...style, fill: PALETTE.input },
        }
      : { area: of, fill: [`=${formulas[key]}`], style, afterTable: true };
  });
}

/** The plan of the Fuse map. */
export function fuseMapSheet(layout: Layout, content: StationContent): SheetPlan {
  const references = mapReferences(layout);
  const { cell } = references;
  const workings = mapWorkingFormulas(layout, references);
  const { rows } = mapArea('block', layout);
  const atFarEnds = content.runs.filter(
    ({ endFused }) => endFused?.trim().toLowerCase() === 'yes',
  ).length;
  const printed = (layout.printedRows ?? runsFollowed(layout)) + atFarEnds;
  const headed = [...MAP_KEYS, ...PLACE_KEYS];
  return {
    name: fuseMapName(layout.names),
    columnWidths: [
      ...MAP_KEYS.map((key) => MAP_COLUMNS[key].widthChars),
      3,
      ...PLACE_KEYS.map((key) => MAP_COLUMNS[key].widthChars),
      3,
      ...MAP_WORKING_KEYS.map(() => 7),
    ],
    hiddenColumns: MAP_WORKING_COLUMNS,
    blocks: [
      {
        area: area(ROW.title, 0),
        cells: [[EXTRAS.fuseMap.sheetName]],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      { area: area(ROW.about, 0), cells: [[mapOf(layout.names.sheet)]], style: QUIET_STYLE },
      {
        area: area(ROW.warning, 0),
        cells: [[{ formula: `=${mapWarning(layout)}` }]],
        style: { bold: true, fontColour: PALETTE.danger },
        afterTable: true,
      },
      ...headed.map((key): Block => ({
        area: area(ROW.header, mapColumn(key)),
        cells: [[MAP_COLUMNS[key].heading]],
        style: HEADING_STYLE,
      })),
      ...shownBlocks(layout, references, content.fuseMap ?? {}),
      ...MAP_WORKING_KEYS.map((key): Block => ({
        area: mapArea(key, layout),
        fill: [`=${workings[key]}`],
        style: SMALL_STYLE,
        afterTable: true,
      })),
    ],
    names: [],
    entries: [
      ...PLACE_KEYS.filter(isTyped).map((key) => {
        const { heading, note } = MAP_COLUMNS[key];
        return entry(mapArea(key, layout), { title: heading, sentences: [note] }, {});
      }),
    ],
    highlights: [
      {
        area: mapArea('says', layout),
        formula: `LEFT(${cell.says},${DANGER.length})=${text(DANGER)}`,
        style: HIGHLIGHT_STYLES.danger,
        meaning: 'a fuse whose run is in danger',
      },
      {
        area: mapArea('says', layout),
        formula: `LEN(${cell.says})>0`,
        style: HIGHLIGHT_STYLES.fails,
        meaning: 'a fuse whose run is not ok, or whose position is not clear',
      },
      {
        area: area(ROW.first, 0, rows, MAP_KEYS.length),
        formula: `${cell.blockNumber}=2*INT(${cell.blockNumber}/2)+(${cell.blockNumber}=0)`,
        style: { fill: PALETTE.band },
        meaning: 'every second block',
      },
    ],
    notes: headed.map((key) => ({
      area: area(ROW.header, mapColumn(key)),
      text: MAP_COLUMNS[key].note,
    })),
    frozenRows: ROW.first,
    frozenColumns: 0,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 20 },
    print: {
      landscape: true,
      area: area(0, 0, ROW.first + printed, MAP_KEYS.length),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PRINT_FOOTER,
      pagesHigh: Math.ceil(printed / PAGE_FUSES),
    },
  };
}
