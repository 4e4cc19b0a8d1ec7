/** How wide a column of so many characters is. */

/**
 * A width in characters as points. ECMA-376 part 1, 18.3.1.13: a column of n characters is n times the width of a
 * digit plus 5 pixels; a digit of the usual fonts (Calibri 11, Arial 10) has 7 pixels, and a pixel is 0.75 points at 96 dpi.
 */
export function columnWidthPt(characters: number): number {
  return (characters * 7 + 5) * 0.75;
}
