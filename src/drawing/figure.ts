/** A figure as marks on paper, in points from the top left: what every form that it is written in is made from. */
import type { RunLevel } from '../sheets/plan/diagram';
import { textWidthPt } from './text-width';

export type Point = readonly [xPt: number, yPt: number];

export type Dash = 'solid' | 'dash' | 'dot' | 'dashDot' | 'longDash';

/** What a mark is coloured for; the form chooses the colour. */
export type Ink = 'line' | 'quiet' | 'paper' | RunLevel;

export interface LineMark {
  readonly kind: 'line';
  readonly points: readonly Point[];
  readonly widthPt: number;
  readonly dash: Dash;
  readonly ink: Ink;
  readonly arrow?: boolean;
}

export interface BoxMark {
  readonly kind: 'box' | 'round';
  readonly xPt: number;
  readonly yPt: number;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly fill: Ink;
  /** Line around it; none where it is left out. */
  readonly edgePt?: number;
}

export interface TextMark {
  readonly kind: 'text';
  readonly text: string;
  /** Start of the text on its base line. */
  readonly xPt: number;
  readonly yPt: number;
  readonly sizePt: number;
  readonly bold: boolean;
  readonly ink: Ink | { readonly on: RunLevel };
}

export type Mark = LineMark | BoxMark | TextMark;

export interface Figure {
  readonly title: string;
  /** All that it shows, in words. */
  readonly description: string;
  readonly widthPt: number;
  readonly heightPt: number;
  readonly marks: readonly Mark[];
}

/** Share of the type size that letters reach above and below their base line. */
const RISE = 0.95;
const FALL = 0.25;

export interface Box {
  readonly xPt: number;
  readonly yPt: number;
  readonly widthPt: number;
  readonly heightPt: number;
}

/** The room that a text takes. */
export function textBox({ text, xPt, yPt, sizePt, bold }: TextMark): Box {
  return {
    xPt,
    yPt: yPt - RISE * sizePt,
    widthPt: textWidthPt(text, { sizePt, bold }),
    heightPt: (RISE + FALL) * sizePt,
  };
}
