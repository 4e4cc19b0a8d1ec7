/** Units as they stand in headings, behind numbers in lists, and in the cells and arguments that take a quantity. */
import { LENGTH_UNITS, METRES_PER, type LengthUnit } from './length';

export type Quantity = 'current' | 'power' | 'length' | 'voltage' | 'share' | 'resistance' | 'size';

export interface Unit {
  readonly quantity: Quantity;
  /** As sentences say it. */
  readonly label: string;
  /** A number in it, times this, is in amps, watts, metres, volts, parts of one, or milliohms ... */
  readonly times: number;
  /** ... after division by this, which keeps 350 mA at 0.35 A. */
  readonly per: number;
}

function unit(quantity: Quantity, label: string, times = 1, per = 1): Unit {
  return { quantity, label, times, per };
}

/** An international yard is three feet (1959). */
const FEET_PER_YARD = 3;

const LENGTH_SPELLINGS: Readonly<Record<LengthUnit, string>> = {
  ft: "ft|foot|feet|'|′|’|‘",
  in: `in|inch|inches|"|″|′′|''|”|“`,
  m: 'm|metre|metres|meter|meters|mtr|mtrs',
  cm: 'cm|centimetre|centimetres|centimeter|centimeters',
  mm: 'mm|millimetre|millimetres|millimeter|millimeters',
};

const SPELLED: readonly (readonly [string, Unit])[] = [
  ['a|amp|amps|ampere|amperes|adc|a dc', unit('current', 'A')],
  ['ma|milliamp|milliamps|milliampere|milliamperes', unit('current', 'mA', 1, 1000)],
  ['w|watt|watts', unit('power', 'W')],
  ['kw|kilowatt|kilowatts', unit('power', 'kW', 1000)],
  ...LENGTH_UNITS.map(
    (name) => [LENGTH_SPELLINGS[name], unit('length', name, METRES_PER[name])] as const,
  ),
  ['yd|yard|yards', unit('length', 'yd', FEET_PER_YARD * METRES_PER.ft)],
  ['v|volt|volts|vdc|v dc', unit('voltage', 'V')],
  ['mv|millivolt|millivolts', unit('voltage', 'mV', 1, 1000)],
  ['%|percent|per cent|pct', unit('share', '%', 1, 100)],
  ['mω|m?|mohm|mohms|milliohm|milliohms', unit('resistance', 'mΩ')],
  ['ω|ohm|ohms', unit('resistance', 'Ω', 1000)],
  ['awg|ga|gauge', unit('size', 'AWG')],
  ['mm2|mm^2|sq mm|sqmm|mm sq|square mm|square millimetres', unit('size', 'mm2')],
];

const UNITS: ReadonlyMap<string, Unit> = new Map(
  SPELLED.flatMap(([spellings, meant]) =>
    spellings.split('|').map((spelling) => [spelling, meant] as const),
  ),
);

/** As sentences say them, which is how most people write them too. */
const BY_LABEL: ReadonlyMap<string, Unit> = new Map(
  SPELLED.map(([, meant]) => [meant.label, meant]),
);

/** Every spelling of a quantity's units, without blanks, as text behind a number is compared once it has none. */
export function spellingsOf(quantity: Quantity): readonly (readonly [string, Unit])[] {
  return [...UNITS].flatMap(([spelling, meant]) =>
    meant.quantity === quantity && /^[ -~]+$/.test(spelling)
      ? [[spelling.replaceAll(' ', ''), meant] as const]
      : [],
  );
}

/** The spellings of a unit of length, parted by "|", as a pattern has them. */
export function spelledOut(of: LengthUnit): string {
  return LENGTH_SPELLINGS[of];
}

/** Text as units and headings are compared: one form for characters that look alike, lower case, single spaces. */
export function plain(text: string): string {
  return text.normalize('NFKC').toLowerCase().replace(/\s+/g, ' ').trim();
}

/** The unit of a text that is nothing else. */
export function findUnit(text: string): Unit | undefined {
  return BY_LABEL.get(text) ?? UNITS.get(plain(text).replace(/\.$/, ''));
}

/** The length unit of the schedule that is this unit; none for others, such as yards. */
export function asLengthUnit(of: Unit): LengthUnit | undefined {
  return LENGTH_UNITS.find((name) => of.quantity === 'length' && name === of.label);
}
