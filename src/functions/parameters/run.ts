/** The parameters of the catalogue: every argument that a function takes, described and read once. */
import { MOST_DROP_SHARE } from '../../core/limits';
import { INSTALLATIONS } from '../../core/ampacity';
import { FUSE_LIMITS } from '../../core/fuse-limit';
import { LENGTH_UNITS, type LengthUnit } from '../../core/length';
import { parseSize, SERIES, type ConductorSize } from '../../core/size';
import {
  MATERIALS,
  RESISTANCE_LAW_LEAST_C,
  RESISTANCE_LAW_MOST_C,
} from '../../core/tables/materials';
import { invalid, type Outcome } from '../../core/outcome';
import {
  choiceParameter,
  numberParameter,
  optional,
  quoted,
  truthParameter,
  type Parameter,
} from '../parameter';
import { currentParameter, lengthParameter, powerParameter } from '../quantity-parameter';

export const amps = currentParameter('amps', 'Peak current of the load, amps.', { least: 0 });

export const watts = powerParameter('watts', 'Power the load takes, watts.', { least: 0 });

export const ohms = numberParameter('ohms', 'Resistance of the run, conductors and joints, ohms.', {
  least: 0,
});

export const length = lengthParameter('length', 'One-way length of the run, source to load.', {
  least: 0,
});

/** The same units spelled out. */
const UNITS_IN_WORDS: Readonly<Record<string, LengthUnit>> = {
  foot: 'ft',
  feet: 'ft',
  inch: 'in',
  inches: 'in',
  metre: 'm',
  metres: 'm',
  meter: 'm',
  meters: 'm',
};

export const unit = choiceParameter('unit', 'Unit of the length', LENGTH_UNITS, UNITS_IN_WORDS);

export const volts = numberParameter('volts', 'Volts at the source.', { above: 0 });

export const maxDrop = numberParameter(
  'max_drop',
  'Largest share of the source voltage that may be lost: 3% or 0.03.',
  { above: 0, below: MOST_DROP_SHARE, remedy: '3 means 300 %; write 3% or 0.03' },
);

export const size: Parameter<'size', ConductorSize> = {
  name: 'size',
  meaning:
    'Conductor size: an AWG number such as 12, "1/0" or "12 AWG", or an area such as "2.5 mm2".',
  quotedText: '"12 AWG"',
  read(given): Outcome<ConductorSize> {
    return typeof given === 'boolean'
      ? invalid(`${quoted(given)} is not a size`)
      : parseSize(given);
  },
};

export const seriesWanted = choiceParameter('series', 'Size series to choose from', SERIES);
export const series = optional(seriesWanted, 'AWG', '"AWG", the even sizes kept in stock');

export const material = optional(
  choiceParameter('material', 'Conductor', MATERIALS, {
    aluminum: 'aluminium',
    'copper-clad aluminum': 'copper-clad aluminium',
  }),
  'copper',
  '"copper"',
);

export const tempC = optional(
  numberParameter('temp_c', 'Conductor temperature, degrees Celsius; resistance follows it.', {
    least: RESISTANCE_LAW_LEAST_C,
    most: RESISTANCE_LAW_MOST_C,
  }),
  20,
  '20',
);

export const jointMilliohms = optional(
  numberParameter(
    'joint_milliohms',
    'Fuse holder, contacts and crimps of the whole run together, milliohms.',
    { least: 0 },
  ),
  0,
  '0',
);

/** 0 is refused: older builds of Excel hand a blank cell over as 0, which would halve the cable's resistance unasked. */
export const returnMilliohms: Parameter<'return_milliohms', number | undefined> = optional(
  numberParameter(
    'return_milliohms',
    'Given: the negative goes through a chassis of so many milliohms, and one conductor counts.',
    { above: 0, remedy: 'for a second conductor leave it out, for a good chassis write 2' },
  ) as Parameter<'return_milliohms', number | undefined>,
  undefined,
  'none, a second conductor',
);

export const insulationC = optional(
  numberParameter(
    'insulation_c',
    'Temperature rating of the insulation, degrees Celsius; the published column not above it is used.',
    { above: 0, most: RESISTANCE_LAW_MOST_C },
  ),
  75,
  '75',
);

export const ambientC: Parameter<'ambient_c', number | undefined> = optional(
  numberParameter('ambient_c', 'Air around the cable, degrees Celsius.', {
    least: RESISTANCE_LAW_LEAST_C,
    most: RESISTANCE_LAW_MOST_C,
  }) as Parameter<'ambient_c', number | undefined>,
  undefined,
  '30, in an engine space 50',
);

export const conductors = optional(
  numberParameter('conductors', 'Current-carrying conductors in the cable or bundle.', {
    least: 1,
    whole: true,
  }),
  2,
  '2',
);

export const installed = optional(
  choiceParameter(
    'installed',
    'How it is installed, which picks the ampacity table',
    INSTALLATIONS,
  ),
  'cable',
  '"cable"',
);

export const continuous = optional(
  truthParameter(
    'continuous',
    'TRUE: the load may run for hours, so the fuse is at least 125 % of it. FALSE: short bursts such as transmitting, at least 100 %.',
  ),
  true,
  'TRUE',
);

/** Where the limit of small wires comes from and what it counts, for the help of the functions that take it. */
export const FUSE_LIMIT_SOURCE =
  'fuse_limit: NFPA 70 240.4(D), 2014 edition and later, after corrections: copper 18 AWG 7 A, 16 AWG 10 A, 14 AWG 15 A, 12 AWG 20 A, 10 AWG 30 A; aluminium and copper-clad 12 AWG 15 A, 10 AWG 25 A, copper-clad 14 AWG 10 A (from memory). An area in mm2 counts as the thickest gauge not thicker than it.';

export const fuseLimit = optional(
  choiceParameter('fuse_limit', 'Rule for the greatest fuse of small wires', FUSE_LIMITS, {
    '240.4(d)': 'NFPA 70 240.4(D)',
  }),
  'none',
  '"none"',
);
