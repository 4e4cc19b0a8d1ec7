/**
 * "Try it in Excel": a check list of ten minutes for someone who has Excel, with what must be seen at each step. Nobody
 * who made Loomsheet could run Excel: what is not seen as written here is worth reporting. Figures come from the catalogue
 * and from the demonstration's own values.
 */
import { CATALOGUE } from '../../functions/catalogue';
import { CellError } from '../../functions/cell';
import { newSchedule } from '../../sheets/new-schedule';
import { DEMO } from '../../sheets/station/demo';
import { SHEET_NAMES } from '../../sheets/station/naming';
import { LEVELS, levelOf, type Level } from '../../sheets/station/verdicts';
import { stationValues } from '../../sheets/station-values';
import { functionHelp } from '../../taskpane/function-help';
import { standingSentence } from '../../taskpane/standing';
import { ADDING_IT } from './host-page';
import { escaped, pageOf } from './page';

interface Step {
  readonly title: string;
  readonly html: string;
  /** What must be seen, as HTML. */
  readonly seen: readonly string[];
}

const code = (text: string) => `<code>${escaped(text)}</code>`;
const strong = (text: string) => `<strong>${escaped(text)}</strong>`;

function entryOf(id: string) {
  const entry = CATALOGUE.find((one) => one.id === id);
  if (entry === undefined) throw new Error(`The catalogue has no ${id}.`);
  return entry;
}

const WRONG_CALL = '=LOOM.CONDUCTOR_AREA(2.5)';
/** The sentence that a mistaken call answers with. */
function sentenceOfMistake(): string {
  const answer = entryOf('CONDUCTOR_AREA').evaluate([[[2.5]]])[0]?.[0];
  if (!(answer instanceof CellError)) throw new Error(`${WRONG_CALL} is no mistake any more.`);
  return answer.sentence;
}

/** The sheets that the demonstration comes on, in a new workbook. */
const demoSheets = () =>
  newSchedule('demo', 'table', { sheets: new Set(), names: new Set() }).map(({ name }) => name);

/** What the pane says of the demonstration. */
function demoSentence(): string {
  const verdicts = stationValues(DEMO).runs.map(({ verdict }) => levelOf(String(verdict)));
  const levels = Object.fromEntries(
    LEVELS.map((level) => [level, verdicts.filter((one) => one === level).length]),
  ) as Readonly<Record<Level, number>>;
  return standingSentence({
    kind: 'schedule',
    sheetName: SHEET_NAMES.sheet,
    runs: verdicts.length,
    levels,
    unfilled: [],
    verdicts: [],
  });
}

const CHANGED_RUN = 'Camera';
/** A run of the demonstration before and after its route is made three times as long. */
function changedRun() {
  const at = DEMO.runs.findIndex(({ run }) => run === CHANGED_RUN);
  const before = DEMO.runs[at];
  if (typeof before?.length !== 'number') {
    throw new Error(`The demonstration has no run ${CHANGED_RUN} with a length.`);
  }
  const after = { ...before, length: 3 * before.length };
  const runs = DEMO.runs.map((run, place) => (place === at ? after : run));
  const thinnestIn = (content: typeof DEMO) => String(stationValues(content).runs[at]?.suggested);
  return {
    from: { length: before.length, thinnest: thinnestIn(DEMO) },
    to: { length: after.length, thinnest: thinnestIn({ ...DEMO, runs }) },
  };
}

function exampleSteps(): readonly string[] {
  return ['DCDROP', 'MINGAUGE', 'FUSE_FOR'].map((id) => {
    const { exampleCall, exampleResult } = functionHelp(entryOf(id));
    return `${code(exampleCall)} gives ${code(exampleResult)}`;
  });
}

const LIST = ['Name,Fed from,Current (A),Length (ft)', 'Mast,,6,40', 'Mast lamp,Mast,2,12'];

function steps(): readonly Step[] {
  const { from, to } = changedRun();
  return [
    {
      title: 'Add it',
      html: `<p>With <a href="manifest.xml" download="loomsheet-manifest.xml">the manifest of this copy</a>, if it stands on a host by https.</p>
${ADDING_IT.map(
  ([where, parts]) =>
    `<details><summary>${where}</summary><ol>${parts.map((part) => `<li>${part}</li>`).join('')}</ol></details>`,
).join('\n')}`,
      seen: [
        `On the Home tab a group ${strong('Cable runs')} with a button ${strong('Plan cable runs')} and a picture on it.`,
      ],
    },
    {
      title: 'Type functions into cells of a new workbook',
      html: `<p>Type each as it stands. Where your Excel separates arguments by semicolons, type those, and your own decimal sign.</p>`,
      seen: [
        ...exampleSteps(),
        'After <code>=LOOM.</code> a list of functions, and in Excel on the web a description of each argument.',
      ],
    },
    {
      title: 'Make a mistake',
      html: `<p>Type ${code(WRONG_CALL)} and point at the mark in the corner of the cell.</p>`,
      seen: [
        `The cell shows ${code('#VALUE!')}; the message says: ${code(sentenceOfMistake())}. Some builds of Excel show a sentence of their own instead.`,
      ],
    },
    {
      title: 'Open the pane and insert the demonstration',
      html: `<p>Press ${strong('Plan cable runs')}, then ${strong('Insert the demonstration')}. Give it up to two minutes.</p>`,
      seen: [
        `New sheets: ${demoSheets().map(code).join(', ')}. No cell says #NAME?, #BUSY! or #CALC! once it is done.`,
        `Under ${strong('Schedule in view')}: ${code(demoSentence())}`,
        'Verdicts are coloured, each by its level, with words beside the colour.',
        `The cautions at the foot of the pane, and links there to this page and others.`,
      ],
    },
    {
      title: 'Change a length',
      html: `<p>In the row ${strong(CHANGED_RUN)} write ${to.length} over the ${from.length} under ${strong('One-way length')}.</p>`,
      seen: [
        `${strong('Thinnest wire')} goes from ${code(from.thinnest)} to ${code(to.thinnest)} within seconds, and to ${code(from.thinnest)} again when you undo it with Ctrl+Z, or Command+Z.`,
        'No other run of the hut changes except those that share its feeders.',
      ],
    },
    {
      title: 'Ask why',
      html: `<p>Press ${strong('Go to the worst run')}. Then, in the pane, ${strong('Why?')}.</p>`,
      seen: [
        'A cell of that row is selected, and the pane says in a sentence what is wrong with it.',
        'A worked calculation with numbers, limits and the tables that they come from.',
      ],
    },
    {
      title: 'Have Excel checked',
      html: `<p>At the foot of the pane, ${strong('Check this Excel')}. It takes about a minute and removes all that it inserts.</p>`,
      seen: [
        `“all … points held”. Press ${strong('Copy as text')} and keep it: it is what to report if anything did not.`,
        'No sheet of the check is left, and the active sheet is the one that it was.',
      ],
    },
    {
      title: 'Share a copy',
      html: `<p>With ${code(SHEET_NAMES.sheet)} in view, ${strong('Open a copy as a new workbook')}, or download it and open the file.</p>`,
      seen: [
        `Excel opens it without a word of repair. Its cells hold plain formulas: none with ${code('LOOM.')} in it.`,
        'The same verdicts as before.',
        'Print preview: A4 or Letter across, headings on each page, nothing cut off.',
      ],
    },
    {
      title: 'Take in a list',
      html: `<p>Save these lines as ${code('runs.csv')} and give it to ${strong('Import a list')}.</p><pre><code>${escaped(LIST.join('\n'))}</code></pre>`,
      seen: [
        `The pane says what it understood: ${LIST.length - 1} runs, one feeding the other. Nothing is inserted before you say so.`,
      ],
    },
    {
      title: 'Save, close, open again',
      html: '<p>Save the workbook, close Excel, start it and open the workbook.</p>',
      seen: [
        'The values stand there at once. After a change of a length the row answers; if it says #NAME?, open the pane once and change it again.',
        'With the system in dark mode the pane is dark, and with a contrast theme in its colours; everything in it is reached by Tab and worked by Enter or Space.',
      ],
    },
  ];
}

/** The page, whole. */
export function tryPage(): string {
  const parts = steps().map(
    ({ title, html, seen }, at) =>
      `<section aria-labelledby="step-${at + 1}">
<h2 id="step-${at + 1}">${at + 1}. ${escaped(title)}</h2>
${html}
<p><strong>You must see</strong></p>
<ul>${seen.map((one) => `<li>${one}</li>`).join('\n')}</ul>
</section>`,
  );
  return pageOf(
    'try.html',
    `<p>Ten minutes with Excel on Windows, on a Mac or on the web. What you see is written down for each step. Loomsheet is made and tested without Excel at hand, against Excel’s published interface: whatever you see otherwise is worth a report, with the step’s number, the version of Excel (File, Account, or Excel, About) and a picture.</p>
<p>Wanted: Excel 2021 or later, or Microsoft 365, or Excel on the web, and the manifest of a copy that is <a href="host.html">hosted</a>. Excel on the iPad runs no functions of add-ins.</p>
${parts.join('\n')}
<h2>Take it away again</h2>
<p>Remove it where you added it (<a href="host.html">Host it</a> says where), and delete the workbook.</p>`,
  );
}
