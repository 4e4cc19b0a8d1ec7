/** Whether what a list says of its feeders can be found in it. */
import { nameKey } from '../core/feeder-tree';
import { shortened } from '../core/sentence';
import type { ScheduleRun } from '../sheets/station/run';
import { nearestName } from './nearest-name';
import { isBattery, SOURCES } from './words';

/** Most pairs of names that are compared for one list, about two seconds' work; later misspellings are named, not guessed at. */
const MOST_COMPARED = 150_000;

export interface ReadFeeder {
  /** The run, blank for the battery where the list spelled it out. */
  readonly run: ScheduleRun;
  /** Its feeder is in no row of the list. */
  readonly doubt?: string;
}

/** A name that means the battery, the panel or a run of the list. */
export function isKnownFeeder(name: string, runs: readonly ScheduleRun[]): boolean {
  const key = nameKey(name);
  return SOURCES.includes(key) || runs.some(({ run = '' }) => nameKey(run) === key);
}

/** The runs with their feeders looked up among them and the sources, in the same order. */
export function readFeeders(
  runs: readonly ScheduleRun[],
  sources: readonly string[] = [],
): readonly ReadFeeder[] {
  const spelled = new Map(sources.map((name) => [nameKey(name), name.trim()]));
  for (const { run = '' } of runs) {
    if (run.trim() !== '') spelled.set(nameKey(run), run.trim());
  }
  const names = new Set(spelled.keys());
  const candidates = [...spelled.values(), ...SOURCES];
  // A misspelt feeder often feeds many runs.
  const doubts = new Map<string, string>();
  const doubtOf = (feeder: string): string => {
    const isWithin = (doubts.size + 1) * candidates.length <= MOST_COMPARED;
    const nearest = isWithin ? nearestName(feeder, candidates) : undefined;
    const hint = nearest === undefined ? '' : `; did you mean ${nearest}?`;
    return `no run or source of the list is called "${shortened(feeder)}"${hint}`;
  };
  return runs.map((run): ReadFeeder => {
    const { fedFrom, ...others } = run;
    if (fedFrom === undefined || fedFrom.trim() === '') return { run };
    if (isBattery(fedFrom, names)) return { run: others };
    const key = nameKey(fedFrom);
    if (names.has(key) || SOURCES.includes(key)) return { run };
    const doubt = doubts.get(key) ?? doubtOf(fedFrom.trim());
    doubts.set(key, doubt);
    return { run, doubt };
  });
}
