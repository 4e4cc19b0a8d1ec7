/** How warnings look, darkest for what starts fires. */
import type { RunLevel } from './diagram';
import { PALETTE } from './palette';
import type { CellStyle } from './plan';

export const HIGHLIGHT_STYLES = {
  danger: { fill: PALETTE.danger, fontColour: PALETTE.dangerText, bold: true },
  fails: { fill: PALETTE.over, fontColour: PALETTE.darkText, bold: true },
  unclear: { fill: PALETTE.unclear, fontColour: PALETTE.darkText, italic: true },
  check: { fill: PALETTE.check, fontColour: PALETTE.darkText },
  close: { fill: PALETTE.close, fontColour: PALETTE.darkText },
} as const;
export type HighlightKey = keyof typeof HIGHLIGHT_STYLES;

/** By the level of a verdict; what is ok looks like any other cell. */
export const LEVEL_STYLES: Readonly<Record<RunLevel, CellStyle>> = {
  danger: HIGHLIGHT_STYLES.danger,
  fails: HIGHLIGHT_STYLES.fails,
  unclear: HIGHLIGHT_STYLES.unclear,
  check: HIGHLIGHT_STYLES.check,
  ok: {},
};
