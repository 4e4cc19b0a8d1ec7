/** What the Fix column tells of a row, and the station once it is done. */
import { parseSize, sizeAreaMm2 } from '../../../src/core/size';
import { isRefusal } from '../../../src/core/outcome';
import { VERDICT_JOINT } from '../../../src/core/verdict';
import type { RunValues } from '../../../src/sheets/station-values';
import { stationValues } from '../../../src/sheets/station-values';
import type { StationContent } from '../../../src/sheets/station/content';
import type { ScheduleRun } from '../../../src/sheets/station/run';
import { FIX_WORDS, verdictsIn, type VerdictKey } from '../../../src/sheets/station/verdicts';

/** What a row is short of, by the columns that the Fix column answers. */
const WANTS = {
  'too few volts': ({ shortLow }: RunValues) => shortLow === 1,
  'fewer volts than assumed': ({ fewer }: RunValues) => fewer === 1,
  'drop over target': ({ overDrop }: RunValues) => typeof overDrop === 'number' && overDrop > 0,
} as const;
export type Want = keyof typeof WANTS;
export const WANTED = Object.keys(WANTS) as Want[];

export const wants = (row: RunValues) => WANTED.filter((want) => WANTS[want](row));

/** Those of some words that a row's verdict has. */
export const said = (row: RunValues, of: readonly VerdictKey[]) =>
  verdictsIn(String(row.verdict)).filter((key) => of.includes(key));

export interface Told {
  readonly thicker: { readonly run: string; readonly size: string } | undefined;
  /** Sizes for its own wire. */
  readonly take: readonly string[];
  readonly ownFuseA: number | undefined;
  /** A share of the source volts. */
  readonly target: number | undefined;
  readonly first: string | undefined;
  readonly isGivenUp: boolean;
  readonly isUnprotected: boolean;
}

const PATTERNS = {
  thicker: new RegExp(`^${FIX_WORDS.thicker}(\\S+)${FIX_WORDS.inSize}(\\S+ \\S+)$`),
  take: new RegExp(`^${FIX_WORDS.take}(\\S+ \\S+)${FIX_WORDS.orThicker}$`),
  ownFuse: new RegExp(`^${FIX_WORDS.ownFuse}(\\S+)${FIX_WORDS.amps}$`),
  target: new RegExp(`^${FIX_WORDS.target}(\\S+) %$`),
  first: new RegExp(`^${FIX_WORDS.first}(\\S+)$`),
} as const;

/** The words of a row's last cell. */
export function toldBy({ mend }: RunValues): Told {
  const words = String(mend).split(VERDICT_JOINT);
  const found = (key: keyof typeof PATTERNS) =>
    words.flatMap((word) => {
      const match = PATTERNS[key].exec(word);
      return match === null ? [] : [match.slice(1)];
    });
  const thicker = found('thicker')[0];
  const ownFuse = found('ownFuse')[0];
  const target = found('target')[0];
  return {
    thicker: thicker && { run: thicker[0]!, size: thicker[1]! },
    take: found('take').map(([size]) => size!),
    ownFuseA: ownFuse && Number(ownFuse[0]),
    target: target && Number(target[0]) / 100,
    first: found('first')[0]?.[0],
    isGivenUp: words.includes(FIX_WORDS.none),
    isUnprotected: words.includes(FIX_WORDS.unprotected),
  };
}

/** The thickest of some sizes. */
export function thickest(sizes: readonly string[]): string {
  const area = (size: string) => {
    const parsed = parseSize(size);
    if (isRefusal(parsed)) throw new Error(`${size} is no size`);
    return sizeAreaMm2(parsed);
  };
  return [...sizes].sort((a, b) => area(b) - area(a))[0]!;
}

/** Wires that nobody typed: as they are in use now, or as they then are suggested. */
export const OTHERS = ['kept', 'suggested anew'] as const;
export type Others = (typeof OTHERS)[number];

/** The station's rows once something is typed into one of them. */
export function afterwards(
  content: StationContent,
  before: readonly RunValues[],
  name: string,
  typed: ScheduleRun,
  others: Others,
): readonly RunValues[] {
  return stationValues({
    ...content,
    runs: content.runs.map((run, index) => {
      const inUse = before[index]!.size;
      const kept =
        others === 'kept' && typeof inUse === 'string' ? { ...run, ownSize: inUse } : run;
      return run.run === name ? { ...kept, ...typed } : kept;
    }),
  }).runs;
}

/** Names from a run to its source. */
export function pathOf({ runs }: StationContent, name: string): readonly string[] {
  const run = runs.find((candidate) => candidate.run === name);
  return run?.fedFrom === undefined ? [name] : [name, ...pathOf({ title: '', runs }, run.fedFrom)];
}
