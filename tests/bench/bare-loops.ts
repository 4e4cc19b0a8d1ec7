/**
 * For each function of the catalogue a call of many rows, and the bare loop of the same formula: what someone writes who
 * needs these numbers once, without units, words, blanks or errors. What a function takes beyond its bare loop is what
 * reading and refusing cost. A test holds each loop to its function.
 */
import type { Cell, Matrix } from '../../src/functions/cell';
import { FUSE_RATINGS } from '../../src/core/tables/iso-8820-ratings';
import { NFPA70_310_16 } from '../../src/core/tables/nfpa70-310-16';
import { buildFeederTree } from '../../src/core/feeder-tree';
import { feedAmps, feedVolts } from '../../src/core/feeders';
import { lightestSizes } from '../../src/core/lightest/lightest-sizes';
import { awg, formatSize, type ConductorSize } from '../../src/core/size';
import { planSpools } from '../../src/core/spools';

export interface BenchCall {
  /** Arguments, the rows as columns and sizes as numbers. */
  readonly given: readonly Matrix[];
  readonly bare: () => unknown[][];
  /** Which arguments are sizes, that may come as text. */
  readonly sizeAt?: number;
}

const FEET = 0.3048;
const TARGET = 0.03;

function column(rows: number, at: (row: number) => Cell): Matrix {
  return Array.from({ length: rows }, (_, row) => [at(row)]);
}

const number = (matrix: Matrix, row: number) => matrix[row]![0] as number;

/** Each row an answer of its own row: the loop itself is written once, or all of them would be one page each. */
function loop(rows: number, formula: (row: number) => unknown): unknown[][] {
  const result = new Array<unknown[]>(rows);
  for (let row = 0; row < rows; row += 1) result[row] = [formula(row)];
  return result;
}

function gaugeMm2(gauge: number): number {
  const mm = 0.127 * 92 ** ((36 - gauge) / 39);
  return (Math.PI / 4) * mm * mm;
}

function ohms(length: number, gauge: number): number {
  return (2 * length * FEET) / 58 / gaugeMm2(gauge);
}

function amps75C(gauge: number): number {
  const row = NFPA70_310_16.copper.get(gauge)!;
  return row[1] ?? Math.floor(row[2]! * Math.sqrt(45 / 60));
}

function fuse(amps: number): number {
  for (const { ratingA } of FUSE_RATINGS) if (ratingA >= 1.25 * amps) return ratingA;
  return Infinity;
}

const STOCK = [18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3];

function gauge(amps: number, length: number): readonly [size: string, limit: string] {
  const first = (meets: (of: number) => boolean) => {
    for (let at = 0; at < STOCK.length; at += 1) if (meets(STOCK[at]!)) return at;
    return STOCK.length;
  };
  const drop = first((of) => amps * ohms(length, of) <= TARGET * 13.8);
  const heat = first((of) => amps <= amps75C(of));
  const rating = fuse(amps);
  const fused = first((of) => rating <= amps75C(of));
  const most = Math.max(drop, heat, fused);
  const of = STOCK[most]!;
  return [
    of > 0 ? `${of} AWG` : `${1 - of}/0 AWG`,
    most === drop ? 'drop' : most === heat ? 'heat' : 'fuse',
  ];
}

function k(startC: number, limitC: number): number {
  const heating = Math.log((234.5 + limitC) / (234.5 + startC));
  return Math.sqrt(((3.45e-3 * 254.5) / 17.241e-6) * heating);
}

const POINTS = [
  [1.35, 600],
  [1.6, 50],
  [2, 5],
  [3.5, 0.5],
  [6, 0.1],
] as const;

/** Of a blade fuse under 40 A, up to 6 times its rating. */
function fuseSeconds(rating: number, amps: number): number {
  const times = amps / rating;
  let at = 1;
  while (POINTS[at]![0] < times) at += 1;
  const [[from, fromS], [to, toS]] = [POINTS[at - 1]!, POINTS[at]!];
  return fromS * (toS / fromS) ** (Math.log(times / from) / Math.log(to / from));
}

/** Steady degC in 30 degC of air, by halving. */
function steadyC(amps: number, of: number): number {
  const metalMm = Math.sqrt((4 / Math.PI) * gaugeMm2(of));
  const wallMm = 0.0254 * (of > 10 ? 15 : of > 8 ? 20 : of > 4 ? 30 : 40);
  const outsideM = (metalMm + 2 * wallMm) / 1000;
  const wall = Math.log((1000 * outsideM) / metalMm) / (0.4 * Math.PI);
  let [low, high, warmC] = [30, 300, 300];
  for (let lowC = 30; warmC - lowC > 0.001;) {
    const surface = (low + high) / 2;
    const film = (surface + 30) / 2 + 273.15;
    const viscosity = (1.4592e-6 * film ** 1.5) / (109.1 + film);
    const conducts = (2.334e-3 * film ** 1.5) / (164.54 + film);
    const kinematic = viscosity / (351.99 / film + 344.84 / film ** 2);
    const prandtl = (viscosity * (1030.5 - 0.19975 * film + 3.9734e-4 * film ** 2)) / conducts;
    const rayleigh =
      ((9.80665 * (surface - 30) * outsideM ** 3) / (film * kinematic ** 2)) * prandtl;
    const forPrandtl = (1 + (0.559 / prandtl) ** (9 / 16)) ** (8 / 27);
    const nusselt = (0.6 + (0.387 * rayleigh ** (1 / 6)) / forPrandtl) ** 2;
    const sheds =
      nusselt * conducts * Math.PI * (surface - 30) +
      0.9 * 5.670374e-8 * Math.PI * outsideM * ((surface + 273.15) ** 4 - 303.15 ** 4);
    const metal = surface + sheds * wall;
    const makes = ((amps ** 2 / 58) * (1 + 0.00393 * (metal - 20))) / gaugeMm2(of);
    if (sheds >= makes) [high, warmC] = [surface, metal];
    else [low, lowC] = [surface, metal];
  }
  return warmC;
}

/** The calls of so many rows, by function. */
export function benchCalls(rows: number): Readonly<Record<string, BenchCall>> {
  const amps = column(rows, (row) => 1 + (row % 97) / 13);
  const lengths = column(rows, (row) => 1 + (row % 89) / 7);
  const sizes = column(rows, (row) => 4 + 2 * (row % 5));
  const volts = column(rows, (row) => 12 + (row % 7) / 3);
  const someOhms = column(rows, (row) => 0.01 + (row % 53) / 1000);
  const leadOhms = column(rows, (row) => 1e-4 + (row % 53) / 100_000);
  const shares = column(rows, (row) => (row % 101) / 101);
  const fifteens = column(rows, () => 15);
  const faults = column(rows, (row) => 21 + (row % 67));
  const names = column(rows, (row) => `run ${row}`);
  // Ten runs a branch, each fed by the one before.
  const feeders = column(rows, (row) => (row % 10 === 0 ? null : `run ${row - 1}`));
  const dutyShares = column(rows, () => 0.9 / rows);
  const colds = column(rows, (row) => -30 + (row % 31));
  const one = (cell: Cell): Matrix => [[cell]];
  /** Of what nobody asks for a whole column at once. */
  const few = Math.min(rows, 2000);

  const floats = (matrix: Matrix) => Float64Array.from(matrix, ([cell]) => cell as number);
  const tree = () =>
    buildFeederTree(
      names.map(([name]) => name as string),
      feeders.map(([feeder]) => (feeder ?? '') as string),
    );
  const lossOhms = (row: number) => ohms(number(lengths, row), number(sizes, row));
  const drop = (row: number) => number(amps, row) * lossOhms(row);
  const each = (formula: (row: number) => unknown) => () => loop(rows, formula);
  const withstand = (row: number, current: Matrix) =>
    ((k(70, 160) * gaugeMm2(number(sizes, row))) / number(current, row)) ** 2;
  const mean = (power: number) => {
    let sum = 0;
    for (let row = 0; row < rows; row += 1) {
      sum += number(amps, row) ** power * number(dutyShares, row);
    }
    return sum;
  };

  return {
    CONDUCTOR_OHMS: {
      given: [sizes, lengths, one('ft')],
      sizeAt: 0,
      bare: each((row) => (number(lengths, row) * FEET) / 58 / gaugeMm2(number(sizes, row))),
    },
    CONDUCTOR_AREA: {
      given: [sizes],
      sizeAt: 0,
      bare: each((row) => gaugeMm2(number(sizes, row))),
    },
    CONDUCTOR_MASS: {
      given: [sizes, lengths, one('ft')],
      sizeAt: 0,
      bare: each(
        (row) => (gaugeMm2(number(sizes, row)) * number(lengths, row) * FEET * 8.89) / 1000,
      ),
    },
    CONDUCTOR_TEMP: {
      given: [amps, sizes],
      sizeAt: 1,
      bare: each((row) => steadyC(number(amps, row), number(sizes, row))),
    },
    SIZE_AS: {
      given: [sizes, one('AWG')],
      sizeAt: 0,
      bare: each((row) => {
        const wanted = gaugeMm2(number(sizes, row)) * (1 - 1e-9);
        return `${STOCK.find((of) => gaugeMm2(of) >= wanted)!} AWG`;
      }),
    },
    AMPACITY: { given: [sizes], sizeAt: 0, bare: each((row) => amps75C(number(sizes, row))) },
    RUN_OHMS: { given: [lengths, one('ft'), sizes], sizeAt: 2, bare: each(lossOhms) },
    DCDROP: { given: [amps, lengths, one('ft'), sizes], sizeAt: 3, bare: each(drop) },
    DCDROP_PCT: {
      given: [amps, lengths, one('ft'), sizes, volts],
      sizeAt: 3,
      bare: each((row) => drop(row) / number(volts, row)),
    },
    LOAD_VOLTS: {
      given: [volts, amps, lengths, one('ft'), sizes],
      sizeAt: 4,
      bare: each((row) => number(volts, row) - drop(row)),
    },
    DRAW_AMPS: {
      given: [amps, volts, someOhms],
      bare: each((row) => {
        const [watts, from] = [number(amps, row), number(volts, row)];
        const root = Math.sqrt(from ** 2 - 4 * watts * number(someOhms, row));
        return (2 * watts) / (from + root);
      }),
    },
    LOSS_WATTS: {
      given: [amps, someOhms],
      bare: each((row) => number(amps, row) ** 2 * number(someOhms, row)),
    },
    MAX_LENGTH: {
      given: [amps, one('ft'), sizes, volts, one(TARGET)],
      sizeAt: 2,
      bare: each(
        (row) => (TARGET * number(volts, row)) / number(amps, row) / ohms(1, number(sizes, row)),
      ),
    },
    MAX_AMPS: {
      given: [lengths, one('ft'), sizes, volts, one(TARGET)],
      sizeAt: 2,
      bare: each((row) => (TARGET * number(volts, row)) / lossOhms(row)),
    },
    MINGAUGE: {
      given: [amps, lengths, one('ft'), one(13.8), one(TARGET)],
      bare: each((row) => gauge(number(amps, row), number(lengths, row))[0]),
    },
    GAUGE_LIMIT: {
      given: [amps, lengths, one('ft'), one(13.8), one(TARGET)],
      bare: each((row) => gauge(number(amps, row), number(lengths, row))[1]),
    },
    RUN_VERDICT: {
      given: [amps, lengths, one('ft'), one(13.8), one(TARGET), sizes],
      sizeAt: 5,
      bare: each((row) => {
        const carries = amps75C(number(sizes, row));
        const wrong: string[] = [];
        if (drop(row) > TARGET * 13.8) wrong.push('drop over target');
        if (number(amps, row) > carries) wrong.push('over ampacity');
        if (fuse(number(amps, row)) > carries) wrong.push('no fuse fits');
        return wrong.length === 0 ? 'ok' : wrong.join('; ');
      }),
    },
    SHOW_WORKING: {
      given: [
        amps.slice(0, few),
        lengths.slice(0, few),
        one('ft'),
        one(13.8),
        one(TARGET),
        one(10),
      ],
      bare: () =>
        loop(
          few,
          (row) =>
            `${number(amps, row)} A lose ${number(amps, row) * ohms(number(lengths, row), 10)} V`,
        ),
    },
    FUSE_FOR: {
      given: [amps, sizes],
      sizeAt: 1,
      bare: each((row) => {
        const rating = fuse(number(amps, row));
        return rating <= amps75C(number(sizes, row)) ? rating : Infinity;
      }),
    },
    FAULT_AMPS: {
      given: [volts, one(20), someOhms],
      bare: each((row) => number(volts, row) / (20 / 1000 + number(someOhms, row))),
    },
    WITHSTAND_SECONDS: {
      given: [sizes, faults],
      sizeAt: 0,
      bare: each((row) => withstand(row, faults)),
    },
    FUSE_SECONDS: {
      given: [fifteens, faults],
      bare: each((row) => fuseSeconds(number(fifteens, row), number(faults, row))),
    },
    FUSE_GUARDS: {
      given: [fifteens, sizes, faults],
      sizeAt: 1,
      bare: each(
        (row) => fuseSeconds(number(fifteens, row), number(faults, row)) <= withstand(row, faults),
      ),
    },
    FEED_AMPS: {
      given: [names, feeders, amps],
      bare: () => feedAmps(tree(), floats(amps)).map((answer) => [answer]),
    },
    FEED_VOLTS: {
      given: [one(12), names, feeders, amps, column(rows, () => 'A'), leadOhms],
      bare: () =>
        feedVolts(tree(), 12, {
          loads: floats(amps),
          kinds: amps.map(() => 'A'),
          ohms: floats(leadOhms),
        }).map((answer) => [answer]),
    },
    DUTY_AMPS: { given: [amps, dutyShares], bare: () => [[mean(1)]] },
    HEATING_AMPS: { given: [amps, dutyShares], bare: () => [[Math.sqrt(mean(2))]] },
    BATTERY_HOURS: {
      given: [one(100), amps],
      bare: each((row) => 0.8 * 20 * (100 / (number(amps, row) * 20))),
    },
    BATTERY_VOLTS: {
      given: [one('lead-acid'), shares],
      bare: each((row) => {
        const share = number(shares, row);
        const [from, low, high] =
          share <= 0.25
            ? [0, 11.89, 12.06]
            : share <= 0.5
              ? [0.25, 12.06, 12.24]
              : share <= 0.75
                ? [0.5, 12.24, 12.45]
                : [0.75, 12.45, 12.65];
        return low + ((share - from) / 0.25) * (high - low);
      }),
    },
    PV_DESIGN_AMPS: { given: [amps], bare: each((row) => number(amps, row) * 1.25 * 1.25) },
    PV_COLD_VOLTS: {
      given: [volts, colds, one(-0.29)],
      bare: each((row) => number(volts, row) * (1 - 0.0029 * (number(colds, row) - 25))),
    },
    JOINT_MILLIOHMS: {
      given: [volts, one(11), amps, lengths, one('ft'), sizes],
      sizeAt: 5,
      bare: each(
        (row) => (1000 * (number(volts, row) - 11)) / number(amps, row) - 1000 * lossOhms(row),
      ),
    },
    LIGHTEST_SIZES: {
      given: [names, feeders, amps, lengths, one('ft'), one(13.8), one(0.2)],
      bare: () => {
        const nothing = new Float64Array(rows);
        const { sizes: chosen } = lightestSizes(
          tree(),
          {
            amps: floats(amps),
            lengthsM: floats(lengths).map((length) => length * FEET),
            maxDrops: new Float64Array(rows).fill(0.2),
            leastVolts: nothing,
            jointMilliohms: nothing,
          },
          {
            volts: 13.8,
            material: 'copper',
            tempC: 20,
            insulationC: 75,
            ambientC: undefined,
            conductors: 2,
            installed: 'cable',
            continuous: true,
            series: 'AWG',
            fuseLimit: 'none',
            pricesPerM: undefined,
          },
        );
        return chosen.map((size) => [formatSize(size as ConductorSize)]);
      },
    },
    SPOOL_PLAN: {
      given: [names.slice(0, few), lengths.slice(0, few), [[25], [50]], one(0.5)],
      bare: () => {
        const pieces = lengths.slice(0, few).map(([length]) => (length as number) + 0.5);
        return planSpools(pieces, [25, 50]).spools.flatMap(({ pieces: places }, spool) =>
          places.map((place) => [spool + 1, place]),
        );
      },
    },
  };
}

/** The same call with its sizes as text. */
export function withTextSizes({ given, sizeAt }: BenchCall): readonly Matrix[] {
  return given.map((matrix, at) =>
    at === sizeAt ? matrix.map(([gauge]) => [formatSize(awg(gauge as number))]) : matrix,
  );
}
