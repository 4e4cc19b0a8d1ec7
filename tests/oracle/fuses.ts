/** Which fuse protects a run, and what it is made to do. */
import { FUSE_KINDS } from '../../src/core/tables/fuse-kinds';
import type { StationContent } from '../../src/sheets/station/content';
import type { Figure } from './figures';
import { NO_ANSWER } from './figures';
import type { House } from './house';
import type { Run } from './runs';

export interface Protector {
  readonly ratingA: number;
  readonly isOwn: boolean;
  /** Row of the run that it stands in. */
  readonly row: number;
  /** Times to open are published for its kind. */
  readonly isBlade: boolean;
  /** Nothing where only its maker knows. */
  readonly breaksA: number | undefined;
  readonly ratedVolts: number | undefined;
  readonly makersI2t: number | undefined;
}

/** Blades up to 100 A, bolted in from 125 A, where nothing else is said. */
export function kindOf(typed: string | number | undefined, house: string, ratingA: number): string {
  const kind = typed === undefined ? house : String(typed);
  return kind === 'by rating' ? (ratingA >= 125 ? 'bolt-in' : 'blade') : kind;
}

export function figuresOf(
  kind: string,
  typed: { readonly breaks?: string | number; readonly ratedVolts?: string | number },
) {
  const usual = kind in FUSE_KINDS ? FUSE_KINDS[kind as keyof typeof FUSE_KINDS] : undefined;
  return {
    breaksA: typed.breaks === undefined ? usual?.breaksA : Number(typed.breaks),
    ratedVolts: typed.ratedVolts === undefined ? usual?.ratedVolts : Number(typed.ratedVolts),
  };
}

/** Its own fuse, or the nearest upstream; nothing where there is none or none fits. `fitting` by row. */
export function protectorOf(
  run: Run,
  house: House,
  fitting: readonly Figure[],
  { protection }: StationContent,
): Protector | undefined {
  for (let at: Run | undefined = run; at !== undefined; at = at.feeder) {
    if (!at.fused) continue;
    const ratingA = fitting[at.row]!;
    if (ratingA === NO_ANSWER) return undefined;
    const typed = protection?.fuses?.[at.row] ?? {};
    const kind = kindOf(typed.kind, house.fuseKind, ratingA);
    return {
      ratingA,
      isOwn: at === run,
      row: at.row,
      isBlade: kind === 'blade',
      ...figuresOf(kind, typed),
      makersI2t: typed.i2t === undefined ? undefined : Number(typed.i2t),
    };
  }
  return undefined;
}
