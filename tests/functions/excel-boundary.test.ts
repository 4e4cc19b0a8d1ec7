/** What Excel delivers and what it takes, with a stand-in for the error class that Excel supplies. */
import * as fc from 'fast-check';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError, ERROR_CODES, type Matrix, type ResultMatrix } from '../../src/functions/cell';
import { cellFromExcel, excelFunction, matrixFromExcel } from '../../src/functions/excel-boundary';
import { matrixToExcel } from '../../src/functions/excel-boundary';
import { numberParameter, optional } from '../../src/functions/parameter';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';

const CODES = {
  invalidValue: '#VALUE!',
  notAvailable: '#N/A',
  divisionByZero: '#DIV/0!',
  invalidNumber: '#NUM!',
  nullReference: '#NULL!',
  invalidName: '#NAME?',
  invalidReference: '#REF!',
};

/** As @types/custom-functions-runtime describes it. */
class StandInError {
  constructor(
    readonly code: string,
    readonly message?: string,
  ) {}
}

const associated = new Map<string, unknown>();

beforeAll(() => {
  Object.assign(globalThis, {
    CustomFunctions: {
      Error: StandInError,
      ErrorCode: CODES,
      associate: (id: string, called: unknown) => associated.set(id, called),
    },
  });
});
afterAll(() => {
  Reflect.deleteProperty(globalThis, 'CustomFunctions');
});

/** A function that hands back the first argument it was given, so that a test sees what arrived. */
function entryThat(evaluate: (given: readonly (Matrix | undefined)[]) => ResultMatrix) {
  const amps = numberParameter('amps', 'Current, A.');
  return {
    id: 'SAMPLE',
    topic: 'Run',
    summary: 'A sample.',
    takes: [amps, optional(amps, 1, '1')],
    gives: 'Amps.',
    example: { given: [1], result: 1 },
    source: 'Ohm',
    evaluate,
  } satisfies WorksheetFunction;
}

describe('what Excel delivers', () => {
  it.each([
    ['a number', 12, 12],
    ['text', '1/0', '1/0'],
    ['TRUE', true, true],
    ['a blank', null, null],
    ['nothing', undefined, null],
    ['an empty cell value', { type: 'Empty', basicType: 'Empty', basicValue: '' }, null],
    [
      'a number with a format',
      { type: 'FormattedNumber', basicValue: 5, numberFormat: '0 "A"' },
      5,
    ],
    ['a double', { type: 'Double', basicType: 'Double', basicValue: 2.5 }, 2.5],
    ['a text value', { type: 'String', basicValue: '#12' }, '#12'],
    ['a text that reads as an error', { type: 'String', basicValue: '#N/A' }, '#N/A'],
    ['a truth value', { type: 'Boolean', basicValue: false }, false],
    ['an entity with a text', { type: 'Entity', text: 'Wire', basicValue: 'red' }, 'red'],
    ['an entity with a number', { type: 'Entity', text: 'Wire', basicValue: 7 }, 7],
  ])('reads %s', (_, delivered, cell) => {
    expect(cellFromExcel(delivered)).toBe(cell);
  });

  it.each(ERROR_CODES)('reads %s in either shape', (code) => {
    expect(cellFromExcel({ type: 'Error', basicValue: code, errorType: 'x' })).toMatchObject({
      code,
      sentence: `${code} came in`,
    });
    expect(cellFromExcel(new StandInError(code))).toMatchObject({ code });
  });

  it('keeps the sentence of an error that has one', () => {
    expect(cellFromExcel(new StandInError('#N/A', 'no fuse fits'))).toEqual(
      new CellError('#N/A', 'no fuse fits'),
    );
  });

  it('turns error values that it cannot send on into #VALUE! and names them', () => {
    const spill = cellFromExcel({ type: 'Error', basicValue: '#SPILL!', errorType: 'Spill' });
    expect(spill).toEqual(new CellError('#VALUE!', '#SPILL! came in'));
  });

  it.each([
    ['a date', new Date(0)],
    ['an entity without a value', { type: 'Entity', text: 'Wire', basicValue: '#VALUE!' }],
    ['a picture', { type: 'WebImage', basicValue: '#VALUE!', address: 'x' }],
    ['a function', () => 1],
    ['a symbol', Symbol('x')],
    ['a big integer', 1n],
    ['an object of no kind', {}],
    [
      'an object that refuses to be looked into',
      {
        get type() {
          throw new Error('no');
        },
      },
    ],
  ])('refuses %s with a sentence', (_, delivered) => {
    expect(cellFromExcel(delivered)).toMatchObject({
      code: '#VALUE!',
      sentence: expect.stringMatching(/ came in/) as string,
    });
  });

  it('makes rows of anything, and nothing of an argument left out', () => {
    expect(matrixFromExcel(null)).toBeUndefined();
    expect(matrixFromExcel(undefined)).toBeUndefined();
    expect(matrixFromExcel(3)).toEqual([[3]]);
    expect(
      matrixFromExcel([
        [1, null],
        ['a', true],
      ]),
    ).toEqual([
      [1, null],
      ['a', true],
    ]);
    expect(matrixFromExcel([1, 2])).toEqual([[1, 2]]);
    expect(matrixFromExcel([[1], 2])).toEqual([[1], [2]]);
  });
});

describe('what Excel takes', () => {
  it('leaves values as they are', () => {
    expect(matrixToExcel([[1, 'a', true, '']])).toEqual([[1, 'a', true, '']]);
  });

  it('gives a sentence to the two errors that show one, and none to the others', () => {
    const sent = matrixToExcel([ERROR_CODES.map((code) => new CellError(code, 'why'))]);
    expect(sent).toEqual([
      [
        new StandInError('#VALUE!', 'why'),
        new StandInError('#N/A', 'why'),
        new StandInError('#DIV/0!'),
        new StandInError('#NUM!'),
        new StandInError('#NULL!'),
        new StandInError('#VALUE!', 'why'),
        new StandInError('#VALUE!', 'why'),
      ],
    ]);
  });

  it('says so where a number is not finite, since JSON would turn it into nothing', () => {
    const [[cell]] = matrixToExcel([[Number.NaN]]) as [[StandInError]];
    expect(cell).toMatchObject({
      code: '#N/A',
      message: expect.stringContaining('too large') as string,
    });
  });
});

describe('a function as Excel calls it', () => {
  it('ignores the invocation object after the declared parameters', () => {
    const seen: unknown[] = [];
    const called = excelFunction(
      entryThat((given) => {
        seen.push(...given);
        return [[1]];
      }),
    );
    called([[5]], null, { functionName: 'SAMPLE', address: 'A1' });
    expect(seen).toEqual([[[5]], undefined]);
  });

  it('answers #VALUE! where the function itself breaks, instead of throwing', () => {
    const called = excelFunction(
      entryThat(() => {
        throw new TypeError('broken');
      }),
    );
    expect(called([[1]])).toMatchObject([
      [{ code: '#VALUE!', message: expect.stringContaining('fault of the add-in') as string }],
    ]);
  });

  it('hands an error that came in back in its own cell alone', () => {
    const entry = CATALOGUE.find(({ id }) => id === 'DCDROP');
    const [errorRow, soundRow] = excelFunction(entry!)(
      [[{ type: 'Error', basicValue: '#DIV/0!' }], [5]],
      [[10], [10]],
      [['m']],
      [['12 AWG']],
    );
    expect(errorRow).toEqual([new StandInError('#DIV/0!')]);
    expect(soundRow).toEqual([expect.any(Number)]);
  });

  it('names an argument left out, which comes as nothing, and is quiet about a blank cell', () => {
    const drop = excelFunction(CATALOGUE.find(({ id }) => id === 'DCDROP')!);
    expect(drop([[20]], null, [['ft']], [[12]], null)).toEqual([
      [
        new StandInError(
          '#VALUE!',
          'length: left out, and it has no default; write it between its commas',
        ),
      ],
    ]);
    for (const blank of [null, undefined, '']) {
      expect(drop([[20]], [[blank]], [['ft']], [[12]], null)).toEqual([['']]);
    }
  });

  it.each([[{ type: 'Error', basicValue: '#NAME?' }], [new StandInError('#NAME?')]])(
    'says of text without quotes, which comes as %j, that it lacks them',
    (noName) => {
      const drop = excelFunction(CATALOGUE.find(({ id }) => id === 'DCDROP')!);
      expect(drop([[20]], [[10]], [[noName]], [[12]])).toEqual([
        [
          new StandInError(
            '#VALUE!',
            'unit: #NAME? came in; text in a formula needs quotes, such as "ft"',
          ),
        ],
      ]);
    },
  );

  it('associates every function of the catalogue', async () => {
    await import('../../src/functions/associate');
    expect([...associated.keys()]).toEqual(CATALOGUE.map(({ id }) => id));
    for (const called of associated.values()) expect(called).toBeTypeOf('function');
  });

  it('never throws and never answers with nothing, whatever comes', () => {
    const cells = fc.oneof(
      fc.anything(),
      fc.double(),
      fc.string(),
      fc.constantFrom('ft', 12, 0.03),
    );
    const argument = fc.oneof(cells, fc.array(fc.array(cells, { maxLength: 3 }), { maxLength: 3 }));
    const call = fc.tuple(fc.constantFrom(...CATALOGUE), fc.array(argument, { maxLength: 16 }));
    fc.assert(
      fc.property(call, ([entry, given]) => {
        const rows = excelFunction(entry)(...given);
        expect(rows.length).toBeGreaterThan(0);
        for (const cell of rows.flat()) {
          if (cell instanceof StandInError) expect(Object.values(CODES)).toContain(cell.code);
          else expect(['string', 'number', 'boolean']).toContain(typeof cell);
          expect(cell).not.toBeNaN();
        }
      }),
      { numRuns: 2000 },
    );
  });
});
