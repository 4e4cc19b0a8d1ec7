/** The parameters of feeders, batteries and solar panels. */
import { LOAD_KINDS } from '../../core/feeders';
import { invalid, type Outcome } from '../../core/outcome';
import { CHEMISTRIES } from '../../core/tables/resting-volts';
import { choiceParameter, numberParameter, optional, quoted, type Parameter } from '../parameter';
import { currentParameter, loadParameter } from '../quantity-parameter';

/** A parameter for the name of a run: text, or a number as its text. */
function nameWord<const Name extends string>(name: Name, meaning: string): Parameter<Name, string> {
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
  'For each run, the name of the run that feeds it; blank for the source.',
);

export const runAmps = currentParameter(
  'amps',
  'For each run, amps of its own load; blank for a run that only feeds others.',
  { least: 0 },
);

export const loads = loadParameter(
  'loads',
  'For each run, its own load in amps or watts, as load_kind says; blank for a run that only feeds others.',
  'load_kind',
  { least: 0 },
);

export const sourceVolts = numberParameter(
  'volts',
  'Volts at the source, one for all; or by run, where there are several sources: those that feed it.',
  { above: 0 },
);

export const loadKind = choiceParameter(
  'load_kind',
  'For each run, steady amps (also where blank) or steady watts',
  LOAD_KINDS,
);

export const runsOhms = numberParameter(
  'ohms',
  'For each run, its resistance, both conductors and joints, ohms.',
  { least: 0 },
);

export const stateAmps = currentParameter(
  'amps',
  'Amps of the load in each of its states, a column.',
  {
    least: 0,
  },
);

const SHARE_BOUNDS = { least: 0, most: 1, remedy: 'a share is 0 to 1: write 30% or 0.3' };

export const share = numberParameter(
  'share',
  'Share of its time that the load spends in each state; together at most 1, the rest is off.',
  SHARE_BOUNDS,
);

export const ampHours = numberParameter('amp_hours', 'Capacity of the battery, amp-hours.', {
  above: 0,
});

export const meanAmps = currentParameter('amps', 'Mean current drawn, amps.', { least: 0 });

export const usable = optional(
  numberParameter('usable', 'Share of the capacity that may be used.', {
    ...SHARE_BOUNDS,
    above: 0,
  }),
  0.8,
  '80%',
);

export const peukert = optional(
  numberParameter(
    'peukert',
    "Peukert's exponent: 1 where capacity does not depend on current, lead-acid about 1.1 to 1.3.",
    { least: 1, most: 2 },
  ),
  1,
  '1',
);

export const ratedHours = optional(
  numberParameter('rated_hours', 'Hours of the discharge that the capacity is rated for.', {
    above: 0,
  }),
  20,
  '20',
);

export const chemistry = choiceParameter('chemistry', 'Chemistry of the battery', CHEMISTRIES, {
  'lead acid': 'lead-acid',
  'li ion': 'Li-ion',
});

export const charge = numberParameter('charge', 'Share of its charge left in the battery.', {
  least: 0,
  most: 1,
  remedy: '80 means 8000 %; write 80% or 0.8',
});

export const cells: Parameter<'cells', number | undefined> = optional(
  numberParameter('cells', 'Cells in series.', { least: 1, whole: true }) as Parameter<
    'cells',
    number | undefined
  >,
  undefined,
  '6 for lead-acid, 4 for LiFePO4 and Li-ion',
);

export const shortCircuitAmps = currentParameter(
  'short_circuit_amps',
  "The panel's short-circuit current as its data sheet gives it, amps.",
  { least: 0 },
);

export const openCircuitVolts = numberParameter(
  'open_circuit_volts',
  "The panel's open-circuit volts at 25 degrees Celsius.",
  { above: 0 },
);

export const coldestC = numberParameter(
  'coldest_c',
  'Lowest temperature expected, degrees Celsius.',
  {
    least: -100,
    most: 100,
  },
);

export const percentPerC = numberParameter(
  'percent_per_c',
  'Temperature coefficient of the open-circuit volts as a data sheet prints it: -0.29 for -0.29 % per degree.',
  { least: -1, most: -0.05, remedy: 'write -0.29, not -0.29 %' },
);
