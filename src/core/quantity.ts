/** Quantities as people write them, a number with its unit behind it: "22 A", "800 mA", "2,5 m", `8' 6"`. */
import { invalid, isRefusal, type Outcome } from './outcome';
import { shortened } from './sentence';
import { findUnit, spelledOut, type Unit } from './units';

const INCHES_PER_FOOT = 12;

/** Feet and inches in one: `8' 6"`, "8 ft 6 in"; the mark for inches may be left out. */
const FEET_AND_INCHES = new RegExp(
  `^([\\d.,]+)\\s*(?:${spelledOut('ft')})\\s*([\\d.,]+)\\s*(?:${spelledOut('in')})?$`,
  'i',
);

/** The digits of both parts as they are written; undefined where a text is not made of feet and inches. */
export function splitFeetAndInches(
  text: string,
): { readonly feet: string; readonly inches: string } | undefined {
  const [, feet, inches] = FEET_AND_INCHES.exec(text) ?? [];
  return feet === undefined || inches === undefined ? undefined : { feet, inches };
}

export function inFeet(feet: number, inches: number): number {
  return feet + inches / INCHES_PER_FOOT;
}

/** One mark with three digits behind it: 1,250 is 1.25 to some and 1250 to others. */
export const TWOFOLD = /^[1-9]\d{0,2}[.,]\d{3}$/;

/** What is said of a number that may be two. */
export function twofold(text: string, one: number, other: number): string {
  return `"${shortened(text)}" may be ${one} or ${other}; write it without a mark for thousands`;
}

/** Digits with a decimal point or comma; no two parts match the same characters, so that it is read in one pass. */
const DIGITS = /^[+-]?(?:\d+(?:[.,]\d*)?|[.,]\d+)$/;
/** The same with all that may part thousands, and what stands behind. */
const NUMBER_AND_REST = /^([+-]?[\d.,]+(?:[ \u00A0\u202F'’]\d{3}(?!\d))*)\s*(.*)$/s;
/** Feet, and inches without their mark that may be the rest of a number with a mark for thousands. */
const GROUPED_BY_FEET_MARK = /^\d{1,3}['’′]\d{3}$/;

function readDigits(digits: string, whole: string): Outcome<number> {
  const unsigned = digits.replace(/^[+-]/, '');
  const number = Number(digits.replace(',', '.'));
  if (TWOFOLD.test(unsigned)) {
    return invalid(twofold(whole, number, Number(digits.replace(/[.,]/, ''))));
  }
  if (DIGITS.test(digits) && Number.isFinite(number)) return number;
  return invalid(
    /\d[ \u00A0\u202F'’.,]\d/.test(digits)
      ? `"${shortened(whole)}" has a mark for thousands, or two for decimals; write the number without`
      : `"${shortened(whole)}" is not a number`,
  );
}

/** A number of units. */
export interface Measure {
  readonly number: number;
  readonly unit: Unit;
}

/**
 * A number in the plainest of writings, with or without a unit: it can be taken for one thing only, and most texts are
 * such, so that they are not tried on all the others.
 */
const PLAINLY_WRITTEN = /^(\d{1,15}(?:\.\d{1,2})?) ?([A-Za-z]*)$/;

/**
 * Reads a text that is a number with a unit behind it: the same quantity in each unit that it names, which are two for
 * feet and inches in one. Decimal point or comma; a mark for thousands is refused, and so is a number that may have one.
 * Undefined for text that is nothing of the kind, a bare number among it.
 */
export function readMeasures(text: string): Outcome<readonly Measure[]> | undefined {
  const whole = text.trim();
  const plainly = PLAINLY_WRITTEN.exec(whole);
  if (plainly !== null) {
    const [, digits, behind] = plainly;
    const unit = behind === '' ? undefined : findUnit(behind!);
    return unit && [{ number: Number(digits), unit }];
  }
  const both = splitFeetAndInches(whole);
  if (both !== undefined) {
    if (GROUPED_BY_FEET_MARK.test(whole)) {
      return invalid(`"${shortened(whole)}" may be feet and inches or thousands; mark the inches`);
    }
    const [feet, inches] = [readDigits(both.feet, whole), readDigits(both.inches, whole)];
    if (isRefusal(feet)) return feet;
    if (isRefusal(inches)) return inches;
    return [
      { number: inFeet(feet, inches), unit: findUnit('ft')! },
      { number: feet * INCHES_PER_FOOT + inches, unit: findUnit('in')! },
    ];
  }
  const [, digits = '', behind = ''] = NUMBER_AND_REST.exec(whole) ?? [];
  const unit = behind === '' ? undefined : findUnit(behind);
  if (unit === undefined) return undefined;
  const number = readDigits(digits, whole);
  return isRefusal(number) ? number : [{ number, unit }];
}

/** How many amps, watts, metres or volts a measure is. */
export function inBaseUnit({ number, unit }: Measure): number {
  return (number * unit.times) / unit.per;
}
