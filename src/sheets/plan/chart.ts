/** A bar chart over empty cells, as data: it shows what stands in cells of its sheet. */
import type { Area } from './area';

/** How bars of a series look; each can be told from the others on a grey print. */
export type BarLook = 'plain' | 'hatched' | 'outlined';

export interface ChartSeries {
  /** The cell of its name. */
  readonly name: Area;
  readonly values: Area;
  readonly look: BarLook;
}

export interface ChartPlan {
  readonly first: Area;
  readonly title: string;
  /** For whoever cannot see it. */
  readonly description: string;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly categories: Area;
  readonly series: readonly ChartSeries[];
  readonly numberFormat: string;
}
