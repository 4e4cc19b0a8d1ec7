import { describe, expect, it } from 'vitest';
import { readHeading, RUN_COLUMNS, RUN_KEYS } from '../../src/lists/headings';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { FORMER_HEADINGS } from '../../src/sheets/station/former';
import { COLUMN_KEYS } from '../../src/sheets/station/schedule-keys';

function meant(heading: string) {
  const meaning = readHeading(heading);
  if (meaning.is !== 'typed') return meaning.is;
  const unit = meaning.unit === undefined ? '' : ` ${meaning.unit.label}`;
  return `${meaning.key}${unit}${meaning.bothWays ? ' both ways' : ''}`;
}

describe('headings of lists', () => {
  it.each([
    ['Name', 'run'],
    ['CIRCUIT', 'run'],
    ['circuit_name', 'run'],
    ['Fed from', 'fedFrom'],
    ['Source', 'fedFrom'],
    ['Load', 'load'],
    ['Description', 'load'],
    ['amps', 'peak A'],
    ['A', 'peak A'],
    ['I (A)', 'peak A'],
    ['Current', 'peak'],
    ['Current [mA]', 'peak mA'],
    ['Current mA', 'peak mA'],
    ['current_ma', 'peak mA'],
    ['Load (A)', 'peak A'],
    ['Load current, A', 'peak A'],
    ['Peak current (A)', 'peak A'],
    ['Max. current in amps', 'peak A'],
    ['Watts', 'peak W'],
    ['Power (W)', 'peak W'],
    ['Load (W)', 'peak W'],
    ['length', 'length'],
    ['Length (m)', 'length m'],
    ['Length [ft]', 'length ft'],
    ['length_m', 'length m'],
    ['Length in metres', 'length m'],
    ['One way (ft)', 'length ft'],
    ['one-way distance / m', 'length m'],
    ['Distance cm', 'length cm'],
    ['feet', 'length ft'],
    ['m', 'length m'],
    ['Length (one way, m)', 'length m'],
    ['Round trip (m)', 'length m both ways'],
    ['Length round-trip ft', 'length ft both ways'],
    ['Loop length (m)', 'length m both ways'],
    ['V', 'volts V'],
    ['Volts', 'volts V'],
    ['Supply (V)', 'volts V'],
    ['Supply voltage', 'volts'],
    ['System voltage (V DC)', 'volts V'],
    ['Max drop', 'target'],
    ['Max drop (%)', 'target %'],
    ['Allowable voltage drop %', 'target %'],
    ['Joint resistance (mΩ)', 'joints mΩ'],
    ['Joints mOhm', 'joints mΩ'],
    ['Contact resistance (ohm)', 'joints Ω'],
    ['AWG', 'ownSize AWG'],
    ['Wire gauge', 'ownSize'],
    ['Wire size (AWG)', 'ownSize AWG'],
    ['mm²', 'ownSize mm2'],
    ['Cross-section (mm²)', 'ownSize mm2'],
    ['CSA sq mm', 'ownSize mm2'],
    ['Min voltage (V)', 'leastVolts V'],
    ['A or W', 'kind'],
    ['At once (%)', 'atOnce %'],
    ['Share at once', 'atOnce'],
    ['Eff.', 'efficiency'],
    ['Efficiency %', 'efficiency %'],
    ['Unfused (in)', 'unfused in'],
    ['Unfused length from battery (cm)', 'unfused cm'],
  ])('takes "%s" for %s', (heading, meaning) => {
    expect(meant(heading)).toBe(meaning);
    expect(meant(`  ${heading.toUpperCase().replace('MΩ', 'mΩ')} `)).toBe(meaning);
  });

  it.each([
    'Colour',
    'Voltage drop (%)',
    'Drop (V)',
    'Fuse (A)',
    'Current (V)',
    'Length (kg)',
    'Total length (m)',
    'Overall length ft',
    'Max drop (V)',
    'Colour',
    'Price',
    '12',
    '-',
  ])('does not guess at "%s"', (heading) => {
    expect(meant(heading)).toBe(heading === 'Length (kg)' ? 'length' : 'unknown');
  });

  it('knows every heading of ours, typed or computed', () => {
    for (const key of COLUMN_KEYS) {
      const meaning = readHeading(SCHEDULE_COLUMNS[key].heading);
      const typed = RUN_KEYS.find((candidate) => candidate === key);
      expect(meaning.is, key).toBe(typed === undefined ? 'computed' : 'typed');
      if (meaning.is === 'typed') expect(meaning.key).toBe(typed);
    }
  });

  it('knows what our headings were before', () => {
    for (const [key, heading] of Object.entries(FORMER_HEADINGS)) {
      const meaning = readHeading(heading);
      const typed = RUN_KEYS.find((candidate) => candidate === key);
      expect(meaning, heading).toMatchObject(
        typed === undefined ? { is: 'computed' } : { is: 'typed', key: typed, ours: true },
      );
    }
  });

  it('are all different, the former ones too, whatever their case', () => {
    const all = [
      ...COLUMN_KEYS.map((key) => SCHEDULE_COLUMNS[key].heading),
      ...Object.values(FORMER_HEADINGS),
    ].map((heading) => heading.toLowerCase());
    expect(all.filter((heading, at) => all.indexOf(heading) !== at)).toEqual([]);
  });

  it('has names that mean one thing, but where a unit decides', () => {
    const seen = new Map<string, string>();
    for (const key of RUN_KEYS) {
      for (const name of RUN_COLUMNS[key].names.split('|')) {
        const before = seen.get(name);
        if (before !== undefined)
          expect([name, before, key].join(' ')).toMatch(/^(source|supply) fedFrom volts$/);
        seen.set(name, key);
      }
    }
  });
});
