import fc from 'fast-check';
import * as library from 'numfmt';
import { expect, test } from 'vitest';
import * as remembering from '../../../src/hosts/workbench/text-numbers';

const texts = fc.oneof(
  fc.constantFrom('5 A', '12:30', '12/3', '3 %', '2,5', '1e3', '', 'Van main', '$10', '2026-11-27'),
  fc.stringMatching(/^[0-9.,:/ %A-]{0,8}$/),
);

test('a text is read as the library reads it, however often it is asked', () => {
  fc.assert(
    fc.property(fc.array(texts, { maxLength: 20 }), (asked) => {
      for (const ask of ['parseDate', 'parseTime', 'parseNumber'] as const) {
        for (const text of asked) expect(remembering[ask](text)).toEqual(library[ask](text));
      }
    }),
  );
});

test('what is done to an answer does not reach the next who asks', () => {
  const first = remembering.parseNumber('12 %');
  first!.v = 99;
  expect(remembering.parseNumber('12 %')).toEqual(library.parseNumber('12 %'));
});
