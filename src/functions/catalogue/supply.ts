/** Functions of feeders and supply: runs that feed one another, loads that come and go, batteries, solar panels. */
import { batteryHours, restingVolts } from '../../core/battery';
import { dutyAmps, heatingAmps } from '../../core/duty';
import { feedAmps, feedVolts } from '../../core/feeders';
import { pvColdVolts, pvDesignAmps } from '../../core/solar';
import { inColumn, overList, perList } from '../list-function';
import { perCell } from '../worksheet-function';
import * as supply from '../parameters/supply';
import { FED_FROM, feederTreeOf, numbers, RUNS } from './feeder-columns';

const KIRCHHOFF = "Kirchhoff's current law over the tree of runs.";

const STATES = [inColumn(supply.stateAmps), inColumn(supply.share)] as const;

export const SUPPLY_FUNCTIONS = [
  perList({
    id: 'FEED_AMPS',
    topic: 'Feeders and supply',
    summary: 'Current in each run of a list: its own load and all that it feeds.',
    takes: [RUNS, FED_FROM, inColumn(supply.runAmps, { blankIs: 0 })],
    gives: 'A column of amps, one per run; #VALUE! names the run to fix.',
    example: {
      given: [
        [['trunk'], ['relay'], ['camera']],
        [[null], ['trunk'], ['trunk']],
        [[null], [6], [0.5]],
      ],
      result: [[6.5], [6], [0.5]],
    },
    source: KIRCHHOFF,
    compute: ({ runs, fed_from, amps }) => feedAmps(feederTreeOf(runs, fed_from), numbers(amps)),
  }),
  perList({
    id: 'FEED_VOLTS',
    topic: 'Feeders and supply',
    summary:
      'Volts at the far end of each run of a list, with loads of steady amps and of steady watts.',
    takes: [
      inColumn(supply.sourceVolts),
      RUNS,
      FED_FROM,
      inColumn(supply.loads, { blankIs: 0 }),
      inColumn(supply.loadKind, { blankIs: 'A', zeroIsBlank: true }),
      inColumn(supply.runsOhms),
    ],
    gives:
      'A column of volts, one per run; #N/A where a load cannot be served (the others are solved without it), #VALUE! names the run to fix.',
    example: {
      given: [
        12.6,
        [['trunk'], ['relay'], ['camera']],
        [[null], ['trunk'], ['trunk']],
        [[null], [60], [0.5]],
        [[null], ['W'], ['A']],
        [[0.05], [0.1], [0.4]],
      ],
      result: [[12.32], [11.81], [12.12]],
    },
    source: `${KIRCHHOFF} Solved by sweeps from the ends to the source and back, to 1e-9 V.`,
    compute: ({ volts, runs, fed_from, loads, load_kind, ohms }) =>
      feedVolts(feederTreeOf(runs, fed_from), numbers(volts), {
        loads: numbers(
          loads.map((load, row) => (typeof load_kind[row] === 'string' ? load : undefined)),
        ),
        kinds: load_kind.map((kind) => (kind === 'W' ? kind : 'A')),
        ohms: numbers(ohms),
      }),
  }),
  overList({
    id: 'DUTY_AMPS',
    topic: 'Feeders and supply',
    summary: 'Mean current of a load that spends shares of its time at several currents.',
    takes: STATES,
    gives: 'Amps.',
    example: {
      given: [
        [[20], [1.5]],
        [[0.1], [0.5]],
      ],
      result: 2.75,
    },
    source: 'Mean over time; the rest of the time is off.',
    compute: dutyAmps,
  }),
  overList({
    id: 'HEATING_AMPS',
    topic: 'Feeders and supply',
    summary:
      'The steady current that would warm a conductor as much as a load that comes and goes.',
    takes: STATES,
    gives: 'Amps, root mean square.',
    example: {
      given: [
        [[20], [1.5]],
        [[0.1], [0.5]],
      ],
      result: 6.413,
    },
    source: "Joule's law: root of the mean square; the rest of the time is off.",
    compute: heatingAmps,
  }),
  perCell({
    id: 'BATTERY_HOURS',
    topic: 'Feeders and supply',
    summary: 'Hours until the usable share of a battery is gone.',
    takes: [supply.ampHours, supply.meanAmps, supply.usable, supply.peukert, supply.ratedHours],
    gives: 'Hours. Below the rated current an exponent above 1 promises more than the capacity.',
    example: { given: [100, 10, '100%', 1.2], result: 8.706 },
    source: "Peukert's law in its rated form, H (C / (I H))^k.",
    compute: (ampHours, amps, usable, peukert, ratedHours) =>
      batteryHours({ ampHours, ratedHours, peukert, usable }, amps),
  }),
  perCell({
    id: 'BATTERY_VOLTS',
    topic: 'Feeders and supply',
    summary: 'Volts of a rested battery at a share of its charge.',
    takes: [supply.chemistry, supply.charge, supply.cells],
    gives: 'Volts with no load for hours.',
    example: { given: ['lead-acid', 0.5], result: 12.24 },
    source:
      'Lead-acid: Battery Council International (from memory). LiFePO4 and Li-ion: breakpoints of S. Sunil, K. R. Pattipati, B. Balasingam, IEEE Transactions on Instrumentation and Measurement, 2025.',
    compute: (chemistry, charge, cells) => restingVolts(chemistry, charge, cells),
  }),
  perCell({
    id: 'PV_DESIGN_AMPS',
    topic: 'Feeders and supply',
    summary: "Current that a solar panel's conductors and fuse are chosen for.",
    takes: [supply.shortCircuitAmps],
    gives: 'Amps: the short-circuit current times 1.25 times 1.25.',
    example: { given: [9.2], result: 14.38 },
    source: 'NFPA 70 690.8(A)(1) and 690.8(B).',
    compute: (shortCircuitAmps) => pvDesignAmps(shortCircuitAmps),
  }),
  perCell({
    id: 'PV_COLD_VOLTS',
    topic: 'Feeders and supply',
    summary: 'Open-circuit volts of a solar panel on the coldest morning.',
    takes: [supply.openCircuitVolts, supply.coldestC, supply.percentPerC],
    gives: 'Volts; the charge controller must withstand them.',
    example: { given: [22, -20, -0.29], result: 24.87 },
    source: 'NFPA 70 690.7(A)(1): straight from 25 degC by the data sheet.',
    compute: (openCircuitVolts, coldestC, percentPerC) =>
      pvColdVolts(openCircuitVolts, coldestC, percentPerC),
  }),
];
