/** The thinnest size that serves a run, and what asked for it. */
import {
  ampacity,
  columnFor,
  correctionShare,
  METHODS,
  publishedAmps,
  type Conditions,
  type Installed,
} from './ampacity';
import { ohmsPerMAt20C, resistanceRatio } from './conductor';
import { fixedOhms, fixedParts, lostVolts, runOhmsOf, type Route } from './drop';
import { hasFuse, smallestFuseFor } from './fuse';
import { fuseLimitA, type FuseLimit } from './fuse-limit';
import { atMost } from './limits';
import { isRefusal, noAnswer, type Outcome, type Refusal } from './outcome';
import { amount } from './sentence';
import { SERIES_SIZES, type ConductorSize, type Series } from './size';
import type { Material } from './tables/materials';

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

export type GaugeLimit = 'drop' | 'heat' | 'fuse';

export interface ChosenGauge {
  readonly size: ConductorSize;
  /** What asked for that size; on a tie the drop, then the heat. */
  readonly limit: GaugeLimit;
}

/** What a run carries, and the rules for its fuse. */
export type CarryDemand = Pick<RunDemand, 'amps' | 'continuous' | 'fuseLimit' | 'material'>;

/** Whether there is a fuse for a run of this size, whose ampacity under the run's conditions is known: see fuseFor. */
export function mayHaveFuse(demand: CarryDemand, size: ConductorSize, ampacityA: number): boolean {
  const limitA = fuseLimitA(demand.fuseLimit, size, demand.material);
  return hasFuse(demand.amps, ampacityA, demand.continuous, limitA);
}

/** Volts that the target lets a run lose. */
export function targetVolts({ volts, maxDrop }: Pick<RunDemand, 'volts' | 'maxDrop'>): number {
  return volts * maxDrop;
}

/** Whether a run keeps its target of drop on a conductor of so many ohms per metre at its temperature. */
export function keepsTarget(demand: RunDemand, ohmsPerM: number): boolean {
  return atMost(lostVolts(demand.amps, runOhmsOf(ohmsPerM, demand)), targetVolts(demand));
}

/** Whether a size meets one limit of what it carries; `ampacityA` is its ampacity under the run's conditions. */
const CARRIES: Readonly<
  Record<
    Exclude<GaugeLimit, 'drop'>,
    (demand: CarryDemand, size: ConductorSize, ampacityA: number) => boolean
  >
> = {
  heat: (demand, _size, ampacityA) => atMost(demand.amps, ampacityA),
  fuse: mayHaveFuse,
};

function whyNotWithin(demand: RunDemand, thickestOhmsPerM: number): string {
  const fixedVolts = demand.amps * fixedOhms(demand);
  const allowedVolts = targetVolts(demand);
  return atMost(fixedVolts, allowedVolts)
    ? `no size keeps the drop within ${amount(allowedVolts, 'V')}: the thickest loses ${amount(lostVolts(demand.amps, runOhmsOf(thickestOhmsPerM, demand)), 'V')}; shorten the run, divide the load or raise the volts`
    : `${fixedParts(demand)} alone lose ${amount(fixedVolts, 'V')} of the ${amount(allowedVolts, 'V')} that the target allows`;
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

/** The sizes of a series that a column of a published table has amps for, thinnest first. */
interface PublishedSizes {
  readonly sizes: readonly ConductorSize[];
  readonly amps: readonly number[];
  readonly ohmsPerMAt20C: readonly number[];
}

function publishedSizes(
  series: Series,
  installed: Installed,
  material: Material,
  column: number,
): PublishedSizes {
  const ampsOf = (size: ConductorSize) =>
    publishedAmps(METHODS[installed].table, material, size, column);
  const sizes = SERIES_SIZES[series].filter((size) => !isRefusal(ampsOf(size)));
  return {
    sizes,
    amps: sizes.map((size) => ampsOf(size) as number),
    ohmsPerMAt20C: sizes.map((size) => ohmsPerMAt20C(size, material)),
  };
}

type BySeries = Partial<Record<Series, PublishedSizes>>;

/** By method, material, column and series: as many as there are rules to combine, each made when first asked for. */
const PUBLISHED: Partial<Record<Installed, Partial<Record<Material, BySeries[]>>>> = {};

function findPublished(
  series: Series,
  installed: Installed,
  material: Material,
  column: number,
): PublishedSizes {
  const ofMaterial = ((PUBLISHED[installed] ??= {})[material] ??= []);
  const ofColumn = (ofMaterial[column] ??= {});
  return (ofColumn[series] ??= publishedSizes(series, installed, material, column));
}

/** What a series has to choose among under a run's conditions, its own amps times `share`. */
function inForce(
  conditions: Conditions,
  series: Series,
): Outcome<{ readonly published: PublishedSizes; readonly share: number }> {
  const { installed, material } = conditions;
  const column = columnFor(METHODS[installed].table, conditions.insulationC);
  if (!isRefusal(column)) {
    const published = findPublished(series, installed, material, column);
    const share = correctionShare(conditions, column);
    if (published.sizes.length > 0 && !isRefusal(share)) return { published, share };
  }
  // No size is rated then, and the thickest says why.
  return ampacity(SERIES_SIZES[series].at(-1)!, conditions) as Refusal;
}

/** The sizes of a series that have a published ampacity, thinnest first; at least one. */
export function ratedSizes(conditions: Conditions, series: Series): Outcome<readonly RatedSize[]> {
  const found = inForce(conditions, series);
  if (isRefusal(found)) return found;
  const { published, share } = found;
  return published.sizes.map((size, at) => ({ size, ampacityA: published.amps[at]! * share }));
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
  const found = inForce(demand, series);
  if (isRefusal(found)) return found;
  const { published, share } = found;
  const { sizes, amps } = published;
  const count = sizes.length;
  const ratio = resistanceRatio(demand.material, demand.tempC);
  const ohmsPerM = (at: number) => published.ohmsPerMAt20C[at]! * ratio;
  const ampacityA = (at: number) => amps[at]! * share;

  let drop = 0;
  while (drop < count && !keepsTarget(demand, ohmsPerM(drop))) drop += 1;
  if (drop === count) return noAnswer(whyNotWithin(demand, ohmsPerM(count - 1)));
  let heat = 0;
  while (heat < count && !CARRIES.heat(demand, sizes[heat]!, ampacityA(heat))) heat += 1;
  if (heat === count) return noAnswer(whyNotCarried('heat', demand));
  let fuse = 0;
  while (fuse < count && !CARRIES.fuse(demand, sizes[fuse]!, ampacityA(fuse))) fuse += 1;
  if (fuse === count) return noAnswer(whyNotCarried('fuse', demand));

  const most = Math.max(drop, heat, fuse);
  const limit = most === drop ? 'drop' : most === heat ? 'heat' : 'fuse';
  return { size: sizes[most]!, limit };
}
