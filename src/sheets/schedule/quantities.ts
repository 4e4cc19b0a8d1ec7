/**
 * Quantities as people write them: `22`, `22 A`, `60 W`, `800 mA`; `10`, `10 ft`, `2.5 m`, `8' 6"`. The cells are text, so
 * that no spreadsheet makes a time of day of `5 A`; the sheet itself reads them, by functions that every spreadsheet has.
 */
import { METRES_PER } from '../../core/length';
import { spellingsOf, type Quantity, type Unit } from '../../core/units';
import { text } from '../plan/formula';
import type { RowFormula } from './row';

/** Before a text that is no quantity, so that nothing else in the row takes it for a number. */
const UNREAD = text('? ');
/** A mark that is decimal to some and parts thousands to others has this many digits behind it. */
const GROUP_DIGITS = 3;
/** Hours in a day: what a spreadsheet stores where it made a time of day of an entry. */
const HOURS = 24;

const DIGITS = [...'0123456789.'];

function replaced(from: string, pairs: readonly (readonly [string, string])[]): string {
  return pairs.reduce(
    (inner, [old, instead]) => `SUBSTITUTE(${inner},${text(old)},${text(instead)})`,
    from,
  );
}

/** A typed text without blanks, with points for commas; empty for a number, which needs no reading. */
const said = (cell: string, pairs: readonly (readonly [string, string])[] = []) =>
  `IF(ISNUMBER(${cell}),"",${replaced(`LOWER(TRIM(${cell}))`, [
    [' ', ''],
    ['\u00A0', ''],
    ['\u202F', ''],
    [',', '.'],
    ...pairs,
  ])})`;

/** What is left of a text without its digits: its unit, if the digits stand before it. */
const unitIn = (cell: string) =>
  replaced(
    cell,
    DIGITS.map((digit) => [digit, ''] as const),
  );

/** The part before the unit. */
const before = (cell: string, unit: string) => `LEFT(${cell},LEN(${cell})-LEN(${unit}))`;

/** Of digits and points: with one point at most, and not one that may part thousands: 1.250 is 1250 to some. */
function isNumeral(part: string): string {
  const behind = `LEN(${part})-SEARCH(".",${part}&".")`;
  const isTwofold = `AND(${behind}=${GROUP_DIGITS},SEARCH(".",${part}&".")>1,SEARCH(".",${part}&".")<=${GROUP_DIGITS + 1},LEFT(${part},1)<>"0")`;
  return `AND(LEN(SUBSTITUTE(${part},".",""))>0,LEN(${part})-LEN(SUBSTITUTE(${part},".",""))<=1,NOT(${isTwofold}))`;
}

/** Its number, whatever mark the spreadsheet itself holds for decimal. */
const numberIn = (part: string) =>
  `VALUE(SUBSTITUTE(${part},".",""))/10^MAX(0,LEN(${part})-SEARCH(".",${part}&"."))`;

const isOneOf = (cell: string, spellings: readonly string[]) =>
  spellings.length === 1
    ? `${cell}=${text(spellings[0]!)}`
    : `OR(${spellings.map((spelling) => `${cell}=${text(spelling)}`).join(',')})`;

/** A figure of each unit of these quantities; 0 for what is none of them. */
function ofUnit(cell: string, quantities: readonly Quantity[], figure: (unit: Unit) => string) {
  const byFigure = new Map<string, string[]>();
  for (const [spelling, unit] of quantities.flatMap((quantity) => spellingsOf(quantity))) {
    byFigure.set(figure(unit), [...(byFigure.get(figure(unit)) ?? []), spelling]);
  }
  return [...byFigure].reduceRight(
    (otherwise, [value, spellings]) => `IF(${isOneOf(cell, spellings)},${value},${otherwise})`,
    '0',
  );
}

/** An entry of amps that a spreadsheet took for a time of day, `5 A` for five in the morning: 5/24 is no peak load. */
const isTimeOfDay = (cell: string) =>
  `AND(${cell}>0,${cell}<1,ABS(${cell}*${HOURS}-ROUND(${cell}*${HOURS},0))<1E-9,ROUND(${cell},4)<>${cell})`;

/** Marks and words of length units, each as the one that the formulas look for; longer words before those in them. */
const LENGTH_MARKS: readonly (readonly [mark: string, words: readonly string[]])[] = [
  ["'", ['\u2032', '\u2018', '\u2019']],
  ['"', ['\u2033', '\u201C', '\u201D', "''"]],
  ["'", ['feet', 'foot', 'ft']],
  ['"', ['inches', 'inch', 'in']],
  ['m', ['metres', 'metre', 'meters', 'meter', 'mtrs', 'mtr']],
  ['cm', ['centim']],
  ['mm', ['millim']],
  ['yd', ['yards', 'yard']],
];
/** An international yard is three feet (1959). */
const METRES_PER_YARD = 0.9144;
const METRES_BY_MARK: readonly (readonly [string, number])[] = [
  ["'", METRES_PER.ft],
  ['"', METRES_PER.in],
  ['m', METRES_PER.m],
  ['cm', METRES_PER.cm],
  ['mm', METRES_PER.mm],
  ['yd', METRES_PER_YARD],
];
const [FEET, INCHES] = [text("'"), text('"')];

/** Metres of a unit of a list; 0 where it is none of them. */
const metresOf = (cell: string, units: readonly (readonly [string, number])[]) =>
  units.reduceRight(
    (further, [unit, metres]) => `IF(${cell}=${text(unit)},${metres},${further})`,
    '0',
  );

export const QUANTITY_FORMULAS = {
  peakSaid: ({ cell }) => said(cell.peak),
  peakUnit: ({ cell }) => unitIn(cell.peakSaid),
  // What draws watts; everything else is amps.
  kind: ({ cell }) => {
    const watts = spellingsOf('power').map(([spelling]) => spelling);
    return `IF(${isOneOf(cell.peakUnit, watts)},"W","A")`;
  },
  peakDigits: ({ cell }) => before(cell.peakSaid, cell.peakUnit),
  draw: ({ cell }) => {
    const part = cell.peakDigits;
    const factor = (figure: (unit: Unit) => number) =>
      ofUnit(cell.peakUnit, ['current', 'power'], (unit) => String(figure(unit)));
    const isRead = `AND(OR(LEN(${cell.peakUnit})=0,${factor(() => 1)}>0),RIGHT(${cell.peakSaid},LEN(${cell.peakUnit}))=${cell.peakUnit},${isNumeral(part)})`;
    const read = `IF(LEN(${cell.peakUnit})=0,${numberIn(part)},${numberIn(part)}*${factor(({ times }) => times)}/${factor(({ per }) => per)})`;
    return (
      `IF(ISNUMBER(${cell.peak}),IF(${isTimeOfDay(cell.peak)},${UNREAD}&${cell.peak},${cell.peak}),` +
      `IF(LEN(${cell.peakSaid})=0,"",IF(${isRead},${read},${UNREAD}&${cell.peak})))`
    );
  },
  lengthSaid: ({ cell }) =>
    said(
      cell.length,
      LENGTH_MARKS.flatMap(([mark, words]) => words.map((word) => [word, mark] as const)),
    ),
  // What stands before a mark for feet, and what stands behind it or, where there is none, all of it.
  feetSaid: ({ cell }) =>
    `IFERROR(LEFT(${cell.lengthSaid},SEARCH(${FEET},${cell.lengthSaid})-1),"")`,
  restSaid: ({ cell }) =>
    `MID(${cell.lengthSaid},IFERROR(SEARCH(${FEET},${cell.lengthSaid}),0)+1,40)`,
  restUnit: ({ cell }) => unitIn(cell.restSaid),
  houseM: ({ rule }) => metresOf(rule.unit, Object.entries(METRES_PER)),
  restDigits: ({ cell }) => before(cell.restSaid, cell.restUnit),
  // Where the digits do not stand before it, what stands there is no number.
  isRest: ({ cell }) =>
    `AND(RIGHT(${cell.restSaid},LEN(${cell.restUnit}))=${cell.restUnit},${isNumeral(cell.restDigits)})`,
  // Of the house's unit, so that a length in it stays as it is; 0 for a unit that is none.
  restTimes: ({ cell }) => {
    const own = metresOf(cell.restUnit, METRES_BY_MARK);
    return `IF(LEN(${cell.restUnit})=0,1,IF(${own}=${cell.houseM},1,${own}/${cell.houseM}))`;
  },
  oneWay: ({ cell }) => {
    const { feetSaid, restSaid, restUnit, isRest, restTimes, houseM } = cell;
    const part = cell.restDigits;
    const unread = `${UNREAD}&${cell.length}`;
    const inches = `IF(LEN(${restSaid})=0,0,${numberIn(part)})`;
    const feet = `IF(AND(LEN(${unitIn(feetSaid)})=0,${isNumeral(feetSaid)},OR(LEN(${restSaid})=0,AND(OR(LEN(${restUnit})=0,${restUnit}=${INCHES}),${isRest}))),(${numberIn(feetSaid)}+${inches}/12)*IF(${houseM}=${METRES_PER.ft},1,${METRES_PER.ft}/${houseM}),${unread})`;
    const plain = `IF(AND(${isRest},${restTimes}>0),${numberIn(part)}*${restTimes},${unread})`;
    return (
      `IF(ISNUMBER(${cell.length}),${cell.length},IF(LEN(${cell.lengthSaid})=0,"",` +
      `IF(LEN(${feetSaid})>0,${feet},${plain})))`
    );
  },
} as const satisfies Record<string, RowFormula>;
