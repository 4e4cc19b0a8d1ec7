/** A number as text that a quantity's cell reads as the same number. */

const MOST_DECIMALS = 20;

/** Its digits without an exponent, and never just three behind the point, where a mark may part thousands. */
export function plainDigits(amount: number): string {
  const said = String(amount);
  const digits = said.includes('e') ? amount.toFixed(MOST_DECIMALS) : said;
  return /^-?\d{1,3}\.\d{3}$/.test(digits) ? `${digits}0` : digits;
}
