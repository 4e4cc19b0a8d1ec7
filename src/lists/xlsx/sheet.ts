/** The cells of one sheet, as rows. */
import { unescapeText } from '../escape';
import type { RawCell, RawRow } from '../raw';
import { MOST, TooMuch } from '../bounds';
import type { Shown } from './formats';
import { Enough, readPart, type Attributes } from './part';
import { spreadMerged, type Merged } from './merged';
import { placeOf } from './place';
import { TextPieces } from './texts';
import type { Archive } from './zip';

/** What the sheets of a workbook share. */
export interface Shared {
  readonly texts: readonly string[];
  readonly formats: readonly Shown[];
  /** Days count from 1904 on. */
  readonly from1904: boolean;
  /** Cells that may still come, of all sheets. */
  cellsLeft: number;
}

/** What comes behind the cells and their merged areas, and is not read. */
const BEHIND: ReadonlySet<string> = new Set([
  'phoneticPr',
  'conditionalFormatting',
  'dataValidations',
  'hyperlinks',
  'printOptions',
  'pageMargins',
  'pageSetup',
  'headerFooter',
  'drawing',
  'tableParts',
  'extLst',
]);

const MS_PER_DAY = 86_400_000;
/** 1 January 1970 as a spreadsheet counts days, from 1900 and from 1904: ECMA-376 part 1, 18.17.4.1. */
const EPOCH = { from1900: 25_569, from1904: 24_107 } as const;

function dateCell(days: number, from1904: boolean): RawCell {
  const time = Math.round((days - (from1904 ? EPOCH.from1904 : EPOCH.from1900)) * MS_PER_DAY);
  const date = new Date(time);
  return Number.isNaN(date.getTime())
    ? { value: days, date: true }
    : { value: date.toISOString().slice(0, 10), date: true };
}

/** What a cell's text means, by its type: ECMA-376 part 1, 18.18.11. */
function cellOf(type: string, text: string, shown: Shown, shared: Shared): RawCell {
  switch (type) {
    case 's':
      return { value: shared.texts[Number(text)] ?? null };
    case 'str':
      return { value: unescapeText(text) };
    case 'e':
      return { value: text };
    case 'b':
      return { value: text === '1' || text.toLowerCase() === 'true' };
    case 'd':
      return { value: text.slice(0, 10), date: true };
    default: {
      const number = Number(text);
      if (text.trim() === '' || Number.isNaN(number)) return { value: text === '' ? null : text };
      if (shown === 'date') return dateCell(number, shared.from1904);
      return shown === 'percent' ? { value: number, percent: true } : { value: number };
    }
  }
}

/** The rows of a sheet that have something in them. Throws TooMuch, and what reading a part throws. */
export function readSheet(archive: Archive, part: string, shared: Shared): readonly RawRow[] {
  const rows: { line: number; cells: RawCell[] }[] = [];
  const merged: Merged[] = [];
  const inline = new TextPieces();
  let line = 0;
  let cells: RawCell[] = [];
  let attributes: Attributes = {};
  let column = 0;
  let isComputed = false;
  let isValue = false;
  let value: string | undefined;

  const endCell = () => {
    const type = attributes['t'] ?? 'n';
    const text = inline.taken();
    const shown = shared.formats[Number(attributes['s'] ?? 0)] ?? 'number';
    const cell =
      type === 'inlineStr'
        ? { value: text }
        : value === undefined
          ? { value: null }
          : cellOf(type, value, shown, shared);
    if (cell.value === null && !isComputed) return;
    if (column >= MOST.columns) throw new TooMuch('columns');
    if ((shared.cellsLeft -= 1) < 0) throw new TooMuch('cells');
    while (cells.length < column) cells.push({ value: null });
    cells[column] = isComputed ? { ...cell, computed: true } : cell;
  };

  readPart(archive, part, {
    opened(name, given) {
      switch (name) {
        case 'row':
          line = Number(given['r'] ?? line + 1);
          cells = [];
          column = -1;
          break;
        case 'c':
          attributes = given;
          column = placeOf(given['r'] ?? '')?.column ?? column + 1;
          isComputed = false;
          value = undefined;
          break;
        case 'f':
          isComputed = true;
          break;
        case 'v':
          isValue = true;
          value = '';
          break;
        case 'mergeCell':
          merged.push(...mergedOf(given['ref']));
          break;
        default:
          if (BEHIND.has(name)) throw new Enough();
          inline.opened(name);
      }
    },
    closed(name) {
      if (name === 'v') isValue = false;
      else if (name === 'c') endCell();
      else if (name === 'row' && cells.length > 0) {
        if (rows.length >= MOST.rowsOfSheet) throw new TooMuch('rowsOfSheet');
        rows.push({ line, cells });
      } else inline.closed(name);
    },
    text(piece) {
      if (isValue) value += piece;
      else inline.text(piece);
    },
  });
  // Rows stand in order in all but broken files.
  rows.sort((one, other) => one.line - other.line);
  spreadMerged(rows, merged);
  return rows;
}

function mergedOf(reference: string | undefined): readonly Merged[] {
  const [from, to] = (reference ?? '').split(':').map(placeOf);
  return from === undefined || to === undefined ? [] : [{ from, to }];
}
