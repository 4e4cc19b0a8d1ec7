/** Functions of building a loom and proving it. */
import { jointMilliohms } from '../../core/joints';
import { toMetres } from '../../core/length';
import { perCell } from '../worksheet-function';
import * as building from '../parameters/building';
import * as parameter from '../parameters/run';

export const BUILDING_FUNCTIONS = [
  perCell({
    id: 'JOINT_MILLIOHMS',
    topic: 'Building and proving',
    summary:
      'Resistance measured beyond that of the wire: what fuse, contacts and crimps of a finished run add.',
    takes: [
      building.voltsIn,
      building.voltsOut,
      building.measuredAmps,
      parameter.length,
      parameter.unit,
      parameter.size,
      parameter.material,
      parameter.tempC,
    ],
    gives:
      'Milliohms. Below 0 the run resists less than this wire would: look at length, size, temperature and readings.',
    example: { given: [13.2, 12.75, 20, 6, 'ft', '12 AWG'], result: 3.441 },
    source:
      "Ohm's law, both conductors carrying the current; the wire's resistance as in CONDUCTOR_OHMS, at the temperature it had during the reading.",
    compute: ({ volts_in, volts_out, amps, length, unit, size, material, temp_c }) =>
      jointMilliohms({
        voltsIn: volts_in,
        voltsOut: volts_out,
        amps,
        size,
        lengthM: toMetres(length, unit),
        material,
        tempC: temp_c,
      }),
  }),
];
