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

/** The fuse of a run of this size, whose ampacity under the run's conditions is known. */
export function fuseOf(demand: RunDemand, size: ConductorSize, ampacityA: number): Outcome<number> {
  const limitA = fuseLimitA(demand.fuseLimit, size, demand.material);
  return fuseFor(demand.amps, ampacityA, demand.continuous, limitA);
}

/** Whether a size meets one limit; `ampacityA` is its ampacity under the run's conditions. */
const MEETS: Readonly<
  Record<GaugeLimit, (demand: RunDemand, size: ConductorSize, ampacityA: number) => boolean>
> = {
  drop: (demand, size) =>
    atMost(lostVolts(demand.amps, runOhms(size, demand)), demand.volts * demand.maxDrop),
  heat: (demand, _size, ampacityA) => atMost(demand.amps, ampacityA),
  fuse: (demand, size, ampacityA) => !isRefusal(fuseOf(demand, size, ampacityA)),
};

function whyNone(limit: GaugeLimit, demand: RunDemand, thickest: ConductorSize): string {
  const fixedVolts = demand.amps * fixedOhms(demand);
  const targetVolts = demand.volts * demand.maxDrop;
  if (limit === 'drop') {
    return atMost(fixedVolts, targetVolts)
      ? `no size keeps the drop within ${amount(targetVolts, 'V')}: the thickest loses ${amount(lostVolts(demand.amps, runOhms(thickest, demand)), 'V')}; shorten the run, divide the load or raise the volts`
      : `${fixedParts(demand)} alone lose ${amount(fixedVolts, 'V')} of the ${amount(targetVolts, 'V')} that the target allows`;
  }
  if (limit === 'heat') {
    return `no size may carry ${demand.amps} A as installed; divide the load or use insulation of a higher rating`;
  }
  const fuseA = smallestFuseFor(demand.amps, demand.continuous);
  return isRefusal(fuseA)
    ? fuseA.why
    : `no size may carry the ${fuseA} A of the fuse that the load needs; divide the load`;
}

/**
 * Thinnest size of a series that keeps the drop within the target, carries the current and leaves room for a standard
 * fuse between load and ampacity, which the rule for small wires allows. Sizes without a published ampacity are passed over. None where no size serves.
 */
export function chooseGauge(demand: RunDemand, series: Series): Outcome<ChosenGauge> {
  const candidates: { readonly size: ConductorSize; readonly ampacityA: number }[] = [];
  let lastRefusal = noAnswer(`the series "${series}" has no size`);
  for (const size of SERIES_SIZES[series]) {
    const ampacityA = ampacity(size, demand);
    if (isRefusal(ampacityA)) lastRefusal = ampacityA;
    else candidates.push({ size, ampacityA });
  }
  const thickest = candidates.at(-1);
  if (thickest === undefined) return lastRefusal;

  let chosen: { readonly index: number; readonly limit: GaugeLimit } | undefined;
  for (const limit of GAUGE_LIMITS) {
    const index = candidates.findIndex(({ size, ampacityA }) =>
      MEETS[limit](demand, size, ampacityA),
    );
    if (index < 0) return noAnswer(whyNone(limit, demand, thickest.size));
    if (chosen === undefined || index > chosen.index) chosen = { index, limit };
  }
  return { size: candidates[chosen!.index]!.size, limit: chosen!.limit };
}
