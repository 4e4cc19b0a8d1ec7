/** One small fault that could be made in a source file, as a piece of its text replaced. */
export interface Mutant {
  /** From the top of the repository, with forward slashes. */
  readonly file: string;
  readonly start: number;
  readonly end: number;
  readonly text: string;
  readonly kind: string;
}

export function withMutant(source: string, { start, end, text }: Mutant): string {
  return source.slice(0, start) + text + source.slice(end);
}

/** The line of the file, and what of it became what: the same as long as that line stays as it is. */
export function told(source: string, { start, end, text }: Mutant): string {
  const before = source.lastIndexOf('\n', start - 1) + 1;
  const after = source.indexOf('\n', end);
  const left = source.slice(before, start).trimStart();
  const right = source.slice(end, after === -1 ? undefined : after).trimEnd();
  const short = (part: string) => part.replace(/\s+/g, ' ');
  return `${short(left).slice(-60)}[[${short(source.slice(start, end))} -> ${short(text)}]]${short(right).slice(0, 40)}`;
}

export function lineOf(source: string, { start }: Mutant): number {
  return source.slice(0, start).split('\n').length;
}
