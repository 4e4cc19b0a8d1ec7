/**
 * Parameters: the arguments that functions share. A parameter is described, given its unit and default, and read in one
 * place, whatever number of functions take it.
 */
import { invalid, isRefusal, type Outcome } from '../core/outcome';
import { TWOFOLD, twofold } from '../core/quantity';
import { shortened } from '../core/sentence';

/** A cell that is neither blank nor an error. */
export type Given = string | number | boolean;

/** Says how a value stands in a sentence: text in quotes, TRUE and FALSE as the spreadsheet writes them. */
export function quoted(given: Given): string {
  if (typeof given === 'string') return `"${shortened(given)}"`;
  if (typeof given === 'boolean') return given ? 'TRUE' : 'FALSE';
  return String(given);
}

export interface Parameter<Name extends string = string, Value = unknown> {
  /** The parameter's name in formulas' help. */
  readonly name: Name;
  /** What it is, with its unit. */
  readonly meaning: string;
  /** What text it takes besides a number, where it takes some. */
  readonly alsoText?: string;
  /** A text that it takes, as a formula writes it; present where text is what it is meant for. */
  readonly quotedText?: string;
  /** How the default is told to a person; present exactly where the argument may be left out. */
  readonly fallbackText?: string;
  readonly fallback?: Value;
  /** The texts it is one of, where it is one of a few. */
  readonly choices?: readonly string[];
  /** What a number must keep to, where it is a number. */
  readonly bounds?: NumberBounds;
  /** The parameter of the same call that says how a text of this one is read, such as `unit`. */
  readonly besideName?: string;
  /**
   * Reads a cell's content; a refusal's sentence does not name the parameter, which its reader does. `beside` is what the
   * parameter of `besideName` says, as it is read or why it cannot be; only there where the cell is an argument of a call.
   */
  read(given: Given, beside?: unknown): Outcome<Value>;
}

/** Newer spreadsheets hold more in a cell (data types, pictures); none of it is an argument of ours. */
function isGiven(cell: unknown): cell is Given {
  return typeof cell === 'number' || typeof cell === 'string' || typeof cell === 'boolean';
}

/** Reads a cell that is neither blank nor an error by its parameter, whatever kind of thing a caller put there. */
export function readGiven<Value>(
  parameter: Parameter<string, Value>,
  cell: unknown,
  beside?: unknown,
): Outcome<Value> {
  return isGiven(cell)
    ? parameter.read(cell, beside)
    : invalid('this kind of cell cannot be read; give a number or text');
}

/** The text shown beside a parameter: meaning, texts that it takes besides numbers, and default. */
export function describeParameter({ meaning, alsoText, fallbackText }: Parameter): string {
  return [
    meaning,
    ...(alsoText === undefined ? [] : [alsoText]),
    ...(fallbackText === undefined ? [] : [`Default: ${fallbackText}.`]),
  ].join(' ');
}

/** The same parameter, to be left out at will; `fallback` stands for it then. */
export function optional<Name extends string, Value>(
  parameter: Parameter<Name, Value>,
  fallback: Value,
  fallbackText: string,
): Parameter<Name, Value> {
  return { ...parameter, fallback, fallbackText };
}

/** No two parts match the same characters, so that a cell full of digits is read in one pass. */
const NUMERAL = /^[+-]?(?:\d+(?:\.\d*)?|\.\d+)(?:e[+-]?\d+)?(\s*%)?$/i;

/** Reads a number, or text that is one ("20", " 2.5e3 ", "3%"); a decimal comma is not guessed at. */
export function readNumber(given: Given): Outcome<number> {
  if (typeof given === 'number' && Number.isFinite(given)) {
    return given === 0 ? 0 : given; // not -0, which would go on into signs of its own
  }
  const text = String(given).trim();
  const numeral = typeof given === 'string' ? NUMERAL.exec(text) : null;
  if (numeral !== null) {
    const number = Number.parseFloat(text) / (numeral[1] === undefined ? 1 : 100);
    if (Number.isFinite(number)) return number === 0 ? 0 : number;
  }
  const comma = /^[+-]?(\d+),(\d+)$/.exec(text);
  if (comma === null) return invalid(`${quoted(given)} is not a number`);
  const [point, without] = [`${comma[1]}.${comma[2]}`, `${comma[1]}${comma[2]}`];
  return TWOFOLD.test(text)
    ? invalid(twofold(text, Number(point), Number(without)))
    : invalid(`${quoted(given)} is not a number; write ${shortened(text.replace(',', '.'))}`);
}

export interface NumberBounds {
  readonly least?: number;
  /** The bound itself is refused too. */
  readonly above?: number;
  readonly most?: number;
  readonly below?: number;
  readonly whole?: boolean;
  /** Said after the refusal: what to write instead. */
  readonly remedy?: string;
}

/** A parameter for a number within bounds. */
export function numberParameter<const Name extends string>(
  name: Name,
  meaning: string,
  bounds: NumberBounds = {},
): Parameter<Name, number> {
  const { least, above, most, below, whole, remedy } = bounds;
  const wrong = (text: string) => invalid(remedy === undefined ? text : `${text}; ${remedy}`);
  return {
    name,
    meaning,
    bounds,
    read(given) {
      const number = readNumber(given);
      if (isRefusal(number)) return number;
      if (least !== undefined && number < least) return wrong(`${number} is less than ${least}`);
      if (above !== undefined && number <= above) return wrong(`${number} is not above ${above}`);
      if (most !== undefined && number > most) return wrong(`${number} is more than ${most}`);
      if (below !== undefined && number >= below) return wrong(`${number} is not below ${below}`);
      if (whole === true && !Number.isInteger(number)) {
        return wrong(`${number} is not a whole number`);
      }
      return number;
    },
  };
}

/** A parameter for one of a few texts; `also` holds other spellings. Case and outer spaces do not matter. */
export function choiceParameter<const Name extends string, const Choice extends string>(
  name: Name,
  meaning: string,
  choices: readonly Choice[],
  also: Readonly<Record<string, Choice>> = {},
): Parameter<Name, Choice> {
  const known = new Map<string, Choice>(Object.entries(also));
  for (const choice of choices) known.set(choice.toLowerCase(), choice).set(choice, choice);
  const list = choices.map((choice) => `"${choice}"`).join(', ');
  return {
    name,
    meaning: `${meaning}: ${list}.`,
    choices,
    quotedText: `"${choices[0]}"`,
    read(given) {
      const choice =
        typeof given === 'string'
          ? (known.get(given) ?? known.get(given.trim().toLowerCase().replace(/\s+/g, ' ')))
          : undefined;
      return choice ?? invalid(`${quoted(given)} is not one of ${list}`);
    },
  };
}

/** A parameter for TRUE or FALSE. A lone number is refused, since some spreadsheets hand a blank over as 0. */
export function truthParameter<const Name extends string>(
  name: Name,
  meaning: string,
): Parameter<Name, boolean> {
  return {
    name,
    meaning,
    read(given) {
      if (typeof given === 'boolean') return given;
      const text = typeof given === 'string' ? given.trim().toLowerCase() : '';
      if (text === 'true') return true;
      if (text === 'false') return false;
      return invalid(`${quoted(given)} is neither TRUE nor FALSE`);
    },
  };
}
