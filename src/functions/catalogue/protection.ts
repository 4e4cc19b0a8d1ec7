/** Functions of protection. */
import { ampacity } from '../../core/ampacity';
import { faultAmps } from '../../core/fault';
import { fuseFor } from '../../core/fuse';
import { fuseLimitA } from '../../core/fuse-limit';
import { ARCING_ALLOWANCE_S, fuseGuards, fuseSeconds } from '../../core/fuse-time';
import { isRefusal } from '../../core/outcome';
import { BLADE_BREAKING_A, FUSE_TYPE_SENTENCE } from '../../core/tables/iso-8820-types';
import { withstandSeconds } from '../../core/withstand';
import { perCell } from '../worksheet-function';
import * as parameter from '../parameters/run';
import * as protection from '../parameters/protection';

const ADIABATIC_SOURCE =
  'I^2 t = (k S)^2, IEC 60364-5-54 and IEC 60949; no heat leaves the metal, which is cautious beyond about 5 s, and its limits are published for up to 5 s.';
const OPENING_SOURCE = `Upper time limits of ISO 8820-3 from memory, log-log between its points. Beyond the last (6 times the rating) an estimate: melting at the I^2 t of that point, plus ${ARCING_ALLOWANCE_S * 1000} ms for the arc (ours). ${FUSE_TYPE_SENTENCE}`;
const OPENING_HOLDS = `It holds up to ${BLADE_BREAKING_A} A, the most that blade fuses are proved to break, and their rated volts.`;

export const PROTECTION_FUNCTIONS = [
  perCell({
    id: 'FUSE_FOR',
    topic: 'Protection',
    summary: 'Smallest standard fuse that carries the load and still protects the conductor.',
    takes: [
      parameter.amps,
      parameter.size,
      parameter.insulationC,
      parameter.ambientC,
      parameter.conductors,
      parameter.installed,
      parameter.material,
      parameter.continuous,
      parameter.fuseLimit,
    ],
    gives:
      'Rating in amps; #N/A where the load wants more than the conductor may carry, than fuse_limit allows, or than any rating.',
    example: { given: [20, '10 AWG'], result: 25 },
    source: `Ratings of the ISO 8820 series; 125 % of a continuous load: NFPA 70 210.20; AMPACITY of the conductor. ${parameter.FUSE_LIMIT_SOURCE}`,
    compute(
      amps,
      size,
      insulationC,
      ambientC,
      conductors,
      installed,
      material,
      continuous,
      fuseLimit,
    ) {
      const ampacityA = ampacity(size, {
        insulationC,
        ambientC,
        conductors,
        installed,
        material,
      });
      if (isRefusal(ampacityA)) return ampacityA;
      return fuseFor(amps, ampacityA, continuous, fuseLimitA(fuseLimit, size, material));
    },
  }),
  perCell({
    id: 'FAULT_AMPS',
    topic: 'Protection',
    summary: 'Current of a dead short at the far end of a run.',
    takes: [parameter.volts, protection.sourceMilliohms, parameter.ohms],
    gives: 'Amps.',
    example: { given: [12.8, 20, 0.108], result: 100 },
    source:
      "Ohm's law; take the run's ohms from RUN_OHMS at 20 degC or colder for the most, hot for the least.",
    compute: (volts, sourceMilliohms, ohms) => faultAmps(volts, sourceMilliohms, ohms),
  }),
  perCell({
    id: 'WITHSTAND_SECONDS',
    topic: 'Protection',
    summary: 'How long a conductor withstands a short circuit before its insulation is damaged.',
    takes: [
      parameter.size,
      protection.shortAmps,
      protection.startC,
      protection.limitC,
      parameter.material,
    ],
    gives: 'Seconds.',
    example: { given: ['12 AWG', 300], result: 1.604 },
    source: ADIABATIC_SOURCE,
    compute: (size, amps, startC, limitC, material) =>
      withstandSeconds(size, amps, { startC, limitC, material }),
  }),
  perCell({
    id: 'FUSE_SECONDS',
    topic: 'Protection',
    summary:
      'Time a blade fuse may take to open: the longest by the published limits up to 6 times its rating, an estimate beyond.',
    takes: [protection.rating, protection.fuseAmps],
    gives:
      'Seconds; beyond 6 times the rating estimated, never more than at 6 times. #N/A below 1.35 times the rating, where it need never open, and for ratings that blade fuses do not have.',
    example: { given: [15, 30], result: 5 },
    source: `${OPENING_SOURCE} ${OPENING_HOLDS}`,
    compute: (ratingA, amps) => fuseSeconds(ratingA, amps),
  }),
  perCell({
    id: 'FUSE_GUARDS',
    topic: 'Protection',
    summary:
      'Whether a blade fuse blows before a short circuit damages the conductor; beyond 6 times its rating by an estimate.',
    takes: [
      protection.rating,
      parameter.size,
      protection.faultAmps,
      protection.startC,
      protection.limitC,
      parameter.material,
    ],
    gives:
      'TRUE or FALSE. FALSE also where the fault is too weak to open the fuse (under 1.35 times its rating) or above 1000 A, the most that blade fuses are proved to break. Judged at that fault alone: ask it at both ends of the run, and it holds between.',
    example: { given: [15, '14 AWG', 100], result: true },
    source: `FUSE_SECONDS against WITHSTAND_SECONDS. ${OPENING_SOURCE} ${OPENING_HOLDS}`,
    compute: (ratingA, size, faultA, startC, limitC, material) =>
      fuseGuards(ratingA, size, faultA, { startC, limitC, material }),
  }),
];
