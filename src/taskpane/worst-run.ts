/** The worst run of a schedule: where it stands, and why, in a sentence with its figures. */
import type { SheetGrid } from '../sheets/plan/grid';
import type { Area } from '../sheets/plan/area';
import { readSchedule, rowArea, worstRow, type ReadRow } from '../sheets/schedule/reading';
import { VERDICTS, verdictsIn, type VerdictKey } from '../sheets/station/verdicts';
import { verdictInWords } from './standing';

export interface WorstRun {
  readonly area: Area;
  readonly sentence: string;
}

type Values = ReadRow['values'];

/** Four digits, so that a figure just over its limit does not read as equal to it. */
const figure = (value: number) => String(Number(value.toPrecision(4)));

const percentOf = (share: unknown) => (typeof share === 'number' ? figure(share * 100) : undefined);

/** The sheet's figures behind a verdict, where they say more than its reason; nothing where they cannot be read. */
const FIGURES: Readonly<Partial<Record<VerdictKey, (values: Values) => string | undefined>>> = {
  heat: ({ runAmps, ampacity, size }) =>
    typeof runAmps === 'number' && typeof ampacity === 'number'
      ? `${figure(runAmps)} A in ${String(size)}, whose ampacity is ${figure(ampacity)} A`
      : undefined,
  drop: ({ dropShare, pathDrop, target }) => {
    const [own, path, most] = [dropShare, pathDrop, target].map(percentOf);
    if (own === undefined || most === undefined) return undefined;
    const above = path === undefined || path === own ? '' : `, ${path} % to the load`;
    return `drop ${own} %${above}, target ${most} %`;
  },
  tooFewVolts: ({ lowVolts, leastVolts }) =>
    typeof lowVolts === 'number' && typeof leastVolts === 'number'
      ? `${figure(lowVolts)} V with the battery low, minimum ${figure(leastVolts)} V`
      : undefined,
};

/** A run's verdict with the figures and reasons behind it, and its fix. */
export function verdictSentence({ row, values }: ReadRow): string {
  const name = String(values.run ?? '').trim();
  const verdict = String(values.verdict);
  const where = name === '' ? `Row ${row + 1}` : `Row ${row + 1}, “${name}”`;
  const reasons = verdictsIn(verdict).map((key) => FIGURES[key]?.(values) ?? VERDICTS[key].why);
  const why = reasons.join('; ');
  const fix = String(values.mend ?? '').trim();
  const endings = [
    why === '' ? '' : ` ${why.charAt(0).toUpperCase()}${why.slice(1)}.`,
    fix === '' || fix.startsWith('#') ? '' : ` Fix: ${fix}.`,
  ];
  return `${where}: ${verdictInWords(verdict)}.${endings.join('')}`;
}

/** The worst run that is not ok; undefined where every run is, or where the sheet is no schedule. */
export function worstRunOf(grid: SheetGrid): WorstRun | undefined {
  const reading = readSchedule(grid.values);
  const worst = reading === undefined ? undefined : worstRow(reading);
  if (reading === undefined || worst === undefined) return undefined;
  return { area: rowArea(reading, worst.row), sentence: verdictSentence(worst) };
}
