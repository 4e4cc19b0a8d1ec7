/** Cells for property tests, drawn from what the catalogue says of its own arguments, and cells that mean harm. */
import fc from 'fast-check';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError, ERROR_CODES, type Cell } from '../../src/functions/cell';
import type { Parameter } from '../../src/functions/parameter';

const HUGE = 32_767; // the most characters a cell of Excel holds

const HOSTILE_NUMBERS = [
  Number.NaN,
  Number.POSITIVE_INFINITY,
  Number.NEGATIVE_INFINITY,
  0,
  -0,
  1e308,
  -1e308,
  Number.MAX_VALUE,
  5e-324,
  -5e-324,
  2 ** 53,
  0.1 + 0.2,
  0.5,
  -1,
  46_351.75, // a date and time, as a spreadsheet hands it over
];

const HOSTILE_TEXTS = [
  '',
  ' ',
  '\u00a0',
  '\u200b',
  '\u0000',
  '\ud800',
  '\udc00 12',
  '١٢',
  '１２',
  '−5',
  '1\u00a0000',
  '12\u200bAWG',
  'AWG',
  '#',
  '5/0',
  '0/0',
  '00000',
  '1/0 mm2',
  '0.0499 mm2',
  '401 mm2',
  '-2.5 mm2',
  '2.5 mm3',
  '22 A',
  '60 W',
  '10 ft',
  '8\' 6"',
  "1'250",
  '1,250 A',
  '10² A',
  `1'${'1'.repeat(HUGE - 3)}x`,
  `1${' '.repeat(HUGE - 3)}ft`,
  'NaN',
  'Infinity',
  '-Infinity',
  '1e999',
  '-1e999',
  '1e-999',
  '0x10',
  '1,5',
  '1.234,5',
  '3 %%',
  'TRUE',
  'wahr',
  '=1+1',
  '#VALUE!',
  '#N/A',
  '__proto__',
  'constructor',
  'toString',
  'İ',
  '💡'.repeat(30),
  '\u202e21',
  'x'.repeat(HUGE),
  '1'.repeat(HUGE),
  `${'1'.repeat(HUGE - 1)}x`,
  `awg${' '.repeat(HUGE - 4)}x`,
  `1${' '.repeat(HUGE - 2)}%`,
  `${'0'.repeat(HUGE - 5)}2 mm2`,
];

/** What no spreadsheet should put into a cell, and newer ones do: cast in, as from a caller that knows no types. */
const NOT_CELLS = [
  undefined,
  {},
  [],
  [12],
  Object.create(null),
  { basicValue: 5 },
  new Date(0),
  () => 12,
  Symbol('cell'),
  10n,
  new Number(12),
] as unknown as readonly Cell[];

export const anyErrorCell = fc
  .constantFrom(...ERROR_CODES)
  .map((code) => new CellError(code, `came in as ${code}`));

export const hostileCell: fc.Arbitrary<Cell> = fc.oneof(
  fc.constantFrom(...HOSTILE_NUMBERS),
  fc.double(),
  fc.constantFrom(...HOSTILE_TEXTS),
  fc.string({ unit: 'binary', maxLength: 12 }),
  fc.boolean(),
  fc.constant(null),
  anyErrorCell,
  fc.constantFrom(...NOT_CELLS),
);

/** Every value that an example of the catalogue gives an argument of that name, in whatever function. */
const EXAMPLES_BY_WORD = new Map<string, Cell[]>();
for (const { takes, example } of CATALOGUE) {
  for (const [index, parameter] of takes.entries()) {
    const given = example.given[index] ?? null;
    const cells = Array.isArray(given) ? (given as Cell[][]).flat() : [given as Cell];
    EXAMPLES_BY_WORD.set(parameter.name, [
      ...(EXAMPLES_BY_WORD.get(parameter.name) ?? []),
      ...cells,
    ]);
  }
}

/** A number that a parameter's bounds allow, of a size people meet. */
function numberWithin({ least, above, most, below, whole }: NonNullable<Parameter['bounds']>) {
  const min = least ?? above ?? -1000;
  const max = most ?? below ?? Math.max(1000, min + 1000);
  if (whole === true) return fc.integer({ min: Math.ceil(min), max: Math.floor(max) });
  return fc.double({
    min,
    max,
    minExcluded: above !== undefined,
    maxExcluded: below !== undefined,
    noNaN: true,
  });
}

/** Whether a blank in a column means something, such as the source in a column of feeders. */
const takesBlanks = (parameter: Parameter) =>
  'column' in parameter && 'blankIs' in (parameter.column as object);

/** A cell that a parameter is meant for, by its own description; an optional parameter's may be blank. */
export function soundCell(parameter: Parameter): fc.Arbitrary<Cell> {
  const seen = (EXAMPLES_BY_WORD.get(parameter.name) ?? []).filter((cell) => cell !== null);
  const kinds: fc.Arbitrary<Cell>[] = [];
  if (seen.length > 0) kinds.push(fc.constantFrom(...seen));
  if (parameter.choices !== undefined) kinds.push(fc.constantFrom(...parameter.choices));
  if (parameter.bounds !== undefined) kinds.push(numberWithin(parameter.bounds));
  if (parameter.fallbackText !== undefined || takesBlanks(parameter)) kinds.push(fc.constant(null));
  if (kinds.length === 0) throw new Error(`no example gives a value for ${parameter.name}`);
  return fc.oneof(...kinds);
}

/**
 * Mostly what the parameter is meant for, so that calls get past reading; hostile one time in
 * eleven.
 */
export function mixedCell(parameter: Parameter): fc.Arbitrary<Cell> {
  return fc.oneof(
    { weight: 10, arbitrary: soundCell(parameter) },
    { weight: 1, arbitrary: hostileCell },
  );
}

/** Whether a parameter takes a column whose rows belong together, as those of list functions do. */
const takesColumn = (parameter: Parameter) => 'column' in parameter;

/** Whether a function reads whole lists rather than cell by cell. */
export const readsLists = (takes: readonly Parameter[]) => takes.some(takesColumn);

/**
 * A small range for one of a function's parameters, ragged at times, empty now and then. List functions mostly get what they
 * are meant for, three rows a column and one cell where one value belongs: they refuse anything else as a whole.
 */
export function mixedRange(
  parameter: Parameter,
  takes: readonly Parameter[],
): fc.Arbitrary<Cell[][]> {
  const cell = mixedCell(parameter);
  const row = fc.tuple(cell);
  const meant: fc.Arbitrary<Cell[][]> = !readsLists(takes)
    ? fc.array(fc.array(cell, { minLength: 1, maxLength: 3 }), { minLength: 1, maxLength: 3 })
    : takesColumn(parameter)
      ? fc.tuple(row, row, row)
      : fc.tuple(row);
  return fc.oneof(
    { weight: 10, arbitrary: meant },
    { weight: 1, arbitrary: fc.array(fc.array(cell, { maxLength: 2 }), { maxLength: 2 }) },
  );
}

/** A failed property's report, with runs of one character told by their count: a cell may hold 32,767 of them. */
export function checkProperty<Given>(property: fc.IProperty<Given>, runs: fc.Parameters<Given>) {
  const details = fc.check(property, runs);
  if (!details.failed) return;
  const report = fc.defaultReportMessage(details) ?? 'the property failed';
  throw new Error(
    report.replace(/(.)\1{40,}/gu, (run, one: string) => `${one}{${run.length}}`),
    {
      cause: details.errorInstance,
    },
  );
}
