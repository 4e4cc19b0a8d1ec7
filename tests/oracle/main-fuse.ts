/** The main fuse at the battery, held against its cable, the battery and the loads. */
import { ampacity } from '../../src/core/ampacity';
import { smallestFuseFor } from '../../src/core/fuse';
import { fuseLimitA } from '../../src/core/fuse-limit';
import { atMost } from '../../src/core/limits';
import { parseSize } from '../../src/core/size';
import type { StationContent } from '../../src/sheets/station/content';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { isStated, type BatteryFigures } from './battery';
import { figure, NO_ANSWER } from './figures';
import { figuresOf, kindOf } from './fuses';
import type { House } from './house';

export interface MainFuse {
  readonly breaksA: number | undefined;
  readonly words: readonly VerdictKey[];
}

/** Of a cable that has no published ampacity nothing can be shown. The rule for small wires is one of standard ratings. */
function protectsCable(ratingA: number, cable: string, house: House): boolean {
  const size = figure(parseSize(cable));
  if (size === NO_ANSWER) return false;
  const ampacityA = figure(ampacity(size, house));
  const isStandard = smallestFuseFor(ratingA, false) === ratingA;
  const ruleA = isStandard ? fuseLimitA(house.fuseLimit, size, house.material) : undefined;
  return ampacityA !== NO_ANSWER && atMost(ratingA, Math.min(ampacityA, ruleA ?? Infinity));
}

export function mainFuseOf(
  content: StationContent,
  house: House,
  battery: BatteryFigures,
): MainFuse | undefined {
  const { supply = {} } = content;
  if (supply.mainFuse === undefined) return undefined;
  const ratingA = Number(supply.mainFuse);
  const { breaksA, ratedVolts } = figuresOf(kindOf(supply.mainFuseKind, 'by rating', ratingA), {
    ...(supply.mainFuseBreaks !== undefined && { breaks: supply.mainFuseBreaks }),
    ...(supply.mainFuseVolts !== undefined && { ratedVolts: supply.mainFuseVolts }),
  });
  const words: VerdictKey[] = [];
  if (supply.mainCable !== undefined && !protectsCable(ratingA, String(supply.mainCable), house)) {
    words.push('mainFuse');
  }
  if (isStated(content) && !(breaksA !== undefined && atMost(battery.breakAmps, breaksA))) {
    words.push('mainBreaks');
  }
  const mostVolts = Math.max(battery.chargingVolts, battery.fullRest);
  if (!(ratedVolts !== undefined && atMost(mostVolts, ratedVolts))) words.push('mainVolts');
  if (!atMost(battery.peakAmps, ratingA)) words.push('mainSmall');
  return { breaksA, words };
}
