/** The words of feeders, batteries and solar panels. */
import { LOAD_KINDS } from '../core/feeders';
import { invalid, type Outcome } from '../core/outcome';
import { CHEMISTRIES } from '../core/tables/resting-volts';
import { choiceWord, numberWord, optional, quoted, type Word } from './word';

/** A word for the name of a run: text, or a number as its text. */
function nameWord<const Name extends string>(name: Name, meaning: string): Word<Name, string> {
  return {
    name,
    meaning,
    read(given): Outcome<string> {
      return typeof given === 'boolean'
        ? invalid(`${quoted(given)} is not a name`)
        : String(given).trim();
    },
  };
}

export const runs = nameWord('runs', 'Names of the runs, a column; each name once.');

export const fedFrom = nameWord(
  'fed_from',
  'By run, the name of the run that feeds it; blank for the source.',
);

export const runAmps = numberWord(
  'amps',
  'By run, amps of its own load; blank for a run that only feeds others.',
  { least: 0 },
);

export const loads = numberWord(
  'loads',
  'By run, its own load in amps or watts, as load_kind says; blank for a run that only feeds others.',
  { least: 0 },
);

export const sourceVolts = numberWord(
  'volts',
  'Volts at the source, one for all; or by run, where there are several sources: those that feed it.',
  { above: 0 },
);

export const loadKind = choiceWord(
  'load_kind',
  'By run, steady amps (also where blank) or steady watts',
  LOAD_KINDS,
);

export const runsOhms = numberWord(
  'ohms',
  'By run, its resistance, both conductors and joints, ohms.',
  { least: 0 },
);

export const stateAmps = numberWord('amps', 'Amps of the load in each of its states, a column.', {
  least: 0,
});

const SHARE_BOUNDS = { least: 0, most: 1, mend: 'a share is 0 to 1: write 30% or 0.3' };

export const share = numberWord(
  'share',
  'Share of its time that the load spends in each state; together at most 1, the rest is off.',
  SHARE_BOUNDS,
);

export const ampHours = numberWord('amp_hours', 'Capacity of the battery, amp-hours.', {
  above: 0,
});

export const meanAmps = numberWord('amps', 'Mean current drawn, amps.', { least: 0 });

export const usable = optional(
  numberWord('usable', 'Share of the capacity that may be used.', {
    ...SHARE_BOUNDS,
    above: 0,
  }),
  0.8,
  '80%',
);

export const peukert = optional(
  numberWord(
    'peukert',
    "Peukert's exponent: 1 where capacity does not depend on current, lead-acid about 1.1 to 1.3.",
    { least: 1, most: 2 },
  ),
  1,
  '1',
);

export const ratedHours = optional(
  numberWord('rated_hours', 'Hours of the discharge that the capacity is rated for.', { above: 0 }),
  20,
  '20',
);

export const chemistry = choiceWord('chemistry', 'Chemistry of the battery', CHEMISTRIES, {
  'lead acid': 'lead-acid',
  'li ion': 'Li-ion',
});

export const charge = numberWord('charge', 'Share of its charge left in the battery.', {
  least: 0,
  most: 1,
  mend: '80 means 8000 %; write 80% or 0.8',
});

export const cells: Word<'cells', number | undefined> = optional(
  numberWord('cells', 'Cells in series.', { least: 1, whole: true }) as Word<
    'cells',
    number | undefined
  >,
  undefined,
  '6 for lead-acid, 4 for LiFePO4 and Li-ion',
);

export const shortCircuitAmps = numberWord(
  'short_circuit_amps',
  "The panel's short-circuit current as its data sheet gives it, amps.",
  { least: 0 },
);

export const openCircuitVolts = numberWord(
  'open_circuit_volts',
  "The panel's open-circuit volts at 25 degrees Celsius.",
  { above: 0 },
);

export const coldestC = numberWord('coldest_c', 'The coldest morning expected, degrees Celsius.', {
  least: -100,
  most: 100,
});

export const percentPerC = numberWord(
  'percent_per_c',
  'Temperature coefficient of the open-circuit volts as a data sheet prints it: -0.29 for -0.29 % per degree.',
  { least: -1, most: -0.05, mend: 'write -0.29, not -0.29 %' },
);
