import { describe, expect, it, test } from 'vitest';
import { parseSize } from '../../src/core/size';
import { isRefusal } from '../../src/core/outcome';
import type { Cell } from '../../src/functions/cell';
import { stationValues } from '../../src/sheets/station-values';
import { VERDICT_KEYS, verdictsIn, type VerdictKey } from '../../src/sheets/station/verdicts';
import * as heat from './stated-rows/heat-and-fuse';
import * as faults from './stated-rows/faults';
import * as sizes from './stated-rows/sizes';
import * as volts from './stated-rows/volts';
import * as entries from './stated-rows/entries';
import * as neighbours from './stated-rows/neighbours';
import * as good from './stated-rows/good';
import * as sources from './stated-rows/sources';
import * as ends from './stated-rows/ends-and-starts';
import * as main from './stated-rows/main-fuse';
import type { StatedRow } from './stated-rows/stated-row';

/** What only a copy for sheets without the add-in can say; the formulas that call the add-in always settle and compute. */
type OfCopies = 'notSettled' | 'heatUnknown';
/** What no entry brings about, but a formula that somebody replaced. */
type OfFormulas = 'typedOver';

/** Every word that a verdict has but those, and rows that it is said of. */
const STATED: Readonly<Record<Exclude<VerdictKey, OfCopies | OfFormulas>, readonly StatedRow[]>> = {
  heat: heat.HEAT,
  tooHot: heat.TOO_HOT,
  fuse: heat.FUSE,
  needsFuse: heat.NEEDS_FUSE,
  endUnfused: ends.END_UNFUSED,
  mainFuse: main.MAIN_FUSE,
  mainBreaks: main.MAIN_BREAKS,
  mainVolts: main.MAIN_VOLTS,
  mainSmall: main.MAIN_SMALL,
  craftFuse: heat.CRAFT_FUSE,
  fuseTooSlow: [...faults.FUSE_TOO_SLOW, ...ends.END_TOO_SLOW],
  entriesAstray: neighbours.ENTRIES_ASTRAY,
  faultTooWeak: [
    ...faults.FAULT_TOO_WEAK,
    ...sources.SUPPLY_TOO_WEAK,
    ...ends.END_TOO_WEAK,
    ...ends.CHASSIS_TOO_WEAK,
  ],
  bankUnfused: sources.BANK_UNFUSED,
  bankFuse: sources.BANK_FUSE,
  supplyOverloaded: sources.SUPPLY_OVERLOADED,
  packOverloaded: sources.PACK_OVERLOADED,
  tooManyVolts: sources.TOO_MANY_VOLTS,
  sourceUnknown: sources.SOURCE_UNKNOWN,
  sourceNamedTwice: sources.SOURCE_NAMED_TWICE,
  chargesNoBattery: sources.CHARGES_NO_BATTERY,
  supplyTrips: sources.SUPPLY_TRIPS,
  mayNotBreak: [...faults.MAY_NOT_BREAK, ...ends.END_MAY_NOT_BREAK],
  fuseVolts: faults.FUSE_VOLTS,
  unfusedTooLong: faults.UNFUSED_TOO_LONG,
  coveredByMain: [...main.COVERED_BY_MAIN, ...ends.END_COVERED],
  batteryAssumed: [...main.BATTERY_ASSUMED, ...ends.END_ASSUMED],
  startFuse: ends.START_FUSE,
  sourceStart: ends.SOURCE_START,
  noSize: sizes.NO_SIZE,
  noRoom: sizes.NO_ROOM,
  noAmpacity: sizes.NO_AMPACITY,
  cannotBeServed: volts.CANNOT_BE_SERVED,
  tooFewVolts: volts.TOO_FEW_VOLTS,
  startVolts: ends.START_VOLTS,
  fewerVolts: volts.FEWER_VOLTS,
  drop: [...volts.DROP, ...ends.CHASSIS_DROP],
  wattsUnknown: volts.WATTS_UNKNOWN,
  nameTwice: entries.NAME_TWICE,
  feederNotListed: entries.FEEDER_NOT_LISTED,
  inLoop: entries.IN_LOOP,
  tooDeep: entries.TOO_DEEP,
  nameMissing: entries.NAME_MISSING,
  peakMissing: entries.PEAK_MISSING,
  lengthMissing: entries.LENGTH_MISSING,
  panelMissing: entries.PANEL_MISSING,
  voltsMissing: entries.VOLTS_MISSING,
  checkEntries: entries.CHECK_ENTRIES,
  endUnknown: ends.END_UNKNOWN,
  chassisInCraft: ends.CHASSIS_IN_CRAFT,
  voltsDiffer: neighbours.VOLTS_DIFFER,
  batteryVolts: neighbours.BATTERY_VOLTS,
  notJudged: [...neighbours.NOT_JUDGED, ...sources.SUPPLY_NOT_JUDGED],
  tiedToAnother: neighbours.TIED_TO_ANOTHER,
  voltsUnknown: neighbours.VOLTS_UNKNOWN,
  ok: [
    ...good.OK,
    ...sources.OK,
    ...ends.END_OK,
    ...ends.END_SOON_ENOUGH,
    ...ends.CHASSIS_OK,
    ...ends.START_OK,
  ],
};

/** A cell's size, or nothing: blank, an error, a word that is no size. */
function sizeIn(cell: Cell): string | null {
  return typeof cell === 'string' && !isRefusal(parseSize(cell)) ? cell : null;
}

function fuseIn(cell: Cell): number | 'none' | null {
  return typeof cell === 'number' || cell === 'none' ? cell : null;
}

describe.each(Object.entries(STATED))('%s', (word, rows) => {
  it.each(rows)('$entries', (row) => {
    const { entries, others = [], rules, supply, usualMilliohms, protection } = row;
    const { verdict, size, fuse } = row;
    const shown = stationValues({
      title: 'Stated row',
      runs: [...others, entries],
      ...(rules && { rules }),
      ...(row.sources && { sources: row.sources }),
      supply: { ...(!usualMilliohms && { milliohms: 50 }), ...supply },
      ...(protection && { protection }),
    }).runs.at(-1)!;
    expect({
      verdict: [...verdictsIn(String(shown.verdict))].sort(),
      size: sizeIn(shown.size),
      fuse: fuseIn(shown.fuse),
    }).toEqual({ verdict: [...verdict].sort(), size, fuse });
  });

  it('is said by several rows', () => {
    const saying = Object.values(STATED)
      .flat()
      .filter(({ verdict }) => verdict.includes(word as VerdictKey));
    expect(saying.length).toBeGreaterThan(2);
  });
});

test('at least eighty rows are stated, and of every word but those of copies', () => {
  expect(Object.values(STATED).flat().length).toBeGreaterThanOrEqual(80);
  const unsaid = VERDICT_KEYS.filter((key) => !Object.hasOwn(STATED, key));
  expect(unsaid.sort()).toEqual(['heatUnknown', 'notSettled', 'typedOver']);
});
