/** The catalogue in the format of functions.json, by which Excel learns names, parameters and help. */
import { CATALOGUE } from './catalogue';
import { describeParameter } from './parameter';
import type { WorksheetFunction } from './worksheet-function';

export interface ParameterMetadata {
  readonly name: string;
  readonly description: string;
  readonly type: 'any';
  readonly dimensionality: 'matrix';
  /** Present where the argument may be left out. */
  readonly optional?: true;
}

export interface FunctionMetadata {
  readonly id: string;
  readonly name: string;
  readonly description: string;
  readonly parameters: readonly ParameterMetadata[];
  /** Of any type, which the format expresses by naming none. */
  readonly result: { readonly dimensionality: 'matrix' };
}

export interface FunctionsMetadata {
  /** Without it Excel shows an error among the arguments as the result and asks no function. */
  readonly allowErrorForDataTypeAny: true;
  readonly functions: readonly FunctionMetadata[];
}

/**
 * functions.json for a catalogue. Every parameter is a matrix of any type, since every function takes ranges, blanks
 * and errors; every result is a matrix, since a scalar result cannot spill.
 */
export function functionsMetadata(
  catalogue: readonly WorksheetFunction[] = CATALOGUE,
): FunctionsMetadata {
  return {
    allowErrorForDataTypeAny: true,
    functions: catalogue.map((entry) => ({
      id: entry.id,
      name: entry.id,
      description: `${entry.summary} Result: ${entry.gives}`,
      parameters: entry.takes.map((parameter) => ({
        name: parameter.name,
        description: describeParameter(parameter),
        type: 'any',
        dimensionality: 'matrix',
        ...(parameter.fallbackText === undefined ? {} : { optional: true as const }),
      })),
      result: { dimensionality: 'matrix' },
    })),
  };
}
