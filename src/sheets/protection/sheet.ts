/** The Protection sheet: for every run of a schedule, whether its fuse opens before its wire is hurt, with the numbers. */
import { area } from '../plan/area';
import { CAUTIONS, PROTECTION_FOOTER } from '../plan/cautions';
import { entry } from '../plan/entries';
import { callAddIn, type Call } from '../plan/formula';
import { HEADING_STYLE, PALETTE, QUIET_STYLE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent, SheetPlan } from '../plan/plan';
import type { ProtectionContent, ScheduleContent } from '../station/content';
import { forRunCells } from '../station/for-run';
import { perLayout, type Layout } from '../station/layout';
import { ofSource } from '../station/references';
import type { ProtectionTyped } from '../station/protection';
import {
  PROTECTION_CELL_KEYS,
  PROTECTION_KEYS,
  PROTECTION_COLUMN_NAME_KEYS,
  PROTECTION_NAME_KEYS,
  FUSE_ENTRY_KEYS,
  PROTECTION_SHOWN_KEYS,
  PROTECTION_WORKING_KEYS,
  type FuseEntryKey,
  type ProtectionCellKey,
  type ProtectionKey,
} from '../station/protection-keys';
import { PROTECTION_CELLS, type ProtectionCellReferences } from './cells';
import { PROTECTION_COLUMNS } from './columns';
import { PROTECTION_FORMULAS, type GuardData } from './formulas';
import { protectionHighlights } from './highlights';
import {
  HEAD,
  PROTECTION_ROW as ROW,
  protectionArea,
  protectionCell,
  protectionColumn,
  protectionNameArea,
  protectionReferences,
} from './layout';
import { AT_WRITING, NOTES } from './notes';
import { sizeTable } from './size-table';
import { typeBlocks } from './type-table';

/** What its cells compute, with the leading "=": those of the head, and those of the first row. */
export interface ProtectionSheetFormulas {
  readonly cells: ReadonlyMap<ProtectionCellKey, string>;
  readonly rows: ReadonlyMap<ProtectionKey, string>;
}

/** How its formulas ask for what our functions answer, in the head and in the rows. */
export interface ProtectionCalls {
  readonly head: Call;
  readonly row: Call;
}

/** `apart` are columns that are filled in another way. */
export function protectionSheetFormulas(
  layout: Layout,
  sizes: GuardData,
  calls: ProtectionCalls,
  apart: readonly ProtectionKey[] = [],
): ProtectionSheetFormulas {
  const { names } = layout;
  const head: ProtectionCellReferences = {
    call: calls.head,
    rule: names.rule,
    supply: ofSource(names.supply, '1'),
    protect: names.protect,
  };
  const row = protectionReferences(layout, sizes, 0, calls.row);
  return {
    cells: new Map(
      PROTECTION_CELL_KEYS.flatMap((key) => {
        const computed = PROTECTION_CELLS[key].formula?.(head);
        return computed === undefined ? [] : [[key, `=${computed}`] as const];
      }),
    ),
    rows: new Map(
      PROTECTION_KEYS.flatMap((key) =>
        key === 'forRun' || key === 'kind' || key === 'i2t' || apart.includes(key)
          ? []
          : [[key, `=${PROTECTION_FORMULAS[key](row)}`] as const],
      ),
    ),
  };
}

const usualFormulas = perLayout((layout) =>
  protectionSheetFormulas(layout, sizeTable(layout).data, { head: callAddIn, row: callAddIn }),
);

/** The steady heat of the first row, and the cells that it is looked up in. */
export interface NativeSteady {
  readonly formula: string;
  readonly blocks: readonly Block[];
}

/** What a workbook without the add-in brings. */
export interface NativeProtection {
  readonly formulas: ProtectionSheetFormulas;
  readonly steady: NativeSteady;
}

function headBlocks(scheduleName: string): Block[] {
  return [
    {
      area: area(ROW.title, 0),
      cells: [['Protection']],
      style: { bold: true, fontSizePt: 16, fontColour: PALETTE.title },
    },
    {
      area: area(ROW.title, 2),
      cells: [
        [
          `Whether the fuse of each run of "${scheduleName}" blows before its wire is hurt, by the published limits. Advice, not approval: see the foot.`,
        ],
      ],
      style: QUIET_STYLE,
    },
    {
      area: area(ROW.caution, 2),
      cells: [
        [
          'Nothing has to be filled in; what is known of the fuses goes into the green cells, and the name of the run under "For run" beside it.',
        ],
      ],
      style: QUIET_STYLE,
    },
    ...cellLabels(),
  ];
}

function cellLabels(): Block[] {
  return [
    {
      area: area(ROW.cells, HEAD.label, PROTECTION_CELL_KEYS.length, 1),
      cells: PROTECTION_CELL_KEYS.map((key) => [PROTECTION_CELLS[key].label]),
    },
  ];
}

function cellBlocks({ cells }: ProtectionSheetFormulas, typed: ProtectionTyped): Block[] {
  return PROTECTION_CELL_KEYS.map((key): Block => {
    const { style, initial } = PROTECTION_CELLS[key];
    const computed = cells.get(key);
    const content: CellContent =
      computed === undefined
        ? (typed[key as Exclude<keyof ProtectionTyped, 'fuses'>] ?? initial ?? null)
        : { formula: computed };
    return {
      area: protectionCell(key),
      cells: [[content]],
      style: {
        border: 'all',
        ...style,
        align: 'left',
        ...(computed === undefined ? { fill: PALETTE.input } : { bold: true }),
      },
    };
  });
}

const isEntry = (key: ProtectionKey) =>
  PROTECTION_COLUMNS[key].parameter !== undefined || PROTECTION_COLUMNS[key].entry === true;

function rowBlocks(
  layout: Layout,
  { rows: formulas }: ProtectionSheetFormulas,
  { protection: { fuses = [] } = {}, runs }: Parameters<typeof protectionSheet>[1],
  native: NativeProtection | undefined,
): Block[] {
  const working = new Set<string>(PROTECTION_WORKING_KEYS);
  const typedIn = (key: ProtectionKey): Pick<Block, 'cells'> => {
    if (key === 'forRun') return { cells: forRunCells(layout.rows, fuses, runs) };
    const entry = key as FuseEntryKey;
    return FUSE_ENTRY_KEYS.includes(entry)
      ? {
          cells: Array.from({ length: layout.rows }, (_, index) => [fuses[index]?.[entry] ?? null]),
        }
      : {};
  };
  const contentOf = (key: ProtectionKey): Pick<Block, 'cells' | 'fill'> => {
    if (native !== undefined && key === 'steady') {
      return { fill: [`=${native.steady.formula}`] };
    }
    const formula = formulas.get(key);
    return { ...typedIn(key), ...(formula === undefined ? {} : { fill: [formula] }) };
  };
  return PROTECTION_KEYS.map((key): Block => ({
    area: protectionArea(key, layout.rows),
    ...contentOf(key),
    style: working.has(key)
      ? SMALL_STYLE
      : {
          ...PROTECTION_COLUMNS[key].style,
          border: 'all',
          ...(isEntry(key) ? { fill: PALETTE.input } : {}),
        },
    afterTable: true,
  }));
}

/** The plan of the Protection sheet of a schedule. */
export function protectionSheet(
  layout: Layout,
  content: ProtectionContent & Pick<ScheduleContent, 'runs'>,
  native?: NativeProtection,
): SheetPlan {
  const { names, rows } = layout;
  const table = native === undefined ? sizeTable(layout) : undefined;
  const formulas = native?.formulas ?? usualFormulas(layout);
  const notes = native === undefined ? NOTES : [...NOTES, AT_WRITING];
  const foot = ROW.first + rows + 2;
  const footLines = [...notes, ...CAUTIONS];
  const { printedRows = rows } = layout;
  const printedEnd = printedRows < rows ? ROW.first + printedRows : foot + footLines.length;
  const heading = (key: ProtectionKey) =>
    key === 'steady' && native !== undefined
      ? `${PROTECTION_COLUMNS[key].heading} (value at writing)`
      : PROTECTION_COLUMNS[key].heading;
  return {
    name: names.protectionSheet,
    columnWidths: PROTECTION_KEYS.map((key) => PROTECTION_COLUMNS[key].widthChars),
    blocks: [
      ...headBlocks(names.sheet),
      ...cellBlocks(formulas, content.protection ?? {}),
      ...typeBlocks(names.protect.surgeS),
      {
        area: area(ROW.header, 0, 1, PROTECTION_KEYS.length),
        cells: [PROTECTION_KEYS.map(heading)],
        style: HEADING_STYLE,
      },
      ...rowBlocks(layout, formulas, content, native),
      ...(table?.blocks ?? []),
      ...(native?.steady.blocks ?? []),
      {
        area: area(foot, 0, footLines.length, 1),
        cells: footLines.map((line) => [line]),
        style: QUIET_STYLE,
      },
    ],
    names: [
      ...PROTECTION_NAME_KEYS.map((key) => ({
        name: names.protect[key],
        area: protectionNameArea(key, rows),
      })),
      ...(layout.references === 'names'
        ? PROTECTION_COLUMN_NAME_KEYS.map((key) => ({
            name: names.protectColumn[key],
            area: protectionArea(key, rows),
          }))
        : []),
    ],
    entries: [
      ...PROTECTION_CELL_KEYS.flatMap((key) => {
        const { label, note, parameter } = PROTECTION_CELLS[key];
        return parameter === undefined
          ? []
          : [entry(protectionCell(key), { title: label, sentences: [note] }, { parameter })];
      }),
      entry(
        protectionArea('forRun', rows),
        {
          title: PROTECTION_COLUMNS.forRun.heading,
          sentences: [PROTECTION_COLUMNS.forRun.note],
        },
        {},
      ),
      ...FUSE_ENTRY_KEYS.map((key) => {
        const { heading, note, parameter } = PROTECTION_COLUMNS[key];
        return entry(
          protectionArea(key, rows),
          { title: heading, sentences: [note] },
          { parameter },
        );
      }),
    ],
    highlights: protectionHighlights(rows),
    notes: [
      ...PROTECTION_CELL_KEYS.map((key) => ({
        area: protectionCell(key),
        text: PROTECTION_CELLS[key].note,
      })),
      ...PROTECTION_KEYS.map((key) => ({
        area: area(ROW.header, protectionColumn(key)),
        text: PROTECTION_COLUMNS[key].note,
      })),
    ],
    frozenRows: ROW.first,
    frozenColumns: 1,
    rowHeightsPt: { [ROW.title]: 24, [ROW.header]: 46 },
    print: {
      landscape: true,
      area: area(0, 0, printedEnd, PROTECTION_SHOWN_KEYS.length),
      repeatRows: { first: ROW.header, last: ROW.header },
      footer: PROTECTION_FOOTER,
    },
  };
}
