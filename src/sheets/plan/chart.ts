/** A bar chart over empty cells, as data: it shows what stands in cells of its sheet. */
import type { Area } from './area';

/** How bars of a series look; each can be told from the others on a grey print. */
export type BarLook = 'plain' | 'hatched' | 'outlined';

export interface ChartSeries {
  /** The cell of its name, and what stands there. */
  readonly name: Area;
  readonly nameText: string;
  readonly values: Area;
  readonly look: BarLook;
}

export interface ChartPlan {
  readonly first: Area;
  /** By which it is also known among the charts of its sheet. */
  readonly title: string;
  /** For whoever cannot see it. */
  readonly description: string;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly categories: Area;
  /** What stands along the names, and along the figures. */
  readonly categoryTitle: string;
  readonly valueTitle: string;
  readonly series: readonly ChartSeries[];
  readonly numberFormat: string;
}
