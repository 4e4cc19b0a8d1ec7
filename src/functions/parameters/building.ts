/** The parameters of building a loom and proving it. */
import { numberParameter } from '../parameter';

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

export const measuredAmps = numberParameter('amps', 'Amps that flow during the reading.', {
  above: 0,
  remedy: 'measure while the load runs',
});
