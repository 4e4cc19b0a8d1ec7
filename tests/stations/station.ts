/**
 * A station with, for each of its runs, the level that a careful practitioner gives it and why. The levels come from
 * the standards' printed tables and hand arithmetic, not from the code that they judge. In the reasons: 310.16, 240.4
 * and 690 are of NFPA 70; resistances are ASTM B258 in ohm per 1000 ft and IEC 60228 class 5 in ohm per km, at 20 degC,
 * times 1.0393 at 30 degC. What a fuse must break counts the maker's short-circuit amps, else the stated milliohms, else
 * half the usual; a far-end short counts twice the milliohms at low charge and wire at 70 degC.
 */
import type { StationContent } from '../../src/sheets/station/content';
import type { FuseEntries } from '../../src/sheets/station/protection';
import type { ScheduleRun } from '../../src/sheets/station/run';
import type { Level } from '../../src/sheets/station/verdicts';

/** What a fuse is, beside its rating. */
interface FuseKind {
  /** "blade", "bolt-in", "high-breaking" or "own". */
  readonly fuseKind?: string;
  /** Amps that it breaks. */
  readonly fuseBreaksA?: number;
  readonly fuseVolts?: number;
  /** The maker's melting and arcing I2t, A2 s. */
  readonly fuseI2t?: number;
}

/** Entries of a run that the schedule does not take yet. */
export interface LaterRun extends FuseKind {
  /** Share of its peak that counts while other loads' volts are judged. */
  readonly atOnce?: number;
  /** Output watts over input watts. */
  readonly efficiency?: number;
  /** Length without a fuse from the battery, in the sheet's unit. */
  readonly unfused?: number;
}

/** Entries of the Supply sheet, and of the Protection sheet for the whole house, that are not taken yet. */
export interface LaterStation extends FuseKind {
  /** The battery's short-circuit amps by its maker. */
  readonly batteryShortCircuitAmps?: number;
  readonly mainFuseA?: number;
  readonly mainFuseKind?: string;
  readonly mainFuseBreaksA?: number;
  readonly mainFuseVolts?: number;
}

export interface JudgedRun extends ScheduleRun {
  readonly expected: Level;
  /** The table, rule or arithmetic behind it. */
  readonly because: string;
  readonly later?: LaterRun;
}

export interface Station extends Omit<StationContent, 'runs'> {
  readonly runs: readonly JudgedRun[];
  readonly later?: LaterStation;
}

/** What is said about a run and not by it. */
const BESIDE: ReadonlySet<string> = new Set<keyof JudgedRun>(['expected', 'because', 'later']);

/** The run as the schedule takes it. */
function runOf(run: JudgedRun): ScheduleRun {
  const { atOnce, efficiency, unfused } = run.later ?? {};
  return {
    ...Object.fromEntries(Object.entries(run).filter(([key]) => !BESIDE.has(key))),
    ...(atOnce !== undefined && { atOnce }),
    ...(efficiency !== undefined && { efficiency }),
    ...(unfused !== undefined && { unfused }),
  };
}

/** What is known of a fuse, as the Protection sheet takes it. */
function fuseOf({ fuseKind, fuseBreaksA, fuseVolts, fuseI2t }: FuseKind = {}): FuseEntries {
  return {
    ...(fuseKind !== undefined && { kind: fuseKind }),
    ...(fuseBreaksA !== undefined && { breaks: fuseBreaksA }),
    ...(fuseVolts !== undefined && { ratedVolts: fuseVolts }),
    ...(fuseI2t !== undefined && { i2t: fuseI2t }),
  };
}

/** The station as the sheets take it. */
export function contentOf(station: Station): StationContent {
  const { title, rules, supply, protection, duty, runs, later = {} } = station;
  const { batteryShortCircuitAmps, mainFuseA, mainFuseKind, mainFuseBreaksA, mainFuseVolts } =
    later;
  const { kind, ...figures } = fuseOf(later);
  return {
    title,
    runs: runs.map(runOf),
    ...(rules && { rules }),
    supply: {
      ...supply,
      ...(batteryShortCircuitAmps !== undefined && { batteryShortAmps: batteryShortCircuitAmps }),
      ...(mainFuseA !== undefined && { mainFuse: mainFuseA }),
      ...(mainFuseKind !== undefined && { mainFuseKind }),
      ...(mainFuseBreaksA !== undefined && { mainFuseBreaks: mainFuseBreaksA }),
      ...(mainFuseVolts !== undefined && { mainFuseVolts }),
    },
    protection: {
      ...protection,
      ...(kind !== undefined && { fuseKind: kind }),
      // Figures for the whole house are those of each run that has none of its own.
      fuses: runs.map((run) => ({ ...figures, ...fuseOf(run.later) })),
    },
    ...(duty && { duty }),
  };
}
