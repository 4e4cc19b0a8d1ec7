/** How warnings look, darkest for what starts fires. */
import { PALETTE } from './palette';

export const HIGHLIGHT_STYLES = {
  danger: { fill: PALETTE.danger, fontColour: PALETTE.dangerText, bold: true },
  fails: { fill: PALETTE.over, fontColour: PALETTE.darkText, bold: true },
  unclear: { fill: PALETTE.unclear, fontColour: PALETTE.darkText, bold: true },
  close: { fill: PALETTE.close, fontColour: PALETTE.darkText },
} as const;
export type HighlightKey = keyof typeof HIGHLIGHT_STYLES;
