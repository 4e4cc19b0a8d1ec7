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

/** How the current of a run comes back to its source. */
export const RETURNS = ['wire', 'chassis'] as const;
export const returns = choice(
  'return',
  '"wire": by a second conductor; "chassis": through the body of the vehicle, one conductor counts.',
  RETURNS,
);
/** Of a sound chassis between two good earthing points; common practice, the figure is ours. */
export const USUAL_CHASSIS_MILLIOHMS = 2;
export const chassisMilliohms = numberParameter(
  'chassis',
  'Milliohms of the chassis between source and load, its two earthing points included (common practice).',
  { above: 0 },
);
/** The same of one run: a word, or milliohms of its own. */
export const runReturns: Parameter = {
  name: 'return',
  meaning: '"wire", "chassis", or the milliohms of the chassis for this run.',
  choices: RETURNS,
  ...(chassisMilliohms.bounds === undefined ? {} : { bounds: chassisMilliohms.bounds }),
  read: (given) => (typeof given === 'number' ? chassisMilliohms.read(given) : given),
};
/** Rust and paint: what a fault may meet on its way through a chassis, as a multiple; ours, common practice. */
export const BAD_CHASSIS_TIMES = 10;

/** How long a load surges where nothing else is said; ours, common practice. */
export const USUAL_SURGE_S = 0.5;
export const surgeS = numberParameter(
  'surge_seconds',
  'How long a load draws its surge as it starts, seconds.',
  { above: 0, most: 600 },
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
