/** Cells between the grid's formula engine and our functions: every kind kept apart, as Excel hands them over. */
import type { Nullable } from '@univerjs/core';
import {
  ArrayValueObject,
  BooleanValueObject,
  ErrorValueObject,
  NullValueObject,
  NumberValueObject,
  StringValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  type ErrorType,
  type FunctionVariantType,
} from '@univerjs/engine-formula';
import {
  CellError,
  ERROR_CODES,
  type Cell,
  type ErrorCode,
  type Matrix,
  type ResultCell,
  type ResultMatrix,
} from '../../functions/cell';

/** Finds the sentence that one of our functions left at a cell, so that an error passed on keeps its reason. */
export type SentenceAt = (
  sheetId: string,
  row: number,
  column: number,
  code: string,
) => string | null;

const PASSED_ON = 'an error comes in with an argument; fix it where it arises';

/** The grid knows errors that Excel's functions never receive (such as #CYCLE!); they count as #VALUE!. */
function errorCode(text: string): ErrorCode {
  return ERROR_CODES.find((code) => code === text) ?? '#VALUE!';
}

function cellOf(value: Nullable<BaseValueObject>, sentence?: string | null): Cell {
  if (!value || value.isNull()) return null;
  if (value.isError()) {
    const error = value as ErrorValueObject;
    // An error made inside the same formula brings its sentence along; one read from a cell does not.
    const own = error.getErrorContent();
    return new CellError(
      errorCode(error.getErrorType()),
      own === '' ? (sentence ?? PASSED_ON) : own,
    );
  }
  const content = value.getValue();
  // The engine keeps truth as 1 and 0 in places.
  return value.isBoolean() ? Boolean(content) : content;
}

function arrayCells(array: ArrayValueObject): Cell[][] {
  return array.getArrayValue().map((row) => Array.from(row, (value) => cellOf(value)));
}

function referenceCells(reference: BaseReferenceObject, sentenceAt: SentenceAt): Cell[][] {
  const { startRow, startColumn, endRow, endColumn } = reference.getRangePosition();
  const sheetId = reference.getSheetId();
  const columns = endColumn - startColumn + 1;
  const cells: Cell[][] = Array.from({ length: endRow - startRow + 1 }, () =>
    new Array<Cell>(columns).fill(null),
  );
  reference.iterator((value, row, column) => {
    const sentence = value?.isError()
      ? sentenceAt(sheetId, row, column, String(value.getValue()))
      : null;
    cells[row - startRow]![column - startColumn] = cellOf(value, sentence);
    return undefined;
  });
  return cells;
}

/**
 * An argument as our functions take it: ranges and arrays cell by cell, one value as a range of one cell. A blank that is
 * no cell's is an argument left out.
 */
export function matrixOf(
  argument: FunctionVariantType,
  sentenceAt: SentenceAt,
): Matrix | undefined {
  if (argument.isReferenceObject()) {
    return referenceCells(argument as BaseReferenceObject, sentenceAt);
  }
  if (argument.isArray()) return arrayCells(argument as ArrayValueObject);
  const value = argument as BaseValueObject;
  return value.isNull() ? undefined : [[cellOf(value)]];
}

function valueOf(cell: ResultCell | undefined): BaseValueObject {
  if (cell === undefined) return NullValueObject.create();
  if (cell instanceof CellError) {
    return ErrorValueObject.create(cell.code as ErrorType, cell.sentence);
  }
  // Never the engine's own factory: it would read text such as "1/0" or "12" as a date or a number.
  if (typeof cell === 'string') return StringValueObject.create(cell);
  if (typeof cell === 'boolean') return BooleanValueObject.create(cell);
  return NumberValueObject.create(cell);
}

/** A result as the engine takes it: one value, or an array that spills. */
export function valueObjectOf(result: ResultMatrix): BaseValueObject {
  const columns = result[0]?.length ?? 0;
  if (result.length === 1 && columns === 1) return valueOf(result[0]![0]);
  return ArrayValueObject.create({
    calculateValueList: result.map((row) => row.map(valueOf)),
    rowCount: result.length,
    columnCount: columns,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
}
