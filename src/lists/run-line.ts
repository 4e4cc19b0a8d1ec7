/**
 * A run in one line, as a person says it: "Van HF, 22 A, 10 ft, from Van main, at least 11.7 V". Parts stand between commas
 * in any order. What is understood stays as it was typed, since the sheet itself reads quantities; the rest is named.
 */
import { isRefusal } from '../core/outcome';
import { inBaseUnit, splitFeetAndInches } from '../core/quantity';
import { formatSize, parseSize } from '../core/size';
import { findUnit, plain, type Quantity } from '../core/units';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import type { ScheduleRun } from '../sheets/station/run';

type LineKey = Exclude<keyof ScheduleRun, 'kind'>;

export interface ReadLine {
  /** What goes into the row's cells. */
  readonly run: Readonly<Partial<Record<LineKey, string | number>>>;
  /** Headings with what was taken for them, in the order of the line. */
  readonly understood: readonly (readonly [heading: string, text: string])[];
  /** Parts that mean nothing here, or that say again what another part says. */
  readonly unclear: readonly string[];
}

/** Commas and semicolons part, but for a decimal comma, which stands between digits. */
const PARTS = /\s*(?:;|,(?!\d)|(?<!\d),)\s*/;

interface Phrase {
  readonly key: LineKey;
  readonly pattern: RegExp;
  /** What of a match goes into the cell; the whole first group unless given. */
  readonly value?: string;
  /** What the text must be a quantity of. */
  readonly quantity?: Quantity;
}

/** Words that say what a part is, the longer before those in them. */
const PHRASES: readonly Phrase[] = [
  { key: 'fedFrom', pattern: /^(?:is )?(?:fed )?(?:from|by|off)\s+(.+)$/i },
  { key: 'endsAt', pattern: /^(?:ends? at|joins|charges)\s+(.+)$/i },
  {
    key: 'leastVolts',
    pattern: /^(?:at least|min(?:imum)?(?: volts)?|not (?:less than|below)|needs)\s+(.+)$/i,
    quantity: 'voltage',
  },
  {
    key: 'mostVolts',
    pattern: /^(?:at most|max(?:imum)?(?: volts)?|not (?:more than|above))\s+(.+)$/i,
    quantity: 'voltage',
  },
  { key: 'surge', pattern: /^(?:surge|inrush|starts? (?:at|with))\s+(.+)$/i, quantity: 'current' },
  { key: 'target', pattern: /^(?:target|drop)\s+(.+)$/i, quantity: 'share' },
  { key: 'target', pattern: /^(.+?)\s+(?:target|drop)$/i, quantity: 'share' },
  { key: 'efficiency', pattern: /^efficiency\s+(.+)$/i, quantity: 'share' },
  { key: 'atOnce', pattern: /^at once\s+(.+)$/i, quantity: 'share' },
  { key: 'joints', pattern: /^joints\s+(.+)$/i, quantity: 'resistance' },
  { key: 'fused', pattern: /^(?:no fuse|not fused|without (?:a )?fuse|unfused)$/i, value: 'no' },
  { key: 'fused', pattern: /^(?:own fuse|fused|with (?:a )?fuse)$/i, value: 'yes' },
  { key: 'endFused', pattern: /^fuse at (?:the )?end$/i, value: 'yes' },
  {
    key: 'returns',
    pattern: /^(?:chassis(?: return)?|return(?:s)? (?:by|through) (?:the )?chassis)$/i,
    value: 'chassis',
  },
  { key: 'ownSize', pattern: /^(?:wire|my wire)\s+(.+)$/i },
  { key: 'load', pattern: /^(?:for|to|load|feeds)\s+(.+)$/i },
  { key: 'notes', pattern: /^notes?:?\s+(.+)$/i },
];

/** A quantity by itself says which column it is. */
const BY_QUANTITY: Readonly<Partial<Record<Quantity, LineKey>>> = {
  current: 'peak',
  power: 'peak',
  length: 'length',
  voltage: 'volts',
  share: 'target',
  resistance: 'joints',
};
const NUMBER_AND_UNIT = /^([\d.,]+(?:\s\d{3})*)\s*(.*)$/;

function quantityOf(text: string): Quantity | undefined {
  if (splitFeetAndInches(text) !== undefined) return 'length';
  const unit = NUMBER_AND_UNIT.exec(text)?.[2] ?? '';
  return unit === '' ? undefined : findUnit(unit)?.quantity;
}

/** Cells of these hold a quantity as it is typed; the others hold numbers. */
const AS_TYPED: ReadonlySet<LineKey> = new Set(['peak', 'length']);

/** A number for a cell that holds one, in its own unit; undefined where the text is none. */
function numberIn(text: string, quantity: Quantity): number | undefined {
  const [, digits = '', behind = ''] = NUMBER_AND_UNIT.exec(text) ?? [];
  const number = Number(digits.replace(',', '.'));
  const unit = behind === '' ? undefined : findUnit(behind);
  if (digits === '' || !Number.isFinite(number)) return undefined;
  if (behind !== '' && unit?.quantity !== quantity) return undefined;
  if (quantity === 'share' && unit === undefined) return number / 100;
  return unit === undefined ? number : inBaseUnit({ number, unit });
}

interface Meaning {
  readonly key: LineKey;
  readonly value: string | number;
}

function meaningOf(part: string): Meaning | undefined {
  for (const { key, pattern, value, quantity } of PHRASES) {
    const said = pattern.exec(part)?.[1]?.trim();
    if (value !== undefined && pattern.test(part)) return { key, value };
    if (said === undefined || said === '') continue;
    if (quantity === undefined) return { key, value: said };
    const number = numberIn(said, quantity);
    if (number !== undefined) return { key, value: number };
  }
  const size = /\d/.test(part) && /awg|mm|\/0/i.test(part) ? parseSize(part) : undefined;
  if (size !== undefined && !isRefusal(size) && quantityOf(part) !== 'length') {
    return { key: 'ownSize', value: formatSize(size) };
  }
  const quantity = quantityOf(part);
  const key = quantity === undefined ? undefined : BY_QUANTITY[quantity];
  if (quantity === undefined || key === undefined) return undefined;
  if (AS_TYPED.has(key)) return { key, value: part };
  const number = numberIn(part, quantity);
  return number === undefined ? undefined : { key, value: number };
}

/** Reads a line. The first words that are nothing else name the run, the next its load. */
export function readRunLine(line: string): ReadLine {
  const run: Partial<Record<LineKey, string | number>> = {};
  const understood: (readonly [string, string])[] = [];
  const unclear: string[] = [];
  for (const part of line.split(PARTS).map((text) => text.trim())) {
    if (part === '') continue;
    const bare = /^[\d.,]+$/.test(part);
    const words = bare
      ? undefined
      : run.run === undefined
        ? 'run'
        : run.load === undefined
          ? 'load'
          : undefined;
    const meaning =
      meaningOf(part) ?? (words === undefined ? undefined : { key: words, value: part });
    if (meaning === undefined || run[meaning.key] !== undefined) {
      unclear.push(part);
      continue;
    }
    run[meaning.key] = meaning.value;
    understood.push([SCHEDULE_COLUMNS[meaning.key].heading, part]);
  }
  return { run, understood, unclear };
}

/** Whether a name means the same run: without case and outer blanks. */
export const isSameName = (one: string, other: string) => plain(one) === plain(other);
