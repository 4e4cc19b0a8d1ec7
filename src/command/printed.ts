/** What the terminal prints for people: the runs as a table, and what was made of the list. */
import { CellError, type ResultCell } from '../functions/cell';
import type { ColumnQuestion, RunsReport } from '../lists/read-runs';
import { SCHEDULE_COLUMNS } from '../sheets/schedule/columns';
import type { StationValues } from '../sheets/station-values';
import type { StationContent } from '../sheets/station/content';
import { countedByLevel, FIGURES, figureOf, type Figure } from './figures';
import { textTable } from './table';

/** Text from a file must not steer the terminal. */
export function printable(line: string): string {
  // eslint-disable-next-line no-control-regex
  return line.replace(/[\u0000-\u001F\u007F-\u009F]/g, '?');
}

function shown(cell: ResultCell, digits?: number): string {
  if (cell instanceof CellError) return cell.code;
  return typeof cell === 'number' && digits !== undefined ? cell.toFixed(digits) : String(cell);
}

/** A converted length has more digits than anybody measures. */
const lengthShown = (length: string | number = '') =>
  String(typeof length === 'number' ? Number(length.toFixed(2)) : length);

/** The runs as a table, and how many there are of each level. */
export function verdictLines(
  content: StationContent,
  { runs, rules }: StationValues,
): readonly string[] {
  const rows = content.runs.map((run, index): string[] => {
    const figure = (name: Figure) => figureOf(runs[index]!, name);
    const percent = (share: ResultCell) =>
      typeof share === 'number' ? (share * 100).toFixed(1) : shown(share);
    return [
      run.run ?? '',
      shown(figure('amps'), 1),
      lengthShown(run.length),
      shown(figure('size')),
      percent(figure('dropShare')),
      percent(figure('pathDropShare')),
      shown(figure('fuse')),
      shown(figure('verdict')),
      shown(figure('fix')),
    ];
  });
  const headings = [
    'Run',
    'Amps',
    `Length ${shown(rules.unit!)}`,
    SCHEDULE_COLUMNS[FIGURES.size].heading,
    SCHEDULE_COLUMNS[FIGURES.dropShare].heading,
    `${SCHEDULE_COLUMNS[FIGURES.pathDropShare].heading} %`,
    'Fuse A',
    SCHEDULE_COLUMNS[FIGURES.verdict].heading,
    SCHEDULE_COLUMNS[FIGURES.fix].heading,
  ];
  return [content.title, '', ...textTable(headings, rows), '', countedByLevel(runs)];
}

function section(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : ['', title, ...lines.map((line) => `  ${line}`)];
}

const quoted = (values: readonly string[]) => values.map((value) => `"${value}"`).join(', ');

/** How a column that was not understood is taken in all the same. */
export function questionLines(questions: readonly ColumnQuestion[]): readonly string[] {
  const open = questions.find(({ suggested }) => suggested === undefined);
  return [
    ...questions.map(({ heading, values, suggested }) => {
      const how = suggested === undefined ? '' : `: --map "${heading}=${suggested}"`;
      return `"${heading}" holds ${quoted(values)}${how}`;
    }),
    ...(open === undefined
      ? []
      : [
          `Any column is taken in by --map, such as --map "${open.heading}=${SCHEDULE_COLUMNS.notes.heading}"; --help names the columns.`,
        ]),
  ];
}

/** What was made of the list. */
export function reportLines({
  understood,
  leftOver,
  questions,
  problems,
  remarks,
}: RunsReport): readonly string[] {
  return [
    ...section(
      'Understood:',
      understood.map(({ heading, as, unit }) => {
        const inUnit = unit === undefined ? '' : `, in ${unit}`;
        return `"${heading}" as ${as}${inUnit}`;
      }),
    ),
    ...section('Please note:', remarks),
    ...section(
      'Columns left out:',
      leftOver.map(({ heading, why }) => `"${heading}": ${why}`),
    ),
    ...section('To take in columns that were left out:', questionLines(questions)),
    ...section(
      'Rows to look at:',
      problems.map(
        ({ line, text, why, taken }) =>
          `line ${line}, ${taken ? 'taken as it stands' : 'NOT taken'}: ${why} [${text}]`,
      ),
    ),
  ];
}
