/** A queue for actions that must not run beside one another. */

export type Queue = <T>(action: () => Promise<T>) => Promise<T>;

/** Runs each action when the one before it has ended, well or badly, in the order they were asked for. */
export function oneAtATime(): Queue {
  let last: Promise<unknown> = Promise.resolve();
  return (action) => {
    const done = last.then(action);
    last = done.catch(() => undefined);
    return done;
  };
}
