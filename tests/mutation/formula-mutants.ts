/**
 * The faults that could be made in formulas, which are texts and templates of the source. What a template puts in counts
 * as one operand.
 */
import ts from 'typescript';
import { changedNumber } from './changed-number';
import type { Mutant } from './mutant';

/** Stands for every character of what is put into a template. */
const PUT_IN = '\uE000';

const CALL =
  /(?<![A-Za-z_.])(?:IF|AND|OR|NOT|MAX|MIN|SUM|SUMIF|SUMPRODUCT|COUNTIF|COUNT|INDEX|MATCH|LOOKUP|IFERROR|IFNA|ISNUMBER|ISERROR|ISTEXT|ISNA|N|NA|ABS|INT|ROUND|SQRT|LN|EXP|LEN|LEFT|RIGHT|MID|TRIM|LOWER|SEARCH|SUBSTITUTE|VALUE|ROWS|CHAR)\(/;

const BARE = new RegExp(
  `^[${PUT_IN}A-Z0-9.()<>=+*/^&,"'-]*[${PUT_IN})"0-9](?:<=|>=|<>|[<>=+*/^&-])[${PUT_IN}("0-9A-Z][${PUT_IN}A-Z0-9.()<>=+*/^&,"'-]*$`,
);

const OPERATORS: Readonly<Record<string, readonly string[]>> = {
  '<': ['<=', '>='],
  '<=': ['<', '>'],
  '>': ['>=', '<='],
  '>=': ['>', '<'],
  '=': ['<>'],
  '<>': ['='],
  '+': ['-'],
  '-': ['+'],
  '*': ['/'],
  '/': ['*'],
  '^': ['*'],
};

const NAMES: Readonly<Record<string, string>> = {
  AND: 'OR',
  OR: 'AND',
  MAX: 'MIN',
  MIN: 'MAX',
  LEFT: 'RIGHT',
  RIGHT: 'LEFT',
  INT: 'ABS',
  ISNUMBER: 'ISTEXT',
  ISERROR: 'ISNUMBER',
  SQRT: 'ABS',
  NOT: '',
  ABS: '',
  TRUE: 'FALSE',
  FALSE: 'TRUE',
};

const TOKEN =
  /"(?:[^"]|"")*"|(?<number>(?<![A-Za-z0-9_.$\uE000])\d+(?:\.\d+)?(?:E[+-]?\d+)?(?![A-Za-z0-9_.:\uE000]))|(?<name>(?<![A-Za-z_.\uE000])[A-Z]+(?=\()|(?<![A-Za-z_.\uE000])(?:TRUE|FALSE)(?![A-Za-z_.\uE000]))|(?<operator><=|>=|<>|[<>=+*/^-])/g;

type TextNode = ts.StringLiteral | ts.NoSubstitutionTemplateLiteral | ts.TemplateExpression;

/** The text as written in the source, what is put in blanked. */
function masked(node: TextNode, source: string): string {
  const start = node.getStart();
  const marks = source.slice(start, node.getEnd()).split('');
  if (ts.isTemplateExpression(node)) {
    for (const { expression } of node.templateSpans) {
      // From "${" to "}".
      const from = expression.getFullStart() - 2 - start;
      const to = source.indexOf('}', expression.getEnd()) + 1 - start;
      marks.fill(PUT_IN, from, to);
    }
  }
  return marks.slice(1, -1).join('');
}

/** Whether a text is one of a formula; a sum of bare operands only beside other formulas. */
function isFormula(text: string, isBesideFormulas: boolean): boolean {
  return CALL.test(text) || (isBesideFormulas && text.includes(PUT_IN) && BARE.test(text));
}

interface Span {
  readonly from: number;
  readonly to: number;
}

/** Where the arguments of the call stand whose bracket opens just before; as far as the text goes. */
function argumentsFrom(text: string, open: number): { spans: Span[]; isClosed: boolean } {
  const spans: Span[] = [];
  let depth = 0;
  let isQuoted = false;
  let from = open;
  for (let at = open; at < text.length; at++) {
    const mark = text[at];
    if (mark === '"') isQuoted = !isQuoted;
    if (isQuoted) continue;
    if (mark === '(') depth++;
    if ((mark === ',' || mark === ')') && depth === 0) {
      spans.push({ from, to: at });
      from = at + 1;
      if (mark === ')') return { spans, isClosed: true };
    }
    if (mark === ')') depth--;
  }
  return { spans, isClosed: false };
}

function isValue(node: ts.Node): boolean {
  const { parent } = node;
  return !(
    ts.isImportDeclaration(parent) ||
    ts.isLiteralTypeNode(parent) ||
    (ts.isPropertyAssignment(parent) && parent.name === node)
  );
}

export function formulaMutants(file: string, source: string): Mutant[] {
  const tree = ts.createSourceFile(file, source, ts.ScriptTarget.ES2022, true);
  const texts: { readonly at: number; readonly text: string }[] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTypeNode(node)) return;
    const isText =
      ts.isStringLiteral(node) ||
      ts.isNoSubstitutionTemplateLiteral(node) ||
      ts.isTemplateExpression(node);
    if (isText && isValue(node)) {
      texts.push({ at: node.getStart(tree) + 1, text: masked(node, source) });
    }
    ts.forEachChild(node, visit);
  };
  visit(tree);
  const isBesideFormulas = texts.some(({ text }) => CALL.test(text));
  return texts
    .filter(({ text }) => isFormula(text, isBesideFormulas))
    .flatMap(({ at, text }) => mutantsOf(file, source, at, text));
}

function mutantsOf(file: string, source: string, at: number, text: string): Mutant[] {
  const mutants: Mutant[] = [];
  const add = ({ from, to }: Span, other: string, kind: string) =>
    mutants.push({ file, start: at + from, end: at + to, text: other, kind });
  const written = ({ from, to }: Span) => source.slice(at + from, at + to);

  for (const match of text.matchAll(TOKEN)) {
    const [token] = match;
    const { number, name, operator } = match.groups ?? {};
    const span = { from: match.index, to: match.index + token.length };
    if (number !== undefined) {
      add(span, changedNumber(number), 'number');
    } else if (operator !== undefined) {
      // A sign before an operand, as in "--(", only turns truths into numbers; a first "=" makes a text a formula.
      const isSign = operator === '-' && !/[\uE000)"0-9A-Za-z]/.test(text[span.from - 1] ?? '(');
      const isMark = operator === '=' && span.from === 0;
      for (const other of isSign || isMark ? [] : OPERATORS[operator]!)
        add(span, other, 'operator');
    } else if (name === undefined) {
      add(span, token === '""' ? '"?"' : '""', 'text');
    } else {
      const other = NAMES[name];
      if (other !== undefined) add(span, other, 'name');
      if (name === 'IF') {
        const { spans, isClosed } = argumentsFrom(text, span.to + 1);
        const [test, whenTrue, whenFalse] = spans;
        if (test !== undefined) {
          add(test, 'TRUE', 'condition');
          add(test, 'FALSE', 'condition');
        }
        if (isClosed && whenTrue !== undefined && whenFalse !== undefined) {
          const both = { from: whenTrue.from, to: whenFalse.to };
          add(both, `${written(whenFalse)},${written(whenTrue)}`, 'branches');
        }
      }
      if (name === 'IFERROR') {
        const { spans, isClosed } = argumentsFrom(text, span.to + 1);
        const [tried, instead] = spans;
        if (isClosed && tried !== undefined && instead !== undefined) {
          add({ from: span.from, to: instead.to + 1 }, `(${written(tried)})`, 'branches');
        }
      }
    }
  }
  return mutants;
}
