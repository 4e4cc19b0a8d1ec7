/** Marks in each function of a file that tell that it ran: which tests can notice a mutant at all. */
import ts from 'typescript';

type Body = ts.FunctionLikeDeclaration & { readonly body: ts.ConciseBody };

const hasBody = (node: ts.Node): node is Body =>
  ts.isFunctionLike(node) && 'body' in node && node.body !== undefined;

function functionsOf(tree: ts.SourceFile): Body[] {
  const found: Body[] = [];
  const visit = (node: ts.Node): void => {
    if (hasBody(node)) found.push(node);
    ts.forEachChild(node, visit);
  };
  visit(tree);
  return found;
}

const parse = (file: string, source: string) =>
  ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true);

/** Names a function of a file by where it begins. */
const named = (file: string, start: number) => `${file}@${start}`;

/** The innermost function that holds a place, or nothing where the place runs as the file is loaded. */
export function functionAt(file: string, source: string, at: number): string | undefined {
  const inside = functionsOf(parse(file, source)).filter(
    (one) => one.getStart() <= at && at < one.getEnd(),
  );
  const innermost = inside.at(-1);
  return innermost === undefined ? undefined : named(file, innermost.getStart());
}

/** The source with a mark in each function; `numberOf` gives the number that the mark of a named function sets. */
export function withProbes(
  file: string,
  source: string,
  numberOf: (name: string) => number,
): string {
  const pieces: { readonly at: number; readonly text: string }[] = [];
  for (const one of functionsOf(parse(file, source))) {
    const mark = `globalThis.loomReached[${numberOf(named(file, one.getStart()))}]=1`;
    if (ts.isBlock(one.body)) {
      pieces.push({ at: one.body.getStart() + 1, text: `${mark};` });
    } else {
      pieces.push({ at: one.body.getStart(), text: `(${mark},` });
      pieces.push({ at: one.body.getEnd(), text: ')' });
    }
  }
  // At one place, what closes an inner function comes before what closes an outer one: both are alike.
  return pieces
    .sort((a, b) => b.at - a.at)
    .reduce((text, piece) => text.slice(0, piece.at) + piece.text + text.slice(piece.at), source);
}
