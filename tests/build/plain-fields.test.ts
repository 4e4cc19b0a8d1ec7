import { runInThisContext } from 'node:vm';
import { expect, test } from 'vitest';
import plainFields from '../../src/build/grid/plain-fields';

/** As the grid's packages come: the helper, and a class with fields in one line and in several. */
const SCRIPT = `
  function _defineProperty(object, key, value) { object[key] = value; return object; }
  class Range {
    constructor(row) {
      _defineProperty(this, "row", row), _defineProperty(this, "$cells", [1, (2, 3)]);
      _defineProperty(this, "area", {
        height: Math.max(1, row),
      });
    }
  }
  _defineProperty(Range, "most", 9);
  return { ...new Range(4), most: Range.most };
`;

test('fields are set plainly, to the same values', () => {
  const plain = plainFields(SCRIPT);
  expect(plain).not.toContain('_defineProperty(this');
  const outcomes = [SCRIPT, plain].map(
    (script) => runInThisContext(`(() => {${script}})()`) as unknown,
  );
  expect(outcomes[1]).toEqual(outcomes[0]);
  expect(outcomes[1]).toEqual({ row: 4, $cells: [1, 3], area: { height: 4 }, most: 9 });
});
