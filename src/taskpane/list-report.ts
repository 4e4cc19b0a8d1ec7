/** What was made of a list, in words and elements, before anything is inserted. */
import type { RunsReport } from '../lists/read-runs';
import { make } from './make';

const counted = (runs: number) => (runs === 1 ? '1 run' : `${runs} runs`);

/** How much was understood, in a sentence. */
export function reportSentence(fileName: string, { runs, problems, leftOver }: RunsReport): string {
  const lost = problems.filter(({ taken }) => !taken).length;
  const doubtful = problems.length - lost;
  const parts = [
    ...(lost === 0 ? [] : [`${lost === 1 ? '1 row' : `${lost} rows`} could not be read`]),
    ...(doubtful === 0
      ? []
      : [`${doubtful === 1 ? '1 cell needs' : `${doubtful} cells need`} a look`]),
    ...(leftOver.length === 0
      ? []
      : [`${leftOver.length === 1 ? '1 column was' : `${leftOver.length} columns were`} left out`]),
  ];
  const rest = parts.length === 0 ? 'all of it understood' : parts.join('; ');
  return `“${fileName}” lists ${counted(runs.length)}; ${rest}. Nothing is inserted yet.`;
}

function list(heading: string, items: readonly string[]): readonly HTMLElement[] {
  if (items.length === 0) return [];
  return [make('h3', {}, heading), make('ul', {}, ...items.map((item) => make('li', {}, item)))];
}

/** The report as a part of the pane. */
export function reportElement(report: RunsReport): HTMLElement {
  const { understood, leftOver, problems, remarks } = report;
  return make(
    'div',
    { class: 'loom-report' },
    ...list(
      'Rows and cells to look at',
      problems.map(
        ({ line, text, why, taken }) =>
          `Line ${line}, ${taken ? 'taken as it stands' : 'not taken'}: ${why} (${text})`,
      ),
    ),
    ...list(
      'Left out',
      leftOver.map(({ heading, values, why }) => {
        const held = values.length === 0 ? '' : ` (${values.join(', ')})`;
        return `“${heading}”${held}: ${why}`;
      }),
    ),
    ...list('Please note', remarks),
    ...list(
      'Understood',
      understood.map(({ heading, as, unit }) => {
        const inUnit = unit === undefined ? '' : `, in ${unit}`;
        return `“${heading}” as ${as}${inUnit}`;
      }),
    ),
  );
}
