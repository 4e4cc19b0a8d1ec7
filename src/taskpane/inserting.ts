/** An insertion under way in a section: how far it is, the way to stop it, and what can be done about what came of it. */
import { InsertionFault, type Inserted, type Watch } from '../hosts/sheet-host';
import { commandButton } from './command-button';
import { missingSentence, repairedSentence, type ToldInsertion } from './insertion';
import { make } from './make';
import { sentenceOf, type Notice } from './notice';
import { newRowsSentence } from './standing';
import { restRemover } from './rest-remover';

/** So long without a step, a person begins to wonder. */
const SILENCE_MS = 4000;
const NO_ANSWER =
  'The spreadsheet has not answered yet. If a cell is being edited, press Enter or Esc; it goes on by itself.';

export interface Inserting {
  readonly element: HTMLElement;
  /** Whether something is left of an insertion that failed. */
  readonly leavesRest: boolean;
  /** Starts an insertion and tells what comes of it. */
  run(start: string, insert: (watch: Watch) => Promise<ToldInsertion>): void;
}

/** `setBusy` holds the section's other commands back. */
export function inserting(notice: Notice, setBusy: (busy: boolean) => void): Inserting {
  const bar = make('progress', { max: '100', 'aria-label': 'Progress of the insertion' });
  let stopping = new AbortController();
  const stop = commandButton('Stop', 'outline', () => {
    stopping.abort();
    stop.setBusy(true);
    notice.tell('Stopping…');
  });
  const going = make('div', { class: 'loom-going' }, bar, stop.element);

  /** The insertion that lacks looks; a later one does not take the offer to repair it away unless it lacks some itself. */
  let lacking: Inserted | undefined;
  const repair = commandButton('Repair the sheet', 'outline', () => {
    const before = lacking;
    if (before === undefined) return;
    work('Repairing the sheet…', async () => {
      const now = await before.repair();
      setLacking(now);
      notice.tell(repairedSentence(now));
    });
  });
  const setLacking = (inserted: Inserted) => {
    lacking = inserted.missing.length > 0 ? inserted : undefined;
    repair.element.hidden = lacking === undefined;
  };
  const rest = restRemover((removal) => {
    work('Removing what is left…', async () => {
      await removal();
      notice.tell('Nothing of it is left.');
    });
  });

  /** Hears that something happened, and says so where nothing does for long. */
  let silence: ReturnType<typeof setTimeout> | undefined;
  const listen = () => {
    clearTimeout(silence);
    silence = setTimeout(() => {
      notice.tell(NO_ANSWER);
    }, SILENCE_MS);
  };

  function work(start: string, action: () => Promise<void>): void {
    for (const held of [repair, rest.button]) held.setBusy(true);
    setBusy(true);
    notice.tell(start);
    listen();
    action()
      .catch((fault: unknown) => {
        notice.warn(sentenceOf(fault));
        if (fault instanceof InsertionFault) rest.add(fault.removeRest);
      })
      .finally(() => {
        clearTimeout(silence);
        for (const held of [repair, rest.button]) held.setBusy(false);
        setBusy(false);
        notice.reveal();
      });
  }

  repair.element.hidden = true;
  going.hidden = true;
  return {
    element: make('div', {}, going, repair.element, rest.button.element),
    get leavesRest() {
      return rest.isThere;
    },
    run(start, insert) {
      stopping = new AbortController();
      const { signal } = stopping;
      stop.setBusy(false);
      bar.value = 0;
      going.hidden = false;
      const watch: Watch = {
        signal,
        progress: (share) => {
          bar.value = Math.round(share * 100);
          notice.tell(signal.aborted ? 'Stopping…' : start);
          listen();
        },
      };
      work(start, async () => {
        try {
          const { sentence, inserted } = await insert(watch);
          if (inserted.missing.length > 0) setLacking(inserted);
          notice.tell(sentence + missingSentence(inserted) + newRowsSentence(inserted.fillsRows));
        } finally {
          going.hidden = true;
        }
      });
    },
  };
}
