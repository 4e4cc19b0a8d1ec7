/**
 * Formulas by Excel's own grammar, read strictly: ECMA-376 part 1, 18.17 (formulas), and Microsoft's published rules for
 * structured references and its table of limits ("Excel specifications and limits"). It is not the reader that our sheets
 * are calculated with, which knows less and forgives more.
 */

export const LIMITS = {
  /** Characters of a formula, as it is typed. */
  characters: 8192,
  /** Functions within one another. */
  levels: 64,
  arguments: 255,
  /** Characters of a text within a formula. */
  text: 255,
  /** Bytes of a formula in memory. */
  bytes: 16_384,
  rows: 1_048_576,
  columns: 16_384,
  name: 255,
  sheetName: 31,
} as const;

export interface TableReference {
  /** Absent where a formula within the table means its own. */
  readonly table: string | undefined;
  readonly columns: readonly string[];
}

/** What a formula is made of. */
export interface FormulaFacts {
  readonly functions: readonly string[];
  readonly names: readonly string[];
  readonly sheets: readonly string[];
  readonly tables: readonly TableReference[];
  readonly levels: number;
  readonly mostArguments: number;
  readonly longestText: number;
  /** How much it takes in memory at most, by the sizes of [MS-XLSB] 2.5.97 (from memory, rounded up). */
  readonly bytes: number;
}

/** A formula that Excel would not take. */
export class FormulaFault extends Error {}

const ERROR_VALUES = /#(?:DIV\/0!|N\/A|NAME\?|NULL!|NUM!|REF!|VALUE!)/y;
const NUMBER = /\d+(?:\.\d*)?(?:E[+-]?\d+)?|\.\d+(?:E[+-]?\d+)?/iy;
const TEXT = /"(?:[^"]|"")*"/y;
const CELL = /(\$?)([A-Z]{1,3})(\$?)([1-9]\d*)(?![\w.(\\])/iy;
/** Whole rows, or whole columns, as print titles name them. */
const WHOLE = /\$?[1-9]\d*:\$?[1-9]\d*(?!\w)|\$?[A-Z]{1,3}:\$?[A-Z]{1,3}(?![\w.(])/iy;
const QUOTED_SHEET = /'((?:[^'[\]*?:/\\]|'')+)'!/y;
const PLAIN_SHEET = /([\p{L}_][\p{L}\p{N}_.]*)!/uy;
const WORD = /[\p{L}_\\][\p{L}\p{N}_.\\?]*/uy;
const SPACE = /[ \n\r]*/y;
const OPERATOR = /<>|<=|>=|[-+*/^&=<>]/y;

/** Characters for which a heading wants brackets of its own within the reference (the at sign and blanks after "@" as well). */
const SPECIAL = /[\t\n\r,:.[\]#'"{}$^&*+=\-></@!()%?`;~]/;
const ESCAPED = "[]#'@";
const ITEMS = ['#All', '#Headers', '#Data', '#Totals', '#This Row'];

/** Whether a word may be a name (18.17.2.5): not what a cell is called in either style, and no truth value. */
export function isName(word: string): boolean {
  const letters = /^([A-Z]{1,3})[1-9]\d*$/i.exec(word)?.[1];
  const isCell = letters !== undefined && columnOf(letters) <= LIMITS.columns;
  return (
    /^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(word) &&
    word.length <= LIMITS.name &&
    !isCell &&
    !/^(?:R\d*|C\d*|R\d*C\d*|TRUE|FALSE)$/i.test(word)
  );
}

function columnOf(letters: string): number {
  return [...letters.toUpperCase()].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 64, 0);
}

class Reader {
  private at = 0;
  private level = 0;
  private readonly facts = {
    functions: [] as string[],
    names: [] as string[],
    sheets: [] as string[],
    tables: [] as TableReference[],
    levels: 0,
    mostArguments: 0,
    longestText: 0,
    bytes: 0,
  };

  constructor(private readonly formula: string) {}

  whole(): FormulaFacts {
    if (this.formula.length + 1 > LIMITS.characters) this.fail('is longer than Excel takes');
    this.operation();
    this.match(SPACE);
    if (this.at < this.formula.length) this.fail('goes on after its end');
    if (this.facts.bytes > LIMITS.bytes) this.fail('takes more memory than Excel gives');
    return this.facts;
  }

  private fail(why: string): never {
    throw new FormulaFault(`${why}, at ${this.at}: ${this.formula.slice(this.at, this.at + 40)}`);
  }

  private match(pattern: RegExp): RegExpExecArray | null {
    pattern.lastIndex = this.at;
    const found = pattern.exec(this.formula);
    if (found !== null) this.at += found[0].length;
    return found;
  }

  private is(mark: string): boolean {
    return this.formula.startsWith(mark, this.at);
  }

  private take(mark: string): boolean {
    if (!this.is(mark)) return false;
    this.at += mark.length;
    return true;
  }

  private expect(mark: string): void {
    if (!this.take(mark)) this.fail(`"${mark}" belongs here`);
  }

  private uses(bytes: number): void {
    this.facts.bytes += bytes;
  }

  private operation(): void {
    do {
      this.operand();
      this.match(SPACE);
      this.uses(1);
    } while (this.match(OPERATOR) !== null);
  }

  private operand(): void {
    this.match(SPACE);
    while (this.take('-') || this.take('+')) {
      this.uses(1);
      this.match(SPACE);
    }
    this.primary();
    this.match(SPACE);
    while (this.take('%')) this.uses(1);
  }

  private primary(): void {
    if (this.is('{')) this.fail('an array constant, which our sheets do without');
    if (this.take('(')) {
      this.uses(1);
      this.operation();
      this.expect(')');
    } else if (this.is('"')) this.textConstant();
    else if (this.is('#')) {
      if (this.match(ERROR_VALUES) === null) this.fail('no error value');
      this.uses(2);
    } else if (this.is('[')) this.structured(undefined);
    else if (this.match(NUMBER) !== null) this.uses(9);
    else this.wordOrReference();
    if (this.is('{')) this.fail('an array constant, which our sheets do without');
  }

  private textConstant(): void {
    const found = this.match(TEXT);
    if (found === null) this.fail('a text without an end');
    const { length } = found[0].slice(1, -1).replaceAll('""', '"');
    if (length > LIMITS.text) this.fail('a text longer than Excel takes within a formula');
    this.facts.longestText = Math.max(this.facts.longestText, length);
    this.uses(3 + 2 * length);
  }

  private wordOrReference(): void {
    const sheet = this.match(QUOTED_SHEET) ?? this.match(PLAIN_SHEET);
    if (sheet !== null) {
      const name = sheet[1]!.replaceAll("''", "'");
      if (name.length > LIMITS.sheetName) this.fail('a sheet with too long a name');
      // Without quotes only what cannot be read as anything else.
      if (!sheet[0].startsWith("'") && !isName(name)) this.fail(`${name} wants quotes`);
      this.facts.sheets.push(name);
      if (!this.cells()) this.fail('no cells of that sheet');
      return;
    }
    if (this.cells()) return;
    const [word] = this.match(WORD) ?? this.fail('nothing that a formula may hold');
    if (this.is('(')) this.call(word);
    else if (this.is('[')) this.structured(word);
    else if (/^(?:TRUE|FALSE)$/i.test(word)) this.uses(2);
    else {
      if (!isName(word)) this.fail(`${word} may not be a name`);
      this.facts.names.push(word);
      this.uses(7);
    }
  }

  /** A cell or an area. */
  private cells(): boolean {
    if (this.match(WHOLE) !== null) {
      this.uses(15);
      return true;
    }
    if (!this.cell()) return false;
    const isArea = this.take(':');
    if (isArea && !this.cell()) this.fail('no end of an area');
    this.uses(isArea ? 15 : 9);
    return true;
  }

  private cell(): boolean {
    const found = this.match(CELL);
    if (found === null) return false;
    const [, , letters, , digits] = found;
    if (columnOf(letters!) > LIMITS.columns || Number(digits) > LIMITS.rows) {
      this.fail('a cell beyond the sheet');
    }
    return true;
  }

  private call(name: string): void {
    this.expect('(');
    this.facts.functions.push(name.toUpperCase());
    this.level += 1;
    this.facts.levels = Math.max(this.facts.levels, this.level);
    if (this.level > LIMITS.levels) this.fail('more functions within one another than Excel takes');
    let given = 0;
    this.match(SPACE);
    if (!this.take(')')) {
      do {
        given += 1;
        this.match(SPACE);
        // An argument may be left out.
        if (this.is(',') || this.is(')')) this.uses(1);
        else this.operation();
        this.match(SPACE);
      } while (this.take(','));
      this.expect(')');
    }
    if (given > LIMITS.arguments) this.fail('more arguments than Excel takes');
    this.facts.mostArguments = Math.max(this.facts.mostArguments, given);
    this.level -= 1;
    // The function, its name where it is not Excel's own, and the jumps that choices make.
    this.uses(11 + 4 * given);
  }

  /** What stands within the brackets of a table. */
  private structured(table: string | undefined): void {
    this.expect('[');
    const columns: string[] = [];
    if (this.take('@')) {
      if (!this.is(']'))
        columns.push(...(this.is('[') ? this.columnsInBrackets() : [this.bare(true)]));
    } else if (this.is('#')) this.item();
    else if (this.is('[')) {
      do {
        this.match(SPACE);
        if (this.is('[#')) {
          this.expect('[');
          this.item();
          this.expect(']');
        } else columns.push(...this.columnsInBrackets());
      } while (this.take(','));
    } else columns.push(this.bare(false));
    this.expect(']');
    this.facts.tables.push({ table, columns });
    this.uses(18);
  }

  private item(): void {
    const found = ITEMS.find((item) => this.is(item));
    if (found === undefined) this.fail('no item of a table');
    this.at += found.length;
  }

  private columnsInBrackets(): readonly string[] {
    const first = this.inBrackets();
    return this.take(':') ? [first, this.inBrackets()] : [first];
  }

  private inBrackets(): string {
    this.expect('[');
    let heading = '';
    while (!this.is(']')) {
      const one = this.formula[this.at];
      if (one === undefined) this.fail('a heading without an end');
      const isEscape = one === "'";
      const written = isEscape ? this.formula[this.at + 1] : one;
      if (isEscape && !ESCAPED.includes(written ?? '')) this.fail('an escape of nothing');
      if (!isEscape && ESCAPED.includes(one)) this.fail(`"${one}" wants an escape`);
      heading += written;
      this.at += isEscape ? 2 : 1;
    }
    this.expect(']');
    return heading;
  }

  /** A heading without brackets of its own. */
  private bare(afterAt: boolean): string {
    const end = this.formula.indexOf(']', this.at);
    const heading = this.formula.slice(this.at, end < 0 ? undefined : end);
    if (heading === '' || SPECIAL.test(heading) || (afterAt && heading.includes(' '))) {
      this.fail('a heading that wants brackets of its own');
    }
    this.at += heading.length;
    return heading;
  }
}

/** What a formula, without its leading "=", is made of. Throws a FormulaFault where Excel would not take it. */
export function readFormula(formula: string): FormulaFacts {
  return new Reader(formula).whole();
}
