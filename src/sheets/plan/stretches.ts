/** Places side by side taken together, so that a host is told of few areas and not of every cell. */

/** Neighbours of the same measure, as stretches: first place and how many. */
export function* stretches(
  measures: Iterable<readonly [place: number, measure: number]>,
): Generator<{ readonly first: number; readonly count: number; readonly measure: number }> {
  let stretch: { first: number; count: number; measure: number } | undefined;
  for (const [place, measure] of measures) {
    if (stretch?.measure === measure && place === stretch.first + stretch.count) {
      stretch.count += 1;
      continue;
    }
    if (stretch !== undefined) yield stretch;
    stretch = { first: place, count: 1, measure };
  }
  if (stretch !== undefined) yield stretch;
}

/** Places in any order, each once or more, as stretches: first place and how many. */
export function placesTogether(
  places: Iterable<number>,
): readonly { readonly first: number; readonly count: number }[] {
  const inOrder = [...new Set(places)].sort((one, other) => one - other);
  return [...stretches(inOrder.map((place) => [place, 0] as const))];
}
