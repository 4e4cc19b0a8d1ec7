/** Formula text taken apart: the part of the spreadsheet's formula language that the sheets here are written in. */

export type Operator = '+' | '-' | '*' | '/' | '^' | '&' | '=' | '<>' | '<' | '>' | '<=' | '>=';

/** A cell as a formula writes it; rows and columns count from 0. */
export interface Address {
  readonly row: number;
  readonly column: number;
  /** The row stays when the formula is filled down. */
  readonly rowPinned: boolean;
}

export type Node =
  | { readonly kind: 'literal'; readonly value: string | number | boolean | null }
  | {
      readonly kind: 'area';
      readonly sheet: string | undefined;
      readonly first: Address;
      readonly last: Address;
    }
  | { readonly kind: 'name'; readonly name: string }
  | { readonly kind: 'negative' | 'percent'; readonly of: Node }
  | {
      readonly kind: 'operation';
      readonly operator: Operator;
      readonly left: Node;
      readonly right: Node;
    }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Node[] };

/** A formula that is not written in this language: a fault of ours, never of whoever fills in a sheet. */
export class FormulaSyntaxError extends Error {}

interface Token {
  readonly kind: 'number' | 'text' | 'cell' | 'sheet' | 'word' | 'mark' | 'end';
  readonly text: string;
  readonly at: number;
}

/** In the order of the pattern's groups. */
const KINDS = ['number', 'text', 'sheet', 'cell', 'word', 'mark'] as const;
const TOKEN =
  /\s*(?:(\d+(?:\.\d*)?(?:[eE][+-]?\d+)?|\.\d+)|("(?:[^"]|"")*")|((?:'(?:[^']|'')+'|[A-Za-z_][A-Za-z0-9_.]*)!)|(\$?[A-Z]{1,3}\$?\d+(?![A-Za-z0-9_.(]))|([A-Za-z_][A-Za-z0-9_.]*)|(<>|<=|>=|[-+*/^&=<>%(),:]))/y;

function tokensOf(formula: string): readonly Token[] {
  const tokens: Token[] = [];
  const end = formula.trimEnd().length;
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < end) {
    const at = TOKEN.lastIndex;
    const found = TOKEN.exec(formula);
    if (found === null) {
      throw new FormulaSyntaxError(`cannot read "${formula.slice(at, at + 20)}" in ${formula}`);
    }
    let group = 1;
    while (found[group] === undefined) group += 1;
    tokens.push({ kind: KINDS[group - 1]!, text: found[group]!, at });
  }
  return [...tokens, { kind: 'end', text: '', at: end }];
}

function addressOf(text: string): Address {
  const [, letters, pin, digits] = /^\$?([A-Z]{1,3})(\$?)(\d+)$/.exec(text)!;
  let column = 0;
  for (const letter of letters!) column = column * 26 + letter.charCodeAt(0) - 64;
  return { row: Number(digits) - 1, column: column - 1, rowPinned: pin !== '' };
}

function sheetNameOf(text: string): string {
  const name = text.slice(0, -1);
  return name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
}

/** How strongly operators bind, loosest first, as spreadsheets have it. */
const LEVELS: readonly (readonly Operator[])[] = [
  ['=', '<>', '<', '>', '<=', '>='],
  ['&'],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];

class Parser {
  private readonly tokens: readonly Token[];
  private at = 0;

  constructor(private readonly formula: string) {
    this.tokens = tokensOf(formula);
  }

  whole(): Node {
    const node = this.operation(0);
    if (this.next.kind !== 'end') this.fail();
    return node;
  }

  private get next(): Token {
    return this.tokens[this.at]!;
  }

  private take(): Token {
    const token = this.next;
    if (token.kind === 'end') this.fail();
    this.at += 1;
    return token;
  }

  private fail(): never {
    throw new FormulaSyntaxError(
      `"${this.next.text}" is not expected at ${this.next.at} of ${this.formula}`,
    );
  }

  private isMark(...texts: readonly string[]): boolean {
    return this.next.kind === 'mark' && texts.includes(this.next.text);
  }

  private expect(text: string): void {
    if (!this.isMark(text)) this.fail();
    this.at += 1;
  }

  private operation(level: number): Node {
    const operators = LEVELS[level];
    if (operators === undefined) return this.signed();
    let left = this.operation(level + 1);
    while (this.isMark(...operators)) {
      const operator = this.take().text as Operator;
      left = { kind: 'operation', operator, left, right: this.operation(level + 1) };
    }
    return left;
  }

  private signed(): Node {
    if (this.isMark('-')) {
      this.at += 1;
      return { kind: 'negative', of: this.signed() };
    }
    if (this.isMark('+')) {
      this.at += 1;
      return this.signed();
    }
    let node = this.primary();
    while (this.isMark('%')) {
      this.at += 1;
      node = { kind: 'percent', of: node };
    }
    return node;
  }

  private primary(): Node {
    const token = this.take();
    switch (token.kind) {
      case 'number':
        return { kind: 'literal', value: Number(token.text) };
      case 'text':
        return { kind: 'literal', value: token.text.slice(1, -1).replaceAll('""', '"') };
      case 'sheet':
        return this.area(sheetNameOf(token.text), this.take());
      case 'cell':
        return this.area(undefined, token);
      case 'word':
        return this.word(token.text);
      default:
        if (token.text !== '(') {
          this.at -= 1;
          this.fail();
        }
    }
    const inner = this.operation(0);
    this.expect(')');
    return inner;
  }

  private area(sheet: string | undefined, token: Token): Node {
    if (token.kind !== 'cell') this.fail();
    const first = addressOf(token.text);
    if (!this.isMark(':')) return { kind: 'area', sheet, first, last: first };
    this.at += 1;
    const end = this.take();
    if (end.kind !== 'cell') this.fail();
    return { kind: 'area', sheet, first, last: addressOf(end.text) };
  }

  private word(text: string): Node {
    if (!this.isMark('(')) {
      const upper = text.toUpperCase();
      return upper === 'TRUE' || upper === 'FALSE'
        ? { kind: 'literal', value: upper === 'TRUE' }
        : { kind: 'name', name: text };
    }
    this.at += 1;
    const args: Node[] = [];
    if (this.isMark(')')) {
      this.at += 1;
      return { kind: 'call', name: text, args };
    }
    for (;;) {
      // Nothing between two commas is an argument left out.
      args.push(this.isMark(',', ')') ? { kind: 'literal', value: null } : this.operation(0));
      if (!this.isMark(',')) break;
      this.at += 1;
    }
    this.expect(')');
    return { kind: 'call', name: text, args };
  }
}

/** The formula's tree; text without its leading "=". Throws FormulaSyntaxError. */
export function parseFormula(formula: string): Node {
  return new Parser(formula).whole();
}
