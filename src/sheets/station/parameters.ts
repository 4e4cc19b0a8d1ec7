/** What is typed into the sheets and is no parameter of a function. */
import { numberParameter, type Parameter } from '../../functions/parameter';
import { SOURCE_KINDS } from './source-kinds';

/** One of a few texts, kept as it is typed. */
function choice(name: string, meaning: string, choices: readonly string[]): Parameter {
  return { name, meaning, choices, read: (given) => given };
}

export const atOnce = numberParameter(
  'at_once',
  'Share of its peak that a load adds to its feeders when volts are judged.',
  { least: 0, most: 1 },
);

export const efficiency = numberParameter(
  'efficiency',
  'Output watts over input watts, above 0 and at most 1.',
  { above: 0, most: 1 },
);

/** What a drop target is held against. */
export const COUNTS = ['to the load', 'in each run'] as const;
export const counts = choice(
  'target_counts',
  '"to the load": the drops from the source to a load together keep its target; "in each run": every run keeps it by itself.',
  COUNTS,
);

/** Of a fuse, its holder and two crimps; common practice, no source. */
export const USUAL_JOINT_MILLIOHMS = 3;
export const jointsWhereBlank = numberParameter(
  'joints_where_blank',
  'Milliohms of a run with its own fuse that says nothing of its joints: fuse, holder and crimps (common practice); a run without a fuse counts 0.',
  { least: 0 },
);

/** Duty of the loads, as people say it; the functions take TRUE for continuous. */
export const DUTY_CHOICES = ['continuous', 'bursts'] as const;
export const duty = choice(
  'duty',
  '"continuous": loads may run for hours, fuses are at least 125 % of them; "bursts": such as transmitting, at least 100 %.',
  DUTY_CHOICES,
);

/** Ours, common practice: what age, cold and a low charge make of a battery's milliohms. */
export const USUAL_WEAK_TIMES = 2;
export const weakTimes = numberParameter(
  'weak_times',
  'Milliohms of a tired battery as a multiple of the usual ones.',
  { least: 1 },
);

/** How many batteries alike stand in parallel. */
export const parallel = numberParameter('parallel', 'Batteries alike in parallel.', {
  least: 1,
  whole: true,
});

export const sourceKind = choice(
  'source_kind',
  '"battery", "power supply", "panel"; "charger" or "alternator" for what stands beside a battery.',
  SOURCE_KINDS,
);

/** What a power supply does above its most amps. */
export const WHEN_OVER = ['limits', 'trips'] as const;
export const whenOver = choice(
  'when_over',
  '"limits": goes on giving its most amps; "trips": switches off.',
  WHEN_OVER,
);

export const i2t = numberParameter('i2t', "Melting I2t of the fuse from its maker's sheet, A2s.", {
  above: 0,
});
