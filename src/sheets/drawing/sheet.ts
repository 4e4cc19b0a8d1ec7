/** The Drawing sheet: the one-line diagram of a schedule, and whether the schedule is still as it was drawn. */
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import type { Diagram } from '../plan/diagram';
import { PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, PicturePlan, SheetPlan } from '../plan/plan';
import type { Calculated } from '../calculate/calculate';
import type { StationContent } from '../station/content';
import { EXTRAS } from '../station/extras';
import type { Layout } from '../station/layout';
import { DRAWING_HEADINGS } from './columns';
import { drawingFormulas, drawingWarning } from './formulas';
import {
  DRAWING_KEYS,
  DRAWING_ROW as ROW,
  DRAWING_WORKING_COLUMNS,
  drawingArea,
  drawingName,
  drawingReferences,
  PICTURE_COLUMN,
  PICTURE_COLUMN_CHARS,
  PICTURE_COLUMNS,
} from './layout';

/** Names the schedule that the sheet belongs to, by which a reader finds it again. */
export const drawingOf = (sheet: string) =>
  `One-line diagram of the sheet "${sheet}", as it was when this was drawn: unlike the other sheets it does not follow.`;

/** The plan of the Drawing sheet, still without its picture. */
export function drawingSheet(layout: Layout, content: StationContent): SheetPlan {
  const references = drawingReferences(layout);
  const formulas = drawingFormulas(layout, references);
  return {
    name: drawingName(layout.names),
    columnWidths: [
      ...DRAWING_KEYS.map(() => 10),
      ...Array.from({ length: PICTURE_COLUMNS }, () => PICTURE_COLUMN_CHARS),
    ],
    hiddenColumns: DRAWING_WORKING_COLUMNS,
    blocks: [
      {
        area: area(ROW.title, PICTURE_COLUMN),
        cells: [[EXTRAS.drawing.sheetName]],
        style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
      },
      {
        area: area(ROW.about, PICTURE_COLUMN),
        cells: [[drawingOf(layout.names.sheet)]],
        style: QUIET_STYLE,
      },
      {
        area: area(ROW.warning, PICTURE_COLUMN),
        cells: [[{ formula: `=${drawingWarning(layout, references)}` }]],
        style: { bold: true, fontColour: PALETTE.danger },
        afterTable: true,
      },
      ...DRAWING_KEYS.map((key): Block => ({
        area: area(ROW.picture - 1, drawingArea(key, layout).column),
        cells: [[DRAWING_HEADINGS[key]]],
        style: SMALL_STYLE,
      })),
      ...DRAWING_KEYS.map((key): Block => {
        const of = drawingArea(key, layout);
        return key === 'drawn'
          ? { area: of, cells: content.runs.map(() => [null]), style: SMALL_STYLE }
          : { area: of, fill: [`=${formulas[key]}`], style: SMALL_STYLE, afterTable: true };
      }),
    ],
    names: [],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: 0,
    frozenColumns: 0,
    rowHeightsPt: { [ROW.title]: 24 },
    print: {
      landscape: false,
      isWhole: true,
      area: area(0, PICTURE_COLUMN, ROW.picture + 1, PICTURE_COLUMNS),
      footer: PRINT_FOOTER,
    },
  };
}

/** The plan with its picture, and with what is drawn of each run, by which a later change is told. */
export function withDiagram(
  plan: SheetPlan,
  layout: Layout,
  diagram: Diagram,
  sheets: Calculated,
): SheetPlan & { readonly picture: PicturePlan } {
  const now = drawingArea('now', layout);
  const drawn = drawingArea('drawn', layout);
  const isDrawn = (block: Block) =>
    block.area.column === drawn.column && block.area.row === drawn.row;
  return {
    ...plan,
    picture: { first: area(ROW.picture, PICTURE_COLUMN), diagram },
    blocks: plan.blocks.map((block) =>
      isDrawn(block)
        ? {
            ...block,
            cells: Array.from({ length: drawn.rows }, (_, place) => {
              const was = sheets.at(plan.name, now.row + place, now.column);
              return [was === null || was === '' ? null : String(was)];
            }),
          }
        : block,
    ),
  };
}
