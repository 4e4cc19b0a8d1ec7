/**
 * The list of sheets, in the order they stand: naming, inserting, sharing and calculating loop over it. A sheet that is
 * added here, from a folder of its own, is in every schedule from then on.
 */
import { asBuiltSheet } from './as-built/sheet';
import type { SheetPlan } from './plan/plan';
import { crewSheet } from './crew/sheet';
import { drawingSheet } from './drawing/sheet';
import { dropChartSheet } from './drop-chart/sheet';
import { fuseMapSheet } from './fuse-map/sheet';
import { protectionSheet } from './protection/sheet';
import { partsSheet } from './parts/sheet';
import { rulesSheet } from './rules/sheet';
import { labelsSheet } from './labels/sheet';
import { scheduleSheet } from './schedule/sheet';
import { BUILT_CELL_KEYS } from './station/as-built';
import type { StationContent } from './station/content';
import { EXTRAS, type ExtraKey } from './station/extras';
import { DATA_KEYS } from './station/data-keys';
import { RULE_KEYS } from './station/house-rules';
import { LABEL_CELL_KEYS } from './station/labels';
import { PARTS_CELL_KEYS } from './station/parts';
import type { Layout } from './station/layout';
import { NAME_STEMS, SCHEDULE_NAME_KEYS, SHEET_NAMES, type WantedNames } from './station/naming';
import { PROTECTION_COLUMN_NAME_KEYS, PROTECTION_NAME_KEYS } from './station/protection-keys';
import { FEED_KEYS, VERDICT_NAME_KEYS } from './station/references';
import { COLUMN_KEYS } from './station/schedule-keys';
import { SUPPLY_KEYS } from './station/supply-keys';
import { supplySheet } from './supply/sheet';
import { verdictsSheet } from './verdicts/sheet';
import { wireListSheet } from './wire-list/sheet';
import { conductorsSheet } from './without-add-in/conductors-sheet';
import { fusesSheet } from './without-add-in/fuses-sheet';
import { WIRE_CELL_KEYS } from './station/wire-list';
import type { NativeParts } from './without-add-in/native-parts';
import { WORK_KEYS, workingsSheet } from './without-add-in/workings-sheet';

export interface BookSheet extends WantedNames {
  /** It travels along only where there is no add-in to answer. */
  readonly isForCopies?: boolean;
  /** It stands only where it is wanted. */
  readonly extra?: ExtraKey;
  /** It stands ahead of the others there. */
  readonly leadsCopies?: boolean;
  /** `native`: what stands in place of calls of our functions, in a copy that needs no add-in. */
  build(layout: Layout, content: StationContent, native?: NativeParts): SheetPlan;
}

export const BOOK: readonly BookSheet[] = [
  {
    name: SHEET_NAMES.sheet,
    defines: [
      [NAME_STEMS.schedule, SCHEDULE_NAME_KEYS],
      [NAME_STEMS.column, COLUMN_KEYS],
      [NAME_STEMS.feed, FEED_KEYS],
    ],
    build: (layout, content, native) => scheduleSheet(layout, content, native?.schedule),
  },
  {
    name: SHEET_NAMES.rulesSheet,
    defines: [[NAME_STEMS.rule, RULE_KEYS]],
    build: rulesSheet,
  },
  {
    name: SHEET_NAMES.supplySheet,
    defines: [[NAME_STEMS.supply, SUPPLY_KEYS]],
    build: (layout, content, native) => supplySheet(layout, content, native?.supply),
  },
  {
    name: SHEET_NAMES.protectionSheet,
    defines: [[NAME_STEMS.protect, [...PROTECTION_NAME_KEYS, ...PROTECTION_COLUMN_NAME_KEYS]]],
    build: (layout, content, native) => protectionSheet(layout, content, native?.protection),
  },
  {
    name: SHEET_NAMES.verdictsSheet,
    defines: [[NAME_STEMS.verdicts, VERDICT_NAME_KEYS]],
    build: ({ names }) => verdictsSheet(names),
  },
  { name: SHEET_NAMES.crewSheet, leadsCopies: true, build: crewSheet },
  {
    name: EXTRAS.wireList.sheetName,
    defines: [[EXTRAS.wireList.stem, WIRE_CELL_KEYS]],
    extra: 'wireList',
    build: wireListSheet,
  },
  {
    name: EXTRAS.parts.sheetName,
    defines: [[EXTRAS.parts.stem, PARTS_CELL_KEYS]],
    extra: 'parts',
    build: partsSheet,
  },
  {
    name: EXTRAS.labels.sheetName,
    defines: [[EXTRAS.labels.stem, LABEL_CELL_KEYS]],
    extra: 'labels',
    build: labelsSheet,
  },
  {
    name: EXTRAS.asBuilt.sheetName,
    defines: [[EXTRAS.asBuilt.stem, BUILT_CELL_KEYS]],
    extra: 'asBuilt',
    build: asBuiltSheet,
  },
  { name: EXTRAS.fuseMap.sheetName, extra: 'fuseMap', build: fuseMapSheet },
  { name: EXTRAS.drawing.sheetName, extra: 'drawing', build: drawingSheet },
  { name: EXTRAS.dropChart.sheetName, extra: 'dropChart', build: dropChartSheet },
  {
    name: SHEET_NAMES.conductorsSheet,
    defines: [[NAME_STEMS.data, DATA_KEYS]],
    isForCopies: true,
    build: ({ names }, { runs }) =>
      conductorsSheet(
        names,
        runs.flatMap(({ ownSize }) => (ownSize === undefined ? [] : [ownSize])),
      ),
  },
  { name: SHEET_NAMES.fusesSheet, isForCopies: true, build: ({ names }) => fusesSheet(names) },
  {
    name: SHEET_NAMES.workingsSheet,
    defines: [[NAME_STEMS.work, WORK_KEYS]],
    isForCopies: true,
    build: workingsSheet,
  },
];

/** The sheets of the list that a content wants. */
function wantedSheets({ extras = [] }: StationContent): readonly BookSheet[] {
  return BOOK.filter(({ extra }) => extra === undefined || extras.includes(extra));
}

/** The sheets of a schedule in a workbook with the add-in. */
export function addInSheets(layout: Layout, content: StationContent): readonly SheetPlan[] {
  return wantedSheets(content)
    .filter(({ isForCopies }) => isForCopies !== true)
    .map((sheet) => sheet.build(layout, content));
}

/** Some of the sheets beyond the sizing, for a schedule that stands already. */
export function extraSheets(
  layout: Layout,
  content: StationContent,
  extras: readonly ExtraKey[],
): readonly SheetPlan[] {
  return BOOK.filter(({ extra }) => extra !== undefined && extras.includes(extra)).map((sheet) =>
    sheet.build(layout, content),
  );
}

/** The sheets of a copy that needs no add-in. */
export function nativeSheets(
  layout: Layout,
  content: StationContent,
  native: NativeParts,
): readonly SheetPlan[] {
  const leads = ({ leadsCopies }: BookSheet) => leadsCopies === true;
  const wanted = wantedSheets(content);
  const inOrder = [...wanted.filter(leads), ...wanted.filter((sheet) => !leads(sheet))];
  return inOrder.map((sheet) => sheet.build(layout, content, native));
}
