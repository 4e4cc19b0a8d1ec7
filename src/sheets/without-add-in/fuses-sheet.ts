/** The Fuses sheet of a workbook without the add-in: standard ratings, and resting volts of batteries beside them. */
import { FUSE_RATINGS } from '../../core/tables/iso-8820-ratings';
import { assumedFuseType } from '../../core/tables/iso-8820-types';
import { CHEMISTRIES, RESTING_VOLTS } from '../../core/tables/resting-volts';
import { area } from '../plan/area';
import { PRINT_FOOTER } from '../plan/cautions';
import type { DataKey } from '../station/data-keys';
import type { ScheduleNames } from '../station/naming';
import { MATERIALS } from '../../core/tables/materials';
import { SHORT_CIRCUIT_CONSTANTS } from '../../core/tables/short-circuit-constants';
import { FUSE_FORMAT, HEADING_STYLE, PALETTE } from '../plan/palette';
import type { SheetPlan } from '../plan/plan';

const REST_COLUMN = 4;
const ADIABATIC_COLUMN = 8;
const COLUMN_WIDTHS = [12, 14, 4, 4, 14, 10, 14, 4, 22, 12, 10, 14, 10] as const;
const LINE_CHARS = COLUMN_WIDTHS.reduce((sum, width) => sum + width, 0);

const SOURCES: readonly string[] = [
  'Rated currents of the ISO 8820 series: blade types of part 3 (35 A and 100 A from memory), bolt-in types of part 5 (from memory).',
  'What a rating is taken for: see the Protection sheet.',
  'What a conductor bears briefly: constants of IEC 60949, from memory; they give its printed k.',
  ...CHEMISTRIES.map((of) => `Volts at rest, ${of}: ${RESTING_VOLTS[of].source}.`),
].flatMap(brokenIntoLines);

const HEADER = SOURCES.length + 2;
const FIRST = HEADER + 1;

/** A long sentence in lines that keep within the printed width. */
function brokenIntoLines(sentence: string): readonly string[] {
  const lines = [''];
  for (const word of sentence.split(' ')) {
    const line = lines.at(-1)!;
    if (line.length + word.length >= LINE_CHARS) lines.push(`    ${word}`);
    else lines[lines.length - 1] = line === '' ? word : `${line} ${word}`;
  }
  return lines;
}

/** Chemistry, share of charge, volts of one cell: every point of every table. */
const REST_POINTS = CHEMISTRIES.flatMap((chemistry) => {
  const { cells, points } = RESTING_VOLTS[chemistry];
  return points.map(([charge, volts]) => [chemistry, charge, volts / cells] as const);
});

/** Constants of the adiabatic equation by material, column by column. */
const ADIABATIC_KEYS = [
  'materials',
  'joulePerKelvinMm3',
  'betaK',
  'ohmMm',
  'meltsC',
] as const satisfies readonly DataKey[];
const ADIABATIC_HEADINGS = ['Material', 'J/(K mm³)', 'β, K', 'Ω mm', 'Melts, °C'] as const;
const ADIABATIC_ROWS = MATERIALS.map((material) => {
  const { joulePerKelvinMm3, betaK, ohmMmAt20C, meltsC } = SHORT_CIRCUIT_CONSTANTS[material];
  return [material, joulePerKelvinMm3, betaK, ohmMmAt20C, meltsC] as const;
});

/** The plan of the Fuses sheet. */
export function fusesSheet(names: ScheduleNames): SheetPlan {
  const { data, fusesSheet: name } = names;
  const restRows = REST_POINTS.length;
  const rest = (column: number) => area(FIRST, REST_COLUMN + column, restRows, 1);
  return {
    name,
    columnWidths: COLUMN_WIDTHS,
    blocks: [
      {
        area: area(0, 0),
        cells: [['Fuses, and batteries at rest']],
        style: { bold: true, fontSizePt: 14, fontColour: PALETTE.title },
      },
      {
        area: area(1, 0, SOURCES.length, 1),
        cells: SOURCES.map((source) => [source]),
        style: { italic: true, fontColour: PALETTE.quietText },
      },
      { area: area(HEADER, 0, 1, 2), cells: [['Rating', 'Taken as']], style: HEADING_STYLE },
      {
        area: area(FIRST, 0, FUSE_RATINGS.length, 2),
        cells: FUSE_RATINGS.map(({ ratingA }) => [ratingA, assumedFuseType(ratingA).name]),
        style: { border: 'all', numberFormat: FUSE_FORMAT, align: 'left' },
      },
      {
        area: area(HEADER, REST_COLUMN, 1, 3),
        cells: [['Chemistry', 'Charge', 'Volts a cell']],
        style: HEADING_STYLE,
      },
      {
        area: area(FIRST, REST_COLUMN, restRows, 3),
        cells: REST_POINTS,
        style: { border: 'all', align: 'left' },
      },
      { area: rest(2), style: { numberFormat: '0.0000' } },
      {
        area: area(HEADER, ADIABATIC_COLUMN, 1, ADIABATIC_HEADINGS.length),
        cells: [ADIABATIC_HEADINGS],
        style: HEADING_STYLE,
      },
      {
        area: area(FIRST, ADIABATIC_COLUMN, ADIABATIC_ROWS.length, ADIABATIC_HEADINGS.length),
        cells: ADIABATIC_ROWS,
        style: { border: 'all', align: 'left' },
      },
    ],
    names: [
      { name: data.fuses, area: area(FIRST, 0, FUSE_RATINGS.length, 1) },
      { name: data.chemistries, area: rest(0) },
      { name: data.restingCharge, area: rest(1) },
      { name: data.restingVolts, area: rest(2) },
      ...ADIABATIC_KEYS.map((key, column) => ({
        name: data[key],
        area: area(FIRST, ADIABATIC_COLUMN + column, ADIABATIC_ROWS.length, 1),
      })),
    ],
    entries: [],
    highlights: [],
    notes: [],
    frozenRows: FIRST,
    frozenColumns: 0,
    hidden: true,
    print: {
      landscape: true,
      area: area(0, 0, FIRST + Math.max(restRows, FUSE_RATINGS.length), COLUMN_WIDTHS.length),
      repeatRows: { first: HEADER, last: HEADER },
      footer: PRINT_FOOTER,
    },
  };
}
