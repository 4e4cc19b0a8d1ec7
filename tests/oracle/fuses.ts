/** Which fuse protects a run. */
import type { Figure } from './figures';
import { NO_ANSWER } from './figures';
import type { Run } from './runs';

export interface Protector {
  readonly ratingA: number;
  readonly isOwn: boolean;
}

/** Its own fuse, or the nearest upstream; nothing where there is none or none fits. `fitting` by row. */
export function protectorOf(run: Run, fitting: readonly Figure[]): Protector | undefined {
  for (let at: Run | undefined = run; at !== undefined; at = at.feeder) {
    if (!at.fused) continue;
    const ratingA = fitting[at.row]!;
    return ratingA === NO_ANSWER ? undefined : { ratingA, isOwn: at === run };
  }
  return undefined;
}
