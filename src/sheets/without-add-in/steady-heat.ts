/** The steady temperature of a run in a workbook without the add-in. */
import { CellError, type Cell, type ResultCell } from '../../functions/cell';
import { area, areaAddress, cellAddress } from '../plan/area';
import { BAD_ENTRY, text } from '../plan/formula';
import { SMALL_STYLE } from '../plan/palette';
import type { CellContent } from '../plan/plan';
import { hasCurrent, there, type ProtectionReferences } from '../protection/formulas';
import { PROTECTION_ROW, SIDE_TYPES } from '../protection/layout';
import type { NativeSteady } from '../protection/sheet';
import { PROTECTION_FIGURES } from '../station/protection-words';

/** What a steady temperature was worked out from when the workbook was written, and what it came to. */
export interface SteadyAtWriting {
  readonly amps: ResultCell;
  readonly size: ResultCell;
  readonly airC: ResultCell;
  readonly material: Cell;
  readonly steady: ResultCell;
}

/** What is kept of the writing, a column each. */
const WRITTEN = ['amps', 'size', 'steady'] as const;
const COLUMN = { amps: 0, size: 1, steady: 2 } as const;

const writtenArea = (column: number, rows: number) =>
  area(PROTECTION_ROW.first, SIDE_TYPES.fromA + column, rows, 1);

/** What a cell held at writing, to stand in a cell again. */
function asContent(value: ResultCell): CellContent {
  if (value instanceof CellError) {
    return { formula: `=${value.code === '#N/A' ? 'NA()' : BAD_ENTRY}` };
  }
  return typeof value === 'boolean' ? String(value) : value;
}

/**
 * The heat balance has no closed form, so the value of the writing stands wherever a run has the current and the wire that
 * it was worked out from: in its own row, or in any other once the runs are sorted. Else the cell says that it is not
 * computed.
 */
export function steadyAtWriting(
  row: ProtectionReferences,
  written: readonly SteadyAtWriting[],
): NativeSteady {
  const otherwise = text(PROTECTION_FIGURES.notComputed);
  const [first] = written;
  if (first === undefined || typeof first.airC !== 'number') {
    return { formula: `IF(${hasCurrent(row)},${otherwise},"")`, blocks: [] };
  }
  const rows = written.length;
  const of = (key: (typeof WRITTEN)[number]) => areaAddress(writtenArea(COLUMN[key], rows), 'both');
  const [amps, size] = [there(row, 'runAmps'), `${there(row, 'size')}&""`];
  const own = (key: (typeof WRITTEN)[number]) => `INDEX(${of(key)},${row.own.place})`;
  const same = (ampsThen: string, sizeThen: string) =>
    `(ABS(${amps}-${ampsThen})<=0.000001*${ampsThen})*(${sizeThen}=${size})`;
  const isOwn = `IFERROR(${same(own('amps'), own('size'))}=1,FALSE)`;
  const firstRow = cellAddress(PROTECTION_ROW.first, SIDE_TYPES.fromA, 'both');
  const other = `IFERROR(SUMPRODUCT(MAX(${same(of('amps'), of('size'))}*(ROW(${of('amps')})-ROW(${firstRow})+1))),0)`;
  const isAsThen = `IFERROR(AND(${row.protect.airC}=${first.airC},${row.rule.material}&""=${text(String(first.material ?? ''))}),FALSE)`;
  const found = `IF(${isOwn},${own('steady')},IF(${other}>0,INDEX(${of('steady')},${other}),${otherwise}))`;
  return {
    formula: `IF(${hasCurrent(row)},IF(${isAsThen},${found},${otherwise}),"")`,
    blocks: [
      {
        area: area(PROTECTION_ROW.header, SIDE_TYPES.fromA, 1, WRITTEN.length),
        cells: [['At writing, A', 'Wire', 'Steady heat']],
        style: { ...SMALL_STYLE, bold: true },
      },
      {
        area: area(PROTECTION_ROW.first, SIDE_TYPES.fromA, rows, WRITTEN.length),
        // A run without a current has none to be found by: no current is negative.
        cells: written.map(({ amps: ampsThen, size: sizeThen, steady }) =>
          typeof ampsThen === 'number' && typeof sizeThen === 'string'
            ? [ampsThen, sizeThen, asContent(steady)]
            : [-1, '', otherwise.slice(1, -1)],
        ),
        style: SMALL_STYLE,
      },
    ],
  };
}
