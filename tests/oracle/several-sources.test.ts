/**
 * Stations side by side on one set of sheets: three of the ordinary ones, each with its battery and its panel, as the
 * sources of one station. Each run must be judged as it is where its battery is the only one, which the oracle is held to;
 * and each column of the Supply sheet must say what it says there.
 */
import { expect, test } from 'vitest';
import { CellError, type Cell } from '../../src/functions/cell';
import type { StationContent } from '../../src/sheets/station/content';
import type { FuseEntries } from '../../src/sheets/station/protection';
import type { ScheduleRun } from '../../src/sheets/station/run';
import type { ColumnKey } from '../../src/sheets/station/schedule-keys';
import { SUPPLY_KEYS, type SupplyKey } from '../../src/sheets/station/supply-keys';
import { sourcesOf } from '../../src/sheets/station/sources';
import { stationValues } from '../../src/sheets/station-values';
import { ordinaryStation } from './ordinary-stations';

const STATIONS = 60;
const TOGETHER = 3;
const FIRST_SEED = 31_500;

/** Places, which shift, and texts in which names stand. */
const MOVED: ReadonlySet<ColumnKey> = new Set<ColumnKey>([
  'run',
  'fedFrom',
  'load',
  'feeder',
  'place',
  'place1',
  'place2',
  'place3',
  'place4',
  'place5',
  'root',
  'ownSource',
  'source',
  'battery',
  'mendPlace',
  'endSource',
  'endBattery',
  'startsBy',
]);

/** Names and places of sources; days. */
const PLACED: readonly SupplyKey[] = [
  'name',
  'charges',
  'chargesAt',
  'governs',
  'meanAmps',
  'batteryHours',
  'dailyAh',
  'dailyBalance',
];

const isPanel = (fedFrom: string | undefined) => fedFrom?.trim().toLowerCase() === 'panel';

/** Of one station, its names told apart from those of the others. */
function apart(run: ScheduleRun, at: number): ScheduleRun {
  const { run: name, fedFrom } = run;
  return {
    ...run,
    ...(name === undefined ? {} : { run: `${name.trim()} of ${at}` }),
    fedFrom:
      fedFrom === undefined || fedFrom.trim() === ''
        ? `Battery ${at}`
        : isPanel(fedFrom)
          ? `Panel ${at}`
          : `${fedFrom.trim()} of ${at}`,
  };
}

/** Texts without what tells the names apart, numbers to twelve figures: sums over more rows round otherwise. */
function comparable(cell: Cell | undefined): string {
  if (cell instanceof CellError) return cell.code;
  if (typeof cell === 'number') return String(Number(cell.toPrecision(12)));
  return String(cell ?? '').replace(/ of \d/g, '');
}

test('runs are judged by their own source, whatever else there is', () => {
  const counted = { rows: 0, cells: 0, sources: 0 };
  const differences: string[] = [];
  const verdicts = new Set<string>();
  for (let station = 0; station < STATIONS; station += 1) {
    const first = FIRST_SEED + station * TOGETHER;
    const { rules = {}, protection = {} } = ordinaryStation(first);
    const figures = { ...protection, fuses: [] };
    const alone: StationContent[] = Array.from({ length: TOGETHER }, (_, at) => {
      const content = ordinaryStation(first + at);
      return { ...content, rules, protection: { ...figures, ...ofFuses(content) } };
    });
    const joint: StationContent = {
      title: 'Together',
      rules,
      sources: alone.flatMap((content, at) =>
        sourcesOf(content).map((source) =>
          source.kind === 'panel'
            ? { ...source, name: `Panel ${at}`, charges: `Battery ${at}` }
            : { ...source, name: `Battery ${at}` },
        ),
      ),
      runs: alone.flatMap(({ runs }, at) => runs.map((run) => apart(run, at))),
      protection: {
        ...figures,
        fuses: alone.flatMap(({ runs, protection: of }) =>
          runs.map((_, row): FuseEntries => of?.fuses?.[row] ?? {}),
        ),
      },
    };
    const together = stationValues(joint);
    let row = 0;
    for (const [at, content] of alone.entries()) {
      const single = stationValues(content);
      for (const [place, values] of single.runs.entries()) {
        counted.rows += 1;
        verdicts.add(String(values.verdict));
        for (const key of Object.keys(values) as (keyof typeof values)[]) {
          if (MOVED.has(key)) continue;
          counted.cells += 1;
          const [here, there] = [together.runs[row]![key], values[key]].map(comparable);
          if (here !== there) {
            differences.push(`${first}, ${at}, row ${place + 1}, ${key}: ${here} / ${there}`);
          }
        }
        row += 1;
      }
      // Two columns of the Supply sheet for each station. Duty is listed for all, and not looked at here.
      for (const [column, figures] of single.supply.sources.slice(0, 2).entries()) {
        counted.sources += 1;
        for (const key of SUPPLY_KEYS) {
          if (PLACED.includes(key)) continue;
          counted.cells += 1;
          const [here, there] = [together.supply.sources[2 * at + column]![key], figures[key]].map(
            comparable,
          );
          if (here !== there) {
            differences.push(`${first}, ${at}, source ${column}, ${key}: ${here} / ${there}`);
          }
        }
      }
    }
  }
  console.log('several sources:', counted, `${differences.length} differ`);
  expect(differences).toEqual([]);
  expect(counted.rows).toBeGreaterThan(800);
  expect(verdicts.size).toBeGreaterThan(40);
});

/** What is said of the fuses of one station. */
function ofFuses({ protection }: StationContent) {
  return protection?.fuses === undefined ? {} : { fuses: protection.fuses };
}
