/** Functions of a run: the conductors and the joints between a source and a load. */
import {
  loadVolts,
  longestRunM,
  lostVolts,
  mostAmpsByDrop,
  runOhms,
  steadyPowerAmps,
  type Route,
} from '../../core/drop';
import { chooseGauge, type RunDemand } from '../../core/gauge';
import { fromMetres, toMetres } from '../../core/length';
import { isRefusal } from '../../core/outcome';
import { formatSize } from '../../core/size';
import { amount } from '../../core/sentence';
import { runVerdict } from '../../core/verdict';
import { showWorking } from '../../core/working';
import { perCell, type ValuesOf } from '../worksheet-function';
import * as parameter from '../parameters/run';

const OHMS_LAW =
  "Ohm's law over both conductors and the joints, or one conductor, the joints and the chassis; resistances as in CONDUCTOR_OHMS.";

/** The parameters that describe a run's conductors beyond its size. */
const CONDUCTOR_WORDS = [parameter.material, parameter.tempC, parameter.jointMilliohms] as const;
/** The same, and a way back through a chassis, which every function takes as its last. */
const ROUTE_WORDS = [...CONDUCTOR_WORDS, parameter.returnMilliohms] as const;
type RouteWords = typeof ROUTE_WORDS;
/** The parameters that set a run's ampacity and fuse. */
const AMPACITY_WORDS = [
  parameter.insulationC,
  parameter.ambientC,
  parameter.conductors,
  parameter.installed,
  parameter.continuous,
] as const;

/** All that a run asks of its size, in the order that `demand` takes it. */
const DEMAND_WORDS = [
  parameter.amps,
  parameter.length,
  parameter.unit,
  parameter.volts,
  parameter.maxDrop,
  ...CONDUCTOR_WORDS,
  ...AMPACITY_WORDS,
  parameter.fuseLimit,
  parameter.returnMilliohms,
] as const;

const route: (
  ...values: ValuesOf<readonly [typeof parameter.length, typeof parameter.unit, ...RouteWords]>
) => Route = (length, unit, material, tempC, jointMilliohms, returnMilliohms) => ({
  lengthM: toMetres(length, unit),
  material,
  tempC,
  jointMilliohms,
  returnMilliohms,
});

const demand: (...values: ValuesOf<typeof DEMAND_WORDS>) => RunDemand = (
  amps,
  length,
  unit,
  volts,
  maxDrop,
  material,
  tempC,
  jointMilliohms,
  insulationC,
  ambientC,
  conductors,
  installed,
  continuous,
  fuseLimit,
  returnMilliohms,
) => ({
  amps,
  lengthM: toMetres(length, unit),
  volts,
  maxDrop,
  material,
  tempC,
  jointMilliohms,
  insulationC,
  ambientC,
  conductors,
  installed,
  continuous,
  fuseLimit,
  returnMilliohms,
});

const GAUGE_WORDS = [
  parameter.amps,
  parameter.length,
  parameter.unit,
  parameter.volts,
  parameter.maxDrop,
  ...CONDUCTOR_WORDS,
  ...AMPACITY_WORDS,
  parameter.series,
  parameter.fuseLimit,
  parameter.returnMilliohms,
] as const;

const choose: (...values: ValuesOf<typeof GAUGE_WORDS>) => ReturnType<typeof chooseGauge> = (
  amps,
  length,
  unit,
  volts,
  maxDrop,
  material,
  tempC,
  jointMilliohms,
  insulationC,
  ambientC,
  conductors,
  installed,
  continuous,
  series,
  ...limits
) =>
  chooseGauge(
    demand(
      amps,
      length,
      unit,
      volts,
      maxDrop,
      material,
      tempC,
      jointMilliohms,
      insulationC,
      ambientC,
      conductors,
      installed,
      continuous,
      ...limits,
    ),
    series,
  );

const VERDICT_WORDS = [
  parameter.amps,
  parameter.length,
  parameter.unit,
  parameter.volts,
  parameter.maxDrop,
  parameter.size,
  ...CONDUCTOR_WORDS,
  ...AMPACITY_WORDS,
  parameter.fuseLimit,
  parameter.returnMilliohms,
] as const;

const SIZE_BY_SIZE_SOURCE = `DCDROP, AMPACITY and FUSE_FOR, size by size. ${parameter.FUSE_LIMIT_SOURCE}`;

export const RUN_FUNCTIONS = [
  perCell({
    id: 'RUN_OHMS',
    topic: 'Run',
    summary: 'Resistance of a run: its conductors and the joints.',
    takes: [parameter.length, parameter.unit, parameter.size, ...ROUTE_WORDS],
    gives: 'Ohms.',
    example: { given: [6, 'ft', '12 AWG'], result: 0.01906 },
    source: OHMS_LAW,
    compute: (length, unit, size, ...back) => runOhms(size, route(length, unit, ...back)),
  }),
  perCell({
    id: 'DCDROP',
    topic: 'Run',
    summary: 'Volts lost in a run, there and back.',
    takes: [parameter.amps, parameter.length, parameter.unit, parameter.size, ...ROUTE_WORDS],
    gives: 'Volts.',
    example: { given: [20, 6, 'ft', '12 AWG'], result: 0.3812 },
    source: OHMS_LAW,
    compute: (amps, length, unit, size, ...back) =>
      lostVolts(amps, runOhms(size, route(length, unit, ...back))),
  }),
  perCell({
    id: 'DCDROP_PCT',
    topic: 'Run',
    summary: 'Share of the source voltage lost in a run.',
    takes: [
      parameter.amps,
      parameter.length,
      parameter.unit,
      parameter.size,
      parameter.volts,
      ...ROUTE_WORDS,
    ],
    gives: 'A share: 0.0293 is 2.93 %.',
    example: { given: [20, 6, 'ft', '12 AWG', 13], result: 0.02932 },
    source: OHMS_LAW,
    compute: (amps, length, unit, size, volts, ...back) =>
      lostVolts(amps, runOhms(size, route(length, unit, ...back))) / volts,
  }),
  perCell({
    id: 'LOAD_VOLTS',
    topic: 'Run',
    summary: 'Volts left at the load.',
    takes: [
      parameter.volts,
      parameter.amps,
      parameter.length,
      parameter.unit,
      parameter.size,
      ...ROUTE_WORDS,
    ],
    gives: 'Volts; #N/A where the run would lose more than the source has.',
    example: { given: [13, 20, 6, 'ft', '12 AWG'], result: 12.62 },
    source: OHMS_LAW,
    compute: (volts, amps, length, unit, size, ...back) =>
      loadVolts(volts, amps, runOhms(size, route(length, unit, ...back))),
  }),
  perCell({
    id: 'DRAW_AMPS',
    topic: 'Run',
    summary:
      'Current that a load of steady power draws through a resistance: more as its volts sink.',
    takes: [parameter.watts, parameter.volts, parameter.ohms],
    gives: 'Amps; #N/A where the cable cannot deliver the power.',
    example: { given: [100, 12, 0.1], result: 9.01 },
    source: 'The smaller root of I (V - I R) = P.',
    compute: (watts, volts, ohms) => steadyPowerAmps(watts, volts, ohms),
  }),
  perCell({
    id: 'LOSS_WATTS',
    topic: 'Run',
    summary: 'Heat that a current makes in a run.',
    takes: [parameter.amps, parameter.ohms],
    gives: 'Watts.',
    example: { given: [20, 0.019], result: 7.6 },
    source: "Joule's law, I squared R.",
    compute: (amps, ohms) => amps ** 2 * ohms,
  }),
  perCell({
    id: 'MAX_LENGTH',
    topic: 'Run',
    summary: 'Longest one-way length that keeps the drop within the target.',
    takes: [
      parameter.amps,
      parameter.unit,
      parameter.size,
      parameter.volts,
      parameter.maxDrop,
      ...ROUTE_WORDS,
    ],
    gives: 'Length in the unit given.',
    example: { given: [20, 'ft', '12 AWG', 13, 0.03], result: 6.139 },
    source: OHMS_LAW,
    compute(amps, unit, size, volts, maxDrop, ...back) {
      const lengthM = longestRunM(amps, volts, maxDrop, size, route(0, unit, ...back));
      return isRefusal(lengthM) ? lengthM : fromMetres(lengthM, unit);
    },
  }),
  perCell({
    id: 'MAX_AMPS',
    topic: 'Run',
    summary: 'Most current that keeps the drop within the target; says nothing about heat.',
    takes: [
      parameter.length,
      parameter.unit,
      parameter.size,
      parameter.volts,
      parameter.maxDrop,
      ...ROUTE_WORDS,
    ],
    gives: 'Amps.',
    example: { given: [6, 'ft', '12 AWG', 13, 0.03], result: 20.46 },
    source: OHMS_LAW,
    compute: (length, unit, size, volts, maxDrop, ...back) =>
      mostAmpsByDrop(volts, maxDrop, runOhms(size, route(length, unit, ...back))),
  }),
  perCell({
    id: 'MINGAUGE',
    topic: 'Run',
    summary:
      'Thinnest size that keeps the drop within the target, carries the current, and leaves room for a standard fuse.',
    takes: GAUGE_WORDS,
    gives: 'A size as text, such as "10 AWG"; #N/A where none is thick enough.',
    example: { given: [20, 12, 'ft', 13.8, 0.03], result: '8 AWG' },
    source: SIZE_BY_SIZE_SOURCE,
    compute(...values) {
      const chosen = choose(...values);
      return isRefusal(chosen) ? chosen : formatSize(chosen.size);
    },
  }),
  perCell({
    id: 'GAUGE_LIMIT',
    topic: 'Run',
    summary: 'What the size from MINGAUGE is limited by.',
    takes: GAUGE_WORDS,
    gives: '"drop", "heat" or "fuse"; on a tie the first of these.',
    example: { given: [20, 12, 'ft', 13.8, 0.03], result: 'drop' },
    source: SIZE_BY_SIZE_SOURCE,
    compute(...values) {
      const chosen = choose(...values);
      return isRefusal(chosen) ? chosen : chosen.limit;
    },
  }),
  perCell({
    id: 'RUN_VERDICT',
    topic: 'Run',
    summary: 'Whether a run of a given size holds: drop, heat and fuse.',
    takes: VERDICT_WORDS,
    gives:
      '"ok", or what is wrong: "drop over target", "over ampacity", "no fuse fits", joined with "; ".',
    example: {
      given: [40, 12, 'ft', 13, 0.03, '10 AWG'],
      result: 'drop over target; over ampacity; no fuse fits',
    },
    source: `DCDROP, AMPACITY and FUSE_FOR. ${parameter.FUSE_LIMIT_SOURCE}`,
    compute: (amps, length, unit, volts, maxDrop, size, ...others) =>
      runVerdict(demand(amps, length, unit, volts, maxDrop, ...others), size),
  }),
  perCell({
    id: 'SHOW_WORKING',
    topic: 'Teaching',
    summary: 'The worked calculation of a run, to be read out to someone who asks why.',
    takes: VERDICT_WORDS,
    gives:
      'Text of several lines (wrap the cell): the verdict, then wire, run, drop, heat and fuse with their numbers, sources and margins.',
    example: {
      given: [20, 12, 'ft', 13.8, 0.03, '10 AWG'],
      result: [
        '20 A over 12 ft of 10 AWG copper from 13.8 V: drop over target.',
        'Wire: 10 AWG copper, 0.01724 ohm mm2 per m over 5.261 mm2 (ASTM B258) is 0.003277 ohm per m at 20 degC.',
        'Run: 2 conductors x 3.6576 m (12 ft) x 0.003277 ohm per m = 0.02397 ohm.',
        'Drop: 20 A x 0.02397 ohm = 0.4795 V, 3.47 % of 13.8 V. The target of 3 % allows 0.414 V: over it by 0.0655 V.',
        'Heat: in a cable or bundle, air of 30 degC, 2 current-carrying conductors together. NFPA 70 table 310.16, row 10 AWG, 75 degC column: 35 A. 20 A is within it, 15 A to spare.',
        'Fuse: the load may run for hours, so at least 125 % of it (NFPA 70 210.20), 25 A. The next standard rating is 25 A (ISO 8820); the wire may carry 35 A: a fuse of 25 A fits.',
        'Sources: copper: annealed copper, IEC 60028; NFPA 70 table 310.16: 2011 edition and later, four cells from memory; ratings: ISO 8820 series, 35 A, 100 A and all above from memory.',
        'A help for planning: local codes and licensed practice go first.',
      ].join('\n'),
    },
    source: `The numbers and rules of RUN_VERDICT, each named in its line. ${parameter.FUSE_LIMIT_SOURCE}`,
    compute: (amps, length, unit, volts, maxDrop, size, ...others) =>
      showWorking(
        demand(amps, length, unit, volts, maxDrop, ...others),
        size,
        amount(length, unit, 6),
      ),
  }),
];
