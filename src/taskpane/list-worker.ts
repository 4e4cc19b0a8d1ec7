/** The reader of files aside from the page, as a worker: a file made to harm keeps this one busy, and the pane goes on. */
import { UnreadableFile } from '../lists/unreadable';
import { openList, type AnsweredList } from './answered-list';
import type { Answered, Asked } from './list-talk';

interface WorkerScope {
  postMessage(said: Answered): void;
  addEventListener(type: 'message', hear: (event: MessageEvent<Asked>) => void): void;
}
const scope = self as unknown as WorkerScope;

let list: AnsweredList | undefined;

async function answer(asked: Asked): Promise<Answered> {
  if (asked.ask === 'read') {
    if (list === undefined) throw new Error('nothing is open');
    return { says: 'read', reading: list.read(asked.answers) };
  }
  try {
    list = await openList(asked.bytes, asked.fileName);
  } catch (fault) {
    if (!(fault instanceof UnreadableFile)) throw fault;
    return { says: 'refused', sentence: fault.message };
  }
  return { says: 'opened', questions: list.questions };
}

scope.addEventListener('message', ({ data }) => {
  answer(data).then(
    (said) => {
      scope.postMessage(said);
    },
    (fault: unknown) => {
      // A fault of ours: thrown where the page's side hears of it.
      setTimeout(() => {
        throw fault;
      });
    },
  );
});
scope.postMessage({ says: 'ready' });
