import { afterEach, describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../../src/functions/catalogue';
import { CellError, type Matrix, type ResultMatrix } from '../../../src/functions/cell';
import type { WorksheetFunction } from '../../../src/functions/worksheet-function';
import { cellAddress } from '../../../src/sheets/plan/area';
import type { CellContent } from '../../../src/sheets/plan/plan';
import { openEngine, type Engine } from './engine';
import { HOSTILE, hostileCases } from './hostile-cases';

let engine: Engine | undefined;

async function open(
  catalogue: readonly WorksheetFunction[],
  rows: readonly (readonly CellContent[])[],
): Promise<Engine> {
  engine = await openEngine(catalogue, rows);
  return engine;
}

afterEach(() => {
  engine?.close();
  engine = undefined;
});

/** A function of the tests' own, to see what arrives. */
function probe(
  id: string,
  count: number,
  evaluate: (given: readonly (Matrix | undefined)[]) => ResultMatrix,
): WorksheetFunction {
  const words = Array.from({ length: count }, (_, index) => ({
    name: `word${index}`,
    meaning: 'Anything',
    fallbackText: 'nothing',
    read: (given: string | number | boolean) => given,
  }));
  return {
    id,
    topic: 'Run',
    summary: 'Probes the engine.',
    takes: words,
    gives: 'what came',
    example: { given: [], result: '' },
    source: 'the tests',
    evaluate,
  };
}

const f = (formula: string): CellContent => ({ formula });

describe('what a function is given', () => {
  const seen = async (first: readonly CellContent[], argument: string) => {
    let came: readonly (Matrix | undefined)[] = [];
    const look = probe('LOOK', 3, (given) => {
      came = given;
      return [['seen']];
    });
    const { value } = await open([look], [first, [f(`=LOOM.LOOK(${argument})`)]]);
    expect(value('A2')).toBe('seen');
    return came;
  };

  test('keeps blank, zero, truth and text apart in a range', async () => {
    const came = await seen([null, 0, false, '12', '1/0', 2.5], 'A1:F1');
    expect(came).toEqual([[[null, 0, false, '12', '1/0', 2.5]]]);
  });

  test('makes a range of one cell of a single cell, blank or not', async () => {
    expect(await seen([null, true], 'A1,B1')).toEqual([[[null]], [[true]]]);
  });

  test('makes a range of one cell of a written value, and nothing of one left out', async () => {
    expect(await seen([], '"1/0",,TRUE')).toEqual([[['1/0']], undefined, [[true]]]);
  });

  test('takes a blank cell that a formula points at for a blank, not for one left out', async () => {
    const blank = [[null]];
    expect(await seen([null], 'IF(TRUE,A1),INDEX(A1:B1,1),IFERROR(A1,1)')).toEqual([
      blank,
      blank,
      blank,
    ]);
  });

  test('takes an array constant cell by cell', async () => {
    expect(await seen([], '{1,"a";2,"b"}')).toEqual([
      [
        [1, 'a'],
        [2, 'b'],
      ],
    ]);
  });

  test.each(['#VALUE!', '#N/A', '#DIV/0!', '#NUM!', '#NAME?', '#REF!'] as const)(
    'hands %s over as an error',
    async (code) => {
      const came = await seen([code], 'A1');
      const cell = came[0]?.[0]?.[0];
      expect(cell).toBeInstanceOf(CellError);
      expect((cell as CellError).code).toBe(code);
    },
  );

  test('takes a whole column', async () => {
    const came = await seen([7, 8], 'B:B');
    expect(came[0]?.[0]).toEqual([8]);
    expect(came[0]?.[1]).toEqual([null]);
  });
});

describe('what becomes of an answer', () => {
  test('spills a range, with texts that look like numbers left as texts', async () => {
    const spread = probe('SPREAD', 1, () => [
      ['1/0', '12'],
      [true, new CellError('#N/A', 'no such row')],
    ]);
    const { value, sentence } = await open([spread], [[f('=LOOM.SPREAD()')]]);
    expect([value('A1'), value('B1'), value('A2'), value('B2')]).toEqual([
      '1/0',
      '12',
      true,
      '#N/A',
    ]);
    expect(sentence('B2')).toBe('no such row');
    expect(sentence('A1')).toBeNull();
  });

  test('a function that throws is one error, and the engine goes on', async () => {
    const broken = probe('BROKEN', 1, () => {
      throw new TypeError('it broke');
    });
    const sound = probe('SOUND', 1, (given) => [[Number(given[0]?.[0]?.[0]) + 1]]);
    const { value, sentence, put } = await open(
      [broken, sound],
      [[f('=LOOM.BROKEN(1)'), 1, f('=LOOM.SOUND(B1)')]],
    );
    expect(value('A1')).toBe('#VALUE!');
    expect(sentence('A1')).toBe('LOOM.BROKEN failed: it broke');
    expect(value('C1')).toBe(2);
    await put('B1', 41);
    expect(value('C1')).toBe(42);
  });

  test('too few and too many arguments say so', async () => {
    const required = CATALOGUE.find((entry) => entry.id === 'CONDUCTOR_AREA')!;
    const { value, sentence } = await open(
      [required],
      [[f('=LOOM.CONDUCTOR_AREA()'), f('=LOOM.CONDUCTOR_AREA(12,13)')]],
    );
    expect(value('A1')).toBe('#VALUE!');
    expect(sentence('A1')).toContain('size is missing');
    expect(sentence('B1')).toContain('takes at most 1 arguments; 2 came');
  });

  test('one left out between others is named, and a blank cell in its place is quiet', async () => {
    const { value, sentence } = await open(CATALOGUE, [
      [f('=LOOM.DCDROP(20,,"ft",12)'), f('=LOOM.DCDROP(20,C1,"ft",12)'), null, 1],
    ]);
    // Empty text is nothing to the grid.
    expect([value('A1'), value('B1')]).toEqual(['#VALUE!', null]);
    expect(sentence('A1')).toContain('length: left out');
  });

  test.each(['ft', 'm', 'in'])('%s without its quotes says that it lacks them', async (unit) => {
    const { value, sentence } = await open(CATALOGUE, [[f(`=LOOM.DCDROP(20,10,${unit},12)`)]]);
    expect(value('A1')).toBe('#NAME?');
    expect(sentence('A1')).toBe(
      'unit: #NAME? came in; text in a formula needs quotes, such as "ft"',
    );
  });
});

describe('native formulas around ours', () => {
  test('tell 0 from a blank however often a cell is compared', async () => {
    const compared = [f('=A1=""'), f('=A1=""'), f('=A1=0'), f('=A1<>""'), f('=COUNTIF(A1,"")')];
    const zero = await open([], [[0, ...compared]]);
    expect(['B1', 'C1', 'D1', 'E1', 'F1'].map(zero.value)).toEqual([false, false, true, true, 0]);
    zero.close();
    const computed = await open([], [[f('=SUM(G1:G2)'), ...compared]]);
    expect(['B1', 'C1', 'D1', 'E1'].map(computed.value)).toEqual([false, false, true, true]);
    computed.close();
    const blank = await open([], [[null, ...compared]]);
    expect(['B1', 'C1', 'D1', 'E1'].map(blank.value)).toEqual([true, true, true, false]);
  });
});

describe('the sentence behind an error', () => {
  const area = CATALOGUE.filter((entry) => entry.id === 'CONDUCTOR_AREA');

  test('is found through IF, and through cells that pass the error on', async () => {
    const { value, sentence } = await open(area, [
      ['2.5', f('=IF(A1="","",LOOM.CONDUCTOR_AREA(A1))'), f('=LOOM.CONDUCTOR_AREA(B1)')],
    ]);
    expect(value('B1')).toBe('#VALUE!');
    expect(sentence('B1')).toContain('2.5 is not an AWG number');
    expect(sentence('C1')).toBe(sentence('B1'));
  });

  test('is found behind arithmetic, through several cells and ranges', async () => {
    const { value, cause } = await open(area, [
      ['fat', f('=LOOM.CONDUCTOR_AREA(A1)'), f('=B1*2'), f('=SUM($B$1:C1)'), f("='One'!D1+1")],
      [f('=1/0'), f('=A2+1'), f('=B1+LOOM.CONDUCTOR_AREA("thin")')],
    ]);
    expect(value('E1')).toBe('#VALUE!');
    expect(cause('B1')).toMatch(/^B1: size: "fat"/);
    for (const address of ['C1', 'D1', 'E1']) expect(cause(address)).toBe(cause('B1'));
    // No function of ours made this one.
    expect(value('B2')).toBe('#DIV/0!');
    expect(cause('B2')).toBeNull();
    expect(cause('C2')).toMatch(/^C2: size: "thin"/);
  });

  test('of a circle of cells is looked for once', async () => {
    const { value, cause } = await open(area, [[f('=B1+NA()'), f('=A1+NA()')]]);
    expect([value('A1'), value('B1')]).toEqual(['#N/A', '#N/A']);
    expect(cause('A1')).toBeNull();
  });

  test('goes when the cell is fixed, and changes when the fault does', async () => {
    const { value, sentence, put } = await open(area, [['2.5', f('=LOOM.CONDUCTOR_AREA(A1)')]]);
    await put('A1', 'fat');
    expect(sentence('B1')).toContain('fat');
    await put('A1', '12');
    expect(value('B1')).toBeCloseTo(3.309, 3);
    expect(sentence('B1')).toBeNull();
  });

  test('goes when another formula takes the place, even one with the same error', async () => {
    const { value, sentence, put } = await open(area, [['2.5', f('=LOOM.CONDUCTOR_AREA(A1)')]]);
    await put('B1', f('=1+A1&"x"*2'));
    expect(value('B1')).toBe('#VALUE!');
    expect(sentence('B1')).toBeNull();
  });

  test('moves along when rows are inserted above', async () => {
    const { value, sentence, insertRowBefore } = await open(area, [
      [1],
      ['2.5', f('=LOOM.CONDUCTOR_AREA(A2)')],
    ]);
    await insertRowBefore(1);
    expect(value('B3')).toBe('#VALUE!');
    expect(sentence('B3')).toContain('2.5 is not an AWG number');
  });
});

describe.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s', (_id, entry) => {
  test('answers a blank, an error, a boolean and a text as it does when called directly', async () => {
    const cases = hostileCases(entry);
    const rows: CellContent[][] = [HOSTILE.map(({ content }) => content)];
    for (const { row, formula } of cases) rows[row] = [f(formula)];
    const { value } = await open(
      CATALOGUE,
      Array.from(rows, (cells) => cells ?? []),
    );
    const answers = cases.map(({ name, row, expected }) => [
      name,
      expected.map((cells, down) =>
        cells.map((_, across) => value(cellAddress(row + down, across))),
      ),
    ]);
    expect(answers).toEqual(cases.map(({ name, expected }) => [name, expected]));
  });
});
