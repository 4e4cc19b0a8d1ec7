import { describe, expect, it } from 'vitest';
import { parseSize } from '../../src/core/size';
import { isRefusal } from '../../src/core/outcome';
import type { Cell } from '../../src/functions/cell';
import { stationValues } from '../../src/sheets/station-values';
import { verdictsIn, type VerdictKey } from '../../src/sheets/station/verdicts';
import * as heat from './stated-rows/heat-and-fuse';
import * as faults from './stated-rows/faults';
import * as sizes from './stated-rows/sizes';
import * as volts from './stated-rows/volts';
import * as entries from './stated-rows/entries';
import * as neighbours from './stated-rows/neighbours';
import * as good from './stated-rows/good';
import type { StatedRow } from './stated-rows/stated-row';

/** Every word that a verdict has, and rows that it is said of. */
const STATED: Readonly<Record<VerdictKey, readonly StatedRow[]>> = {
  heat: heat.HEAT,
  tooHot: heat.TOO_HOT,
  fuse: heat.FUSE,
  needsFuse: heat.NEEDS_FUSE,
  fuseTooSlow: faults.FUSE_TOO_SLOW,
  faultTooWeak: faults.FAULT_TOO_WEAK,
  mayNotBreak: faults.MAY_NOT_BREAK,
  noSize: sizes.NO_SIZE,
  noAmpacity: sizes.NO_AMPACITY,
  cannotBeServed: volts.CANNOT_BE_SERVED,
  tooFewVolts: volts.TOO_FEW_VOLTS,
  drop: volts.DROP,
  nameTwice: entries.NAME_TWICE,
  feederNotListed: entries.FEEDER_NOT_LISTED,
  inLoop: entries.IN_LOOP,
  nameMissing: entries.NAME_MISSING,
  peakMissing: entries.PEAK_MISSING,
  lengthMissing: entries.LENGTH_MISSING,
  voltsMissing: entries.VOLTS_MISSING,
  checkEntries: entries.CHECK_ENTRIES,
  notJudged: neighbours.NOT_JUDGED,
  tiedToAnother: neighbours.TIED_TO_ANOTHER,
  voltsUnknown: neighbours.VOLTS_UNKNOWN,
  ok: good.OK,
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
    const { entries, others = [], rules, supply, protection, verdict, size, fuse } = row;
    const shown = stationValues({
      title: 'Stated row',
      runs: [...others, entries],
      ...(rules && { rules }),
      supply: { milliohms: 50, ...supply },
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
