/** The sizes to choose among, at the side of the Protection sheet of a workbook that has our functions. */
import { LENGTH_UNITS, METRES_PER } from '../../core/length';
import { formatSize, listedSizes, SERIES, SERIES_SIZES, sizeAreaMm2 } from '../../core/size';
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { callAddIn, text } from '../plan/formula';
import { SMALL_STYLE } from '../plan/palette';
import type { Block, CellContent } from '../plan/plan';
import { fuseLimitAt } from '../station/fuse-limit';
import { ambientInForce, conductorTempInForce } from '../station/house-rules';
import { perLayout } from '../station/layout';
import type { GuardData } from './formulas';
import { PROTECTION_ROW as ROW, SIDE_TYPES } from './layout';

const SIZE_COLUMNS = [
  'Size',
  'Area, mm2',
  'Ohms per m',
  'Ampacity',
  'May be chosen',
  'Its place',
  'Greatest fuse',
] as const;

interface SizeTable {
  readonly data: GuardData;
  readonly blocks: readonly Block[];
}

/** The sizes to choose among, for a sheet that has our functions: two calls for them all. */
export const sizeTable = perLayout(({ names }): SizeTable => {
  const sizes = listedSizes();
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
      { formula: `=IF(ISNUMBER(${own(3)}),${inSeries},0)` },
      { formula: `=IF(${own(4)}=1,SUM(${above}),0)` },
      { formula: `=IF(${own(4)}=1,MIN(${own(3)},${fuseLimitAt(size, rule)}),0)` },
    ];
  });
  const spilled = (index: number, formula: string): Block => ({
    area: area(first, column(index)),
    cells: [[{ formula: `=${formula}` }]],
    spillRows: sizes.length,
    style: SMALL_STYLE,
    afterTable: true,
  });
  return {
    data: {
      sizes: range(0),
      areaMm2: range(1),
      ohmsPerM: range(2),
      choose: range(4),
      order: range(5),
      chooseFuseA: range(6),
      metresPer: areaAddress(metresCell, 'both'),
    },
    blocks: [
      {
        area: area(metresCell.row, column(0), 1, 2),
        cells: [['Metres in the length unit', { formula: `=${metresPer}` }]],
        style: SMALL_STYLE,
      },
      {
        area: area(ROW.header, column(0), 1, SIZE_COLUMNS.length),
        cells: [SIZE_COLUMNS],
        style: { ...SMALL_STYLE, bold: true },
      },
      {
        area: area(first, column(0), sizes.length, 2),
        cells: sizes.map((size) => [formatSize(size), sizeAreaMm2(size)]),
        style: SMALL_STYLE,
      },
      spilled(
        2,
        callAddIn(
          'CONDUCTOR_OHMS',
          range(0),
          '1',
          text('m'),
          rule.material,
          conductorTempInForce(rule),
        ),
      ),
      spilled(
        3,
        callAddIn(
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
        style: SMALL_STYLE,
        afterTable: true,
      },
    ],
  };
});
