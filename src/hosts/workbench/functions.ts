/** Our worksheet functions as the grid's formula engine takes them. */
import { BooleanNumber } from '@univerjs/core';
import {
  BaseFunction,
  FunctionType,
  type BaseValueObject,
  type FunctionVariantType,
  type IFunctionInfo,
} from '@univerjs/engine-formula';
import { NAMESPACE } from '../../functions/catalogue';
import { CellError, type ResultMatrix } from '../../functions/cell';
import { describeParameter } from '../../functions/parameter';
import type { WorksheetFunction } from '../../functions/worksheet-function';
import { matrixOf, valueObjectOf } from './cells';
import type { Sentences } from './sentences';

/** The name under which a workbook calls a function. */
export function calledName(entry: WorksheetFunction): string {
  return `${NAMESPACE}.${entry.id}`;
}

function wrongCount(entry: WorksheetFunction, count: number): string | null {
  const required = entry.takes.filter((parameter) => parameter.fallbackText === undefined).length;
  if (count < required) {
    const missing = entry.takes[count]?.name ?? '';
    return `${calledName(entry)} takes at least ${required} arguments; ${missing} is missing`;
  }
  if (count > entry.takes.length) {
    return `${calledName(entry)} takes at most ${entry.takes.length} arguments; ${count} came`;
  }
  return null;
}

function evaluate(
  entry: WorksheetFunction,
  given: readonly FunctionVariantType[],
  sentences: Sentences,
): ResultMatrix {
  const wrong = wrongCount(entry, given.length);
  if (wrong !== null) return [[new CellError('#VALUE!', wrong)]];
  return entry.evaluate(
    given.map((argument) =>
      matrixOf(argument, (sheetId, row, column, code) =>
        sentences.find(sheetId, row, column, code),
      ),
    ),
  );
}

/**
 * The engine's class for one function. References come as such, since only then does the engine tell a blank from 0
 * and hand an error over as one.
 */
function functionClass(
  entry: WorksheetFunction,
  sentences: Sentences,
): new (name: string) => BaseFunction {
  return class extends BaseFunction {
    override needsReferenceObject = true;

    override calculate(...given: BaseValueObject[]): BaseValueObject {
      let result: ResultMatrix;
      try {
        result = evaluate(entry, given, sentences);
      } catch (fault) {
        // A throw would stop the engine for good, and every other cell with it.
        const what = fault instanceof Error ? fault.message : String(fault);
        result = [[new CellError('#VALUE!', `${calledName(entry)} failed: ${what}`)]];
      }
      if (this.subUnitId) sentences.keep(this.subUnitId, this.row, this.column, result);
      return valueObjectOf(result);
    }
  };
}

/** What the engine's set-up wants: a class and a name for each function. */
export function gridFunctions(
  catalogue: readonly WorksheetFunction[],
  sentences: Sentences,
): [new (name: string) => BaseFunction, string][] {
  return catalogue.map((entry) => [functionClass(entry, sentences), calledName(entry)]);
}

/** The help that the grid shows while a formula is typed. */
export function gridFunctionHelp(catalogue: readonly WorksheetFunction[]): IFunctionInfo[] {
  return catalogue.map((entry) => ({
    functionName: calledName(entry),
    functionType: FunctionType.User,
    abstract: entry.summary,
    description: `${entry.summary} Gives ${entry.gives}`,
    functionParameter: entry.takes.map((parameter) => ({
      name: parameter.name,
      detail: describeParameter(parameter),
      example: parameter.fallbackText ?? '',
      require: parameter.fallbackText === undefined ? BooleanNumber.TRUE : BooleanNumber.FALSE,
      repeat: BooleanNumber.FALSE,
    })),
  }));
}
