/** Two calculations of the same station beside each other, cell by cell. */
import { CellError, type Cell } from '../../src/functions/cell';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import type { FormulaKey } from '../../src/sheets/schedule/formulas';
import type { RunValues, StationValues } from '../../src/sheets/station-values';
import type { StationContent } from '../../src/sheets/station/content';
import { PROTECTION_FIGURES } from '../../src/sheets/station/protection-words';
import type { SupplyKey } from '../../src/sheets/station/supply-keys';
import { WORD } from '../../src/sheets/station/verdicts';
import { distance, RELATIVE, told } from '../closeness';

export interface Difference {
  readonly where: string;
  /** Row of the schedule, and column; neither for other cells. */
  readonly row?: number;
  readonly key: string;
  readonly ours: Cell;
  readonly theirs: Cell;
}

export interface StationComparison {
  readonly compared: number;
  readonly differences: readonly Difference[];
  /** Differences that the copy itself tells of. */
  readonly setAside: readonly Difference[];
  /** Greatest relative difference of two numbers that count as equal. */
  readonly farthest: number;
}

/** What hangs on the volts that a whole branch leaves each of its loads. */
const BY_BRANCH: ReadonlySet<string> = new Set<FormulaKey | SupplyKey>([
  'loadVolts',
  'lowVolts',
  'lowDrop',
  'shortFull',
  'shortLow',
  'fewer',
  'judged',
  'mendShare',
  'instead',
  'mendNeeds',
  'noThicker',
  'lost0',
  'lost1',
  'lost2',
  'lost3',
  'lost4',
  'mendPlace',
  'unserved',
  'exactly',
  'mend',
  'words',
  'finding',
  'verdict',
  'level',
  'fullShort',
  'lowShort',
]);
const VOLTS: ReadonlySet<string> = new Set<FormulaKey>(['loadVolts', 'lowVolts', 'lowDrop']);
/** What hangs on the steady temperature, which a copy does not work out anew. */
const BY_HEAT: ReadonlySet<string> = new Set([
  'steady',
  'hot',
  'wrong',
  'words',
  'finding',
  'verdict',
  'level',
  'mend',
  'note',
  'protection',
]);

const isUnserved = ({ loadVolts, lowVolts }: RunValues) =>
  [loadVolts, lowVolts].some((volts) => volts instanceof CellError && volts.code === '#N/A');

/** Rows of branches in which some load cannot be served. */
function hopelessRows({ runs }: StationValues): ReadonlySet<number> {
  const roots = runs.map((_, row) => {
    let at = row;
    const passed = new Set<number>();
    for (let place: Cell = row + 1; typeof place === 'number' && place > 0 && !passed.has(at);) {
      passed.add(at);
      place = runs[at]!.place1;
      if (typeof place === 'number' && place > 0) at = place - 1;
    }
    return at;
  });
  const hopeless = new Set(roots.filter((_, row) => isUnserved(runs[row]!)));
  return new Set([...runs.keys()].filter((row) => hopeless.has(roots[row]!)));
}

/**
 * Compares two calculations of a station. A copy that needs no add-in may differ from the functions where it says so
 * itself: volts by `voltsMissing`, the most that its last round still moved; volts of which it says that they are not
 * settled; branches that cannot serve all their loads together; what hangs on a steady temperature that it does not work out.
 */
export function compareStations(
  content: StationContent,
  ours: StationValues,
  theirs: StationValues,
  voltsMissing = 0,
): StationComparison {
  const hopeless = hopelessRows(ours);
  const differences: Difference[] = [];
  const setAside: Difference[] = [];
  let [compared, farthest] = [0, 0];

  const compare = (where: string, key: string, a: Cell, b: Cell, row?: number) => {
    compared += 1;
    const isWithin =
      VOLTS.has(key) &&
      typeof a === 'number' &&
      typeof b === 'number' &&
      Math.abs(a - b) <= voltsMissing;
    const far = isWithin ? 0 : distance(a, b);
    if (far <= RELATIVE) {
      farthest = Math.max(farthest, far);
      return;
    }
    const isUncomputed =
      row !== undefined && theirs.protection.rows[row]?.steady === PROTECTION_FIGURES.notComputed;
    const isUnsettled = (at: number) => String(theirs.runs[at]!.verdict).includes(WORD.notSettled);
    const mayDiffer =
      BY_BRANCH.has(key) &&
      (row === undefined
        ? hopeless.size > 0 || [...theirs.runs.keys()].some(isUnsettled)
        : hopeless.has(row) || isUnsettled(row));
    const told = { where: `${content.title}, ${where}`, key, ours: a, theirs: b };
    (mayDiffer || (isUncomputed && BY_HEAT.has(key)) ? setAside : differences).push(
      row === undefined ? told : { ...told, row },
    );
  };

  for (const [row, run] of ours.runs.entries()) {
    for (const key of Object.keys(run) as FormulaKey[]) {
      const where = `row ${row + 1} (${content.runs[row]?.run ?? ''}), ${SCHEDULE_COLUMNS[key].heading}`;
      compare(where, key, run[key], theirs.runs[row]![key], row);
    }
    for (const [key, value] of Object.entries(ours.protection.rows[row]!)) {
      const other = theirs.protection.rows[row]![key as keyof (typeof theirs.protection.rows)[0]];
      compare(`protection ${row + 1}, ${key}`, key, value, other, row);
    }
  }
  for (const [key, value] of Object.entries(ours.supply.cells)) {
    compare(`supply, ${key}`, key, value, theirs.supply.cells[key as SupplyKey]);
  }
  for (const [row, duty] of ours.supply.duty.entries()) {
    for (const key of ['mean', 'heating', 'daily'] as const) {
      compare(`duty ${row + 1}, ${key}`, key, duty[key], theirs.supply.duty[row]![key]);
    }
  }
  for (const [key, value] of Object.entries(ours.protection.cells)) {
    const other = theirs.protection.cells[key as keyof typeof theirs.protection.cells];
    compare(`protection, ${key}`, key, value, other);
  }
  return { compared, differences, setAside, farthest };
}

/** Differences in lines, for a failing test. */
export function toldDifferences(differences: readonly Difference[]): readonly string[] {
  return differences.map(({ where, ours, theirs }) => `${where}: ${told(ours)} / ${told(theirs)}`);
}

/** Adds comparisons up. */
export function total(comparisons: readonly StationComparison[]): StationComparison {
  return {
    compared: comparisons.reduce((sum, { compared }) => sum + compared, 0),
    differences: comparisons.flatMap(({ differences }) => differences),
    setAside: comparisons.flatMap(({ setAside }) => setAside),
    farthest: Math.max(0, ...comparisons.map(({ farthest }) => farthest)),
  };
}

/** One line that says how a comparison went. */
export function summary(of: string, comparison: StationComparison): string {
  const { compared, differences, setAside, farthest } = comparison;
  return (
    `${of}: ${compared} cells compared, ${differences.length} differ, ${setAside.length} set aside; ` +
    `greatest relative difference of numbers ${farthest.toExponential(1)}`
  );
}
