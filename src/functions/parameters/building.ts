/** The parameters of building a loom and proving it. */
import { invalid, isRefusal, type Outcome } from '../../core/outcome';
import { formatSize } from '../../core/size';
import { CellError, isBlank, type Matrix } from '../cell';
import type { WholeWord } from '../list-function';
import { numberParameter, optional, readGiven, type Parameter } from '../parameter';
import { currentParameter, lengthParameter } from '../quantity-parameter';
import { maxDrop, size } from './run';

export const voltsIn = numberParameter(
  'volts_in',
  'Volts between both conductors at the source, read while the load runs.',
  { above: 0 },
);

export const voltsOut = numberParameter(
  'volts_out',
  'Volts between both conductors at the load, read at the same time.',
  { least: 0 },
);

export const measuredAmps = currentParameter('amps', 'Amps that flow during the reading.', {
  above: 0,
  remedy: 'measure while the load runs',
});

export const pieceLengths = numberParameter(
  'lengths',
  'For each run, the length of its piece, in any unit, the same for all.',
  { least: 0 },
);

export const spoolLengths = numberParameter(
  'spool_lengths',
  'Lengths that spools come in, one or several, in the same unit; of each as many as needed.',
  { above: 0 },
);

export const spare = optional(
  numberParameter('spare', 'Length added to each piece for ends and slack, in the same unit.', {
    least: 0,
  }),
  0,
  '0',
);

export const runLengths = lengthParameter(
  'lengths',
  'For each run, its one-way length; one value holds for all.',
  { least: 0 },
);

/** Blank where a run has no load of its own. */
export const loadTargets = numberParameter(
  'max_drop',
  'For each load, or one for all: largest share of the source volts that may be lost on its whole way from the source, 3% or 0.03.',
  maxDrop.bounds,
) as Parameter<'max_drop', number | undefined>;

export const leastVolts = optional(
  numberParameter('least_volts', 'For each load, or one for all: fewest volts that it works at.', {
    least: 0,
  }),
  0,
  'none',
);

/** Prices by size, as text. */
export type Prices = ReadonlyMap<string, number>;

const price = numberParameter('prices', 'Price of a size.', { above: 0 });

/** Reads two columns; undefined where nothing stands in them. */
function readPrices(matrix: Matrix): Outcome<Prices> | CellError | undefined {
  const rows = matrix.filter((row) => !row.every(isBlank));
  if (rows.length === 0) return undefined;
  const prices = new Map<string, number>();
  for (const [sizeCell, priceCell = null, ...others] of rows) {
    const error = [sizeCell, priceCell].find((cell) => cell instanceof CellError);
    if (error !== undefined) return error;
    if (matrix[0]!.length !== 2 || others.length > 0 || isBlank(sizeCell ?? null)) {
      return invalid('give two columns, sizes and what a unit of length of each costs');
    }
    if (isBlank(priceCell)) continue;
    const [sized, priced] = [readGiven(size, sizeCell), readGiven(price, priceCell)];
    if (isRefusal(sized)) return sized;
    const name = formatSize(sized);
    if (isRefusal(priced))
      return invalid(`${name}: ${priced.why}; leave out what is not to be had`);
    if (prices.has(name)) return invalid(`${name} stands there twice`);
    prices.set(name, priced);
  }
  return prices;
}

export const prices: WholeWord<'prices', Prices | undefined> = {
  ...optional<'prices', Prices | undefined>(
    {
      name: 'prices',
      meaning:
        'Two columns, sizes and the price of a run of each by unit of length: then the least money counts, and a size without a price is not chosen.',
      read: () => invalid('give two columns, sizes and what a unit of length of each costs'),
    },
    undefined,
    'none, the least metal',
  ),
  readWhole: readPrices,
};
