/** The shape of a catalogue entry, and the common way to make one; list-function.ts has the other. */
import type { Outcome } from '../core/outcome';
import { broadcast, type Compute } from './broadcast';
import type { Matrix, ResultMatrix } from './cell';
import type { Given, Parameter } from './parameter';

export type Topic =
  'Conductor' | 'Run' | 'Protection' | 'Feeders and supply' | 'Building and proving' | 'Teaching';

/** One worked call: what is typed and what comes back (numbers agree to the digits printed here). */
export interface Example {
  /** Arguments in order; null leaves one out. A list of lists is a range. */
  readonly given: readonly (Given | null | readonly (readonly (Given | null)[])[])[];
  readonly result: Given | readonly (readonly Given[])[];
}

/** What every reader of the catalogue sees: metadata, help, registration, tests. */
export interface WorksheetFunction {
  /** Also its name: the workbook writes =LOOM.<id>(...). Never changed again. */
  readonly id: string;
  readonly topic: Topic;
  /** What it computes, in one line. */
  readonly summary: string;
  readonly takes: readonly Parameter[];
  /** The result with its unit. */
  readonly gives: string;
  readonly example: Example;
  /** Where the formula or table comes from. */
  readonly source: string;
  /** Computes from matrices as a spreadsheet hands them over; missing trailing arguments count as left out. */
  evaluate(given: readonly (Matrix | undefined)[]): ResultMatrix;
}

/** An entry without what its making adds. */
export type Described = Omit<WorksheetFunction, 'evaluate' | 'takes'>;

/** What a function's own few lines receive: one read value for each parameter, in the parameters' order. */
export type ValuesOf<Parameters extends readonly Parameter[]> = {
  readonly [At in keyof Parameters]: Parameters[At] extends Parameter<string, infer Value>
    ? Value
    : never;
};

/** A function that answers cell by cell: every argument takes one value or a range. */
export function perCell<const Parameters extends readonly Parameter[]>(
  entry: Described & {
    readonly takes: Parameters;
    readonly compute: (...values: ValuesOf<Parameters>) => Outcome<Given>;
  },
): WorksheetFunction {
  const compute = entry.compute as Compute;
  return { ...entry, evaluate: (given) => broadcast(entry.takes, given, compute) };
}
