import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fitted, NO_BREAK, textWidthPt } from '../../src/drawing/text-width';

const TYPE = { sizePt: 9 };

/** As much of a text as fits with dots behind, by trying every piece from the longest on. */
function longestPiece(text: string, mostPt: number): string {
  if (textWidthPt(text, TYPE) <= mostPt) return text;
  const characters = [...text];
  for (let count = characters.length - 1; count > 0; count -= 1) {
    const shorter = `${characters.slice(0, count).join('').trimEnd()}…`;
    if (textWidthPt(shorter, TYPE) <= mostPt) return shorter;
  }
  return '…';
}

test('a text is cut where it just fits, whatever it is of', () => {
  const character = fc.constantFrom('i', 'W', ' ', NO_BREAK, 'é', '水', '💡', '…', '\t');
  const texts = fc.string({ unit: character, maxLength: 40 });
  let cut = 0;
  fc.assert(
    fc.property(texts, fc.integer({ min: 0, max: 200 }), (text, mostPt) => {
      const piece = fitted(text, mostPt, TYPE);
      if (piece !== text) cut += 1;
      expect(piece).toBe(longestPiece(text, mostPt));
    }),
    { numRuns: 2000, seed: 11 },
  );
  expect(cut).toBeGreaterThan(500);
});
