/** "Import a list": a shared workbook or a list of runs from a file, shown as understood before it is inserted. */
import type { SheetHost } from '../hosts/sheet-host';
import type { Reading } from './answered-list';
import { columnQuestions, type ColumnQuestions } from './column-questions';
import { commandButton } from './command-button';
import { inserting } from './inserting';
import { insertReport } from './insertion';
import type { ListAside } from './list-aside';
import { reportElement, reportSentence } from './list-report';
import { make, say } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';

const ACCEPTED = '.xlsx,.csv,.tsv,.txt';

const INSERT = 'Insert as a new schedule';
/** Where a column that nobody understood might have said what feeds what. */
const INSERT_FLAT = 'Insert, every run from the source';

interface Waiting {
  readonly fileName: string;
  readonly list: ListAside;
  /** As its columns are answered for now; never rejects. */
  readonly reading: Promise<Reading>;
  readonly questions?: ColumnQuestions;
}

export interface TakeInSection extends Section {
  /** Takes in a file as if it were chosen here; one that is understood wholly is inserted without asking. */
  take(file: File): void;
}

export function takeInSection(host: SheetHost): TakeInSection {
  const notice = makeNotice();
  const shown = make('div', { hidden: true });
  const reported = make('div');
  const input = make('input', {
    type: 'file',
    accept: ACCEPTED,
    class: 'loom-file',
    'aria-label': 'File with a list of runs',
  });
  let waiting: Waiting | undefined;

  const isOfNow = (reading: Promise<Reading>) => waiting?.reading === reading;
  const read = async (file: File): Promise<void> => {
    const bytes = async () => new Uint8Array(await file.arrayBuffer());
    // Like the reader behind it, only loaded when a file is chosen.
    const { openAside } = await import('./list-aside');
    const list = await openAside(bytes, file.name);
    const questions =
      list.questions.length === 0
        ? undefined
        : columnQuestions(list.questions, () => void readAnswers());
    waiting = {
      fileName: file.name,
      list,
      reading: Promise.resolve({ refusal: '' }),
      ...(questions && { questions }),
    };
    shown.replaceChildren(
      ...(questions === undefined ? [] : [questions.element]),
      reported,
      commands,
    );
    await readAnswers();
    shown.hidden = false;
  };
  /** Reads the list as its columns are answered for now, and tells what that comes to. */
  const readAnswers = async (): Promise<void> => {
    if (waiting === undefined) return;
    const { fileName, list, questions } = waiting;
    const reading = list
      .read(questions?.answers() ?? [])
      .catch((fault: unknown): Reading => ({ refusal: sentenceOf(fault) }));
    waiting = { ...waiting, reading };
    const { report, refusal } = await reading;
    // Answered otherwise meanwhile, or put away.
    if (!isOfNow(reading)) return;
    reported.replaceChildren(...(report === undefined ? [] : [reportElement(report)]));
    const isAsked = report?.lacksFeeders === true && list.questions.some(({ mayFeed }) => mayFeed);
    questions?.tellFeeders(isAsked);
    say(insert.element, isAsked ? INSERT_FLAT : INSERT);
    if (report === undefined) notice.warn(refusal);
    else notice.tell(reportSentence(fileName, report));
  };
  const forget = () => {
    waiting?.list.close();
    waiting = undefined;
    shown.hidden = true;
    shown.replaceChildren();
  };
  const finish = () => {
    forget();
    // So that choosing the same file again is a change too.
    input.value = '';
  };
  /** Reads a file and tells what was made of it; resolves when that is done. */
  const readAndTell = (file: File): Promise<void> => {
    forget();
    setBusy(true);
    notice.tell(`Reading “${file.name}”…`);
    return read(file)
      .catch((fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        setBusy(false);
        notice.reveal();
        waiting?.questions?.focus();
      });
  };

  const insertWaiting = async (): Promise<void> => {
    if (waiting === undefined) return;
    const { fileName, reading } = waiting;
    const { report, refusal } = await reading;
    if (!isOfNow(reading) || isBusy) return;
    if (report === undefined) {
      notice.warn(refusal);
      notice.reveal();
      return;
    }
    insertion.run('Inserting the list…', async (watch) => {
      const told = await insertReport(host, fileName, report, watch);
      finish();
      return told;
    });
  };
  const insert = commandButton(INSERT, 'primary', () => void insertWaiting());
  const putAway = () => {
    finish();
    notice.tell(insertion.leavesRest ? 'The list was put away.' : 'Nothing was inserted.');
    input.focus();
  };
  const leave = commandButton('Cancel', 'outline', putAway);
  const commands = make('div', { class: 'loom-commands' }, insert.element, leave.element);
  let isBusy = false;
  const setBusy = (busy: boolean) => {
    isBusy = busy;
    insert.setBusy(busy);
    leave.setBusy(busy);
    waiting?.questions?.setBusy(busy);
    input.disabled = busy;
  };
  const insertion = inserting(notice, setBusy);

  shown.addEventListener('keydown', (event) => {
    if (event.key === 'Escape' && !isBusy) putAway();
  });
  input.addEventListener('change', () => {
    const file = input.files?.[0];
    if (file !== undefined) void readAndTell(file);
  });

  return {
    element: sectionElement(
      'take-in',
      'Import a list',
      make(
        'p',
        {},
        'A shared workbook (.xlsx) or a list of runs (.csv) with headings such as Name, Fed from, Current (A), Length (ft). You see what was understood before anything is inserted, and say what any other column is.',
      ),
      input,
      notice.element,
      insertion.element,
      shown,
    ),
    take(file) {
      if (input.disabled) return;
      void readAndTell(file).then(async () => {
        const report = (await waiting?.reading)?.report;
        if (report === undefined || waiting?.questions !== undefined) return;
        if (report.problems.length === 0 && report.leftOver.length === 0) await insertWaiting();
        else insert.element.focus();
      });
    },
    stop() {
      // Nothing is listened to.
    },
  };
}
