/** What is wrong with a run, as a set of the verdicts' keys. */
import { fuseLimitA } from '../../src/core/fuse-limit';
import { atMost } from '../../src/core/limits';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import type { BatteryFigures } from './battery';
import { fitsHouse } from './battery';
import { NO_ANSWER, type Figure } from './figures';
import type { Faults, Heat } from './faults';
import type { Protector } from './fuses';
import type { House } from './house';
import type { MainFuse } from './main-fuse';
import { isOnBattery, rootOf, type Run } from './runs';
import type { ArrivingVolts } from './volts';
import type { Wire } from './wires';

export interface Judged {
  readonly run: Run;
  readonly house: House;
  readonly battery: BatteryFigures;
  readonly isBatteryStated: boolean;
  /** Open-circuit volts, on the coldest morning and as the data sheet has them. */
  readonly panel: { readonly coldVolts: Figure; readonly openVolts: Figure };
  readonly amps: Figure;
  readonly wire: Wire;
  readonly pathVolts: Figure;
  readonly assumedVolts: number;
  readonly low: ArrivingVolts;
  readonly fuse: Protector | undefined;
  /** Fuses of the runs above it that have one of their own. */
  readonly above: readonly Protector[];
  readonly main: MainFuse | undefined;
  readonly faults: Faults | undefined;
  readonly heat: Heat;
}

/** 33 CFR 183.455(b), as the issue states it. */
const UNFUSED_M = { sheathed: 40 * 0.0254, bare: 7 * 0.0254 };

/** A load of more watts may be an inverter. */
const INVERTER_WATTS = 100;

/** What its own wire is, whatever is wrong above it. */
function wireWords({ run, amps, wire }: Judged): readonly VerdictKey[] {
  const { ampacityA, fittingA } = wire;
  const words: VerdictKey[] = [];
  if (ampacityA === NO_ANSWER) words.push('noAmpacity');
  else if (amps === NO_ANSWER || !atMost(amps, ampacityA)) words.push('heat');
  if (run.fused && fittingA === NO_ANSWER) words.push('fuse');
  return words;
}

function ownWords(judged: Judged): readonly VerdictKey[] {
  const { run, house, amps, wire, pathVolts } = judged;
  const { ohms, ampacityA, fittingA } = wire;
  const words = [...wireWords(judged)];
  const lost = house.countsToLoad
    ? run.load > 0
      ? pathVolts
      : 0
    : ohms === NO_ANSWER || amps === NO_ANSWER
      ? NO_ANSWER
      : amps * ohms;
  if (lost !== NO_ANSWER && !atMost(lost, run.volts * run.target)) words.push('drop');
  if (run.fused && fittingA !== NO_ANSWER && ampacityA !== NO_ANSWER) {
    if (!atMost(fittingA, ampacityA)) words.push('craftFuse');
  }
  if (run.isWatts && run.load > INVERTER_WATTS && run.leastVolts === undefined) {
    if (!run.saysEfficiency) words.push('wattsUnknown');
  }
  return words;
}

/** Whether nothing is shown to protect the wire: no fuse above it, or one that the wire may not have. */
function needsFuse({ run, house, wire, fuse }: Judged): boolean {
  if (run.fused) return false;
  const { ampacityA, size } = wire;
  if (fuse === undefined || ampacityA === NO_ANSWER || size === NO_ANSWER) return true;
  const limitA = fuseLimitA(house.fuseLimit, size, house.material) ?? Infinity;
  return !atMost(fuse.ratingA, Math.min(ampacityA, limitA));
}

function voltsWords({ run, low, assumedVolts }: Judged): readonly VerdictKey[] {
  if (low.cannotBeServed) return ['cannotBeServed'];
  if (low.volts === NO_ANSWER) return ['voltsUnknown'];
  if (run.leastVolts !== undefined) return atMost(run.leastVolts, low.volts) ? [] : ['tooFewVolts'];
  return run.isWatts && !atMost(assumedVolts, low.volts) ? ['fewerVolts'] : [];
}

/** What the run's own fuse has to stand, and whether it does. */
function fuseWords(judged: Judged, isAssumed: boolean): readonly VerdictKey[] {
  const { run, house, battery, fuse, faults, above, main } = judged;
  const words: VerdictKey[] = [];
  if (!fuse?.isOwn) return words;
  const root = rootOf(run);
  const onBattery = isOnBattery(run, house);
  const { coldVolts, openVolts } = judged.panel;
  const warmVolts = openVolts === NO_ANSWER ? root.volts : openVolts;
  const ofPanel = coldVolts === NO_ANSWER ? warmVolts : coldVolts;
  const mostVolts = run.fromPanel
    ? ofPanel
    : onBattery
      ? Math.max(battery.chargingVolts, battery.fullRest)
      : root.volts;
  if (!(fuse.ratedVolts !== undefined && atMost(mostVolts, fuse.ratedVolts)))
    words.push('fuseVolts');
  else if (run.fromPanel && openVolts === NO_ANSWER) words.push('panelMissing');
  if (faults === undefined || isAssumed) return words;
  const nearA = faults.near.faultA;
  const breaks = (breaksA: number | undefined, share: number) =>
    nearA !== NO_ANSWER && breaksA !== undefined && atMost(nearA * share, breaksA);
  if (breaks(fuse.breaksA, 1)) return words;
  const coveredAbove =
    above.some(({ breaksA }) => breaks(breaksA, 1)) || (onBattery && breaks(main?.breaksA, 1));
  words.push(coveredAbove && breaks(fuse.breaksA, 0.5) ? 'coveredByMain' : 'mayNotBreak');
  return words;
}

export function verdictOf(judged: Judged): ReadonlySet<VerdictKey> {
  const { run, house, battery, wire, faults, heat, main } = judged;
  if (run.isMisread) return new Set<VerdictKey>(['checkEntries']);
  if (run.standing === 'tooDeep') return new Set<VerdictKey>(['tooDeep']);
  if (run.isPanelBlank) return new Set<VerdictKey>(['panelMissing']);
  if (run.standing !== 'followed') return new Set<VerdictKey>([run.standing]);
  if (judged.amps === NO_ANSWER) return new Set<VerdictKey>(['tiedToAnother']);
  if (wire.allowedOhms === NO_ANSWER) {
    const words = new Set<VerdictKey>(['tiedToAnother']);
    if (run.ownSize === undefined) return words;
    for (const word of wireWords(judged)) words.add(word);
    if (judged.fuse !== undefined && needsFuse(judged)) words.add('needsFuse');
    return words;
  }
  if (wire.size === NO_ANSWER) {
    // Nothing is left for it, and a run above may give way.
    const isRobbed = wire.allowedOhms < 0 && run.feeder !== undefined && house.countsToLoad;
    return new Set<VerdictKey>([isRobbed ? 'noRoom' : 'noSize']);
  }
  const words = new Set<VerdictKey>([...ownWords(judged), ...voltsWords(judged)]);
  if (rootOf(run).volts !== run.volts) words.add('voltsDiffer');
  if (needsFuse(judged)) words.add('needsFuse');
  if (heat.isTooHot) words.add('tooHot');
  const onBattery = isOnBattery(run, house);
  const isAssumed = onBattery && !judged.isBatteryStated;
  if (onBattery && run.feeder === undefined) {
    for (const word of main?.words ?? []) words.add(word);
    const mostM = house.installed === 'cable' ? UNFUSED_M.sheathed : UNFUSED_M.bare;
    if (run.unfusedM !== undefined && !atMost(run.unfusedM, mostM)) words.add('unfusedTooLong');
  }
  if (onBattery && !fitsHouse(battery, house)) words.add('batteryVolts');
  if (faults?.far.faultA === NO_ANSWER) {
    words.add('notJudged');
  } else {
    const ofFuse = fuseWords(judged, isAssumed);
    for (const word of ofFuse) words.add(word);
    const breaksIt = !ofFuse.includes('mayNotBreak') && !ofFuse.includes('coveredByMain');
    if (faults?.isWeak) words.add('faultTooWeak');
    // The source end is judged for a fault that is known and that the fuse breaks.
    if (faults?.isSlowFar || (faults?.isSlowNear && breaksIt && !isAssumed))
      words.add('fuseTooSlow');
    if (faults !== undefined && isAssumed) words.add('batteryAssumed');
  }
  return words.size === 0 ? new Set<VerdictKey>(['ok']) : words;
}
