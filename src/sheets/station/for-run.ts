/**
 * For which run the entries of a row are, on sheets whose rows follow the places of the schedule's: they stay in their row
 * when a spreadsheet sorts the runs, so that the name of their run stands beside them.
 */
import { text } from '../plan/formula';
import type { CellContent, CellStyle } from '../plan/plan';
import type { ScheduleRun } from './run';
import { FIX_WORDS } from './verdicts';

/** What entries say of their run. */
export interface ForRun {
  /** The run that they are said for, where that is another than the one in their row; empty where it is left open. */
  readonly forRun?: string;
}

/** The column, whichever sheet it stands on. A name stays as it is typed, even "1-2". */
export const FOR_RUN: {
  readonly heading: string;
  readonly widthChars: number;
  readonly style: CellStyle;
} = { heading: 'For run', widthChars: 14, style: { numberFormat: '@' } };

/** Its cells: the name of the run stands beside what is typed for it. */
export function forRunCells(
  rows: number,
  entries: readonly ForRun[],
  runs: readonly Pick<ScheduleRun, 'run'>[],
): CellContent[][] {
  return Array.from({ length: rows }, (_, index) => {
    const { forRun, ...typed } = entries[index] ?? {};
    const name = Object.keys(typed).length === 0 ? '' : (runs[index]?.run ?? '').trim();
    const said = forRun ?? name;
    return [said === '' ? null : said];
  });
}

/** Whether what is said is the name of the run that stands there, as a formula. */
export const isForRun = (said: string, name: string) =>
  `IF(LEN(${name})=0,FALSE,TRIM(${said})=${name})`;

/** What to do about entries that are not for the run beside them, after words for their row; as a formula. */
export function forRunRemedy(said: string, name: string): string {
  const write = `&${name}&${text(FIX_WORDS.underForRun)}`;
  const nobodys = `IF(LEN(${name})=0,${text(FIX_WORDS.nameRun)},${text(FIX_WORDS.writeName)}${write})`;
  const orWrite = `IF(LEN(${name})=0,"",${text(FIX_WORDS.orWriteName)}${write})`;
  return `IF(LEN(TRIM(${said}))=0,${nobodys},${text(FIX_WORDS.entriesFor)}&TRIM(${said})&${text(FIX_WORDS.moveEntries)}&${orWrite})`;
}
