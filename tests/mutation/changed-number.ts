/** Another number in place of one: near it, so that a test that only looks at its size does not see it. */
const NEAR = 1.05;

export function changedNumber(written: string): string {
  const number = Number(written.replaceAll('_', ''));
  if (Number.isInteger(number) && !/e/i.test(written)) return String(number + 1);
  if (/e/i.test(written)) return String(number * 10).toUpperCase();
  return String(Number((number * NEAR).toPrecision(12)));
}
