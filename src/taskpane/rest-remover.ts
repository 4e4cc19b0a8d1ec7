/** "Remove what is left of it": offered until nothing is left, whatever else is done meanwhile. */
import { InsertionFault } from '../hosts/sheet-host';
import { commandButton, type CommandButton } from './command-button';

type Removal = () => Promise<void>;

export interface RestRemover {
  readonly button: CommandButton;
  readonly isThere: boolean;
  /** Adds what failed insertions left. */
  add(...removals: readonly (Removal | undefined)[]): void;
}

/** `start` is handed the removal of everything that is left, when the button is pressed. */
export function restRemover(start: (removal: Removal) => void): RestRemover {
  let removals: readonly Removal[] = [];
  const button = commandButton('Remove what is left of it', 'outline', () => {
    start(removeAll);
  });
  const keep = (left: readonly Removal[]) => {
    removals = left;
    button.element.hidden = left.length === 0;
  };

  /** What cannot be removed stays on offer and does not keep the others. Rejects with the first reason. */
  async function removeAll(): Promise<void> {
    const left: Removal[] = [];
    const faults: unknown[] = [];
    for (const removal of removals) {
      try {
        await removal();
      } catch (fault) {
        faults.push(fault);
        left.push((fault instanceof InsertionFault ? fault.removeRest : undefined) ?? removal);
      }
    }
    keep(left);
    if (faults.length === 0) return;
    const sentences = faults.map((fault) => (fault instanceof Error ? fault.message : ''));
    // Its own removal is on offer here already.
    throw new Error(sentences.join(' '), { cause: faults[0] });
  }

  keep([]);
  return {
    button,
    get isThere() {
      return removals.length > 0;
    },
    add(...more) {
      keep([...removals, ...more.filter((removal) => removal !== undefined)]);
    },
  };
}
