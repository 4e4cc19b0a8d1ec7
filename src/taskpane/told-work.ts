/** Work that a button starts: the buttons wait, and what came of it is told. */
import { sentenceOf, type Notice } from './notice';

/** Starts work with a sentence; what it resolves to is told in the end, and what it throws is warned of. */
export function toldWork(notice: Notice, setBusy: (busy: boolean) => void) {
  return (start: string, does: () => Promise<string>): void => {
    setBusy(true);
    notice.tell(start);
    does()
      .then(notice.tell, (fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        setBusy(false);
        notice.reveal();
      });
  };
}
