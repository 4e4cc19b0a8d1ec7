/**
 * The Conductors sheet of a workbook without the add-in: every size with its resistance and published ampacities, and the
 * columns that the house rules pick and correct from them.
 */
import { METHODS, publishedAmps, type Installed } from '../../core/ampacity';
import { ohmsPerMAt20C } from '../../core/conductor';
import { LENGTH_UNITS, METRES_PER } from '../../core/length';
import { FUSE_LIMITS } from '../../core/fuse-limit';
import { isRefusal } from '../../core/outcome';
import {
  formatSize,
  listedSizes,
  SERIES,
  SERIES_SIZES,
  sizeAreaMm2,
  type ConductorSize,
} from '../../core/size';
import { ENGINE_SPACE_SHARE } from '../../core/tables/33cfr-183-425';
import { MATERIAL_CONSTANTS, MATERIALS, type Material } from '../../core/tables/materials';
import { BUNDLING_310_15 } from '../../core/tables/nfpa70-310-15-bundling';
import * as parameter from '../../functions/parameters/run';
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import { text } from '../plan/formula';
import { limitInForce, smallWireLimits, UNLIMITED_A } from '../station/fuse-limit';
import { ambientInForce, conductorTempInForce } from '../station/house-rules';
import type { ScheduleNames } from '../station/naming';
import { HEADING_STYLE, PALETTE } from '../plan/palette';
import type { Block, CellContent, SheetPlan } from '../plan/plan';

/** One published column: a table, the metal it holds for, an insulation rating. */
interface PublishedColumn {
  readonly installed: Installed;
  readonly material: Material;
  readonly column: number;
  readonly columnC: number;
}

/** The engine space uses the table of craft with shares of its own. */
const TABLED: readonly Installed[] = ['cable', 'air', 'craft'];
const METALS: readonly Material[] = ['copper', 'aluminium'];

const PUBLISHED: readonly PublishedColumn[] = TABLED.flatMap((installed) =>
  METALS.flatMap((material) => {
    const { table } = METHODS[installed];
    return table[MATERIAL_CONSTANTS[material].ampacityAs].size === 0
      ? []
      : table.columnsC.map((columnC, column) => ({ installed, material, column, columnC }));
  }),
);

const COLUMN = {
  size: 0,
  areaMm2: 1,
  ohms20: 2,
  ohmsPerM: 6,
  ampacity: 7,
  choose: 8,
  order: 9,
  chooseAmps: 10,
  fuseLimitA: 11,
  chooseFuseA: 12,
  series: 13,
  smallWire: 16,
  published: 16 + MATERIALS.length,
} as const;
/** What the rule does not limit shows as such. */
const LIMIT_FORMAT = `[>=${UNLIMITED_A}]"none";0`;

const COLUMNS = COLUMN.published + PUBLISHED.length;

/** Rows of the head: rules in force at the left, the little tables they use at the right. */
const FORCE_FIRST = 4;
const HOT = 'engine space' satisfies Installed;
const SMALL = { unit: 4, bundle: 7, material: 10 } as const;
const HEAD_ROWS = 17;
const TABLE_HEADS = FORCE_FIRST + HEAD_ROWS;
const HEADER = TABLE_HEADS + 3;
const FIRST = HEADER + 1;

const FORCE_KEYS = [
  'metresPer',
  'wireOk',
  'heatOk',
  'seriesOk',
  'limitOk',
  'material',
  'ratio',
  'insulationC',
  'tableKey',
  'isHot',
  'ambientC',
  'conductors',
  'metal',
  'columnC',
  'column',
  'share',
] as const;
type ForceKey = (typeof FORCE_KEYS)[number];

const FORCE_LABELS: Readonly<Record<ForceKey, string>> = {
  metresPer: 'Metres in the length unit',
  wireOk: 'Rules of the wire can be used',
  heatOk: 'Rules of its heat can be used',
  seriesOk: 'Size series is known',
  limitOk: 'Rule for fuses of small wires is known',
  material: 'Place of the conductor material',
  ratio: 'Resistance at its temperature over that at 20 °C',
  insulationC: 'Insulation rating, °C',
  tableKey: 'Ampacity table',
  isHot: 'In an engine space',
  ambientC: 'Ambient, °C',
  conductors: 'Conductors together',
  metal: 'Columns for',
  columnC: 'Published column in force, °C',
  column: 'Its place',
  share: 'Share left by the corrections',
};

const at = (row: number, column: number) => cellAddress(row, column, 'both');
const block = (row: number, column: number, rows: number, columns = 1) =>
  areaAddress(area(row, column, rows, columns), 'both');

function withinBounds(
  cell: string,
  bounds: { least?: number; above?: number; most?: number } | undefined,
): string {
  const { least, above, most } = bounds ?? {};
  const parts = [
    `ISNUMBER(${cell})`,
    ...(least === undefined ? [] : [`${cell}>=${least}`]),
    ...(above === undefined ? [] : [`${cell}>${above}`]),
    ...(most === undefined ? [] : [`${cell}<=${most}`]),
  ];
  return `OR(${cell}="",AND(${parts.join(',')}))`;
}

/** The formulas of the rules in force. */
function forceFormulas({ rule }: ScheduleNames): Readonly<Record<ForceKey, string>> {
  const force = Object.fromEntries(
    FORCE_KEYS.map((key, index) => [key, at(FORCE_FIRST + index, 1)]),
  ) as Record<ForceKey, string>;
  const units = block(FORCE_FIRST + 1, SMALL.unit, LENGTH_UNITS.length);
  const metres = block(FORCE_FIRST + 1, SMALL.unit + 1, LENGTH_UNITS.length);
  const materials = block(FORCE_FIRST + 1, SMALL.material, MATERIALS.length);
  const alphas = block(FORCE_FIRST + 1, SMALL.material + 1, MATERIALS.length);
  const metals = block(FORCE_FIRST + 1, SMALL.material + 2, MATERIALS.length);
  const bundleFrom = block(FORCE_FIRST + 1, SMALL.bundle, BUNDLING_310_15.length);
  const bundleShare = block(FORCE_FIRST + 1, SMALL.bundle + 1, BUNDLING_310_15.length);
  const heads = (row: number) => block(TABLE_HEADS + row, COLUMN.published, 1, PUBLISHED.length);
  const [tables, metalHeads, ratings] = [heads(0), heads(1), heads(2)];
  const known = (cell: string, choices: readonly string[]) =>
    `OR(${cell}="",${choices.map((choice) => `${cell}=${text(choice)}`).join(',')})`;
  const matching = `(${tables}=${force.tableKey})*(${metalHeads}=${force.metal})`;
  const above = (reference: string, coldestC?: number) => {
    const airC = coldestC === undefined ? force.ambientC : `MAX(${coldestC},${force.ambientC})`;
    return `SQRT((${force.columnC}-${airC})/(${force.columnC}-${reference}))`;
  };
  const { craft, cable } = METHODS;
  const hotShare = [...ENGINE_SPACE_SHARE].reduceRight(
    (further, [columnC, share]) => `IF(${force.columnC}=${columnC},${share},${further})`,
    'NA()',
  );
  const materialOk = `ISNUMBER(${force.material})`;
  return {
    metresPer: `INDEX(${metres},MATCH(${rule.unit},${units},0))`,
    wireOk: `AND(ISNUMBER(${force.metresPer}),${materialOk},${withinBounds(rule.tempC, parameter.tempC.bounds)})`,
    heatOk: `AND(${materialOk},${withinBounds(rule.insulationC, parameter.insulationC.bounds)},${withinBounds(rule.ambientC, parameter.ambientC.bounds)},${withinBounds(rule.conductors, parameter.conductors.bounds)},IF(ISNUMBER(${rule.conductors}),${rule.conductors}=INT(${rule.conductors}),TRUE),${known(rule.installed, parameter.installed.choices!)})`,
    seriesOk: known(rule.series, SERIES),
    limitOk: known(rule.fuseLimit, FUSE_LIMITS),
    material: `IF(${rule.material}="",1,MATCH(${rule.material},${materials},0))`,
    ratio: `1+INDEX(${alphas},${force.material})*(${conductorTempInForce(rule)}-20)`,
    insulationC: `IF(${rule.insulationC}="",${parameter.insulationC.fallback},${rule.insulationC})`,
    isHot: `${rule.installed}="engine space"`,
    tableKey: `IF(${rule.installed}="",${text('cable')},IF(${force.isHot},${text('craft')},${rule.installed}))`,
    ambientC: ambientInForce(rule),
    conductors: `IF(${rule.conductors}="",${parameter.conductors.fallback},${rule.conductors})`,
    metal: `INDEX(${metals},${force.material})`,
    columnC: `SUMPRODUCT(MAX(${matching}*(${ratings}<=${force.insulationC})*${ratings}))`,
    column: `SUMPRODUCT(${matching}*(${ratings}=${force.columnC})*(COLUMN(${ratings})-${COLUMN.published}))`,
    share:
      `IF(OR(${force.columnC}=0,${force.ambientC}>=${force.columnC}),NA(),` +
      `IF(${force.isHot},MIN(${METHODS[HOT].mostAmbientShare!},(${hotShare})*${above(String(METHODS[HOT].usualAmbientC))}),` +
      `IF(${force.tableKey}=${text('craft')},MIN(${craft.mostAmbientShare!},${above(String(craft.table.referenceAmbientC))}),` +
      `${above(String(cable.table.referenceAmbientC), cable.coldestC)}*LOOKUP(${force.conductors},${bundleFrom},${bundleShare}))))`,
  };
}

const QUIET = { italic: true, fontColour: PALETTE.quietText } as const;

const SOURCES: readonly string[] = [
  'Resistance: AWG by the geometry of ASTM B258 and the resistivity of IEC 60028 (IACS); areas that IEC 60228 lists by its maximum at 20 °C, others by resistivity.',
  'Ampacity: NFPA 70 tables 310.16 ("cable") and 310.17 ("air"), 2011 edition and later, with the ambient equation of 310.15(B) and the bundling of 310.15(C)(1); 33 CFR 183.425 table 5 ("craft") with its engine-space factors. Which cells were read and which are from memory is told beside each table in the source of the add-in.',
];

function headBlocks(names: ScheduleNames): Block[] {
  const formulas = forceFormulas(names);
  const small = (
    column: number,
    headings: readonly string[],
    rows: readonly (readonly CellContent[])[],
  ): Block[] => [
    {
      area: area(FORCE_FIRST, column, 1, headings.length),
      cells: [headings],
      style: HEADING_STYLE,
    },
    {
      area: area(FORCE_FIRST + 1, column, rows.length, headings.length),
      cells: rows,
      style: { border: 'all', align: 'left' },
    },
  ];
  return [
    {
      area: area(0, 0),
      cells: [['Conductors']],
      style: { bold: true, fontSizePt: 14, fontColour: PALETTE.title },
    },
    { area: area(1, 0, SOURCES.length, 1), cells: SOURCES.map((source) => [source]), style: QUIET },
    {
      area: area(FORCE_FIRST - 1, 0),
      cells: [['House rules in force']],
      style: { bold: true, fontColour: PALETTE.title },
    },
    {
      area: area(FORCE_FIRST, 0, FORCE_KEYS.length, 2),
      cells: FORCE_KEYS.map((key) => [FORCE_LABELS[key], { formula: `=${formulas[key]}` }]),
      style: { border: 'all', align: 'left' },
    },
    ...small(
      SMALL.unit,
      ['Unit', 'Metres'],
      LENGTH_UNITS.map((unit) => [unit, METRES_PER[unit]]),
    ),
    ...small(
      SMALL.bundle,
      ['Together', 'Share'],
      BUNDLING_310_15.map(({ conductorsFrom, share }) => [conductorsFrom, share]),
    ),
    ...small(
      SMALL.material,
      ['Material', 'Per K', 'As'],
      MATERIALS.map((material) => [
        material,
        MATERIAL_CONSTANTS[material].perKelvin,
        MATERIAL_CONSTANTS[material].ampacityAs,
      ]),
    ),
  ];
}

/** The figures of one size. */
function figures(size: ConductorSize): readonly CellContent[] {
  const flags = SERIES.map((series) =>
    SERIES_SIZES[series].some((of) => formatSize(of) === formatSize(size)) ? 1 : 0,
  );
  const amps = PUBLISHED.map(({ installed, material, column }): CellContent => {
    const found = publishedAmps(METHODS[installed].table, material, size, column);
    return isRefusal(found) ? null : found;
  });
  return [
    formatSize(size),
    sizeAreaMm2(size),
    ...MATERIALS.map((material) => ohmsPerMAt20C(size, material)),
    ...Array.from({ length: COLUMN.series - COLUMN.ohmsPerM }, () => null),
    ...flags,
    ...smallWireLimits(size).map(([, limitA]) => limitA),
    ...amps,
  ];
}

/** What the rules in force pick from the figures, from the first size on. */
function picked(rule: ScheduleNames['rule']): readonly (string | null)[] {
  const force = (key: ForceKey) => at(FORCE_FIRST + FORCE_KEYS.indexOf(key), 1);
  const own = (column: number, columns = 1) =>
    areaAddress(area(FIRST, column, 1, columns), 'column');
  const published = own(COLUMN.published, PUBLISHED.length);
  const amps = `INDEX(${published},${force('column')})`;
  const ampacity = own(COLUMN.ampacity);
  const seriesPlace = SERIES.reduceRight(
    (further, series, index) => `IF(${rule.series}=${text(series)},${index + 1},${further})`,
    '1',
  );
  const chosen = `${at(FIRST, COLUMN.choose)}:${own(COLUMN.choose)}`;
  const filled = new Map<number, string>([
    [
      COLUMN.ohmsPerM,
      `INDEX(${own(COLUMN.ohms20, MATERIALS.length)},${force('material')})*${force('ratio')}`,
    ],
    [
      COLUMN.ampacity,
      `IF(${force('column')}=0,NA(),IF(${amps}="",NA(),${amps}*${force('share')}))`,
    ],
    [
      COLUMN.choose,
      `IF(ISNUMBER(${ampacity}),INDEX(${own(COLUMN.series, SERIES.length)},${seriesPlace}),0)`,
    ],
    [COLUMN.order, `IF(${own(COLUMN.choose)}=1,SUM(${chosen}),0)`],
    [COLUMN.chooseAmps, `IF(${own(COLUMN.choose)}=1,${ampacity},0)`],
    [
      COLUMN.fuseLimitA,
      limitInForce(rule, `INDEX(${own(COLUMN.smallWire, MATERIALS.length)},${force('material')})`),
    ],
    [
      COLUMN.chooseFuseA,
      `IF(${own(COLUMN.choose)}=1,MIN(${ampacity},${own(COLUMN.fuseLimitA)}),0)`,
    ],
  ]);
  return Array.from({ length: COLUMNS }, (_, column) => {
    const formula = filled.get(column);
    return formula === undefined ? null : `=${formula}`;
  });
}

/** The plan of the Conductors sheet for a schedule's names; `typed` are sizes that its runs ask for. */
export function conductorsSheet(names: ScheduleNames, typed: readonly string[]): SheetPlan {
  const { data, conductorsSheet: name } = names;
  const sizes = listedSizes(typed);
  const column = (at: number): Area => area(FIRST, at, sizes.length, 1);
  const force = (key: ForceKey): Area => area(FORCE_FIRST + FORCE_KEYS.indexOf(key), 1);
  const style = (from: number, columns: number, numberFormat: string): Block => ({
    area: area(FIRST, from, sizes.length, columns),
    style: { border: 'all', numberFormat },
  });
  return {
    name,
    columnWidths: [
      40,
      14,
      ...Array.from({ length: COLUMNS - 2 }, (_, index) =>
        index + 2 === SMALL.material ? 20 : 11,
      ),
    ],
    blocks: [
      ...headBlocks(names),
      {
        area: area(TABLE_HEADS, COLUMN.published, 3, PUBLISHED.length),
        cells: [
          PUBLISHED.map(({ installed }) => installed),
          PUBLISHED.map(({ material }) => material),
          PUBLISHED.map(({ columnC }) => columnC),
        ],
        style: { ...HEADING_STYLE, numberFormat: '0' },
      },
      {
        area: area(HEADER, 0, 1, COLUMNS),
        cells: [
          [
            'Size',
            'Area, mm2',
            ...MATERIALS.map((material) => `Ω/m at 20 °C, ${material}`),
            'Ω/m in force',
            'Ampacity in force, A',
            'May be suggested',
            'Its place',
            'Ampacity to choose by',
            'Fuse limit in force, A',
            'Greatest fuse, A',
            ...SERIES.map((series) => `In series ${series}`),
            ...MATERIALS.map((material) => `Fuse limit, ${material}, A`),
            ...PUBLISHED.map(({ columnC }) => `A at ${columnC} °C`),
          ],
        ],
        style: HEADING_STYLE,
      },
      {
        area: area(FIRST, 0, sizes.length, COLUMNS),
        cells: sizes.map(figures),
        fill: picked(names.rule),
      },
      style(COLUMN.size, 1, '@'),
      style(COLUMN.areaMm2, 1, '0.000'),
      style(COLUMN.ohms20, MATERIALS.length + 1, '0.000000'),
      style(COLUMN.ampacity, 1, '0.0'),
      style(COLUMN.choose, COLUMNS - COLUMN.choose, '0'),
      style(COLUMN.chooseAmps, 1, '0.0'),
      style(COLUMN.fuseLimitA, 1, LIMIT_FORMAT),
      style(COLUMN.chooseFuseA, 1, '0.0'),
      style(COLUMN.smallWire, MATERIALS.length, LIMIT_FORMAT),
    ],
    names: [
      { name: data.sizes, area: column(COLUMN.size) },
      { name: data.areaMm2, area: column(COLUMN.areaMm2) },
      { name: data.ohmsPerM, area: column(COLUMN.ohmsPerM) },
      { name: data.ampacity, area: column(COLUMN.ampacity) },
      { name: data.choose, area: column(COLUMN.choose) },
      { name: data.order, area: column(COLUMN.order) },
      { name: data.chooseAmps, area: column(COLUMN.chooseAmps) },
      { name: data.fuseLimitA, area: column(COLUMN.fuseLimitA) },
      { name: data.chooseFuseA, area: column(COLUMN.chooseFuseA) },
      { name: data.metresPer, area: force('metresPer') },
      { name: data.wireOk, area: force('wireOk') },
      { name: data.heatOk, area: force('heatOk') },
      { name: data.seriesOk, area: force('seriesOk') },
      { name: data.limitOk, area: force('limitOk') },
    ],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: 0,
    frozenColumns: 1,
    rowHeightsPt: { [HEADER]: 46 },
    hidden: true,
    print: {
      landscape: true,
      area: area(0, 0, FIRST + sizes.length, COLUMNS),
      repeatRows: { first: TABLE_HEADS, last: HEADER },
      footer: PRINT_FOOTER,
    },
  };
}
