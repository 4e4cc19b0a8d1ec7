import { describe, expect, test } from 'vitest';
import { CATALOGUE, findFunction } from '../../src/functions/catalogue';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { functionHelp } from '../../src/taskpane/function-help';
import { searchFunctions } from '../../src/taskpane/function-search';

function known(id: string): WorksheetFunction {
  const entry = findFunction(id);
  if (entry === undefined) throw new Error(`no function ${id}`);
  return entry;
}

const ids = (found: readonly WorksheetFunction[]) => found.map(({ id }) => id);

describe('help', () => {
  test('shows the call, with brackets around what may be left out', () => {
    expect(functionHelp(known('DCDROP')).call).toBe(
      '=LOOM.DCDROP(amps, length, unit, size, [material], [temp_c], [joint_milliohms], [return_milliohms])',
    );
  });

  test('shows the example as it is typed, and its result', () => {
    const help = functionHelp(known('DCDROP'));
    expect(help.exampleCall).toBe('=LOOM.DCDROP(20, 6, "ft", "12 AWG")');
    expect(help.exampleResult).toBe('0.3812');
  });

  test('tells an argument’s default', () => {
    const temperature = functionHelp(known('DCDROP')).arguments.find(
      ({ name }) => name === 'temp_c',
    );
    expect(temperature).toMatchObject({ mayBeLeftOut: true });
    expect(temperature?.text).toMatch(/degrees Celsius.*Default: 20\.$/);
  });

  test('writes text, truth, what is left out and ranges as a formula does', () => {
    const entry: WorksheetFunction = {
      ...known('DCDROP'),
      example: {
        given: [
          'a "b"',
          null,
          true,
          [
            ['Hut', null],
            [2, false],
          ],
        ],
        result: [
          [1, 'x'],
          [2, 'y'],
        ],
      },
    };
    expect(functionHelp(entry)).toMatchObject({
      exampleCall: '=LOOM.DCDROP("a ""b""", , TRUE, {"Hut", ""; 2, FALSE})',
      exampleResult: '{1, "x"; 2, "y"}',
    });
  });

  test.each(CATALOGUE.map((entry) => [entry.id, entry] as const))(
    '%s has every argument explained and no hole in its texts',
    (id, entry) => {
      const help = functionHelp(entry);
      expect(help.call.startsWith(`=LOOM.${id}(`)).toBe(true);
      expect(help.arguments).toHaveLength(entry.takes.length);
      for (const { text } of help.arguments) expect(text).toMatch(/\.$/);
      expect(JSON.stringify(help)).not.toMatch(/undefined|\[object/);
      expect(help.exampleResult).not.toBe('');
    },
  );
});

describe('search', () => {
  test('nothing typed finds all', () => {
    expect(searchFunctions(CATALOGUE, '  ')).toEqual(CATALOGUE);
  });

  test.each(['DCDROP', 'dcdrop', 'LOOM.DCDROP', ' =LOOM.DCDROP(20, 6 '])(
    '%j finds that function alone',
    (typed) => {
      expect(ids(searchFunctions(CATALOGUE, typed))).toEqual(['DCDROP']);
    },
  );

  test('every function is found by its own name', () => {
    for (const { id } of CATALOGUE) expect(ids(searchFunctions(CATALOGUE, id))).toEqual([id]);
  });

  test('words of the meaning find a function, each narrowing the list', () => {
    const fuse = ids(searchFunctions(CATALOGUE, 'fuse'));
    expect(fuse).toContain('FUSE_FOR');
    const narrowed = ids(searchFunctions(CATALOGUE, 'fuse thinnest'));
    expect(narrowed).toContain('MINGAUGE');
    expect(narrowed.length).toBeLessThan(fuse.length);
  });

  test('what a function is for comes before what its arguments mention', () => {
    // Runs take the milliohms of their fuse holders, but are not about fuses.
    expect(ids(searchFunctions(CATALOGUE, 'fuse'))).not.toContain('RUN_OHMS');
    expect(ids(searchFunctions(CATALOGUE, 'fuse holder'))).toContain('RUN_OHMS');
  });

  test('a part of a name finds its kin', () => {
    expect(ids(searchFunctions(CATALOGUE, 'conductor_'))).toEqual(
      expect.arrayContaining(['CONDUCTOR_OHMS', 'CONDUCTOR_AREA', 'CONDUCTOR_MASS']),
    );
  });

  test('what nobody says finds nothing', () => {
    expect(searchFunctions(CATALOGUE, 'marmalade')).toEqual([]);
  });
});
