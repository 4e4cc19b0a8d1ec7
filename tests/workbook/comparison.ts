/** Every computed cell of a recalculated workbook beside the functions' own value. */
import { CellError, type ResultCell } from '../../src/functions/cell';
import { scheduleNames } from '../../src/sheets/station/naming';
import { VERDICT_JOINT } from '../../src/core/verdict';
import { PROTECTION_ROW, protectionColumn } from '../../src/sheets/protection/layout';
import { WORD } from '../../src/sheets/station/verdicts';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { SCHEDULE_FORMULAS, type FormulaKey } from '../../src/sheets/schedule/formulas';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { SUPPLY_CELLS } from '../../src/sheets/supply/cells';
import type { PlainCell, WorkbookCells } from './cells';
import type { StationContent } from '../../src/sheets/station/content';
import { stationValues, type RunValues } from '../../src/sheets/station-values';
import { SUPPLY_KEYS, type SupplyKey } from '../../src/sheets/station/supply-keys';
import { DUTY, DUTY_HEADINGS } from '../../src/sheets/supply/layout';
import { sharedCopy } from '../../src/sheets/shared-copy';

/** The two may differ by this much of the larger, for numbers. */
export const RELATIVE = 1e-9;

export interface Difference {
  readonly where: string;
  readonly ours: ResultCell;
  readonly theirs: PlainCell;
}

export interface Comparison {
  readonly compared: number;
  readonly differences: readonly Difference[];
  /**
   * Differences that the workbook itself tells of: branches that cannot serve all their loads together, and the steady
   * heat of runs that changed since it was written.
   */
  readonly setAside: readonly Difference[];
  /** Greatest relative difference of two numbers that count as equal. */
  readonly farthest: number;
}

/** How far apart two values are: 0 for the same, infinitely for different kinds. */
export function distance(ours: ResultCell, theirs: PlainCell): number {
  // Which error it is matters where a formula asks for it, and then shows in what that formula says.
  const isError = typeof theirs === 'object' && theirs !== null;
  if (ours instanceof CellError || isError) {
    return ours instanceof CellError && isError ? 0 : Infinity;
  }
  // A spreadsheet stores an empty text as no value.
  if (ours === '') return theirs === null || theirs === '' ? 0 : Infinity;
  if (typeof ours === 'number' && typeof theirs === 'number') {
    const size = Math.max(Math.abs(ours), Math.abs(theirs));
    return size === 0 ? 0 : Math.abs(ours - theirs) / size;
  }
  return ours === theirs ? 0 : Infinity;
}

const FORMULA_KEYS = Object.keys(SCHEDULE_FORMULAS) as FormulaKey[];

/** What hangs on the volts that a whole branch leaves each of its loads. */
const BY_BRANCH: ReadonlySet<FormulaKey | SupplyKey> = new Set([
  'loadVolts',
  'lowVolts',
  'lowDrop',
  'shortFull',
  'shortLow',
  'mendPlace',
  'mend',
  'words',
  'verdict',
  'fullShort',
  'lowShort',
]);

/** Where things stand on the Supply sheet, as its own plan says. */
function supplyPlaces(content: StationContent) {
  const name = scheduleNames().supplySheet;
  const plan = sharedCopy(content).plans.find((sheet) => sheet.name === name)!;
  const heading = plan.blocks.find(({ cells }) =>
    cells?.[0]?.every((cell, index) => cell === DUTY_HEADINGS[index]),
  )!;
  return {
    cell: (named: string) => plan.names.find((one) => one.name === named)!.area,
    dutyFirst: heading.area.row + 1,
  };
}

function isUnserved({ loadVolts, lowVolts }: RunValues): boolean {
  return [loadVolts, lowVolts].some((volts) => volts instanceof CellError && volts.code === '#N/A');
}

/** Rows of branches in which some load cannot be served. */
function hopelessRows(content: StationContent, values: readonly RunValues[]): ReadonlySet<number> {
  const roots = values.map((_, row) => {
    let at = row;
    const passed = new Set<number>();
    for (let place: ResultCell = row + 1; typeof place === 'number' && !passed.has(at);) {
      passed.add(at);
      place = values[at]!.place1;
      if (typeof place === 'number') at = place - 1;
    }
    return at;
  });
  const hopeless = new Set(roots.filter((_, row) => isUnserved(values[row]!)));
  return new Set([...content.runs.keys()].filter((row) => hopeless.has(roots[row]!)));
}

/** What the workbook says of a steady temperature that it cannot work out. */
const NOT_COMPUTED = 'not computed';

/** A verdict as it is where the steady heat is not known. */
function withoutHeat(verdict: ResultCell): ResultCell {
  return typeof verdict === 'string'
    ? verdict
        .split(VERDICT_JOINT)
        .filter((word) => word !== WORD.tooHot)
        .join(VERDICT_JOINT)
    : verdict;
}

interface Pair extends Difference {
  readonly mayDiffer: boolean;
  readonly far: number;
}

/**
 * Compares the schedule and the Supply sheet of a shared workbook. Volts and what hangs on them may differ by
 * `voltsMissing` more, which the workbook itself names as the most that its rounds leave undone.
 */
export function compareStation(
  content: StationContent,
  cells: WorkbookCells,
  voltsMissing = 0,
): Comparison {
  const names = scheduleNames();
  const values = stationValues(content);
  const hopeless = hopelessRows(content, values.runs);
  const pairs: Pair[] = [];
  const add = (
    where: string,
    ours: ResultCell,
    theirs: PlainCell,
    { mayDiffer = false, isVolts = false } = {},
  ) => {
    const numbers = typeof ours === 'number' && typeof theirs === 'number';
    const isWithin = isVolts && numbers && Math.abs(ours - theirs) <= voltsMissing;
    const far = isWithin ? 0 : distance(ours, theirs);
    pairs.push({ where: `${content.title}, ${where}`, ours, theirs, mayDiffer, far });
  };
  for (const [index, run] of values.runs.entries()) {
    const steady = cells.at(
      names.protectionSheet,
      PROTECTION_ROW.first + index,
      protectionColumn('steady'),
    );
    for (const key of FORMULA_KEYS) {
      const theirs = cells.at(names.sheet, ROW.first + index, columnOf(key));
      add(
        `row ${index + 1} (${content.runs[index]?.run ?? ''}), ${SCHEDULE_COLUMNS[key].heading}`,
        run[key],
        theirs,
        {
          mayDiffer:
            (hopeless.has(index) && BY_BRANCH.has(key)) ||
            (steady === NOT_COMPUTED && withoutHeat(run[key]) === (theirs ?? '')),
          isVolts: key === 'loadVolts' || key === 'lowVolts' || key === 'lowDrop',
        },
      );
    }
  }
  const supply = supplyPlaces(content);
  for (const key of SUPPLY_KEYS) {
    const { row, column } = supply.cell(names.supply[key]);
    add(
      SUPPLY_CELLS[key].label,
      values.supply.cells[key],
      cells.at(names.supplySheet, row, column),
      {
        mayDiffer: hopeless.size > 0 && BY_BRANCH.has(key),
      },
    );
  }
  for (const [index, duty] of values.supply.duty.entries()) {
    for (const key of ['mean', 'heating', 'daily'] as const) {
      const row = supply.dutyFirst + index;
      add(`duty ${index + 1}, ${key}`, duty[key], cells.at(names.supplySheet, row, DUTY[key]));
    }
  }
  const differing = pairs.filter(({ far }) => far > RELATIVE);
  return {
    compared: pairs.length,
    differences: differing.filter(({ mayDiffer }) => !mayDiffer),
    setAside: differing.filter(({ mayDiffer }) => mayDiffer),
    farthest: Math.max(0, ...pairs.map(({ far }) => far).filter((far) => far <= RELATIVE)),
  };
}

/** Differences in lines, for a failing test. */
export function toldDifferences(differences: readonly Difference[]): readonly string[] {
  const told = (value: ResultCell | PlainCell) =>
    value instanceof CellError ? `${value.code} (${value.sentence})` : JSON.stringify(value);
  return differences.map(({ where, ours, theirs }) => `${where}: ${told(ours)} / ${told(theirs)}`);
}

/** Adds comparisons up. */
export function total(comparisons: readonly Comparison[]): Comparison {
  return {
    compared: comparisons.reduce((sum, { compared }) => sum + compared, 0),
    differences: comparisons.flatMap(({ differences }) => differences),
    setAside: comparisons.flatMap(({ setAside }) => setAside),
    farthest: Math.max(0, ...comparisons.map(({ farthest }) => farthest)),
  };
}

/** One line that says how a comparison went. */
export function summary(
  of: string,
  { compared, differences, setAside, farthest }: Comparison,
): string {
  return (
    `LibreOffice, ${of}: ${compared} cells compared, ${differences.length} differ, ` +
    `${setAside.length} set aside; greatest relative difference of numbers ${farthest.toExponential(1)}`
  );
}
