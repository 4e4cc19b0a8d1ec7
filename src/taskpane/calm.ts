/** Keeping up with a workbook that may change many times a second. */

export interface Calm {
  /** Asks for a run of the task. */
  readonly poke: () => void;
  readonly stop: () => void;
}

/**
 * Runs a task a little after a poke, however many pokes come meanwhile, and never two at a time; a poke during a run
 * leads to one more. A steady stream of pokes slows the runs down but cannot hold them off. The task must not reject.
 */
export function calmly(task: () => Promise<void>, delayMs: number): Calm {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let running = false;
  let wanted = false;
  let stopped = false;

  const run = async () => {
    timer = undefined;
    running = true;
    wanted = false;
    await task();
    running = false;
    if (wanted) poke();
  };
  const poke = () => {
    if (stopped) return;
    wanted = true;
    if (running || timer !== undefined) return;
    timer = setTimeout(() => void run(), delayMs);
  };
  return {
    poke,
    stop() {
      stopped = true;
      clearTimeout(timer);
    },
  };
}
