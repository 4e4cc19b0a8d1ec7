/** An insertion under way in a section: how far it is, the way to stop it, and what can be done about what came of it. */
import { InsertionFault, type Inserted, type Watch } from '../hosts/sheet-host';
import { commandButton, type CommandButton } from './command-button';
import { missingSentence, type ToldInsertion } from './insertion';
import { make } from './make';
import { sentenceOf, type Notice } from './notice';

/** So long without a step, a person begins to wonder. */
const SILENCE_MS = 4000;
const NO_ANSWER =
  'The spreadsheet has not answered yet. If a cell is being edited, press Enter or Esc; it goes on by itself.';

export interface Inserting {
  readonly element: HTMLElement;
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
  let next: (() => Promise<void>) | undefined;
  const follow = (text: string, start: string) => {
    const button: CommandButton = commandButton(text, 'outline', () => {
      const action = next;
      if (action !== undefined) work(start, action);
    });
    return button;
  };
  const repair = follow('Repair the sheet', 'Repairing the sheet…');
  const remove = follow('Remove what is left of it', 'Removing what is left…');
  const going = make('div', { class: 'loom-going' }, bar, stop.element);
  const element = make('div', {}, going, repair.element, remove.element);

  const offer = (button: CommandButton | undefined, action?: () => Promise<void>) => {
    next = action;
    for (const one of [repair, remove]) one.element.hidden = one !== button;
  };
  const tellInserted = (sentence: string, inserted: Inserted) => {
    notice.tell(sentence + missingSentence(inserted));
    if (inserted.missing.length === 0) return;
    offer(repair, async () => {
      const again = await inserted.repair();
      tellInserted(again.missing.length === 0 ? 'The sheet is complete.' : 'Not all yet.', again);
    });
  };
  const tellFault = (fault: unknown) => {
    notice.warn(sentenceOf(fault));
    const removeRest = fault instanceof InsertionFault ? fault.removeRest : undefined;
    if (removeRest === undefined) return;
    offer(remove, async () => {
      await removeRest();
      notice.tell('Nothing of it is left.');
    });
  };

  function work(start: string, action: () => Promise<void>): void {
    setBusy(true);
    offer(undefined);
    notice.tell(start);
    action()
      .catch(tellFault)
      .finally(() => {
        setBusy(false);
        notice.reveal();
      });
  }

  offer(undefined);
  going.hidden = true;
  return {
    element,
    run(start, insert) {
      stopping = new AbortController();
      stop.setBusy(false);
      bar.value = 0;
      going.hidden = false;
      let silence: ReturnType<typeof setTimeout> | undefined;
      const listen = () => {
        clearTimeout(silence);
        silence = setTimeout(() => {
          notice.tell(NO_ANSWER);
        }, SILENCE_MS);
      };
      const watch: Watch = {
        signal: stopping.signal,
        progress: (share) => {
          bar.value = Math.round(share * 100);
          notice.tell(stopping.signal.aborted ? 'Stopping…' : start);
          listen();
        },
      };
      listen();
      work(start, async () => {
        try {
          const { sentence, inserted } = await insert(watch);
          tellInserted(sentence, inserted);
        } finally {
          clearTimeout(silence);
          going.hidden = true;
        }
      });
    },
  };
}
