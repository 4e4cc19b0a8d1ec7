/** Which licences what ships may have: those that ask for no more than their notice. */

/** By their SPDX names. */
export const PERMISSIVE: ReadonlySet<string> = new Set([
  'MIT',
  'ISC',
  '0BSD',
  'BSD-2-Clause',
  'BSD-3-Clause',
  'Apache-2.0',
  'Zlib',
]);

/**
 * Whether an SPDX expression can be met by those licences alone: one side of an OR is enough, an AND wants both. One that
 * mixes the two, or is none, is refused: somebody has to read it.
 */
export function isPermissive(expression: string): boolean {
  const bare = expression.replace(/^\((.*)\)$/, '$1');
  if (bare.includes(' OR ')) return bare.split(' OR ').some((one) => PERMISSIVE.has(one));
  return bare.split(' AND ').every((one) => PERMISSIVE.has(one));
}
