/** The worst run of a schedule: where it stands, and why, in a sentence with its figures. */
import { VERDICT_JOINT, VERDICT_WORDS } from '../core/verdict';
import type { SheetGrid } from '../hosts/sheet-host';
import type { Area } from '../sheets/plan/area';
import { readSchedule, rowArea, worstRow, type ReadRow } from '../sheets/schedule/reading';
import { SCHEDULE_WORDS } from '../sheets/station/verdicts';
import { verdictInWords, type VerdictWord } from './standing';

export interface WorstRun {
  readonly area: Area;
  readonly sentence: string;
}

type Values = ReadRow['values'];

/** Four digits, so that a figure just over its limit does not read as equal to it. */
const figure = (value: number) => String(Number(value.toPrecision(4)));

/** What the sheet's figures add to a word of a verdict; nothing where they cannot be read. */
const WHY: Readonly<Partial<Record<VerdictWord, (values: Values) => string | undefined>>> = {
  [VERDICT_WORDS.heat]: ({ runAmps, ampacity, size }) =>
    typeof runAmps === 'number' && typeof ampacity === 'number'
      ? `${figure(runAmps)} A flow where ${String(size)} may carry ${figure(ampacity)} A`
      : undefined,
  [VERDICT_WORDS.drop]: ({ dropShare, target }) =>
    typeof dropShare === 'number' && typeof target === 'number'
      ? `it loses ${figure(dropShare * 100)} % of its source volts where ${figure(target * 100)} % is the target`
      : undefined,
  [VERDICT_WORDS.fuse]: () => 'no standard fuse both carries the load and protects the conductor',
  [SCHEDULE_WORDS.noSize]: () =>
    'no size of the series keeps the target, carries the current and takes a standard fuse',
  [SCHEDULE_WORDS.noAmpacity]: ({ size }) =>
    `the published tables give no ampacity for ${String(size)} as installed`,
  [SCHEDULE_WORDS.tooFewVolts]: ({ lowVolts, leastVolts }) =>
    typeof lowVolts === 'number' && typeof leastVolts === 'number'
      ? `${figure(lowVolts)} V are left at low charge where the load needs ${figure(leastVolts)} V`
      : undefined,
  [SCHEDULE_WORDS.checkEntries]: () => 'something typed in its row cannot be read',
};
const REASONS = new Map(Object.entries(WHY));

function sentence({ row, values }: ReadRow): string {
  const name = String(values.run ?? '').trim();
  const verdict = String(values.verdict);
  const where = name === '' ? `Row ${row + 1}` : `Row ${row + 1}, “${name}”`;
  const reasons = verdict
    .split(VERDICT_JOINT)
    .map((word) => REASONS.get(word)?.(values))
    .filter((reason) => reason !== undefined);
  const why = reasons.join('; ');
  const mend = String(values.mend ?? '').trim();
  const endings = [
    why === '' ? '' : ` ${why.charAt(0).toUpperCase()}${why.slice(1)}.`,
    mend === '' || mend.startsWith('#') ? '' : ` What would mend it: ${mend}.`,
  ];
  return `${where}: ${verdictInWords(verdict)}.${endings.join('')}`;
}

/** The worst run that is not ok; undefined where every run is, or where the sheet is no schedule. */
export function worstRunOf(grid: SheetGrid): WorstRun | undefined {
  const reading = readSchedule(grid.values);
  const worst = reading === undefined ? undefined : worstRow(reading);
  if (reading === undefined || worst === undefined) return undefined;
  return { area: rowArea(reading, worst.row), sentence: sentence(worst) };
}
