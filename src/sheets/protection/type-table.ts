/** The table of fuse types on the Protection sheet, and the chords between its points at its side. */
import { FUSE_TYPES } from '../../core/tables/iso-8820-types';
import { area, cellAddress } from '../plan/area';
import { HEADING_STYLE, PALETTE, SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent } from '../plan/plan';
import { mayOpenAt, MULTIPLES, timesAt } from './fuse-points';
import { SIDE_COLUMNS, SIDE_TYPES, TYPES } from './layout';

/** The table's blocks. */
export function typeBlocks(surgeS: string): Block[] {
  const count = FUSE_TYPES.length;
  const row = (index: number) => TYPES.first + index;
  const at = (index: number, point: number) => cellAddress(row(index), TYPES.times + point, 'both');
  const multiple = (point: number) => cellAddress(TYPES.header, TYPES.times + point, 'both');
  const steep = (index: number, point: number) =>
    cellAddress(row(index), SIDE_TYPES.steepness + point, 'both');
  const known = (index: number, formula: string): CellContent => ({
    formula: `=IF(${at(index, 0)}="","",${formula})`,
  });
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
          'May open at',
        ],
      ],
      style: { ...SMALL_STYLE, bold: true },
    },
    {
      area: area(TYPES.first, SIDE_TYPES.fromA, count, SIDE_COLUMNS - SIDE_TYPES.fromA),
      cells: FUSE_TYPES.map(({ fromA }, index) => [
        fromA,
        ...factors[index]!,
        ...steepness[index]!,
        { formula: `=${mayOpenAt(FUSE_TYPES[index]!, surgeS)}` },
      ]),
      style: SMALL_STYLE,
    },
  ];
}
