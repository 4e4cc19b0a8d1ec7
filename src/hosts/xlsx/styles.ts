/** How cells look, in the terms of the file. */
import type { Style } from 'exceljs';
import type { CellStyle } from '../../sheets/plan/plan';
import { PALETTE } from '../../sheets/plan/palette';

/**
 * LibreOffice brings letters of the same widths wherever it runs; those of other usual faces it may have to replace with
 * wider ones, and columns are as wide as the letters of this font.
 */
const FONT = { name: 'Arial', family: 2 } as const;
const FONT_SIZE_PT = 10;

/**
 * The font of cells without a style, which says how wide a character of a column is (ECMA-376 part 1, 18.3.1.13): 7 pixels
 * in a spreadsheet that rounds to pixels, and little more where it is taken as it is; at 10 points that would be 6 % more.
 */
const DEFAULT_SIZE_PT = 9.5;
export const DEFAULT_FONT = `<font><sz val="${DEFAULT_SIZE_PT}"/><color theme="1"/><name val="${FONT.name}"/><family val="${FONT.family}"/></font>`;

const ALIGNMENTS = { left: 'left', centre: 'center', right: 'right' } as const;

/** "#rrggbb" as the file writes an opaque colour. */
function colour(hex: string): { argb: string } {
  return { argb: `FF${hex.slice(1).toUpperCase()}` };
}

/** The style of a cell. */
export function cellStyle(style: CellStyle): Partial<Style> {
  const line = { style: 'thin', color: colour(PALETTE.line) } as const;
  return {
    font: {
      ...FONT,
      size: style.fontSizePt ?? FONT_SIZE_PT,
      ...(style.bold === true ? { bold: true } : {}),
      ...(style.italic === true ? { italic: true } : {}),
      ...(style.fontColour === undefined ? {} : { color: colour(style.fontColour) }),
    },
    ...(style.fill === undefined
      ? {}
      : { fill: { type: 'pattern', pattern: 'solid', fgColor: colour(style.fill) } }),
    ...(style.numberFormat === undefined ? {} : { numFmt: style.numberFormat }),
    alignment: {
      vertical: style.atTop === true ? 'top' : 'middle',
      ...(style.align === undefined ? {} : { horizontal: ALIGNMENTS[style.align] }),
      ...(style.wrap === true ? { wrapText: true } : {}),
      ...(style.shrink === true ? { shrinkToFit: true } : {}),
    },
    ...(style.border === undefined
      ? {}
      : {
          border:
            style.border === 'below'
              ? { bottom: line }
              : { top: line, left: line, bottom: line, right: line },
        }),
  };
}

/** The style that a conditional format lays over a cell: only what differs. */
export function highlightStyle(style: CellStyle): Partial<Style> {
  return {
    font: {
      ...(style.bold === true ? { bold: true } : {}),
      ...(style.italic === true ? { italic: true } : {}),
      ...(style.fontColour === undefined ? {} : { color: colour(style.fontColour) }),
    },
    // Spreadsheets differ in which of the two colours of a solid fill a conditional format shows.
    ...(style.fill === undefined
      ? {}
      : {
          fill: {
            type: 'pattern',
            pattern: 'solid',
            fgColor: colour(style.fill),
            bgColor: colour(style.fill),
          },
        }),
  };
}
