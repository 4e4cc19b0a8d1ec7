/** Functions of one conductor. */
import { ampacity } from '../../core/ampacity';
import { conductorMassKg, ohmsPerM } from '../../core/conductor';
import { conductorTempC } from '../../core/conductor-temp';
import { toMetres } from '../../core/length';
import { isRefusal } from '../../core/outcome';
import { formatSize, sizeAreaMm2, sizeInSeries } from '../../core/size';
import { perCell } from '../worksheet-function';
import * as parameter from '../parameters/run';
import { insulationMm, steadyAmps, stillAirC } from '../parameters/protection';

const RESISTANCE_SOURCE =
  'AWG: geometry of ASTM B258, resistivity of IEC 60028 (IACS), as solid metal (stranded is about 2 % more); mm2: IEC 60228 maximum at 20 degC where it lists the size.';
const AMPACITY_SOURCE =
  'NFPA 70 tables 310.16 and 310.17 with the ambient equation of 310.15(B) and the bundling of 310.15(C)(1); 33 CFR 183.425 table 5 with its engine-space factors, single conductors from 16 AWG. NFPA 70 prints 16 and 18 AWG at 90 degC alone: their 60 and 75 degC ampacities are computed from that column by the same equation.';

export const CONDUCTOR_FUNCTIONS = [
  perCell({
    id: 'CONDUCTOR_OHMS',
    topic: 'Conductor',
    summary: 'Resistance of one conductor of a length, at its temperature.',
    takes: [parameter.size, parameter.length, parameter.unit, parameter.material, parameter.tempC],
    gives: 'Ohms of one conductor.',
    example: { given: ['12 AWG', 1000, 'ft'], result: 1.588 },
    source: RESISTANCE_SOURCE,
    compute: (size, length, unit, material, tempC) =>
      ohmsPerM(size, material, tempC) * toMetres(length, unit),
  }),
  perCell({
    id: 'CONDUCTOR_AREA',
    topic: 'Conductor',
    summary: 'Metal area of a conductor.',
    takes: [parameter.size],
    gives: 'Area in mm2.',
    example: { given: ['12 AWG'], result: 3.309 },
    source: 'ASTM B258: d = 0.127 mm x 92^((36 - n) / 39).',
    compute: (size) => sizeAreaMm2(size),
  }),
  perCell({
    id: 'CONDUCTOR_MASS',
    topic: 'Conductor',
    summary: 'Metal in one conductor of a length, without its insulation.',
    takes: [parameter.size, parameter.length, parameter.unit, parameter.material],
    gives: 'Kilograms of metal.',
    example: { given: ['6 mm2', 10, 'm'], result: 0.5334 },
    source: 'Area x length x density; copper 8.89 g/cm3 (IACS).',
    compute: (size, length, unit, material) =>
      conductorMassKg(size, toMetres(length, unit), material),
  }),
  perCell({
    id: 'CONDUCTOR_TEMP',
    topic: 'Conductor',
    summary:
      'Steady temperature of one insulated conductor alone in still air; two side by side, or a bundle, run hotter.',
    takes: [steadyAmps, parameter.size, stillAirC, insulationMm, parameter.material],
    gives: 'Degrees Celsius of the metal; #N/A where it would pass 300.',
    example: { given: [30, '10 AWG'], result: 47.23 },
    source:
      'Heat balance: natural convection on a horizontal cylinder (Churchill and Chu 1975, air of UW/MHTL 8406), radiation (emissivity 0.9), PVC of 5 K m/W (IEC 60287-2-1), walls of UL 83.',
    compute: (amps, size, ambientC, wallMm, material) =>
      conductorTempC(amps, { size, material, ambientC, insulationMm: wallMm }),
  }),
  perCell({
    id: 'SIZE_AS',
    topic: 'Conductor',
    summary: 'The nearest size of another series that is not thinner.',
    takes: [parameter.size, parameter.seriesWanted],
    gives: 'A size as text, such as "6 mm2".',
    example: { given: ['10 AWG', 'mm2'], result: '6 mm2' },
    source: 'Metal areas of ASTM B258 and nominal areas of IEC 60228.',
    compute(size, series) {
      const found = sizeInSeries(size, series);
      return isRefusal(found) ? found : formatSize(found);
    },
  }),
  perCell({
    id: 'AMPACITY',
    topic: 'Conductor',
    summary:
      'Current a conductor may carry for heat, from the published tables and their corrections.',
    takes: [
      parameter.size,
      parameter.insulationC,
      parameter.ambientC,
      parameter.conductors,
      parameter.installed,
      parameter.material,
    ],
    gives:
      'Amps; #N/A where the table has no row. Air of 10 degC and colder counts as 10 ("cable", "air"); cold air earns no more than the table prints ("craft", "engine space").',
    example: { given: ['10 AWG', 75, 40], result: 30.87 },
    source: AMPACITY_SOURCE,
    compute: (size, insulationC, ambientC, conductors, installed, material) =>
      ampacity(size, { insulationC, ambientC, conductors, installed, material }),
  }),
];
