/**
 * A file opened by a reader of its own thread, which is ended when it takes too long: however a file is made, the page
 * stays at hand. Where a page cannot have such a thread, the file is read in the page, with the same results.
 */
import { quotedName, UnreadableFile } from '../lists/unreadable';
import type { ColumnQuestion } from '../lists/read-runs';
import type { AnsweredList, Answers, Reading } from './answered-list';
import type { Answered, Asked } from './list-talk';

/** A list of as many runs as are taken is read in a tenth of this by a slow machine. */
const PATIENCE_S = 15;

/** A list that is open aside. */
export interface ListAside {
  readonly questions: readonly ColumnQuestion[];
  /** Rejects with a sentence where it takes too long. */
  read(answers: Answers): Promise<Reading>;
  /** Lets go of the file. */
  close(): void;
}

/** As much of a worker as is needed. */
export type Reader = Pick<Worker, 'addEventListener' | 'terminate' | 'postMessage'>;

const startWorker = (): Reader => new Worker(new URL('./list-worker.ts', import.meta.url));

class NotStarted extends Error {}

/** One question after the other, each answered in time or the reader is ended. */
class Conversation {
  private isReady = false;
  private settle: ((said: Answered | Error) => void) | undefined;
  private last: Promise<unknown> = Promise.resolve();
  private ended: Error | undefined;

  constructor(
    private readonly reader: Reader,
    private readonly fileName: string,
    private readonly patienceS: number,
  ) {
    reader.addEventListener('message', ({ data }: MessageEvent<Answered>) => {
      if (data.says === 'ready') this.isReady = true;
      else this.settle?.(data);
    });
    reader.addEventListener('error', (event: ErrorEvent) => {
      event.preventDefault();
      this.settle?.(this.isReady ? new Error(event.message) : new NotStarted());
    });
  }

  ask(asked: Asked, transfer: Transferable[] = []): Promise<Answered> {
    const answered = this.last.then(() => this.askNow(asked, transfer));
    this.last = answered.catch(() => undefined);
    return answered;
  }

  private async askNow(asked: Asked, transfer: Transferable[]): Promise<Answered> {
    if (this.ended !== undefined) throw this.ended;
    let timer: ReturnType<typeof setTimeout> | undefined;
    const said = await new Promise<Answered | Error>((settle) => {
      this.settle = settle;
      timer = setTimeout(() => {
        settle(new UnreadableFile(tooLong(this.fileName, this.patienceS)));
      }, this.patienceS * 1000);
      this.reader.postMessage(asked, transfer);
    });
    clearTimeout(timer);
    if (!(said instanceof Error)) return said;
    this.reader.terminate();
    this.ended = said;
    throw said;
  }
}

function tooLong(fileName: string, seconds: number): string {
  return `${quotedName(fileName)} was still not read after ${seconds} seconds, and was left. Copy its list of runs into a new workbook, or save it as .csv, and take that in.`;
}

/**
 * Opens a file aside; rejects where no list is to be found in it, or in time, with the sentence that says so. The bytes
 * are handed over.
 */
export async function openAside(
  bytes: () => Promise<Uint8Array<ArrayBuffer>>,
  fileName: string,
  { start = startWorker, patienceS = PATIENCE_S } = {},
): Promise<ListAside> {
  let reader: Reader;
  try {
    reader = start();
  } catch {
    return openHere(await bytes(), fileName);
  }
  const talk = new Conversation(reader, fileName, patienceS);
  const close = () => {
    reader.terminate();
  };
  const given = await bytes();
  const said = await talk
    .ask({ ask: 'open', bytes: given, fileName }, [given.buffer])
    .catch((fault: unknown) => {
      if (fault instanceof NotStarted) return fault;
      throw fault;
    });
  if (said instanceof NotStarted) return openHere(await bytes(), fileName);
  if (said.says === 'opened') {
    const { questions } = said;
    return {
      questions,
      close,
      read: async (answers) => readingOf(await talk.ask({ ask: 'read', answers })),
    };
  }
  close();
  throw new UnreadableFile(
    said.says === 'refused' ? said.sentence : `${quotedName(fileName)} was not read.`,
  );
}

function readingOf(said: Answered): Reading {
  if (said.says !== 'read') throw new Error(`the reader said "${said.says}"`);
  return said.reading;
}

async function openHere(bytes: Uint8Array, fileName: string): Promise<ListAside> {
  const { openList } = await import('./answered-list');
  const list: AnsweredList = await openList(bytes, fileName);
  return {
    questions: list.questions,
    read: (answers) => Promise.resolve(list.read(answers)),
    close() {
      // There is nothing but the page itself.
    },
  };
}
