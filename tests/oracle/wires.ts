/** The wire of each run: what would be suggested, what is used, and what that wire may carry. */
import { ampacity } from '../../src/core/ampacity';
import { ohmsPerM } from '../../src/core/conductor';
import { fuseFor, greatestCraftFuseA, smallestFuseFor } from '../../src/core/fuse';
import { fuseLimitA } from '../../src/core/fuse-limit';
import { atMost, MOST_DROP_SHARE } from '../../src/core/limits';
import { isRefusal } from '../../src/core/outcome';
import { parseSize, SERIES_SIZES, type ConductorSize } from '../../src/core/size';
import { leastFuseA, onceAmps, runAmps, type OwnAmps } from './amps';
import { figure, from, NO_ANSWER, type Figure } from './figures';
import type { House } from './house';
import { pathOf, subtreeOf, type Run } from './runs';

export interface Wire {
  /** Ohms that its wire may have; no answer where a wire above is not known. */
  readonly allowedOhms: Figure;
  readonly suggested: ConductorSize | typeof NO_ANSWER;
  readonly setBy: Figure<string>;
  readonly size: ConductorSize | typeof NO_ANSWER;
  /** Both conductors, the joints left out. */
  readonly wireOhms: Figure;
  readonly ohms: Figure;
  readonly ampacityA: Figure;
  /** The smallest standard fuse that the wire may have and its loads need, whether or not the run has one. */
  readonly fittingA: Figure;
}

/**
 * Set aside: by the issue a load in watts needs a fuse for 125 % of its amps at the usual volts and for all of those at
 * its fewest. Sizes are suggested by MINGAUGE from the most amps alone, so they leave room for a fuse of 125 % of these: now
 * and then a size thicker than the fuse of the row asks for. Thicker is never wrong, so it is only told.
 */
const SUGGESTS_FOR_A_FUSE_OF_THE_MOST_AMPS = true;

/** A figure that is there since others are. */
function known(of: Figure): number {
  if (of === NO_ANSWER) throw new Error('no answer where others have one');
  return of;
}

/**
 * The rule of sharing: of what a load may lose, less all joints on its path and the wires above, the run gets the share
 * of its claim (length times the root of its amps) among the claims from here to that load. The tightest load rules.
 */
function allowedOhms(
  run: Run,
  house: House,
  own: readonly OwnAmps[],
  wireOhms: readonly Figure[],
): Figure {
  const claim = (of: Run) => of.lengthM * Math.sqrt(known(runAmps(of, own)));
  const amps = runAmps(run, own);
  if (amps === NO_ANSWER || run.isPanelBlank) return NO_ANSWER;
  const jointOhms = run.jointMilliohms / 1000;
  if (!house.countsToLoad) return (run.volts * run.target) / amps - jointOhms;
  const [, ...above] = pathOf(run);
  const isKnown = (of: Run) => wireOhms[of.row] !== NO_ANSWER && runAmps(of, own) !== NO_ANSWER;
  if (!above.every(isKnown)) return NO_ANSWER;
  if (claim(run) === 0) return Infinity;
  let least = Infinity;
  for (const load of subtreeOf(run)) {
    if (load.load === 0 || load.isPanelBlank) continue;
    const { rest } = own[load.row]!;
    const path = pathOf(load);
    let leftVolts = load.volts * load.target;
    let claims = 0;
    for (const each of path) {
      const flows = onceAmps(each, own) + rest;
      leftVolts -= (flows * each.jointMilliohms) / 1000;
      if (above.includes(each)) leftVolts -= flows * known(wireOhms[each.row]!);
      else claims += claim(each);
    }
    least = Math.min(least, (leftVolts * claim(run)) / claims / (onceAmps(run, own) + rest));
  }
  return least;
}

/** The thinnest of a series, and the first of drop, heat and fuse that asks for it. */
function suggest(
  run: Run,
  house: House,
  own: readonly OwnAmps[],
  allowed: number,
): { readonly size: ConductorSize; readonly setBy: string } | typeof NO_ANSWER {
  const amps = known(runAmps(run, own));
  const jointOhms = run.jointMilliohms / 1000;
  const mostOhms = Math.min(allowed + jointOhms, (MOST_DROP_SHARE * (1 - 1e-9) * run.volts) / amps);
  const fuseAmps = SUGGESTS_FOR_A_FUSE_OF_THE_MOST_AMPS
    ? amps * (house.continuous ? 1.25 : 1)
    : known(leastFuseA(run, house, own));
  const listed = SERIES_SIZES[house.series].flatMap((size) => {
    const ampacityA = figure(ampacity(size, house));
    return ampacityA === NO_ANSWER ? [] : [{ size, ampacityA }];
  });
  const meets: Readonly<Record<string, (at: (typeof listed)[number]) => boolean>> = {
    drop: ({ size }) =>
      atMost(2 * run.lengthM * ohmsPerM(size, house.material, house.tempC) + jointOhms, mostOhms),
    heat: ({ ampacityA }) => atMost(amps, ampacityA),
    fuse: ({ size, ampacityA }) =>
      !isRefusal(
        fuseFor(fuseAmps, ampacityA, false, fuseLimitA(house.fuseLimit, size, house.material)),
      ),
  };
  let chosen = { at: -1, setBy: '' };
  for (const [setBy, isMet] of Object.entries(meets)) {
    const at = listed.findIndex(isMet);
    if (at < 0) return NO_ANSWER;
    if (at > chosen.at) chosen = { at, setBy };
  }
  return { size: listed[chosen.at]!.size, setBy: chosen.setBy };
}

/** In craft, where no rule for small wires is asked for, a standard fuse may lie up to 150 % of the ampacity. */
function fittingFuse(
  run: Run,
  house: House,
  own: readonly OwnAmps[],
  size: ConductorSize,
  ampacityA: number,
): Figure {
  const needed = leastFuseA(run, house, own);
  if (needed === NO_ANSWER) return NO_ANSWER;
  const within = figure(
    fuseFor(needed, ampacityA, false, fuseLimitA(house.fuseLimit, size, house.material)),
  );
  if (within !== NO_ANSWER || !house.isCraft || house.fuseLimit !== 'none') return within;
  if (!atMost(known(runAmps(run, own)), ampacityA)) return NO_ANSWER;
  const standard = figure(smallestFuseFor(needed, false));
  return standard !== NO_ANSWER && atMost(standard, greatestCraftFuseA(ampacityA, run.volts))
    ? standard
    : NO_ANSWER;
}

/** All runs, from the sources outwards. */
export function wiresOf(
  runs: readonly Run[],
  house: House,
  own: readonly OwnAmps[],
): readonly Wire[] {
  const wires: Wire[] = [];
  const wireOhms: Figure[] = [];
  const wire = (run: Run): void => {
    const allowed = allowedOhms(run, house, own, wireOhms);
    const chosen = from(allowed, (of) => suggest(run, house, own, of));
    const suggested = from(chosen, (of) => of.size);
    // Nothing is told of a row whose load or volts are not known.
    const areVoltsTold = !run.isPanelBlank || run.standing === 'tooDeep';
    const isTold = areVoltsTold && !Number.isNaN(own[run.row]!.most);
    const typed = run.ownSize === undefined ? suggested : figure(parseSize(run.ownSize));
    const size = isTold ? typed : NO_ANSWER;
    const ohms = from(
      run.standing === 'followed' ? size : NO_ANSWER,
      (of) => 2 * run.lengthM * ohmsPerM(of, house.material, house.tempC),
    );
    const ampacityA = from(size, (of) => figure(ampacity(of, house)));
    wireOhms[run.row] = ohms;
    wires[run.row] = {
      allowedOhms: allowed,
      suggested,
      setBy: from(chosen, (of) => of.setBy),
      size,
      wireOhms: ohms,
      ohms: from(ohms, (of) => of + run.jointMilliohms / 1000),
      ampacityA,
      fittingA:
        size === NO_ANSWER || ampacityA === NO_ANSWER
          ? NO_ANSWER
          : fittingFuse(run, house, own, size, ampacityA),
    };
    run.feeds.forEach(wire);
  };
  runs.filter(({ feeder }) => feeder === undefined).forEach(wire);
  return wires;
}

/** Share of the source volts that the path loses up to the far end of a run, with its whole own load. */
export function pathVolts(run: Run, own: readonly OwnAmps[], wires: readonly Wire[]): Figure {
  let lost = 0;
  if (run.standing !== 'followed') return NO_ANSWER;
  for (const each of pathOf(run)) {
    if (runAmps(each, own) === NO_ANSWER) return NO_ANSWER;
    const { ohms } = wires[each.row]!;
    if (ohms === NO_ANSWER) return NO_ANSWER;
    lost += (onceAmps(each, own) + own[run.row]!.rest) * ohms;
  }
  return lost;
}
