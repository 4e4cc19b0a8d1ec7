import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { calmly } from '../../src/taskpane/calm';

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

/** A task that ends when told, and counts how often and how many at a time it runs. */
function slowTask() {
  const ends: (() => void)[] = [];
  const seen = { runs: 0, now: 0, most: 0 };
  const task = async () => {
    seen.runs += 1;
    seen.now += 1;
    seen.most = Math.max(seen.most, seen.now);
    await new Promise<void>((resolve) => ends.push(resolve));
    seen.now -= 1;
  };
  const endOne = async () => {
    ends.shift()?.();
    await vi.advanceTimersByTimeAsync(0);
  };
  return { task, seen, endOne };
}

describe('keeping calm', () => {
  test('many pokes make one run', async () => {
    const { task, seen } = slowTask();
    const calm = calmly(task, 100);
    for (let poke = 0; poke < 50; poke += 1) calm.poke();
    expect(seen.runs).toBe(0);
    await vi.advanceTimersByTimeAsync(100);
    expect(seen.runs).toBe(1);
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen.runs).toBe(1);
  });

  test('pokes during a run lead to one more, after it, never beside it', async () => {
    const { task, seen, endOne } = slowTask();
    const calm = calmly(task, 100);
    calm.poke();
    await vi.advanceTimersByTimeAsync(100);
    calm.poke();
    calm.poke();
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen.runs).toBe(1);
    await endOne();
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen).toMatchObject({ runs: 2, most: 1 });
    await endOne();
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen.runs).toBe(2);
  });

  test('a steady stream of pokes does not hold a run off', async () => {
    const { task, seen } = slowTask();
    const calm = calmly(task, 100);
    for (let poke = 0; poke < 12; poke += 1) {
      calm.poke();
      await vi.advanceTimersByTimeAsync(10);
    }
    expect(seen.runs).toBe(1);
  });

  test('after the stop nothing runs', async () => {
    const { task, seen } = slowTask();
    const calm = calmly(task, 100);
    calm.poke();
    calm.stop();
    calm.poke();
    await vi.advanceTimersByTimeAsync(1000);
    expect(seen.runs).toBe(0);
  });
});
