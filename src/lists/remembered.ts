/** Answers about texts, kept since the same text stands in hundreds of cells. */
const MOST_KEPT = 4000;

export function remembered<Answer>(answer: (text: string) => Answer): (text: string) => Answer {
  const known = new Map<string, { readonly answer: Answer }>();
  return (text) => {
    let found = known.get(text);
    if (found === undefined) {
      if (known.size >= MOST_KEPT) known.clear();
      known.set(text, (found = { answer: answer(text) }));
    }
    return found.answer;
  };
}
