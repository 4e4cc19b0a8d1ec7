import { describe, expect, test } from 'vitest';
import { CellError } from '../../../src/functions/cell';
import { Sentences } from '../../../src/hosts/workbench/sentences';

const thin = new CellError('#VALUE!', 'too thin');
const none = new CellError('#N/A', 'no row');

describe('sentences by cell', () => {
  test('are told for the code they belong to, and for no other', () => {
    const sentences = new Sentences();
    sentences.keep('one', 4, 2, [[thin]]);
    expect(sentences.find('one', 4, 2, '#VALUE!')).toBe('too thin');
    expect(sentences.find('one', 4, 2, '#N/A')).toBeNull();
    expect(sentences.find('one', 4, 3, '#VALUE!')).toBeNull();
    expect(sentences.find('two', 4, 2, '#VALUE!')).toBeNull();
  });

  test('of several calls in one formula stand together, each once', () => {
    const sentences = new Sentences();
    sentences.newRound();
    sentences.keep('one', 0, 0, [[none]]);
    sentences.keep('one', 0, 0, [[12]]);
    sentences.keep('one', 0, 0, [[none]]);
    sentences.keep('one', 0, 0, [[new CellError('#N/A', 'no fuse')]]);
    expect(sentences.find('one', 0, 0, '#N/A')).toBe('no row; or no fuse');
  });

  test('are replaced in the next calculation, by others or by nothing', () => {
    const sentences = new Sentences();
    sentences.newRound();
    sentences.keep('one', 0, 0, [[thin]]);
    sentences.newRound();
    expect(sentences.find('one', 0, 0, '#VALUE!')).toBe('too thin');
    sentences.keep('one', 0, 0, [['10 AWG']]);
    expect(sentences.find('one', 0, 0, '#VALUE!')).toBeNull();
  });

  test('follow a result that spills, and go with it', () => {
    const sentences = new Sentences();
    sentences.keep('one', 1, 1, [
      [1, 2],
      [3, none],
    ]);
    expect(sentences.find('one', 2, 2, '#N/A')).toBe('no row');
    sentences.forgetCell('one', 1, 1);
    expect(sentences.find('one', 2, 2, '#N/A')).toBeNull();
  });

  test.each([
    ['row', 2, 3, [4, 1], [7, 1]],
    ['row', 5, 3, [4, 1], [4, 1]],
    ['row', 1, -2, [4, 1], [2, 1]],
    ['column', 0, 2, [4, 1], [4, 3]],
  ] as const)(
    'move with lines of a %s at %d: %d',
    (of, at, count, [row, column], [down, right]) => {
      const sentences = new Sentences();
      sentences.keep('one', row, column, [[thin]]);
      sentences.moveLines('one', of, at, count);
      expect(sentences.find('one', down, right, '#VALUE!')).toBe('too thin');
      if (down !== row || right !== column) {
        expect(sentences.find('one', row, column, '#VALUE!')).toBeNull();
      }
    },
  );

  test('go with the row that they stand in', () => {
    const sentences = new Sentences();
    sentences.keep('one', 4, 1, [[thin]]);
    sentences.moveLines('one', 'row', 3, -2);
    for (let row = 0; row < 8; row += 1) {
      expect(sentences.find('one', row, 1, '#VALUE!')).toBeNull();
    }
  });
});
