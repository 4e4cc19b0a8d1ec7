/** The sentences that errors carry: they name the argument, what came, and the remedy. */
import { describe, expect, test } from 'vitest';
import { CellError } from '../../src/functions/cell';
import { call, callNumber, callRange, type TestArgument } from './call';

type Call = readonly [string, ...TestArgument[]];
const answer = ([id, ...given]: Call) => call(id, ...given);

describe('#VALUE!: of the wrong kind, an unknown parameter, or outside what physics allows', () => {
  test.each<readonly [Call, string]>([
    [
      ['CONDUCTOR_AREA', 2.5],
      'size: 2.5 is not an AWG number; for square millimetres write "2.5 mm2"',
    ],
    [
      ['CONDUCTOR_AREA', 0],
      'size: the number 0 may be a blank cell; for 1/0 AWG write "1/0" or "0 AWG"',
    ],
    [['CONDUCTOR_AREA', true], 'size: TRUE is not a size'],
    [
      ['MAX_LENGTH', 20, 'ft', 12, 13, 3],
      'max_drop: 3 is not below 0.5; 3 means 300 %; write 3% or 0.03',
    ],
    [
      ['MAX_LENGTH', 20, 'ft', 12, 13, 0.5],
      'max_drop: 0.5 is not below 0.5; 3 means 300 %; write 3% or 0.03',
    ],
    [
      ['MAX_LENGTH', 20, 'ft', 12, 13, '50%'],
      'max_drop: 0.5 is not below 0.5; 3 means 300 %; write 3% or 0.03',
    ],
    [
      ['MAX_LENGTH', 20, 'ft', 12, 13, 0],
      'max_drop: 0 is not above 0; 3 means 300 %; write 3% or 0.03',
    ],
    [['DCDROP', 20, -6, 'ft', 12], 'length: -6 is less than 0'],
    [['DCDROP', -1, 6, 'ft', 12], 'amps: -1 is less than 0'],
    [['DCDROP', 'many', 6, 'ft', 12], 'amps: "many" is not a number'],
    [['DCDROP', '1,5', 6, 'ft', 12], 'amps: "1,5" is not a number; write 1.5'],
    [['DCDROP', true, 6, 'ft', 12], 'amps: TRUE is not a number'],
    [['DCDROP', Number.NaN, 6, 'ft', 12], 'amps: NaN is not a number'],
    [['DCDROP', Number.POSITIVE_INFINITY, 6, 'ft', 12], 'amps: Infinity is not a number'],
    [['DCDROP', 20, 6, 'yd', 12], 'unit: "yd" is not one of "ft", "in", "m", "cm", "mm"'],
    [
      ['DCDROP', 20, 6, 'ft', 12, 'gold'],
      'material: "gold" is not one of "copper", "tinned copper", "aluminium", "copper-clad aluminium"',
    ],
    [['DCDROP_PCT', 20, 6, 'ft', 12, 0], 'volts: 0 is not above 0'],
    [['DCDROP', 20, 6, 'ft', 12, 'copper', 20, -1], 'joint_milliohms: -1 is less than 0'],
    [
      ['DCDROP', 20, 6, 'ft', 12, 'copper', 20, 0, 0],
      'return_milliohms: 0 is not above 0; for a second conductor leave it out, for a good chassis write 2',
    ],
    [['AMPACITY', 12, 75, 30, 2.5], 'conductors: 2.5 is not a whole number'],
    [['AMPACITY', 12, 75, 30, 0], 'conductors: 0 is less than 1'],
    [['SIZE_AS', 12, 'BS'], 'series: "BS" is not one of "AWG", "AWG all", "mm2"'],
    [
      ['FUSE_FOR', 20, 12, 75, 30, 2, 'cable', 'copper', 0],
      'continuous: 0 is neither TRUE nor FALSE',
    ],
    [
      ['FUSE_FOR', 20, 12, 75, 30, 2, 'cable', 'copper', true, 'some'],
      'fuse_limit: "some" is not one of "none", "NFPA 70 240.4(D)"',
    ],
  ])('%j', (given, sentence) => {
    expect(answer(given)).toEqual(new CellError('#VALUE!', sentence));
  });
});

describe('#N/A: sound arguments for which no answer exists', () => {
  test.each<readonly [Call, string]>([
    [
      ['LOAD_VOLTS', 13, 300, 60, 'ft', '18 AWG'],
      'this run cannot carry 300 A: it would lose 230 V and the source has 13 V',
    ],
    [
      ['DRAW_AMPS', 1000, 12, 0.1],
      'the cable cannot deliver 1000 W: through 0.1 ohm from 12 V the most is 360 W',
    ],
    [
      ['MAX_LENGTH', 0, 'ft', 12, 13, 0.03],
      '0 amps lose nothing over any length: there is no longest run',
    ],
    [
      ['MAX_LENGTH', 100, 'ft', 12, 13, 0.01, 'copper', 20, 50],
      'the joints alone lose more than the target; improve them or carry less current',
    ],
    [
      ['MAX_LENGTH', 100, 'ft', 12, 13, 0.01, 'copper', 20, 0, 2],
      'joints and chassis alone lose more than the target; improve them or carry less current',
    ],
    [
      ['MAX_AMPS', 0, 'ft', 12, 13, 0.03],
      'a run of no length and no joints loses nothing: there is no most',
    ],
    [
      ['MINGAUGE', 200, 300, 'ft', 12, 0.01],
      'no size keeps the drop within 0.12 V: the thickest loses 5.88 V; shorten the run, divide the load or raise the volts',
    ],
    [
      ['FUSE_FOR', 600, '4/0'],
      'the load needs a fuse of 750 A and the largest standard rating is 500 A; divide the load',
    ],
    [
      ['FUSE_FOR', 40, '12 AWG'],
      'the load needs a fuse of 50 A and the conductor may carry 25 A; take a thicker size',
    ],
    // 24.986 A, which three figures would print as the very 25 A it does not carry.
    [
      ['FUSE_FOR', 20, '12 AWG', 75, 30.05],
      'the load needs a fuse of 25 A and the conductor may carry 24.9 A; take a thicker size',
    ],
    [
      ['FUSE_FOR', 20, '12 AWG', 75, 30, 2, 'cable', 'copper', true, 'NFPA 70 240.4(D)'],
      'the load needs a fuse of 25 A and the rule for small wires, fuse_limit, allows 20 A; take a thicker size',
    ],
    [['AMPACITY', 20], 'NFPA 70 table 310.16 has no row for 20 AWG in copper'],
    [
      ['AMPACITY', 12, 50],
      'NFPA 70 table 310.16 has no column for insulation of 50 degC; its coolest is 60 degC',
    ],
    [
      ['AMPACITY', 12, 75, 80],
      'at 80 degC around it, insulation of the 75 degC column carries nothing',
    ],
    [['SIZE_AS', '150 mm2', 'mm2'], 'no size of the series "mm2" is as thick as 150 mm2'],
    [['DCDROP', 1e308, 1e308, 'ft', 12], 'the numbers are too large or too small to compute with'],
  ])('%j', (given, sentence) => {
    expect(answer(given)).toEqual(new CellError('#N/A', sentence));
  });

  test('a range that ran out is named', () => {
    const [, , third] = callRange('DCDROP', [[20], [20], [20]], [[6], [7]], [['ft']], [['12']]);
    expect(third![0]).toEqual(
      new CellError(
        '#N/A',
        'length: its range has 2 by 1 cells and ran out here; make the ranges of one size',
      ),
    );
  });
});

describe('what is honest is answered', () => {
  test('0 amps and 0 length lose nothing', () => {
    expect(call('DCDROP', 0, 6, 'ft', 12)).toBe(0);
    expect(call('DCDROP', 20, 0, 'ft', 12)).toBe(0);
    expect(call('LOAD_VOLTS', 13, 0, 6, 'ft', 12)).toBe(13);
  });

  test.each(['m', 'ft', 'mm'])('0 amps lose nothing over any length in %s', (unit) => {
    for (const size of ['12 AWG', '40 AWG', '0.05 mm2']) {
      expect(call('LOAD_VOLTS', 12, 0, 1e308, unit, size)).toBe(12);
      expect(call('DCDROP', 0, 1e308, unit, size)).toBe(0);
      expect(call('DCDROP_PCT', 0, 1e308, unit, size, 12)).toBe(0);
    }
    expect(call('MINGAUGE', 0, 1e308, unit, 12, 0.03)).toBe('18 AWG');
    expect(call('RUN_VERDICT', 0, 1e308, unit, 12, 0.03, '12 AWG')).toBe('ok');
  });

  test.each<readonly [string, readonly TestArgument[]]>([
    ['DCDROP', [-0, 6, 'ft', 12]],
    ['DCDROP', ['-0', 6, 'ft', 12]],
    ['DCDROP', [20, -0, 'ft', 12]],
    ['DCDROP_PCT', [-0, -0, 'ft', 12, 13]],
    ['LOSS_WATTS', [20, -0]],
    ['RUN_OHMS', [-0, 'ft', 12]],
    ['CONDUCTOR_TEMP', [0, 12, -0]],
    ['PV_DESIGN_AMPS', [-0]],
  ])('%s %j is 0, never -0', (id, given) => {
    expect(call(id, ...given)).toBe(0); // toBe tells -0 from 0
  });

  test('numbers that come as text, shares that come in per cent', () => {
    const plain = callNumber('MAX_LENGTH', 20, 'ft', 12, 13, 0.03);
    expect(call('MAX_LENGTH', ' 20 ', 'FT', '12', '13.0', '3%')).toBe(plain);
    expect(call('MAX_LENGTH', '2e1', 'ft', '#12', '+13', '3 %')).toBe(plain);
  });

  test('"aluminum" is aluminium', () => {
    expect(call('CONDUCTOR_OHMS', 12, 1, 'm', 'aluminum')).toBe(
      call('CONDUCTOR_OHMS', 12, 1, 'm', 'aluminium'),
    );
  });

  test('the defaults are those of the contract', () => {
    const spelt = ['copper', 20, 0, 75, 30, 2, 'cable', true] as const;
    const run = [20, 12, 'ft', 13.8, 0.03] as const;
    expect(call('MINGAUGE', ...run)).toBe(call('MINGAUGE', ...run, ...spelt, 'AWG', 'none'));
    expect(call('RUN_VERDICT', ...run, 8)).toBe(call('RUN_VERDICT', ...run, 8, ...spelt, 'none'));
    expect(call('AMPACITY', 8)).toBe(call('AMPACITY', 8, 75, 30, 2, 'cable', 'copper'));
    expect(call('AMPACITY', 8, 75, null, 2, 'engine space')).toBe(
      call('AMPACITY', 8, 75, 50, 2, 'engine space'),
    );
  });
});
