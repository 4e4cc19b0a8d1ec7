/** Where a cell stands: column and row from 0. */
export interface Place {
  readonly column: number;
  readonly row: number;
}

/** The place that an address such as "B3" or "$B$3" names; undefined for anything else. */
export function placeOf(address: string): Place | undefined {
  const [, letters, digits] = /^\$?([A-Z]{1,3})\$?(\d{1,7})$/i.exec(address) ?? [];
  if (letters === undefined) return undefined;
  let column = 0;
  for (const letter of letters.toUpperCase()) column = column * 26 + letter.charCodeAt(0) - 64;
  return { column: column - 1, row: Number(digits) - 1 };
}
