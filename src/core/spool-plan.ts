/** The runs of a list as pieces to cut from spools: which of them can be planned, and what the others want. */
import { nameKey } from './feeder-tree';
import { invalid, noAnswer, type Refusal } from './outcome';
import { shortened } from './sentence';
import { fitsOn, planSpools, type SpoolPlan } from './spools';

/** A piece to cut, its length in the unit of the spools. */
export interface RunPiece {
  readonly name: string;
  readonly length: number;
}

export interface CutPlan {
  /** Of the runs that can be planned; the places in it are those of the whole list. */
  readonly plan: SpoolPlan;
  /** Why the others cannot, by place in the list. */
  readonly refusals: ReadonlyMap<number, Refusal>;
}

/** A length in a sentence, without the digits that adding leaves behind. */
function told(length: number): string {
  return Number.isFinite(length) ? String(Number(length.toPrecision(12))) : 'too much';
}

/**
 * Plans the cutting of a list of runs, `spare` added to each piece; spools of each length as many as needed (see
 * planSpools). Refused, each by itself: names that stand twice, and a run that is longer than any spool.
 */
export function planCuts(
  runs: readonly RunPiece[],
  spoolLengths: readonly number[],
  spare: number,
): CutPlan {
  const longest = spoolLengths.reduce((most, length) => Math.max(most, length), 0);
  const named = new Map<string, number>();
  for (const { name } of runs) named.set(nameKey(name), (named.get(nameKey(name)) ?? 0) + 1);

  const refusals = new Map<number, Refusal>();
  const places: number[] = [];
  for (const [place, { name, length }] of runs.entries()) {
    const namesakes = named.get(nameKey(name))!;
    const called = `"${shortened(name)}"`;
    if (namesakes > 1) {
      const why = `${called} names ${namesakes} runs of the list; give each piece a name of its own, such as "${shortened(name)} +" and "${shortened(name)} -"`;
      refusals.set(place, invalid(why));
    } else if (!fitsOn(length + spare, longest)) {
      const why = `${called} wants ${told(length + spare)} in one piece and the longest spool has ${longest}; find a longer spool, or make it two runs with a joint between`;
      refusals.set(place, noAnswer(why));
    } else {
      places.push(place);
    }
  }
  const plan = planSpools(
    places.map((place) => runs[place]!.length + spare),
    spoolLengths,
  );
  const spools = plan.spools.map((spool) => ({
    ...spool,
    pieces: spool.pieces.map((piece) => places[piece]!),
  }));
  return { plan: { ...plan, spools }, refusals };
}
