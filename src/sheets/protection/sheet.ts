/** The Protection sheet: for every run of a schedule, whether its fuse opens before its wire is hurt, with the numbers. */
import { LENGTH_UNITS, METRES_PER } from '../../core/length';
import { formatSize, SERIES, SERIES_SIZES, sizeAreaMm2 } from '../../core/size';
import { FUSE_TYPE_SENTENCE, FUSE_TYPES } from '../../core/tables/iso-8820-types';
import type { ResultCell } from '../../functions/cell';
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { CAUTIONS, PROTECTION_FOOTER } from '../plan/cautions';
import { listedSizes } from '../without-add-in/conductors-sheet';
import { entry } from '../plan/entries';
import { formulaOf } from '../evaluate';
import { call, text } from '../plan/formula';
import { ambientInForce, conductorTempInForce } from '../station/house-rules';
import { MULTIPLES, timesAt } from './fuse-points';
import { HIGHLIGHT_STYLES } from '../plan/highlight-styles';
import {
  ADIABATIC_HEADINGS,
  ADIABATIC_ROWS,
  NATIVE_PROTECTION,
  nativeK,
  steadyAtWriting,
  type SteadyAtWriting,
} from '../without-add-in/native-protection';
import { HEADING_STYLE, PALETTE } from '../plan/palette';
import type { Block, CellContent, HighlightPlan, SheetPlan } from '../plan/plan';
import { PROTECTION_CELLS, type ProtectionCellReferences, type ProtectionTyped } from './cells';
import { PROTECTION_COLUMNS } from './columns';
import { PROTECTION_FORMULAS, type GuardData } from './formulas';
import {
  PROTECTION_CELL_KEYS,
  PROTECTION_KEYS,
  PROTECTION_NAME_KEYS,
  PROTECTION_SHOWN_KEYS,
  PROTECTION_WORKING_KEYS,
  type ProtectionKey,
} from '../station/protection-keys';
import {
  HEAD,
  PROTECTION_ROW as ROW,
  protectionArea,
  protectionCell,
  protectionColumn,
  protectionNameArea,
  protectionReferences,
  SIDE_COLUMNS,
  SIDE_TYPES,
  TYPES,
} from './layout';
import type { ProtectionResult } from '../protection-values';
import type { Layout } from '../schedule/layout';

export interface ProtectionContent {
  readonly protection?: ProtectionTyped;
}

/** What a workbook without the add-in brings: values at writing, and where its sizes stand. */
export interface ProtectionVariant {
  readonly values: ProtectionResult;
  readonly sizes: GuardData;
  /** Rows of the Conductors sheet, run by run. */
  readonly sizeRow: string;
  readonly steady: readonly SteadyAtWriting[];
}

const QUIET = { italic: true, fontColour: PALETTE.quietText } as const;
const SMALL = { fontColour: PALETTE.quietText, fontSizePt: 8 } as const;

const NOTES: readonly string[] = [
  'By the published limits and for the type of fuse assumed, never an approval. Times to open are the longest that ISO 8820-3 allows, from memory and from sheets of makers; no fuse is promised to open sooner.',
  `${FUSE_TYPE_SENTENCE} Type E has no limit of its own at 1.6 times: the figure there lies on the straight line of its neighbours.`,
  "Breaking capacity: blade types 1000 A at 32 V (ISO 8820-3), bolt-in types 2000 A (ISO 8820-5, from its abstract). Check the maker's sheet: many break less, some more.",
  'Where a fuse may not break its fault: one proved to break more in its place, or such a fuse between it and the battery.',
  'A dead short through the wire alone: contact resistance makes a real fault weaker, cold wire or a stiffer battery a stronger one. Runs on another source are taken with its volts and the milliohms of the Supply sheet.',
  'What the wire bears: adiabatic (IEC 60364-5-54, IEC 60949), all heat stays in the metal; cautious beyond about 5 s, and the limits of insulation are published for up to 5 s.',
  'Steady heat: one conductor alone, level, in still air (convection by Churchill and Chu 1975, radiation). Two side by side, a bundle or a conduit run hotter: the ampacity of the schedule holds as well.',
  'More runs in the schedule than rows here: insert rows above the blank one and copy the last row down; until then the schedule says "protection not judged".',
];
const AT_WRITING =
  'In this copy, which needs no add-in, the steady heat is the value at writing; where a run has changed since, it says "not computed".';

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
          `Whether the fuse of each run of "${scheduleName}" opens before its wire is hurt, by the published limits. Advice, not approval: see the foot.`,
        ],
      ],
      style: QUIET,
    },
    {
      area: area(ROW.caution, 2),
      cells: [
        ['Nothing to fill in but the two green cells; the battery stands on the Supply sheet.'],
      ],
      style: QUIET,
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

function cellBlocks(
  references: ProtectionCellReferences,
  typed: ProtectionTyped,
  native: { readonly k: string; readonly values: ProtectionResult } | undefined,
): Block[] {
  return PROTECTION_CELL_KEYS.map((key): Block => {
    const { style, initial, formula } = PROTECTION_CELLS[key];
    const computed = key === 'k' && native !== undefined ? native.k : formula?.(references);
    const content: CellContent =
      computed === undefined
        ? (typed[key as keyof ProtectionTyped] ?? initial ?? null)
        : formulaOf(computed, native?.values.cells[key]);
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

function typeBlocks(): Block[] {
  const count = FUSE_TYPES.length;
  const row = (index: number) => TYPES.first + index;
  const at = (index: number, point: number) => cellAddress(row(index), TYPES.times + point, 'both');
  const multiple = (point: number) => cellAddress(TYPES.header, TYPES.times + point, 'both');
  const steep = (index: number, point: number) =>
    cellAddress(row(index), SIDE_TYPES.steepness + point, 'both');
  const known = (index: number, formula: string): CellContent =>
    formulaOf(`IF(${at(index, 0)}="","",${formula})`);
  const last = MULTIPLES.length - 1;
  const steepness = FUSE_TYPES.map((_, index) =>
    MULTIPLES.map((__, point) =>
      point === last
        ? known(index, '0')
        : known(
            index,
            `LN(${at(index, point)}/${at(index, point + 1)})/LN(${multiple(point + 1)}/${multiple(point)})`,
          ),
    ),
  );
  const factors = FUSE_TYPES.map((_, index) =>
    MULTIPLES.map((__, point) =>
      known(index, `${at(index, point)}*${multiple(point)}^${steep(index, point)}`),
    ),
  );
  return [
    {
      area: area(TYPES.title, TYPES.name),
      cells: [
        [
          'Types assumed by rating, and the longest times to open, in seconds, at so many times the rating',
        ],
      ],
      style: { bold: true, fontColour: PALETTE.title },
    },
    {
      area: area(TYPES.header, TYPES.name, 1, TYPES.source + 1 - TYPES.name),
      cells: [['Type', 'Ratings', 'Breaks', ...MULTIPLES, 'Source']],
      style: { ...HEADING_STYLE, numberFormat: '0.0# "x"' },
    },
    {
      area: area(TYPES.first, TYPES.name, count, TYPES.source + 1 - TYPES.name),
      cells: FUSE_TYPES.map((type) => [
        type.name,
        type.ratings,
        type.breakingA,
        ...timesAt(type),
        type.source,
      ]),
      style: { border: 'all', align: 'left' },
    },
    {
      area: area(TYPES.first, TYPES.breakingA, count, 1),
      style: { numberFormat: '#,##0 "A"' },
    },
    {
      area: area(TYPES.first, TYPES.times, count, MULTIPLES.length),
      style: { numberFormat: '[<1]0.0#;#,##0' },
    },
    {
      area: area(TYPES.header, SIDE_TYPES.fromA, 1, SIDE_COLUMNS - SIDE_TYPES.fromA),
      cells: [
        [
          'From A',
          ...MULTIPLES.map((of) => `Factor ${of}`),
          ...MULTIPLES.map((of) => `Steepness ${of}`),
        ],
      ],
      style: { ...SMALL, bold: true },
    },
    {
      area: area(TYPES.first, SIDE_TYPES.fromA, count, SIDE_COLUMNS - SIDE_TYPES.fromA),
      cells: FUSE_TYPES.map(({ fromA }, index) => [
        fromA,
        ...factors[index]!,
        ...steepness[index]!,
      ]),
      style: SMALL,
    },
  ];
}

const SIZE_COLUMNS = [
  'Size',
  'Area, mm2',
  'Ohms per m',
  'Ampacity',
  'May be chosen',
  'Its place',
  'Ampacity to choose by',
] as const;

/** The sizes to choose among, for a sheet that has our functions: two calls for them all. */
function sizeTable({ names }: Layout): { readonly data: GuardData; readonly blocks: Block[] } {
  const sizes = listedSizes([]);
  const first = ROW.first;
  const column = (index: number) => SIDE_TYPES.fromA + index;
  const whole = (index: number): Area => area(first, column(index), sizes.length, 1);
  const range = (index: number) => areaAddress(whole(index), 'both');
  const { rule } = names;
  const metresCell = area(ROW.header - 1, column(1));
  const metresPer = LENGTH_UNITS.reduceRight(
    (further, unit) => `IF(${rule.unit}=${text(unit)},${METRES_PER[unit]},${further})`,
    'NA()',
  );
  const rows = sizes.map((size, index): readonly CellContent[] => {
    const own = (at: number) => cellAddress(first + index, column(at), 'column');
    const flags = SERIES.map((series) =>
      SERIES_SIZES[series].some((of) => formatSize(of) === formatSize(size)) ? 1 : 0,
    );
    const inSeries = SERIES.reduceRight(
      (further, series, at) => `IF(${rule.series}=${text(series)},${flags[at]},${further})`,
      String(flags[0]),
    );
    const above = `${cellAddress(first, column(4), 'both')}:${own(4)}`;
    return [
      formulaOf(`IF(ISNUMBER(${own(3)}),${inSeries},0)`),
      formulaOf(`IF(${own(4)}=1,SUM(${above}),0)`),
      formulaOf(`IF(${own(4)}=1,${own(3)},0)`),
    ];
  });
  const spilled = (index: number, formula: string): Block => ({
    area: area(first, column(index)),
    cells: [[formulaOf(formula)]],
    spillRows: sizes.length,
    style: SMALL,
    afterTable: true,
  });
  return {
    data: {
      sizes: range(0),
      areaMm2: range(1),
      ohmsPerM: range(2),
      choose: range(4),
      order: range(5),
      chooseAmps: range(6),
      metresPer: areaAddress(metresCell, 'both'),
    },
    blocks: [
      {
        area: area(metresCell.row, column(0), 1, 2),
        cells: [['Metres in the length unit', formulaOf(metresPer)]],
        style: SMALL,
      },
      {
        area: area(ROW.header, column(0), 1, SIZE_COLUMNS.length),
        cells: [SIZE_COLUMNS],
        style: { ...SMALL, bold: true },
      },
      {
        area: area(first, column(0), sizes.length, 2),
        cells: sizes.map((size) => [formatSize(size), sizeAreaMm2(size)]),
        style: SMALL,
      },
      spilled(
        2,
        call('CONDUCTOR_OHMS', range(0), '1', text('m'), rule.material, conductorTempInForce(rule)),
      ),
      spilled(
        3,
        call(
          'AMPACITY',
          range(0),
          rule.insulationC,
          ambientInForce(rule),
          rule.conductors,
          rule.installed,
          rule.material,
        ),
      ),
      {
        area: area(first, column(4), sizes.length, 3),
        cells: rows,
        style: SMALL,
        afterTable: true,
      },
    ],
  };
}

/** The constants that k is worked out from where there are no functions of ours. */
function adiabaticTable(): { readonly columns: readonly string[]; readonly blocks: Block[] } {
  const first = SIDE_COLUMNS + 1;
  const count = ADIABATIC_ROWS.length;
  return {
    columns: ADIABATIC_HEADINGS.map((_, index) =>
      areaAddress(area(TYPES.first, first + index, count, 1), 'both'),
    ),
    blocks: [
      {
        area: area(TYPES.header, first, 1, ADIABATIC_HEADINGS.length),
        cells: [ADIABATIC_HEADINGS],
        style: { ...SMALL, bold: true },
      },
      {
        area: area(TYPES.first, first, count, ADIABATIC_HEADINGS.length),
        cells: ADIABATIC_ROWS,
        style: SMALL,
      },
      {
        area: area(TYPES.first + count, first),
        cells: [['Constants of IEC 60949, from memory; they give its printed k.']],
        style: SMALL,
      },
    ],
  };
}

function highlights(rows: number): HighlightPlan[] {
  const at = (key: ProtectionKey) => cellAddress(ROW.first, protectionColumn(key), 'column');
  const slower = (opens: ProtectionKey, bears: ProtectionKey) =>
    `IF(AND(ISNUMBER(${at(opens)}),ISNUMBER(${at(bears)})),${at(opens)}>${at(bears)}*1.000000001,FALSE)`;
  const told: readonly (readonly [readonly ProtectionKey[], string, string])[] = [
    [['farFault', 'farOpens'], `${at('weak')}=1`, 'fault too weak to open the fuse'],
    [['farOpens', 'farBears'], slower('farOpens', 'farBears'), 'fuse too slow at the far end'],
    [
      ['nearOpens', 'nearBears'],
      slower('nearOpens', 'nearBears'),
      'fuse too slow at the source end',
    ],
    [['nearFault', 'fuseType'], `${at('unbroken')}=1`, 'fuse may not break this fault'],
    [['steady', 'insulation'], `${at('hot')}=1`, 'hotter than its insulation'],
    [['words'], `LEN(${at('wrong')})>0`, 'not guarded, or not judged'],
  ];
  return told.flatMap(([keys, formula, meaning]) =>
    keys.map((key) => ({
      area: protectionArea(key, rows),
      formula,
      style: HIGHLIGHT_STYLES.danger,
      meaning,
    })),
  );
}

function rowBlocks(
  layout: Layout,
  sizes: GuardData,
  variant: ProtectionVariant | undefined,
): Block[] {
  const references = protectionReferences(layout, sizes, 0);
  const formulaOfColumn = (key: ProtectionKey): string =>
    variant !== undefined && key in NATIVE_PROTECTION
      ? NATIVE_PROTECTION[key as keyof typeof NATIVE_PROTECTION]({
          ...references,
          sizeRow: variant.sizeRow,
        })
      : PROTECTION_FORMULAS[key](references);
  const steady = (index: number): CellContent =>
    formulaOf(steadyAtWriting(protectionReferences(layout, sizes, index), variant?.steady[index]));
  const working = new Set<string>(PROTECTION_WORKING_KEYS);
  return PROTECTION_KEYS.map((key): Block => ({
    area: protectionArea(key, layout.rows),
    ...(variant !== undefined && key === 'steady'
      ? { cells: Array.from({ length: layout.rows }, (_, index) => [steady(index)]) }
      : { fill: [`=${formulaOfColumn(key)}`] }),
    style: working.has(key) ? SMALL : { ...PROTECTION_COLUMNS[key].style, border: 'all' },
    afterTable: true,
  }));
}

/** The plan of the Protection sheet of a schedule. */
export function protectionSheet(
  layout: Layout,
  content: ProtectionContent,
  variant?: ProtectionVariant,
): SheetPlan {
  const { names, rows } = layout;
  const adiabatic = variant === undefined ? undefined : adiabaticTable();
  const table = variant === undefined ? sizeTable(layout) : undefined;
  const references: ProtectionCellReferences = {
    rule: names.rule,
    supply: names.supply,
    protect: names.protect,
  };
  const native =
    variant === undefined || adiabatic === undefined
      ? undefined
      : { k: nativeK(references, adiabatic.columns), values: variant.values };
  const notes = variant === undefined ? NOTES : [...NOTES, AT_WRITING];
  const foot = ROW.first + rows + 2;
  const footLines = [...notes, ...CAUTIONS];
  const { printedRows = rows } = layout;
  const printedEnd = printedRows < rows ? ROW.first + printedRows : foot + footLines.length;
  const heading = (key: ProtectionKey) =>
    key === 'steady' && variant !== undefined
      ? `${PROTECTION_COLUMNS[key].heading} (value at writing)`
      : PROTECTION_COLUMNS[key].heading;
  return {
    name: names.protectionSheet,
    columnWidths: PROTECTION_KEYS.map((key) => PROTECTION_COLUMNS[key].widthChars),
    blocks: [
      ...headBlocks(names.sheet),
      ...cellBlocks(references, content.protection ?? {}, native),
      ...typeBlocks(),
      {
        area: area(ROW.header, 0, 1, PROTECTION_KEYS.length),
        cells: [PROTECTION_KEYS.map(heading)],
        style: HEADING_STYLE,
      },
      ...rowBlocks(layout, variant?.sizes ?? table!.data, variant),
      ...(table?.blocks ?? []),
      ...(adiabatic?.blocks ?? []),
      {
        area: area(foot, 0, footLines.length, 1),
        cells: footLines.map((line) => [line]),
        style: QUIET,
      },
    ],
    names: PROTECTION_NAME_KEYS.map((key) => ({
      name: names.protect[key],
      area: protectionNameArea(key, rows),
    })),
    entries: PROTECTION_CELL_KEYS.flatMap((key) => {
      const { label, note, parameter } = PROTECTION_CELLS[key];
      return parameter === undefined
        ? []
        : [entry(protectionCell(key), { title: label, sentences: [note] }, { parameter })];
    }),
    highlights: highlights(rows),
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
