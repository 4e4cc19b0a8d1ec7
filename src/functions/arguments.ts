/** What is said of a call before any of its cells are read: arguments left out, and text that lacks its quotes. */
import { invalid } from '../core/outcome';
import { CellError, refusalCell, type Matrix } from './cell';
import type { Parameter } from './parameter';

/** A parameter whose blank makes the answer empty, so that a call without the argument would show nothing. */
function isNeeded(parameter: Parameter): boolean {
  const blankStandsFor = 'column' in parameter && 'blankIs' in (parameter.column as object);
  return parameter.fallbackText === undefined && !blankStandsFor;
}

/**
 * The error of a call that leaves an argument out which it cannot do without, as `DCDROP(20,,"ft",12)` does; undefined
 * where there is none. A blank cell is no argument left out: it has a matrix.
 */
export function missingArgument(
  parameters: readonly Parameter[],
  given: readonly (Matrix | undefined)[],
): CellError | undefined {
  for (let index = 0; index < parameters.length; index += 1) {
    if (given[index] !== undefined || !isNeeded(parameters[index]!)) continue;
    return refusalCell(
      invalid('left out, and it has no default; write it between its commas'),
      parameters[index]!.name,
    );
  }
  return undefined;
}

/**
 * An error that came in, as it is passed on. #NAME? in place of a text is most often text without its quotes: the sentence
 * says so, the kind of error stays.
 */
export function passedOn(error: CellError, { name, quotedText }: Parameter): CellError {
  if (error.code !== '#NAME?' || quotedText === undefined) return error;
  return new CellError(
    error.code,
    `${name}: #NAME? came in; text in a formula needs quotes, such as ${quotedText}`,
  );
}
