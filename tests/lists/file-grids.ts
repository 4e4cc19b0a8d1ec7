/** The sheets of a file as a spreadsheet that has opened it would hand them over. */
import { openWorkbook } from '../../src/lists/workbook';
import type { RawCell } from '../../src/lists/raw';
import type { ComputedGrid } from '../../src/sheets/plan/grid';

const EMPTY: RawCell = { value: null };

export async function fileGrids(bytes: Uint8Array): Promise<ComputedGrid[]> {
  const { tables } = await openWorkbook(bytes, 'open.xlsx');
  return tables.map(({ sheetName = '', rows }) => {
    const lines = new Map(rows.map(({ line, cells }) => [line, cells]));
    const height = Math.max(0, ...lines.keys());
    const width = rows.reduce((most, { cells }) => Math.max(most, cells.length), 0);
    const cells = Array.from({ length: height }, (_, row) =>
      Array.from({ length: width }, (__, column) => lines.get(row + 1)?.[column] ?? EMPTY),
    );
    return {
      sheetName,
      values: cells.map((row) => row.map(({ value }) => (value === '' ? null : value))),
      computed: cells.map((row) => row.map(({ computed }) => computed === true)),
    };
  });
}
