/** The parameters that only protection and the heat of a conductor use. */
import { USUAL_LIMIT_C, USUAL_START_C } from '../../core/withstand';
import { RESISTANCE_LAW_LEAST_C, RESISTANCE_LAW_MOST_C } from '../../core/tables/materials';
import { SHORT_CIRCUIT_CONSTANTS } from '../../core/tables/short-circuit-constants';
import { numberParameter, optional, type Parameter } from '../parameter';
import { currentParameter } from '../quantity-parameter';

export const rating = currentParameter('rating', 'Rated current of the fuse, amps.', { above: 0 });

export const fuseAmps = currentParameter('amps', 'Current through the fuse, amps.', { least: 0 });

export const shortAmps = currentParameter('amps', 'Current of the short circuit, amps.', {
  least: 0,
});

export const faultAmps = currentParameter(
  'fault_amps',
  'Current of a short circuit at the far end of the run, amps; see FAULT_AMPS.',
  { least: 0 },
);

export const sourceMilliohms = numberParameter(
  'source_milliohms',
  'Resistance inside the source, milliohms: battery, its links and main fuse.',
  { least: 0 },
);

export const startC = optional(
  numberParameter(
    'start_c',
    'Temperature of the conductor before the short circuit, degrees Celsius.',
    {
      least: RESISTANCE_LAW_LEAST_C,
      most: RESISTANCE_LAW_MOST_C,
    },
  ),
  USUAL_START_C,
  `${USUAL_START_C}, PVC warm from its load`,
);

export const limitC = optional(
  numberParameter(
    'limit_c',
    'Temperature that the insulation withstands for up to 5 s, degrees Celsius.',
    {
      least: RESISTANCE_LAW_LEAST_C,
      most: SHORT_CIRCUIT_CONSTANTS.copper.meltsC,
    },
  ),
  USUAL_LIMIT_C,
  `${USUAL_LIMIT_C}, PVC`,
);

export const steadyAmps = currentParameter('amps', 'Steady current, amps.', { least: 0 });

export const stillAirC = optional(
  numberParameter(
    'ambient_c',
    'Temperature of the still air and walls around the cable, degrees Celsius.',
    {
      least: RESISTANCE_LAW_LEAST_C,
      most: RESISTANCE_LAW_MOST_C,
    },
  ),
  30,
  '30',
);

export const insulationMm: Parameter<'insulation_mm', number | undefined> = optional(
  numberParameter('insulation_mm', 'Thickness of the insulation, millimetres.', {
    least: 0,
    most: 20,
  }) as Parameter<'insulation_mm', number | undefined>,
  undefined,
  'thin PVC wall usual for the size, 0.38 to 1.8',
);
