/** The bar over grid and pane: files in and out, and how the keeping of the workbook stands. */
import type { SheetHost } from '../hosts/sheet-host';
import { commandButton } from '../taskpane/command-button';
import { copyInView } from '../taskpane/copy-in-view';
import { download, XLSX_TYPE } from '../taskpane/download';
import { make, say } from '../taskpane/make';
import { sentenceOf } from '../taskpane/notice';
import { ask } from './question';
import type { KeepingState } from './keeper';

export interface BarParts {
  readonly files: HTMLElement;
  readonly kept: HTMLElement;
  readonly told: HTMLElement;
}

export interface Bar {
  /** Says what happened; read out. */
  tell(text: string): void;
  /** Shows how the keeping stands; not read out, since it changes with every entry. */
  readonly showKeeping: (state: KeepingState) => void;
}

export interface BarCommands {
  /** Takes a file in. */
  open(file: File): void;
  /** Throws what is kept away and opens the demonstration. */
  startAnew(): Promise<void>;
}

const KEEPING_IN_WORDS = { kept: 'Kept in this browser', waiting: 'Keeping…' } as const;

/** Fills the bar. */
export function fillBar(
  { files, kept, told }: BarParts,
  host: SheetHost,
  commands: BarCommands,
): Bar {
  const tell = (text: string) => {
    say(told, text);
  };
  const chosen = make('input', { type: 'file', accept: '.xlsx,.csv,.tsv,.txt', hidden: true });
  chosen.addEventListener('change', () => {
    const file = chosen.files?.[0];
    chosen.value = '';
    if (file === undefined) return;
    tell('');
    commands.open(file);
  });
  const openFile = commandButton('Open…', 'outline', () => {
    chosen.click();
  });
  const saveFile = commandButton('Save a copy', 'outline', () => {
    saveFile.setBusy(true);
    tell('Writing the file…');
    copyInView(host)
      .then(({ file, name, counted }) => {
        download(file, name, XLSX_TYPE);
        tell(`Saved “${name}”: ${counted}. It computes in any spreadsheet, and opens here again.`);
      })
      .catch((fault: unknown) => {
        tell(sentenceOf(fault));
      })
      .finally(() => {
        saveFile.setBusy(false);
      });
  });
  const anew = commandButton('Start anew', 'outline', () => {
    ask({
      title: 'Start anew?',
      text: 'Everything in this workbook goes, and the demonstration takes its place. What you want to have later, save as a copy first.',
      yes: 'Throw it away and start anew',
    })
      .then((agreed) => (agreed ? commands.startAnew() : anew.element.focus()))
      .catch((fault: unknown) => {
        tell(sentenceOf(fault));
      });
  });
  openFile.element.title = 'Take in an .xlsx or .csv as a new schedule';
  saveFile.element.title = 'The schedule in view as an .xlsx';
  files.append(chosen, openFile.element, saveFile.element, anew.element);
  return {
    tell,
    showKeeping(state) {
      const failed = typeof state === 'object';
      kept.dataset['state'] = failed ? 'failed' : state;
      say(kept, failed ? `Not kept, save a copy: ${state.failed}` : KEEPING_IN_WORDS[state]);
    },
  };
}
