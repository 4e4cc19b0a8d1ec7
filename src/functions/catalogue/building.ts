/** Functions of building a loom and proving it. */
import { jointMilliohms } from '../../core/joints';
import { toMetres } from '../../core/length';
import { lightestSizes } from '../../core/lightest/lightest-sizes';
import { isRefusal, type Outcome } from '../../core/outcome';
import { formatSize } from '../../core/size';
import { planCuts } from '../../core/spool-plan';
import { asOwnList, inColumn, perList } from '../list-function';
import type { Given } from '../parameter';
import * as building from '../parameters/building';
import * as parameter from '../parameters/run';
import * as supply from '../parameters/supply';
import { tableOf } from '../table-function';
import { perCell } from '../worksheet-function';
import { FED_FROM, feederTreeOf, numbers, RUNS } from './feeder-columns';

/** What could be read of a row that holds an error. */
function shown(value: Outcome<Given> | undefined): Given {
  return value === undefined || isRefusal(value) ? '' : value;
}

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
    compute(voltsIn, voltsOut, amps, length, unit, size, material, tempC) {
      const lengthM = toMetres(length, unit);
      return jointMilliohms({ voltsIn, voltsOut, amps, size, lengthM, material, tempC });
    },
  }),
  perList({
    id: 'LIGHTEST_SIZES',
    topic: 'Building and proving',
    summary:
      'Sizes of a whole tree of runs that together use the least metal, or money, while every load keeps its target.',
    takes: [
      RUNS,
      FED_FROM,
      inColumn(supply.runAmps, { blankIs: 0 }),
      inColumn(building.runLengths),
      parameter.unit,
      parameter.volts,
      inColumn(building.loadTargets, { blankIs: undefined, zeroIsBlank: true }),
      inColumn(building.leastVolts, { blankIs: 0 }),
      parameter.material,
      parameter.tempC,
      inColumn(parameter.jointMilliohms, { blankIs: 0 }),
      parameter.insulationC,
      parameter.ambientC,
      parameter.conductors,
      parameter.installed,
      parameter.continuous,
      parameter.series,
      parameter.fuseLimit,
      building.prices,
    ],
    gives:
      'A column of sizes, one per run; #N/A in every row of a tree that no sizes serve, #VALUE! names the run to fix.',
    example: {
      given: [
        [['trunk'], ['relay'], ['camera']],
        [[null], ['trunk'], ['trunk']],
        [[null], [6], [0.5]],
        [[4], [3], [8]],
        'm',
        12.6,
        0.03,
      ],
      result: [['10 AWG'], ['12 AWG'], ['18 AWG']],
    },
    source: `DCDROP, AMPACITY and FUSE_FOR of each run, both conductors, loads of steady amps; fronts of volts and metal from the ends to the source, cut short by a Lagrangian bound. ${parameter.FUSE_LIMIT_SOURCE}`,
    compute(values) {
      const { unit, prices } = values;
      const metres = toMetres(1, unit);
      const { sizes } = lightestSizes(
        feederTreeOf(values.runs, values.fed_from),
        {
          amps: numbers(values.amps),
          lengthsM: numbers(values.lengths).map((length) => toMetres(length, unit)),
          maxDrops: numbers(values.max_drop),
          leastVolts: numbers(values.least_volts),
          jointMilliohms: numbers(values.joint_milliohms),
        },
        {
          volts: values.volts,
          material: values.material,
          tempC: values.temp_c,
          insulationC: values.insulation_c,
          ambientC: values.ambient_c,
          conductors: values.conductors,
          installed: values.installed,
          continuous: values.continuous,
          series: values.series,
          fuseLimit: values.fuse_limit,
          pricesPerM: prices && new Map([...prices].map(([size, price]) => [size, price / metres])),
        },
      );
      return sizes.map((size) => (isRefusal(size) ? size : formatSize(size)));
    },
  }),
  tableOf({
    id: 'SPOOL_PLAN',
    topic: 'Building and proving',
    summary:
      'Which pieces to cut from which spool: as few spools as can be, and of those the shortest.',
    takes: [
      inColumn(supply.runs, { zeroIsBlank: true }),
      inColumn(building.pieceLengths),
      asOwnList(building.spoolLengths),
      building.spare,
    ],
    gives:
      'A table of spool, piece, run, length and left over: a row a piece in the order of cutting, what is left over of a spool in the row of its last. Runs that cannot be planned come last and say why.',
    example: {
      given: [
        [['hut bank'], ['relay'], ['camera'], ['van pump'], ['siren']],
        [[9.5], [6], [14], [11], [7.5]],
        [[25], [50]],
        0.5,
      ],
      result: [
        [1, 1, 'camera', 14.5, ''],
        [1, 2, 'van pump', 11.5, ''],
        [1, 3, 'hut bank', 10, ''],
        [1, 4, 'siren', 8, 6],
        [2, 1, 'relay', 6.5, 18.5],
      ],
    },
    source:
      'One-dimensional cutting stock: first fit decreasing, minimum bin slack (Gupta and Ho 1999) and a complete search, against the bounds of Martello and Toth (1990) and Fekete and Schepers (2001). Short lists are solved exactly.',
    compute(rows, { spool_lengths, spare }) {
      const sound = rows.filter(({ error }) => error === undefined);
      const runs = sound.map(({ values }) => ({
        name: values.runs as string,
        length: values.lengths as number,
      }));
      const { plan, refusals } = planCuts(runs, spool_lengths, spare);
      const planned = plan.spools.flatMap(({ pieces, leftOver }, spool) =>
        pieces.map((place, piece) => {
          const { name, length } = runs[place]!;
          const last = piece === pieces.length - 1;
          return [spool + 1, piece + 1, name, length + spare, last ? leftOver : ''];
        }),
      );
      const refused = [...refusals].map(([place, refusal]) => [
        refusal,
        '',
        runs[place]!.name,
        runs[place]!.length + spare,
        '',
      ]);
      const inError = rows.flatMap(({ error, values }) =>
        error === undefined ? [] : [[error, '', ...[values.runs, values.lengths].map(shown), '']],
      );
      return [...planned, ...refused, ...inError];
    },
  }),
];
