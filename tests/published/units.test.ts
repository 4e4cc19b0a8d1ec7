/**
 * Debian's `units` program: its own data file knows the wire gauge as a closed formula and copper's conductivity
 * (58 S m/mm2). Computed by another program at the time of the test, nothing printed in between.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { inBaseUnit, readMeasures, type Measure } from '../../src/core/quantity';
import { callNumber } from '../functions/call';
import { runDebianTool } from './debian-tool';

const UNITS = { command: 'units', debianPackage: 'units' };

/** The same closed form on both sides; what remains is rounding. */
const RELATIVE = 1e-7;

/** Gauges in the program's numbering: 1/0 is 0, 4/0 is -3. */
const GAUGES = Array.from({ length: 34 }, (_, index) => index - 3);

const sizeText = (gauge: number) => (gauge > 0 ? `${gauge} AWG` : `${1 - gauge}/0 AWG`);

/** Converts every expression to a unit, one line each, in one run of the program. */
function convert(expressions: readonly string[], unit: string): number[] {
  const answers = expressions.map((expression) =>
    runDebianTool(UNITS, ['-o', '%.15g', '-t', expression, unit]).trim(),
  );
  return answers.map((answer, index) => {
    const number = Number(answer);
    if (answer === '' || !Number.isFinite(number)) {
      throw new Error(`units could not convert ${expressions[index]} to ${unit}: ${answer}`);
    }
    return number;
  });
}

describe('units', () => {
  let diametersMm: number[];
  let ohmsPerM: number[];

  beforeAll(() => {
    diametersMm = convert(
      GAUGES.map((gauge) => `wiregauge(${gauge})`),
      'mm',
    );
    // Multiplications written out: in this program a space binds tighter than a stroke.
    ohmsPerM = convert(
      GAUGES.map((gauge) => `4 * 1 m / (pi * copperconductivity * wiregauge(${gauge})^2)`),
      'ohm',
    );
  });

  test.each(GAUGES.map((gauge, index) => [sizeText(gauge), index] as const))(
    '%s: wiregauge and copperconductivity',
    (size, index) => {
      const areaMm2 = (Math.PI / 4) * diametersMm[index]! ** 2;
      expect(Math.abs(callNumber('CONDUCTOR_AREA', size) / areaMm2 - 1)).toBeLessThan(RELATIVE);
      const ours = callNumber('CONDUCTOR_OHMS', size, 1, 'm');
      expect(Math.abs(ours / ohmsPerM[index]! - 1)).toBeLessThan(RELATIVE);
    },
  );

  test('61 % of copper is the aluminium that conductors are made of', () => {
    const [ohmMm2PerM] = convert(['1 / (0.61 * copperconductivity)'], 'ohm mm^2 / m');
    const ours = callNumber('CONDUCTOR_OHMS', 12, 1, 'm', 'aluminium');
    expect(ours * callNumber('CONDUCTOR_AREA', 12)).toBeCloseTo(ohmMm2PerM!, 9);
  });

  test('feet and inches are the international ones', () => {
    const [metresPerFoot, metresPerInch] = convert(['1 ft', '1 in'], 'm');
    const perMetre = callNumber('CONDUCTOR_OHMS', 12, 1, 'm');
    expect(callNumber('CONDUCTOR_OHMS', 12, 1, 'ft') / perMetre).toBeCloseTo(metresPerFoot!, 12);
    expect(callNumber('CONDUCTOR_OHMS', 12, 1, 'in') / perMetre).toBeCloseTo(metresPerInch!, 12);
  });
});

/** As people write them, as the program does, and what the sheets count in. */
test.each([
  ['A', 'A', 'A'],
  ['mA', 'mA', 'A'],
  ['W', 'W', 'W'],
  ['kW', 'kW', 'W'],
  ['V', 'V', 'V'],
  ['mV', 'mV', 'V'],
  ['mΩ', 'mohm', 'mohm'],
  ['ohm', 'ohm', 'mohm'],
  ['%', 'percent', '1'],
  ['m', 'm', 'm'],
  ['cm', 'cm', 'm'],
  ['mm', 'mm', 'm'],
  ['ft', 'ft', 'm'],
  ['in', 'inch', 'm'],
  ['yd', 'yd', 'm'],
])('7.5 %s is so many of the unit that is counted in', (written, theirs, base) => {
  const measures = readMeasures(`7.5 ${written}`) as readonly Measure[];
  expect(measures).toHaveLength(1);
  const [counted] = convert([`7.5 ${theirs}`], base);
  expect(inBaseUnit(measures[0]!)).toBeCloseTo(counted!, 12);
});

test('a missing program is told by name, with the package that holds it', () => {
  const absent = { command: 'loomsheet-has-no-such-program', debianPackage: 'some-package' };
  expect(() => runDebianTool(absent, [])).toThrow(
    'this check runs the program "loomsheet-has-no-such-program", which is not installed; on Debian: sudo apt-get install some-package',
  );
});
