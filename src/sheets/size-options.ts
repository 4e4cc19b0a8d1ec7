/**
 * A station with what each size of its series would be in each of its runs. Nothing is worked out a second time: a sheet
 * that nobody sees asks our functions, as the schedule asks them of the wire in use.
 */
import { conductorMassKg } from '../core/conductor';
import { toMetres } from '../core/length';
import { isRefusal, type Outcome } from '../core/outcome';
import { formatSize, parseSize, SERIES_SIZES, type ConductorSize } from '../core/size';
import type { Cell } from '../functions/cell';
import { isBlank } from '../functions/cell';
import { readGiven, type Parameter } from '../functions/parameter';
import * as parameter from '../functions/parameters/run';
import { askingSheet, rowFromElsewhere } from './asking';
import { addInSheets } from './book';
import { calculate } from './calculate/calculate';
import { area } from './plan/area';
import { text } from './plan/formula';
import type { SheetPlan } from './plan/plan';
import { ROW } from './schedule/layout';
import { fuseFor, wireArguments } from './schedule/row';
import type { StationContent } from './station/content';
import type { Layout } from './station/layout';
import { scheduleNames } from './station/naming';
import { readStationValues, type StationValues } from './station-values';

export interface SizeInRun {
  /** As text that a size is written in. */
  readonly name: string;
  /** Of the conductors that count, without joints and chassis. */
  readonly wireOhms: number;
  /** Metal of those conductors. */
  readonly kg: number;
  /** Their money, where the Wire list has a price of the size. */
  readonly cost: number | undefined;
}

export interface StationOfSizes {
  readonly values: StationValues;
  /** Sizes of the series that carry a run and leave it room for a standard fuse, thinnest first. */
  carrying(run: number): readonly SizeInRun[];
  /** The wire in use; undefined where there is none that can be read. */
  inUse(run: number): SizeInRun | undefined;
}

const ASKING = 'Sizes to choose among';

/** For each size a column of wire ohms and one of the fuse that fits, in the rows of the schedule. */
function sizesSheet(layout: Layout, sizes: readonly ConductorSize[]): SheetPlan {
  const row = rowFromElsewhere(layout, ROW.first);
  const { cell, rule } = row;
  const fill = sizes.flatMap((one) => {
    const size = text(formatSize(one));
    const ohms = row.call(
      'RUN_OHMS',
      cell.oneWay,
      rule.unit,
      size,
      ...wireArguments(row),
      '',
      cell.back,
    );
    return [`=${ohms}-N(${cell.back})/1000`, `=${fuseFor(row, cell.fuseAmps, size)}`];
  });
  return askingSheet(ASKING, [{ area: area(ROW.first, 0, layout.rows, fill.length), fill }]);
}

/** A house rule as the functions read it. */
export function ruled<Value>(of: Parameter<string, Value>, cell: Cell): Outcome<Value> {
  return isBlank(cell) && of.fallback !== undefined ? of.fallback : readGiven(of, cell);
}

/** Prices by size, for a unit of length of one conductor; what is no price is left out. */
export function pricesOf({ wireList }: StationContent): ReadonlyMap<string, number> {
  const prices = new Map<string, number>();
  for (const { size: given, price } of wireList?.prices ?? []) {
    const size = parseSize(given);
    if (isRefusal(size) || typeof price !== 'number' || !(price > 0)) continue;
    prices.set(formatSize(size), price);
  }
  return prices;
}

/** Metal and money of the conductors of a run in a size; undefined where its length cannot be read. */
export function boughtOf(
  { rules, runs }: StationValues,
  prices: ReadonlyMap<string, number>,
  run: number,
  size: ConductorSize,
): Pick<SizeInRun, 'kg' | 'cost'> | undefined {
  const { oneWay, back } = runs[run]!;
  const unit = ruled(parameter.unit, rules.unit);
  const material = ruled(parameter.material, rules.material);
  if (typeof oneWay !== 'number' || isRefusal(unit) || isRefusal(material)) return undefined;
  const conductors = typeof back === 'number' ? 1 : 2;
  const price = prices.get(formatSize(size));
  return {
    kg: conductors * conductorMassKg(size, toMetres(oneWay, unit), material),
    cost: price === undefined ? undefined : conductors * oneWay * price,
  };
}

/** A station's values with the sizes that its runs may have; throws where nothing in it can be calculated. */
export function stationOfSizes(content: StationContent): StationOfSizes {
  const names = scheduleNames();
  const layout: Layout = { names, references: 'cells', rows: Math.max(1, content.runs.length) };
  const prices = pricesOf(content);
  const plans = addInSheets(layout, { ...content, extras: [] });
  const series = seriesOf(content);
  const sizes = SERIES_SIZES[series];
  const sheets = calculate([...plans, sizesSheet(layout, sizes)]);
  const values = readStationValues(sheets, content, names);
  const sizeInRun = (run: number, size: ConductorSize, wireOhms: Cell): SizeInRun | undefined => {
    const bought = boughtOf(values, prices, run, size);
    return typeof wireOhms === 'number' && bought !== undefined
      ? { name: formatSize(size), wireOhms, ...bought }
      : undefined;
  };

  return {
    values,
    carrying: (run) =>
      sizes.flatMap((size, index) => {
        const fuse = sheets.at(ASKING, ROW.first + run, 2 * index + 1);
        const ohms = sheets.at(ASKING, ROW.first + run, 2 * index);
        return typeof fuse === 'number' ? (sizeInRun(run, size, ohms) ?? []) : [];
      }),
    inUse(run) {
      const { size: text, ohms, jointOhms } = values.runs[run]!;
      const size = typeof text === 'string' ? parseSize(text) : undefined;
      if (size === undefined || isRefusal(size)) return undefined;
      if (typeof ohms !== 'number' || typeof jointOhms !== 'number') return undefined;
      return sizeInRun(run, size, ohms - jointOhms);
    },
  };
}

/** The series of the house rules; the usual one where that says none that is known. */
export function seriesOf({ rules }: StationContent) {
  const series = ruled(parameter.series, rules?.series ?? null);
  return isRefusal(series) ? parameter.series.fallback! : series;
}
