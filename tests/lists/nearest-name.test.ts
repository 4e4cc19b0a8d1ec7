import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { nearestName } from '../../src/lists/nearest-name';

const NAMES = ['Hut trunk', 'Van main', 'Van set A', 'Case 1', 'Case 2', 'Mast', 'Pump'];

describe('the name that was probably meant', () => {
  it.each([
    ['Van mian', 'Van main'],
    ['van  MAIN', 'Van main'],
    ['Vanmain', 'Van main'],
    ['Hut trnk', 'Hut trunk'],
    ['Hut tronk 1', 'Hut trunk'],
    ['Must', 'Mast'],
    ['Case 1', 'Case 1'],
    ['Csae 2', 'Case 2'],
  ])('takes "%s" for "%s"', (given, meant) => {
    expect(nearestName(given, NAMES)).toBe(meant);
  });

  it.each(['Case 3', 'Relay', 'Hut', '', '   ', 'X', '12'])('does not guess at "%s"', (given) => {
    expect(nearestName(given, NAMES)).toBeUndefined();
    expect(nearestName(given, [])).toBeUndefined();
  });

  it('finds the name again after one slip, unless another is as near', () => {
    const letters = fc.stringMatching(/^[a-z]{4,12}$/);
    fc.assert(
      fc.property(letters, fc.nat(), fc.constantFrom('', 'q', 'zz'), (name, at, instead) => {
        const place = at % name.length;
        const slipped = name.slice(0, place) + instead.slice(0, 1) + name.slice(place + 1);
        expect(nearestName(slipped, ['0123456789', name])).toBe(name);
      }),
    );
  });

  it('leaves texts alone that are too long for a name', () => {
    expect(nearestName('a'.repeat(101), ['a'.repeat(101)])).toBeUndefined();
    expect(nearestName('a'.repeat(100), ['a'.repeat(32_000), 'a'.repeat(99)])).toHaveLength(99);
  });
});
