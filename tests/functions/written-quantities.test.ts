/** Amps, watts and lengths that come as text with their unit, wherever a function takes the number. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { CellError } from '../../src/functions/cell';
import { describeParameter } from '../../src/functions/parameter';
import { call, callNumber, callRange } from './call';

const drop = (amps: string | number, length: string | number = 6, unit = 'ft') =>
  call('DCDROP', amps, length, unit, '12 AWG');

describe('amps', () => {
  test.each([
    ['22 A', 22],
    ['22A', 22],
    [' 22 amps ', 22],
    ['800 mA', 0.8],
    ['2,5 A', 2.5],
    ['2.5 A', 2.5],
    ['.5 A', 0.5],
    ['0,125 A', 0.125],
    ['10 A DC', 10],
    ['350 milliamps', 0.35],
    ['-0 A', 0],
  ])('%s', (text, amps) => {
    expect(drop(text)).toBe(drop(amps));
  });

  test.each([
    [
      '60 W',
      'amps: "60 W" is in watts, and amps are wanted here, such as "22 A"; DRAW_AMPS gives the amps that watts draw',
    ],
    [
      '1.2 kW',
      'amps: "1.2 kW" is in watts, and amps are wanted here, such as "22 A"; DRAW_AMPS gives the amps that watts draw',
    ],
    ['12 V', 'amps: "12 V" is in volts, and amps are wanted here, such as "22 A"'],
    ['10 ft', 'amps: "10 ft" is a length, and amps are wanted here, such as "22 A"'],
    ['8\' 6"', 'amps: "8\' 6"" is a length, and amps are wanted here, such as "22 A"'],
    ['12 AWG', 'amps: "12 AWG" is a size, and amps are wanted here, such as "22 A"'],
    ['50%', 'amps: "50%" is a share, and amps are wanted here, such as "22 A"'],
    ['1,250 A', 'amps: "1,250 A" may be 1.25 or 1250; write it without a mark for thousands'],
    ['1.250 A', 'amps: "1.250 A" may be 1.25 or 1250; write it without a mark for thousands'],
    ['1,250', 'amps: "1,250" may be 1.25 or 1250; write it without a mark for thousands'],
    [
      '1,250.5 A',
      'amps: "1,250.5 A" has a mark for thousands, or two for decimals; write the number without',
    ],
    [
      '1 250 A',
      'amps: "1 250 A" has a mark for thousands, or two for decimals; write the number without',
    ],
    [
      "1'250 A",
      'amps: "1\'250 A" has a mark for thousands, or two for decimals; write the number without',
    ],
    ['22 B', 'amps: "22 B" is not a number'],
    ['A', 'amps: "A" is not a number'],
    ['22 A or so', 'amps: "22 A or so" is not a number'],
    ['-5 A', 'amps: -5 is less than 0'],
  ])('%s is refused', (text, sentence) => {
    expect(drop(text)).toEqual(new CellError('#VALUE!', sentence));
  });

  test.each([
    ['LOSS_WATTS', ['20 A', 0.019], [20, 0.019]],
    ['CONDUCTOR_TEMP', ['30 A', '10 AWG'], [30, '10 AWG']],
    ['FUSE_SECONDS', ['20 A', '90 A'], [20, 90]],
    ['WITHSTAND_SECONDS', ['2.5 mm2', '400 A'], ['2.5 mm2', 400]],
    ['FUSE_GUARDS', ['20 A', '10 AWG', '200 A'], [20, '10 AWG', 200]],
    ['BATTERY_HOURS', [100, '500 mA'], [100, 0.5]],
    ['PV_DESIGN_AMPS', ['9,2 A'], [9.2]],
    ['DRAW_AMPS', ['100 W', 12, 0.1], [100, 12, 0.1]],
    ['DRAW_AMPS', ['0.1 kW', 12, 0.1], [100, 12, 0.1]],
    ['JOINT_MILLIOHMS', [13.2, 12.75, '20 A', "6'", 'ft', 12], [13.2, 12.75, 20, 6, 'ft', 12]],
  ])('%s %j', (id, written, plain) => {
    expect(call(id, ...written)).toBe(call(id, ...plain));
  });

  test('in the columns of lists', () => {
    const list = [
      [['trunk'], ['relay'], ['camera']],
      [[null], ['trunk'], ['trunk']],
    ] as const;
    expect(callRange('FEED_AMPS', ...list, [[null], ['6 A'], ['500 mA']])).toEqual([
      [6.5],
      [6],
      [0.5],
    ]);
    expect(callRange('DUTY_AMPS', [['20 A'], [1.5]], [[0.1], [0.5]])).toEqual(
      callRange('DUTY_AMPS', [[20], [1.5]], [[0.1], [0.5]]),
    );
  });

  test('loads beside their kind', () => {
    const volts = (load: string | number, kind: string | null) =>
      callRange('FEED_VOLTS', 12.6, [['relay']], [[null]], [[load]], [[kind]], [[0.1]])[0]![0];
    expect(volts('60 W', 'W')).toBe(volts(60, 'W'));
    expect(volts('6 A', 'A')).toBe(volts(6, 'A'));
    expect(volts('6 A', null)).toBe(volts(6, null));
    expect(volts('60 W', 'A')).toMatchObject({
      sentence: expect.stringContaining('loads: "60 W" is in watts, and amps') as string,
    });
    expect(volts('6 A', 'W')).toMatchObject({
      sentence: expect.stringContaining('loads: "6 A" is in amps, and watts') as string,
    });
  });
});

describe('lengths', () => {
  test.each([
    ['10 ft', 10, 'ft'],
    ["10'", 10, 'ft'],
    ['10 feet', 10, 'foot'],
    ['2.5 m', 2.5, 'm'],
    ['2,5 m', 2.5, 'metres'],
    ['120 cm', 120, 'cm'],
    ['18 in', 18, 'in'],
    ['18"', 18, 'in'],
    ['18″', 18, 'in'],
    ['40 mm', 40, 'mm'],
    ['8\' 6"', 8.5, 'ft'],
    ['8′6″', 8.5, 'ft'],
    ['8 ft 6 in', 8.5, 'ft'],
    ["8' 6", 8.5, 'ft'],
    ['8\' 6"', 102, 'in'],
    ['8\' 6.5"', 102.5, 'in'],
  ])('%s is %d %s', (text, length, unit) => {
    expect(drop(20, text, unit)).toBe(drop(20, length, unit));
  });

  test.each([
    [
      '2.5 m',
      'ft',
      'length: "2.5 m" says m, and unit says ft; give the length in ft, or change unit',
    ],
    [
      '18 in',
      'ft',
      'length: "18 in" says in, and unit says ft; give the length in ft, or change unit',
    ],
    [
      '8\' 6"',
      'm',
      'length: "8\' 6"" says ft and in, and unit says m; give the length in m, or change unit',
    ],
    [
      '10 yd',
      'ft',
      'length: "10 yd" says yd, and unit says ft; give the length in ft, or change unit',
    ],
    ['22 A', 'ft', 'length: "22 A" is in amps, and a length is wanted here, such as "10 ft"'],
    ['2.5 mm2', 'mm', 'length: "2.5 mm2" is a size, and a length is wanted here, such as "10 ft"'],
    ['-6 ft', 'ft', 'length: -6 is less than 0'],
    [
      '1,250 ft',
      'ft',
      'length: "1,250 ft" may be 1.25 or 1250; write it without a mark for thousands',
    ],
    ["1'250", 'ft', 'length: "1\'250" may be feet and inches or thousands; mark the inches'],
    ['10 ft', 'yd', 'unit: "yd" is not one of "ft", "in", "m", "cm", "mm"'],
  ])('%s beside %s is refused', (text, unit, sentence) => {
    expect(drop(20, text, unit)).toEqual(new CellError('#VALUE!', sentence));
  });

  test('a column of them is as its cells, each beside its own unit', () => {
    const lengths = [['10 ft'], ['2,5 m'], ['2.5 m'], [6]];
    const units = [['ft'], ['m'], ['ft'], ['ft']];
    expect(callRange('DCDROP', 20, lengths, units, 12)).toEqual([
      [call('DCDROP', 20, 10, 'ft', 12)],
      [call('DCDROP', 20, 2.5, 'm', 12)],
      [call('DCDROP', 20, '2.5 m', 'ft', 12)],
      [call('DCDROP', 20, 6, 'ft', 12)],
    ]);
  });
});

test('a number with its unit is the number, whatever the number and the spelling', () => {
  const spelled = fc.constantFrom(
    ...(['ft', 'foot', 'feet', "'", '′'] as const).map((unit) => [unit, 'ft'] as const),
    ...(['in', 'inch', 'inches', '"', '″'] as const).map((unit) => [unit, 'in'] as const),
    ...(['m', 'metre', 'meters'] as const).map((unit) => [unit, 'm'] as const),
    ...(['cm', 'mm'] as const).map((unit) => [unit, unit] as const),
  );
  const hundredths = fc.integer({ min: 0, max: 99_999 });
  const mark = fc.constantFrom('.', ',');
  const space = fc.constantFrom('', ' ', '\u00a0');
  const text = (value: number, by: string) => (value / 100).toFixed(2).replace('.', by);
  fc.assert(
    fc.property(hundredths, hundredths, mark, space, spelled, (amps, length, by, gap, unit) => {
      const written = [`${text(amps, by)}${gap}A`, `${text(length, by)}${gap}${unit[0]}`];
      expect(call('DCDROP', ...written, unit[1], 12)).toBe(
        call('DCDROP', amps / 100, length / 100, unit[1], 12),
      );
    }),
    { numRuns: 500, seed: 11 },
  );
});

test('feet and inches are the feet and a twelfth of the inches', () => {
  const whole = fc.integer({ min: 0, max: 500 });
  fc.assert(
    fc.property(whole, fc.integer({ min: 0, max: 11 }), (feet, inches) => {
      const read = callNumber('DCDROP', 20, `${feet}' ${inches}"`, 'ft', 12);
      expect(read).toBeCloseTo(callNumber('DCDROP', 20, feet + inches / 12, 'ft', 12), 12);
      expect(callNumber('DCDROP', 20, `${feet} ft ${inches} in`, 'in', 12)).toBeCloseTo(read, 12);
    }),
    { numRuns: 200, seed: 12 },
  );
});

test('help says so of every parameter of amps, and of lengths beside a unit', () => {
  for (const { id, takes } of CATALOGUE) {
    const hasUnit = takes.some(({ name }) => name === 'unit');
    for (const parameter of takes) {
      const takesText =
        /(^|_)amps$|^(rating|loads|watts)$/.test(parameter.name) ||
        (hasUnit && /^lengths?$/.test(parameter.name));
      expect([id, parameter.name, describeParameter(parameter).includes('Also text')]).toEqual([
        id,
        parameter.name,
        takesText,
      ]);
    }
  }
});

describe('arguments that were left out', () => {
  test.each([
    [['DCDROP', 20, undefined, 'ft', 12], 'length'],
    [['DCDROP', 20, 6, undefined, 12], 'unit'],
    [['DCDROP', undefined, 6, 'ft', 12], 'amps'],
    [['DCDROP', 20, 6, 'ft'], 'size'],
    [['FEED_AMPS', undefined, [[null]], [[6]]], 'runs'],
    [['DUTY_AMPS', [[20]]], 'share'],
    [['SPOOL_PLAN', [['relay']], [[6]], undefined, 0.5], 'spool_lengths'],
  ] as const)('%j names %s', ([id, ...given], name) => {
    expect(callRange(id, ...given)).toEqual([
      [
        new CellError(
          '#VALUE!',
          `${name}: left out, and it has no default; write it between its commas`,
        ),
      ],
    ]);
  });

  test('a blank cell is none', () => {
    expect(call('DCDROP', 20, null, 'ft', 12)).toBe('');
    expect(call('DCDROP', 20, '', 'ft', 12)).toBe('');
    expect(callRange('DCDROP', [[20], [null]], [[6], [null]], 'ft', 12)[1]).toEqual(['']);
    expect(callRange('FEED_AMPS', [[null], ['relay']], [[null], [null]], [[null], [6]])).toEqual([
      [''],
      [6],
    ]);
  });

  test('nor is a column whose blanks mean something', () => {
    expect(callRange('FEED_AMPS', [['relay'], ['camera']], undefined, [[6], [0.5]])).toEqual([
      [6],
      [0.5],
    ]);
  });
});

describe('text without its quotes', () => {
  const noName = new CellError('#NAME?', '#NAME? came in');

  test.each([
    [
      ['DCDROP', 20, 6, noName, 12],
      'unit: #NAME? came in; text in a formula needs quotes, such as "ft"',
    ],
    [
      ['CONDUCTOR_AREA', noName],
      'size: #NAME? came in; text in a formula needs quotes, such as "12 AWG"',
    ],
    [
      ['AMPACITY', 12, 75, 30, 2, noName],
      'installed: #NAME? came in; text in a formula needs quotes, such as "cable"',
    ],
    [
      ['FEED_VOLTS', 12.6, [['relay']], [[null]], [[6]], [[noName]], [[0.1]]],
      'load_kind: #NAME? came in; text in a formula needs quotes, such as "A"',
    ],
  ] as const)('%j', ([id, ...given], sentence) => {
    expect(call(id, ...given)).toEqual(new CellError('#NAME?', sentence));
  });

  test('another error, or one in place of a number, is passed on as it is', () => {
    const divided = new CellError('#DIV/0!', '#DIV/0! came in');
    expect(call('DCDROP', 20, 6, divided, 12)).toBe(divided);
    expect(call('DCDROP', noName, 6, 'ft', 12)).toBe(noName);
  });
});
