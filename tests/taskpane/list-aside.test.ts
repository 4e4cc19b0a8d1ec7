/** The reader of files aside from the page: what it is asked, how it is ended, and what stands in for it. */
import { MessageChannel } from 'node:worker_threads';
import { describe, expect, it } from 'vitest';
import { UnreadableFile } from '../../src/lists/unreadable';
import { firstAnswers, openList } from '../../src/taskpane/answered-list';
import { openAside, type Reader } from '../../src/taskpane/list-aside';
import type { Answered, Asked } from '../../src/taskpane/list-talk';
import { HURRIED_LISTS } from '../lists/hurried-lists';

const LIST = 'Name,From where,Amps,Length (ft)\nBoard,,24,7\nRadio,Board,14,5\n';
const bytes = () => Promise.resolve(new TextEncoder().encode(LIST));

type Hear = (event: never) => void;

/** A reader that answers as a test says; what goes to and fro is copied, as it is between threads. */
function reader(answer: (asked: Asked, say: (said: Answered) => void, fail: () => void) => void) {
  const hears = new Map<string, Hear>();
  const told: Asked[] = [];
  let isEnded = false;
  const tell = (type: string, event: object) => {
    setTimeout(() => {
      if (!isEnded) hears.get(type)?.(event as never);
    });
  };
  const stand: Reader = {
    addEventListener: (type: string, hear: unknown) => {
      hears.set(type, hear as Hear);
    },
    terminate: () => {
      isEnded = true;
    },
    postMessage: (asked: Asked) => {
      told.push(asked);
      answer(
        structuredClone(asked),
        (said) => {
          tell('message', { data: structuredClone(said) });
        },
        () => {
          tell('error', { message: 'out of order', preventDefault: () => undefined });
        },
      );
    },
  };
  return { start: () => stand, told, isEnded: () => isEnded };
}

/** Answers as the worker does. */
function honest() {
  let list: Awaited<ReturnType<typeof openList>> | undefined;
  return reader((asked, say) => {
    if (asked.ask === 'read') {
      say({ says: 'read', reading: list!.read(asked.answers) });
      return;
    }
    void openList(asked.bytes, asked.fileName).then((opened) => {
      list = opened;
      say({ says: 'opened', questions: opened.questions });
    });
  });
}

describe('a file read aside', () => {
  it('is what it is when read in the page', async () => {
    const stand = honest();
    const list = await openAside(bytes, 'board.csv', { start: stand.start });
    const inPage = await openList(await bytes(), 'board.csv');
    expect(list.questions).toEqual(inPage.questions);
    const answers = firstAnswers(inPage.questions);
    expect(await list.read(answers)).toEqual(inPage.read(answers));
    list.close();
    expect(stand.isEnded()).toBe(true);
  });

  it('answers each question by itself, however fast they come', async () => {
    const list = await openAside(bytes, 'board.csv', { start: honest().start });
    const [fed, flat] = await Promise.all([list.read([['From where', 'Fed from']]), list.read([])]);
    expect(fed.report?.lacksFeeders).toBe(false);
    expect(flat.report?.lacksFeeders).toBe(true);
  });

  it('is left with a sentence when it takes too long, and its reader ended', async () => {
    const stand = reader(() => {
      // Keeps its thread busy.
    });
    const opened = openAside(bytes, 'board.csv', { start: stand.start, patienceS: 0.05 });
    await expect(opened).rejects.toThrow(UnreadableFile);
    await expect(opened).rejects.toThrow(/^"board\.csv" was still not read after 0\.05 seconds/);
    expect(stand.isEnded()).toBe(true);
  });

  it('says so again when it is asked after that', async () => {
    const stand = reader((asked, say) => {
      if (asked.ask === 'open') say({ says: 'opened', questions: [] });
    });
    const list = await openAside(bytes, 'board.csv', { start: stand.start, patienceS: 0.05 });
    await expect(list.read([])).rejects.toThrow(/was still not read/);
    await expect(list.read([])).rejects.toThrow(/was still not read/);
    expect(stand.told.filter(({ ask }) => ask === 'read')).toHaveLength(1);
  });

  it('is refused in the words of the reader', async () => {
    const { start, isEnded } = reader((_, say) => {
      say({ says: 'refused', sentence: '"board.csv" is empty.' });
    });
    await expect(openAside(bytes, 'board.csv', { start })).rejects.toThrow('"board.csv" is empty.');
    expect(isEnded()).toBe(true);
  });

  it('is read in the page where there is no other thread', async () => {
    const none = () => {
      throw new Error('no workers here');
    };
    const failing = reader((_asked, _say, fail) => {
      fail();
    });
    for (const start of [none, failing.start]) {
      const list = await openAside(bytes, 'board.csv', { start });
      expect((await list.read([])).report?.runs).toHaveLength(2);
    }
  });

  it('tells of a fault once it has started, and reads nothing twice', async () => {
    const { start, told } = reader((_, say, fail) => {
      say({ says: 'ready' });
      fail();
    });
    await expect(openAside(bytes, 'board.csv', { start })).rejects.toThrow('out of order');
    expect(told).toHaveLength(1);
  });
});

it('has reports that pass between threads as they are', async () => {
  const { port1, port2 } = new MessageChannel();
  let reports = 0;
  for (const { bytes: given, fileName } of Object.values(HURRIED_LISTS)) {
    const list = await openList(await given(), fileName);
    const reading = list.read(firstAnswers(list.questions));
    const received = new Promise((resolve) => port2.once('message', resolve));
    port1.postMessage(reading);
    expect(await received).toEqual(reading);
    reports += reading.report === undefined ? 0 : 1;
  }
  port1.close();
  expect(reports).toBeGreaterThan(5);
});
