/** "Import a list": a shared workbook or a list of runs from a file, shown as understood before it is inserted. */
import type { SheetHost } from '../hosts/sheet-host';
import type { RunsReport } from '../lists/read-runs';
import { commandButton } from './command-button';
import { inserting } from './inserting';
import { insertReport } from './insertion';
import { reportElement, reportSentence } from './list-report';
import { make } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';

const ACCEPTED = '.xlsx,.csv,.tsv,.txt';

export interface TakeInSection extends Section {
  /** Takes in a file as if it were chosen here; one that is understood wholly is inserted without asking. */
  take(file: File): void;
}

export function takeInSection(host: SheetHost): TakeInSection {
  const notice = makeNotice();
  const shown = make('div', { hidden: true });
  const input = make('input', {
    type: 'file',
    accept: ACCEPTED,
    class: 'loom-file',
    'aria-label': 'File with a list of runs',
  });
  let waiting: { readonly fileName: string; readonly report: RunsReport } | undefined;

  const read = async (file: File): Promise<string> => {
    // The reader and the library behind it are only loaded when a file is chosen.
    const { readRuns } = await import('../lists/read-runs');
    const report = await readRuns(new Uint8Array(await file.arrayBuffer()), file.name);
    waiting = { fileName: file.name, report };
    shown.replaceChildren(reportElement(report), commands);
    shown.hidden = false;
    return reportSentence(file.name, report);
  };
  const forget = () => {
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
      .then(notice.tell, (fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        setBusy(false);
        notice.reveal();
      });
  };

  const insertWaiting = () => {
    if (waiting === undefined) return;
    const { fileName, report } = waiting;
    insertion.run('Inserting the list…', async (watch) => {
      const told = await insertReport(host, fileName, report, watch);
      finish();
      return told;
    });
  };
  const insert = commandButton('Insert as a new schedule', 'primary', insertWaiting);
  const leave = commandButton('Cancel', 'outline', () => {
    finish();
    notice.tell(insertion.leavesRest ? 'The list was put away.' : 'Nothing was inserted.');
  });
  const commands = make('div', { class: 'loom-commands' }, insert.element, leave.element);
  const setBusy = (busy: boolean) => {
    insert.setBusy(busy);
    leave.setBusy(busy);
    input.disabled = busy;
  };
  const insertion = inserting(notice, setBusy);

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
        'A shared workbook (.xlsx) or a list of runs (.csv) with headings such as Name, Current (A), Length (ft). You see what was understood before anything is inserted.',
      ),
      input,
      notice.element,
      insertion.element,
      shown,
    ),
    take(file) {
      if (input.disabled) return;
      void readAndTell(file).then(() => {
        const report = waiting?.report;
        if (report === undefined) return;
        if (report.problems.length === 0 && report.leftOver.length === 0) insertWaiting();
        else insert.element.focus();
      });
    },
    stop() {
      // Nothing is listened to.
    },
  };
}
