/** Conductor sizes: reading them as people write them, their metal area, and the series they are stocked in. */
import { gaugeAreaMm2, THICKEST_GAUGE, THINNEST_GAUGE } from './tables/awg';
import { IEC_60228 } from './tables/iec-60228';
import { atMost } from './limits';
import { invalid, isRefusal, noAnswer, type Outcome } from './outcome';
import { shortened } from './sentence';

/** An American gauge (1/0 is 0, 4/0 is -3), or a metal area; in mm2 the metal of either. */
export type ConductorSize =
  | { readonly kind: 'awg'; readonly gauge: number; readonly areaMm2: number }
  | { readonly kind: 'mm2'; readonly areaMm2: number };

export const LEAST_AREA_MM2 = 0.05;
export const MOST_AREA_MM2 = 400;

const ALL_GAUGES = Array.from(
  { length: THINNEST_GAUGE - THICKEST_GAUGE + 1 },
  (_, index) => THINNEST_GAUGE - index,
);

/** Thinnest first. */
const GAUGES: readonly ConductorSize[] = ALL_GAUGES.map((gauge) => ({
  kind: 'awg',
  gauge,
  areaMm2: gaugeAreaMm2(gauge),
}));

/** The size of a gauge, a whole number from 40 down to -3. */
export function awg(gauge: number): ConductorSize {
  return GAUGES[THINNEST_GAUGE - gauge]!;
}

export function mm2(areaMm2: number): ConductorSize {
  return { kind: 'mm2', areaMm2 };
}

/** Metal area, mm2: geometry of ASTM B258 for a gauge, the nominal area otherwise. */
export function sizeAreaMm2(size: ConductorSize): number {
  return size.areaMm2;
}

const GAUGE_TEXTS = ALL_GAUGES.map((gauge) => (gauge > 0 ? `${gauge} AWG` : `${1 - gauge}/0 AWG`));
const LISTED_AREA_TEXTS = new Map(IEC_60228.map(({ areaMm2 }) => [areaMm2, `${areaMm2} mm2`]));

/** The size as text that can be read back: "10 AWG", "1/0 AWG", "6 mm2". */
export function formatSize(size: ConductorSize): string {
  return size.kind === 'awg'
    ? GAUGE_TEXTS[THINNEST_GAUGE - size.gauge]!
    : (LISTED_AREA_TEXTS.get(size.areaMm2) ?? `${size.areaMm2} mm2`);
}

/**
 * What a gauge or an area may look like, most particular first. No two parts of a pattern can match the same
 * characters, so that a cell full of digits or spaces is read in one pass.
 */
const SPELLINGS: readonly {
  readonly pattern: RegExp;
  read(match: readonly string[], whole: string): Outcome<ConductorSize>;
}[] = [
  {
    pattern: /^(\d+(?:[.,]\d+)?|[.,]\d+)\s*(?:mm2|mm²|mm\^2)$/i,
    read([, digits = ''], whole) {
      const areaMm2 = Number(digits.replace(',', '.'));
      return isArea(areaMm2)
        ? mm2(areaMm2)
        : invalid(`${shortened(whole)} is outside ${LEAST_AREA_MM2} to ${MOST_AREA_MM2} mm2`);
    },
  },
  {
    pattern: /^(?:awg\s*)?(?:#\s*)?([1-4])\s*\/\s*0(?:\s*awg)?$/i,
    read: ([, zeros = '']) => awg(1 - Number(zeros)),
  },
  {
    pattern: /^(?:awg\s*)?(?:#\s*)?(0{1,4})(?:\s*awg)?$/i,
    read: ([, zeros = '']) => awg(1 - zeros.length),
  },
  {
    pattern: /^(?:awg\s*)?(?:#\s*)?([1-9]\d*)(?:\s*awg)?$/i,
    read: ([, digits = ''], whole) => readGaugeNumber(Number(digits), whole),
  },
];

function isArea(areaMm2: number): boolean {
  return areaMm2 >= LEAST_AREA_MM2 && areaMm2 <= MOST_AREA_MM2;
}

/** Refuses a bare number that is no gauge; whoever meant square millimetres is told how to write them. */
function noGauge(number: number, whole: string): Outcome<ConductorSize> {
  const remedy = isArea(number)
    ? `for square millimetres write "${number} mm2"`
    : `write 4/0 to ${THINNEST_GAUGE}, or an area such as "2.5 mm2"`;
  return invalid(`${shortened(whole)} is not an AWG number; ${remedy}`);
}

/** `whole` is the text it stands in, where it came as one. */
function readGaugeNumber(gauge: number, whole?: string): Outcome<ConductorSize> {
  if (Number.isInteger(gauge) && gauge >= 1 && gauge <= THINNEST_GAUGE) return awg(gauge);
  return noGauge(gauge, whole ?? String(gauge));
}

/** What our own functions answer with is read most often. */
const WRITTEN_BY_US = new Map(
  [...GAUGES, ...IEC_60228.map(({ areaMm2 }) => mm2(areaMm2))].map((size) => [
    formatSize(size),
    size,
  ]),
);

/**
 * Reads a size as people write it: 12, "12 AWG", "AWG 12", "#12", "1/0", "0000", "2.5 mm2", "2,5mm2".
 * A bare number that is no AWG number is refused, never guessed; so is the number 0, which may be a blank cell.
 */
export function parseSize(given: string | number): Outcome<ConductorSize> {
  if (typeof given === 'number') {
    if (given === 0) {
      return invalid('the number 0 may be a blank cell; for 1/0 AWG write "1/0" or "0 AWG"');
    }
    return readGaugeNumber(given);
  }
  const known = WRITTEN_BY_US.get(given);
  if (known !== undefined) return known;
  const whole = given.trim();
  for (const { pattern, read } of SPELLINGS) {
    const match = pattern.exec(whole);
    if (match !== null) return read(match, whole);
  }
  if (/^[+-]?(?:\d+(?:[.,]\d+)?|[.,]\d+)$/.test(whole)) {
    return noGauge(Number(whole.replace(',', '.')), whole);
  }
  return invalid(
    `"${shortened(whole)}" is not a size; write an AWG number such as "12 AWG" or an area such as "2.5 mm2"`,
  );
}

export const SERIES = ['AWG', 'AWG all', 'mm2'] as const;
export type Series = (typeof SERIES)[number];

const EVEN_GAUGES_IN_STOCK = [18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3];
const THICKEST_MM2_IN_STOCK = 120;

/** Sizes to choose among, thinnest first. "AWG" are the even sizes kept in stock, "mm2" ends at 120
 * (common practice). */
export const SERIES_SIZES: Readonly<Record<Series, readonly ConductorSize[]>> = {
  AWG: EVEN_GAUGES_IN_STOCK.map(awg),
  'AWG all': GAUGES,
  mm2: IEC_60228.filter((row) => row.areaMm2 <= THICKEST_MM2_IN_STOCK).map((row) =>
    mm2(row.areaMm2),
  ),
};

/** The nearest size of a series whose metal is not less; none where the size is thicker than the whole series. */
export function sizeInSeries(size: ConductorSize, series: Series): Outcome<ConductorSize> {
  const areaMm2 = sizeAreaMm2(size);
  const found = SERIES_SIZES[series].find((candidate) => atMost(areaMm2, sizeAreaMm2(candidate)));
  return found ?? noAnswer(`no size of the series "${series}" is as thick as ${formatSize(size)}`);
}

/**
 * Every gauge and every area that IEC 60228 lists, thinnest first in each, and after them those of `others` (as people
 * write sizes) that are not among them; what is no size is left out.
 */
export function listedSizes(others: readonly string[] = []): readonly ConductorSize[] {
  const listed = [...SERIES_SIZES['AWG all'], ...IEC_60228.map(({ areaMm2 }) => mm2(areaMm2))];
  const known = new Set(listed.map(formatSize));
  for (const given of others) {
    const size = parseSize(given);
    if (isRefusal(size) || known.has(formatSize(size))) continue;
    known.add(formatSize(size));
    listed.push(size);
  }
  return listed;
}
