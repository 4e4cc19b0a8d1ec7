/** Functions of protection. */
import { ampacity } from '../../core/ampacity';
import { fuseFor } from '../../core/fuse';
import { isRefusal } from '../../core/outcome';
import { perCell } from '../worksheet-function';
import * as word from '../words';

export const PROTECTION_FUNCTIONS = [
  perCell({
    id: 'FUSE_FOR',
    topic: 'Protection',
    summary: 'Smallest standard fuse that carries the load and still protects the conductor.',
    takes: [
      word.amps,
      word.size,
      word.insulationC,
      word.ambientC,
      word.conductors,
      word.installed,
      word.material,
      word.continuous,
    ],
    gives:
      'Rating in amps; #N/A where the load wants more than the conductor may carry, or than any rating.',
    example: { given: [20, '10 AWG'], result: 25 },
    source:
      'Ratings of the ISO 8820 series; 125 % of a continuous load: NFPA 70 210.20; AMPACITY of the conductor.',
    compute({ amps, size, insulation_c, ambient_c, conductors, installed, material, continuous }) {
      const ampacityA = ampacity(size, {
        insulationC: insulation_c,
        ambientC: ambient_c,
        conductors,
        installed,
        material,
      });
      return isRefusal(ampacityA) ? ampacityA : fuseFor(amps, ampacityA, continuous);
    },
  }),
];
