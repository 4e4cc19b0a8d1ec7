/** How the sheets look. */
import type { CellStyle } from './plan';

/**
 * Colours of the sheets. The warning fills differ in lightness as well as hue, so they hold up for colour-blind eyes
 * and on a grey print; the verdict says the same in words.
 */
export const PALETTE = {
  title: '#123b4a',
  heading: '#123b4a',
  headingText: '#ffffff',
  input: '#eef6f0',
  /** A cell that asks for nothing here. */
  notAsked: '#ffffff',
  quietText: '#4d5a60',
  line: '#b8c4c8',
  /** Over ampacity, or no fuse: darkest, white text. */
  danger: '#9c2f00',
  dangerText: '#ffffff',
  /** Over the drop target: middle. */
  over: '#f2a03d',
  /** An entry is missing or not understood. */
  unclear: '#d9d2e9',
  /** One thing left to confirm. */
  check: '#d6e6f2',
  /** Within a tenth of the target: lightest. */
  close: '#fff0a8',
  darkText: '#1b1b1b',
  /** Every second run of a long page. */
  band: '#eef1f2',
} as const;

/** The heading row of a table. */
export const HEADING_STYLE = {
  bold: true,
  wrap: true,
  align: 'centre',
  fill: PALETTE.heading,
  fontColour: PALETTE.headingText,
  border: 'all',
} as const satisfies CellStyle;

/** Fuse ratings: whole amps but for 7.5. */
export const FUSE_FORMAT = '[=7.5]0.0 "A";0 "A"';

/** Explanations beside what they explain. */
export const QUIET_STYLE = {
  italic: true,
  fontColour: PALETTE.quietText,
} as const satisfies CellStyle;

/** Workings: there to be followed, not to be read. */
export const SMALL_STYLE = {
  fontColour: PALETTE.quietText,
  fontSizePt: 8,
} as const satisfies CellStyle;
