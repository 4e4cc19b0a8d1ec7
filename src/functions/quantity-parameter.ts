/** Parameters of current, power and length: a number, or text with its unit as people write it. */
import { asLengthUnit, type Quantity } from '../core/units';
import { inBaseUnit, readMeasures, type Measure } from '../core/quantity';
import { invalid, isRefusal, type Outcome } from '../core/outcome';
import {
  numberParameter,
  quoted,
  type Given,
  type NumberBounds,
  type Parameter,
} from './parameter';

/** What a text is that has a unit of another quantity, and what to do instead where that helps. */
const NAMED: Readonly<Record<Quantity, string>> = {
  current: 'in amps',
  power: 'in watts',
  length: 'a length',
  voltage: 'in volts',
  share: 'a share',
  resistance: 'a resistance',
  size: 'a size',
};

/** What a parameter of a quantity takes, as a sentence has it. */
const WANTED: Readonly<Partial<Record<Quantity, string>>> = {
  current: 'amps are wanted here, such as "22 A"',
  power: 'watts are wanted here, such as "60 W"',
  length: 'a length is wanted here, such as "10 ft"',
};

const REMEDIES: Readonly<Partial<Record<`${Quantity} for ${Quantity}`, string>>> = {
  'power for current': 'DRAW_AMPS gives the amps that watts draw',
};

/**
 * The measures of a text that has a unit; undefined for all that is read as a bare number is. A number that the parameter
 * takes as it stands never comes this far.
 */
function measuresOf(given: Given, wanted: Quantity): Outcome<readonly Measure[]> | undefined {
  if (typeof given !== 'string') return undefined;
  const measures = readMeasures(given);
  if (measures === undefined || isRefusal(measures)) return measures;
  const { quantity } = measures[0]!.unit;
  if (quantity === wanted) return measures;
  const remedy = REMEDIES[`${quantity} for ${wanted}`];
  return invalid(
    [
      `${quoted(given)} is ${NAMED[quantity]}, and ${WANTED[wanted]}`,
      ...(remedy ? [remedy] : []),
    ].join('; '),
  );
}

/** A parameter of a quantity: a number in its base unit, or text with a unit of that quantity. */
function baseUnitParameter<const Name extends string>(
  quantity: Quantity,
  alsoText: string,
  name: Name,
  meaning: string,
  bounds: NumberBounds,
): Parameter<Name, number> {
  const number = numberParameter(name, meaning, bounds);
  return {
    ...number,
    alsoText,
    read(given) {
      if (typeof given === 'number') return number.read(given);
      const measures = measuresOf(given, quantity);
      if (measures === undefined) return number.read(given);
      return isRefusal(measures) ? measures : number.read(inBaseUnit(measures[0]!));
    },
  };
}

/** A parameter of amps, which may come as text: "22 A", "800 mA", "2,5 A". */
export function currentParameter<const Name extends string>(
  name: Name,
  meaning: string,
  bounds: NumberBounds,
): Parameter<Name, number> {
  const also = 'Also text with its unit: "22 A", "800 mA".';
  return baseUnitParameter('current', also, name, meaning, bounds);
}

/** A parameter of watts, which may come as text: "60 W", "1.2 kW". */
export function powerParameter<const Name extends string>(
  name: Name,
  meaning: string,
  bounds: NumberBounds,
): Parameter<Name, number> {
  const also = 'Also text with its unit: "60 W", "1.2 kW".';
  return baseUnitParameter('power', also, name, meaning, bounds);
}

/**
 * A parameter of a load in amps or in watts, as the parameter `kindName` beside it says ("A", "W"; blank is amps). Text
 * with the other's unit is refused.
 */
export function loadParameter<const Name extends string>(
  name: Name,
  meaning: string,
  kindName: string,
  bounds: NumberBounds,
): Parameter<Name, number> {
  const amps = currentParameter(name, meaning, bounds);
  const watts = powerParameter(name, meaning, bounds);
  return {
    ...amps,
    alsoText: `Also text with its unit, where ${kindName} says the same: "22 A", "60 W".`,
    besideName: kindName,
    read(given, beside) {
      if (typeof given === 'number') return amps.read(given);
      return (beside === 'W' ? watts : amps).read(given);
    },
  };
}

/** The number of a length that names its unit, in the unit that the call names; refused where it names another. */
function inUnit(given: Given, measures: readonly Measure[], unit: unknown): Outcome<number> {
  // A unit that cannot be read is refused by itself, whatever its length says.
  if (isRefusal(unit)) return measures[0]!.number;
  const measure = measures.find((one) => asLengthUnit(one.unit) === unit);
  if (unit !== undefined && measure !== undefined) return measure.number;
  const own = measures.map((one) => one.unit.label).join(' and ');
  return invalid(
    `${quoted(given)} says ${own}, and unit says ${String(unit)}; give the length in ${String(unit)}, or change unit`,
  );
}

/** A parameter of length beside a parameter `unit`, which may come as text that names the same unit: "10 ft", `8' 6"`. */
export function lengthParameter<const Name extends string>(
  name: Name,
  meaning: string,
  bounds: NumberBounds,
): Parameter<Name, number> {
  const number = numberParameter(name, meaning, bounds);
  return {
    ...number,
    alsoText: 'Also text that names the same unit: "10 ft", "2.5 m", 8\' 6".',
    besideName: 'unit',
    read(given, unit) {
      if (typeof given === 'number') return number.read(given);
      const measures = measuresOf(given, 'length');
      if (measures === undefined) return number.read(given);
      if (isRefusal(measures)) return measures;
      const read = inUnit(given, measures, unit);
      return isRefusal(read) ? read : number.read(read);
    },
  };
}
