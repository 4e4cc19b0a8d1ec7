/** Calls a worksheet function as a cell would, for tests: plain values are single cells, lists of lists are ranges. */
import { findFunction } from '../../src/functions/catalogue';
import { CellError, type Cell, type Matrix, type ResultMatrix } from '../../src/functions/cell';

export type TestArgument = Cell | undefined | readonly (readonly Cell[])[];

function asMatrix(argument: TestArgument): Matrix | undefined {
  if (argument === undefined) return undefined;
  return Array.isArray(argument) ? (argument as Matrix) : [[argument as Cell]];
}

/** The whole result of a call. */
export function callRange(id: string, ...given: readonly TestArgument[]): ResultMatrix {
  const found = findFunction(id);
  if (found === undefined) throw new Error(`no function ${id}`);
  return found.evaluate(given.map(asMatrix));
}

/** The one cell that a call of single cells answers with. */
export function call(id: string, ...given: readonly TestArgument[]): ResultMatrix[number][number] {
  const result = callRange(id, ...given);
  if (result.length !== 1 || result[0]?.length !== 1) throw new Error(`${id} answered a range`);
  return result[0][0]!;
}

/** The number a call answers with; an error value becomes a failure that tells its sentence. */
export function callNumber(id: string, ...given: readonly TestArgument[]): number {
  const result = call(id, ...given);
  if (result instanceof CellError) throw new Error(`${id}: ${result.code} ${result.sentence}`);
  if (typeof result !== 'number') throw new Error(`${id} answered ${JSON.stringify(result)}`);
  return result;
}
