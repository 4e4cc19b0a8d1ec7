/** The thinnest size that serves a run, and what asked for it. */
import { ampacity, type Conditions } from './ampacity';
import { fixedOhms, fixedParts, lostVolts, runOhms, type Route } from './drop';
import { fuseFor, smallestFuseFor } from './fuse';
import { fuseLimitA, type FuseLimit } from './fuse-limit';
import { atMost } from './limits';
import { isRefusal, noAnswer, type Outcome } from './outcome';
import { amount } from './sentence';
import { SERIES_SIZES, type ConductorSize, type Series } from './size';

/** A run before its size is chosen. */
export interface RunDemand extends Route, Conditions {
  readonly amps: number;
  readonly volts: number;
  /** The target: share of the source voltage. */
  readonly maxDrop: number;
  readonly continuous: boolean;
  /** The rule that limits the fuses of small wires. */
  readonly fuseLimit: FuseLimit;
}

export const GAUGE_LIMITS = ['drop', 'heat', 'fuse'] as const;
export type GaugeLimit = (typeof GAUGE_LIMITS)[number];

export interface ChosenGauge {
  readonly size: ConductorSize;
  /** What asked for that size; on a tie the first of GAUGE_LIMITS. */
  readonly limit: GaugeLimit;
}

/** What a run carries, and the rules for its fuse. */
export type CarryDemand = Pick<RunDemand, 'amps' | 'continuous' | 'fuseLimit' | 'material'>;

/** The fuse of a run of this size, whose ampacity under the run's conditions is known. */
export function fuseOf(
  demand: CarryDemand,
  size: ConductorSize,
  ampacityA: number,
): Outcome<number> {
  const limitA = fuseLimitA(demand.fuseLimit, size, demand.material);
  return fuseFor(demand.amps, ampacityA, demand.continuous, limitA);
}

/** Whether a size meets one limit of what it carries; `ampacityA` is its ampacity under the run's conditions. */
const CARRIES: Readonly<
  Record<
    Exclude<GaugeLimit, 'drop'>,
    (demand: CarryDemand, size: ConductorSize, ampacityA: number) => boolean
  >
> = {
  heat: (demand, _size, ampacityA) => atMost(demand.amps, ampacityA),
  fuse: (demand, size, ampacityA) => !isRefusal(fuseOf(demand, size, ampacityA)),
};

/** Whether a size meets one limit. */
const MEETS = {
  drop: (demand: RunDemand, size: ConductorSize) =>
    atMost(lostVolts(demand.amps, runOhms(size, demand)), demand.volts * demand.maxDrop),
  ...CARRIES,
} as const;

function whyNotWithin(demand: RunDemand, thickest: ConductorSize): string {
  const fixedVolts = demand.amps * fixedOhms(demand);
  const targetVolts = demand.volts * demand.maxDrop;
  return atMost(fixedVolts, targetVolts)
    ? `no size keeps the drop within ${amount(targetVolts, 'V')}: the thickest loses ${amount(lostVolts(demand.amps, runOhms(thickest, demand)), 'V')}; shorten the run, divide the load or raise the volts`
    : `${fixedParts(demand)} alone lose ${amount(fixedVolts, 'V')} of the ${amount(targetVolts, 'V')} that the target allows`;
}

function whyNotCarried(limit: 'heat' | 'fuse', demand: CarryDemand): string {
  if (limit === 'heat') {
    return `no size may carry ${demand.amps} A as installed; divide the load or use insulation of a higher rating`;
  }
  const fuseA = smallestFuseFor(demand.amps, demand.continuous);
  return isRefusal(fuseA)
    ? fuseA.why
    : `no size may carry the ${fuseA} A of the fuse that the load needs; divide the load`;
}

/** A size that has a published ampacity, and that ampacity under a run's conditions. */
export interface RatedSize {
  readonly size: ConductorSize;
  readonly ampacityA: number;
}

/** The sizes of a series that have a published ampacity, thinnest first; at least one. */
export function ratedSizes(conditions: Conditions, series: Series): Outcome<readonly RatedSize[]> {
  const rated: RatedSize[] = [];
  let lastRefusal = noAnswer(`the series "${series}" has no size`);
  for (const size of SERIES_SIZES[series]) {
    const ampacityA = ampacity(size, conditions);
    if (isRefusal(ampacityA)) lastRefusal = ampacityA;
    else rated.push({ size, ampacityA });
  }
  return rated.length > 0 ? rated : lastRefusal;
}

/** Which of these sizes carry the current of a run and leave room for a standard fuse; none where no size does. */
export function carryingSizes(
  demand: CarryDemand,
  candidates: readonly RatedSize[],
): Outcome<readonly RatedSize[]> {
  let left = candidates;
  for (const limit of ['heat', 'fuse'] as const) {
    left = left.filter(({ size, ampacityA }) => CARRIES[limit](demand, size, ampacityA));
    if (left.length === 0) return noAnswer(whyNotCarried(limit, demand));
  }
  return left;
}

/**
 * Thinnest size of a series that keeps the drop within the target, carries the current and leaves room for a standard
 * fuse between load and ampacity, which the rule for small wires allows. Sizes without a published ampacity are passed over. None where no size serves.
 */
export function chooseGauge(demand: RunDemand, series: Series): Outcome<ChosenGauge> {
  const candidates = ratedSizes(demand, series);
  if (isRefusal(candidates)) return candidates;
  let chosen: { readonly index: number; readonly limit: GaugeLimit } | undefined;
  for (const limit of GAUGE_LIMITS) {
    const index = candidates.findIndex(({ size, ampacityA }) =>
      MEETS[limit](demand, size, ampacityA),
    );
    if (index < 0) {
      return noAnswer(
        limit === 'drop'
          ? whyNotWithin(demand, candidates.at(-1)!.size)
          : whyNotCarried(limit, demand),
      );
    }
    if (chosen === undefined || index > chosen.index) chosen = { index, limit };
  }
  return { size: candidates[chosen!.index]!.size, limit: chosen!.limit };
}
