/** Help for a worksheet function, from its catalogue entry alone: texts only, shown by the pane. */
import { NAMESPACE } from '../functions/catalogue';
import { describeParameter, type Given, type Parameter } from '../functions/parameter';
import type { Example, WorksheetFunction } from '../functions/worksheet-function';

export interface ArgumentHelp {
  readonly name: string;
  readonly mayBeLeftOut: boolean;
  /** Meaning with its unit, and the default. */
  readonly text: string;
}

export interface FunctionHelp {
  readonly name: string;
  /** How it is called: =LOOM.NAME(argument, [optional argument]). */
  readonly call: string;
  readonly arguments: readonly ArgumentHelp[];
  readonly exampleCall: string;
  readonly exampleResult: string;
}

type Literal = Given | null;
type Rows = readonly (readonly Literal[])[];

const isRows = (value: Literal | Rows): value is Rows => Array.isArray(value);

function literal(value: Literal): string {
  if (value === null) return '';
  if (typeof value === 'string') return `"${value.replaceAll('"', '""')}"`;
  return typeof value === 'boolean' ? String(value).toUpperCase() : String(value);
}

/** As it would be typed into a formula; a range is an array constant, in which a blank can only be empty text. */
function typed(value: Literal | Rows): string {
  if (!isRows(value)) return literal(value);
  const rows = value.map((row) => row.map((cell) => literal(cell ?? '')).join(', '));
  return `{${rows.join('; ')}}`;
}

function exampleCall(name: string, { given }: Example): string {
  return `=${name}(${given.map(typed).join(', ')})`;
}

const mayBeLeftOut = (parameter: Parameter) => parameter.fallbackText !== undefined;

/** All texts of a function's help beyond those that its entry has ready. */
export function functionHelp(entry: WorksheetFunction): FunctionHelp {
  const name = `${NAMESPACE}.${entry.id}`;
  const written = entry.takes.map((parameter) =>
    mayBeLeftOut(parameter) ? `[${parameter.name}]` : parameter.name,
  );
  return {
    name,
    call: `=${name}(${written.join(', ')})`,
    arguments: entry.takes.map((parameter) => ({
      name: parameter.name,
      mayBeLeftOut: mayBeLeftOut(parameter),
      text: describeParameter(parameter),
    })),
    exampleCall: exampleCall(name, entry.example),
    exampleResult: typed(entry.example.result),
  };
}
