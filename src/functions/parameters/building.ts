/** The parameters of building a loom and proving it. */
import { numberParameter, optional } from '../parameter';
import { currentParameter } from '../quantity-parameter';

export const voltsIn = numberParameter(
  'volts_in',
  'Volts between both conductors at the source, read while the load runs.',
  { above: 0 },
);

export const voltsOut = numberParameter(
  'volts_out',
  'Volts between both conductors at the load, read at the same time.',
  { least: 0 },
);

export const measuredAmps = currentParameter('amps', 'Amps that flow during the reading.', {
  above: 0,
  remedy: 'measure while the load runs',
});

export const pieceLengths = numberParameter(
  'lengths',
  'For each run, the length of its piece, in any unit, the same for all.',
  { least: 0 },
);

export const spoolLengths = numberParameter(
  'spool_lengths',
  'Lengths that spools come in, one or several, in the same unit; of each as many as needed.',
  { above: 0 },
);

export const spare = optional(
  numberParameter('spare', 'Length added to each piece for ends and slack, in the same unit.', {
    least: 0,
  }),
  0,
  '0',
);
