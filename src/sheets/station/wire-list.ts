/** What a person says on the Wire list. */
import type { TypedCells } from './named-cells';

export const WIRE_CELL_KEYS = ['slack', 'tail', 'spool', 'plus', 'minus'] as const;
export type WireCellKey = (typeof WIRE_CELL_KEYS)[number];

/** Colours of a run's two conductors, in words of the user's own. */
export const COLOUR_KEYS = ['plus', 'minus'] as const;
export type ColourKey = (typeof COLOUR_KEYS)[number];
export type RunColours = Readonly<Partial<Record<ColourKey, string>>>;

/** What is said of a size; a length is in the schedule's unit. */
export interface WirePrice {
  readonly size: string;
  readonly areaMm2?: number | string;
  readonly price?: number | string;
  readonly spool?: number | string;
}

export interface WireListTyped {
  readonly cells?: TypedCells<WireCellKey>;
  /** Run by run, in the order of the schedule. */
  readonly runs?: readonly RunColours[];
  readonly prices?: readonly WirePrice[];
}
