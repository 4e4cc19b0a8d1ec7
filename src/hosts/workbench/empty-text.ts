/** Empty text that a formula comes to is text, whenever it is read. */
import { CellValueType, type ICellData } from '@univerjs/core';
import { BaseReferenceObject, StringValueObject } from '@univerjs/engine-formula';
import { mendMethod } from './mend-method';

/** Read only, and never written into a cell: the engine takes a cell without content and formula for a blank one. */
const EMPTY_TEXT: ICellData = Object.freeze({ v: '', t: CellValueType.STRING, f: '=""' });

/**
 * Makes the engine read empty text as it stands in a spreadsheet. It (0.25.1) takes it for a blank cell, and so for 0, where
 * it was calculated in the same round, and for text where it was calculated before: what a formula came to hung on which
 * cells an edit had touched.
 */
export function readEmptyTextAsText(): void {
  mendMethod(
    BaseReferenceObject.prototype,
    'getCellData',
    (read) =>
      function (this: BaseReferenceObject, row: number, column: number) {
        const cell = read.call(this, row, column);
        if (cell?.v !== '' || cell.t !== CellValueType.STRING) return cell;
        const typed = this.getCurrentActiveSheetData()?.cellData.getValue(row, column);
        return cell === typed ? cell : EMPTY_TEXT;
      },
  );
  mendMethod(
    StringValueObject.prototype,
    'compare',
    (compare) =>
      function (this: StringValueObject, other, ...how) {
        return compare.call(this, other.isNull() ? StringValueObject.create('') : other, ...how);
      },
  );
}
