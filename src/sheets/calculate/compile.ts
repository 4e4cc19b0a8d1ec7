/** A formula's tree turned into a function once, to be called for every row that it is filled down to. */
import { NAMESPACE, findFunction } from '../../functions/catalogue';
import { CellError, type Matrix, type ResultMatrix } from '../../functions/cell';
import { equalPlaces } from './equal-places';
import { KeptPart } from './kept';
import { NATIVE_FUNCTIONS } from './native-functions';
import type { Compiled, NamedArea, Place, SheetReader } from './place';
import { askedOf, forgetParts, isWholeArea } from './same-for-rows';
import { FormulaSyntaxError, parseFormula, type Address, type Node } from './syntax';
import {
  asNumber,
  asTruth,
  cellsOf,
  ERRORS,
  isCells,
  OPERATIONS,
  spread,
  spreadTwo,
  type Value,
} from './values';

const NO_NAME = new CellError('#NAME?', 'an unknown name');

function matrixOf(value: Value): Matrix {
  if (!isCells(value)) return [[value]];
  const all = value.all();
  return Array.from({ length: value.rows }, (_, row) =>
    all.slice(row * value.columns, (row + 1) * value.columns),
  );
}

function valueOf(result: ResultMatrix): Value {
  const columns = result[0]?.length ?? 0;
  return result.length === 1 && columns === 1
    ? result[0]![0]!
    : cellsOf(result.length, columns, result.flat());
}

const rowAt = (address: Address, { down }: Place) =>
  address.rowPinned ? address.row : address.row + down;

/**
 * The same few hundred formulas are computed for every station: each is compiled once. Those asked for lately are kept;
 * when they are too many, they become the older ones, and what was older still is let go.
 */
let compiled = new Map<string, Compiled>();
let older = new Map<string, Compiled>();
const MOST_KEPT = 5000;

/** The formula (with its leading "=") as a function of its place. Throws FormulaSyntaxError. */
export function compileFormula(formula: string): Compiled {
  let known = compiled.get(formula);
  if (known === undefined) {
    known = older.get(formula) ?? compileNode(parseFormula(formula.replace(/^=/, '')));
    forgetParts();
    if (compiled.size >= MOST_KEPT) [older, compiled] = [compiled, new Map<string, Compiled>()];
    compiled.set(formula, known);
  }
  return known;
}

function compileNode(node: Node): Compiled {
  const plain = compilePlain(node);
  if (node.kind === 'area') return plain;
  const asked = askedOf(node);
  if (!asked?.hasAreas) return plain;
  if (asked.cells.length === 0) return onceForSheet(plain);
  return node.kind === 'call' && asked.cells.length === 1
    ? onceForValue(plain, asked.cells[0]!)
    : plain;
}

function compilePlain(node: Node): Compiled {
  switch (node.kind) {
    case 'literal': {
      const { value } = node;
      return () => value;
    }
    case 'area':
      return compileArea(node);
    case 'name':
      return compileName(node.name.toLowerCase());
    case 'negative': {
      const of = compileNode(node.of);
      return (place) => spreadTwo(OPERATIONS['*'], of(place), -1);
    }
    case 'percent': {
      const of = compileNode(node.of);
      return (place) => spreadTwo(OPERATIONS['/'], of(place), 100);
    }
    case 'operation': {
      const [left, right] = [compileNode(node.left), compileNode(node.right)];
      const compute = OPERATIONS[node.operator];
      if (node.operator === '=' && isWholeArea(node.left)) {
        return (place) => {
          const [of, with_] = [left(place), right(place)];
          return isCells(of) && !isCells(with_) && !(with_ instanceof CellError)
            ? equalPlaces(of, with_)
            : spreadTwo(compute, of, with_);
        };
      }
      return (place) => {
        const a = left(place);
        const b = right(place);
        return isCells(a) || isCells(b) ? spreadTwo(compute, a, b) : compute(a, b);
      };
    }
    case 'call':
      return compileCall(node.name, node.args);
  }
}

/** What is the same in every row is computed once for a sheet. */
function onceForSheet(compute: Compiled): Compiled {
  const known = new WeakMap<SheetReader, KeptPart>();
  return (place) => {
    let part = known.get(place.sheet);
    if (part === undefined) known.set(place.sheet, (part = new KeptPart(place.reader, compute)));
    return part.at(place);
  };
}

type CellNode = Extract<Node, { kind: 'area' }>;

/** What follows from one cell of the row is computed once for each of its values. */
function onceForValue(compute: Compiled, node: CellNode): Compiled {
  const ofSheets = new WeakMap<SheetReader, Map<Value, KeptPart>>();
  const cell = compileNode(node);
  const sourceOf = (place: Place) =>
    sheetOf(node, place).source(rowAt(node.first, place), node.first.column);
  return (place) => {
    const given = cell(place);
    if (given instanceof CellError) return compute(place);
    let known = ofSheets.get(place.sheet);
    if (known === undefined) ofSheets.set(place.sheet, (known = new Map<Value, KeptPart>()));
    let part = known.get(given);
    if (part === undefined) {
      known.set(given, (part = new KeptPart(place.reader, compute, sourceOf)));
    }
    return part.at(place);
  };
}

const sheetOf = ({ sheet: named }: CellNode, { reader, sheet }: Place) =>
  named === undefined ? sheet : reader.sheet(named);

function compileArea({ sheet: named, first, last }: Extract<Node, { kind: 'area' }>): Compiled {
  const column = Math.min(first.column, last.column);
  if (first === last) {
    if (named !== undefined) {
      return (place) => place.reader.sheet(named).cell(rowAt(first, place), column);
    }
    return first.rowPinned
      ? ({ sheet }) => sheet.cell(first.row, column)
      : ({ sheet, down }) => sheet.cell(first.row + down, column);
  }
  const columns = Math.abs(last.column - first.column) + 1;
  return (place) => {
    // Filled down, the corner that stays may come to lie below the one that goes along.
    const [one, other] = [rowAt(first, place), rowAt(last, place)];
    const sheet = named === undefined ? place.sheet : place.reader.sheet(named);
    return sheet.cells(Math.min(one, other), column, Math.abs(other - one) + 1, columns);
  };
}

function compileName(name: string): Compiled {
  return ({ reader }) => {
    const at = reader.named(name);
    if (at === undefined) return NO_NAME;
    const { sheet, row, column, rows, columns } = at;
    return rows * columns === 1 ? sheet.cell(row, column) : sheet.cells(row, column, rows, columns);
  };
}

/** The arguments of a call, computed; a list of the usual lengths is made at once. */
function compileArguments(args: readonly Compiled[]): (place: Place) => readonly Value[] {
  const [first, second, third] = args;
  if (first === undefined) return () => [];
  if (second === undefined) return (place) => [first(place)];
  if (third === undefined) return (place) => [first(place), second(place)];
  if (args.length === 3) return (place) => [first(place), second(place), third(place)];
  return (place) => args.map((arg) => arg(place));
}

/** To these, text and blanks in a cell that is named count for nothing, as in a range; text that is computed is an error. */
const LEAVE_TEXT_IN_CELLS: ReadonlySet<string> = new Set(['MAX', 'MIN', 'SUM']);

function compileAsCells(node: Node): Compiled {
  const compute = compileNode(node);
  if (node.kind !== 'area' && node.kind !== 'name') return compute;
  return (place) => {
    const value = compute(place);
    return isCells(value) || value instanceof CellError ? value : cellsOf(1, 1, [value]);
  };
}

function compileCall(name: string, nodes: readonly Node[]): Compiled {
  const args = nodes.map(LEAVE_TEXT_IN_CELLS.has(name) ? compileAsCells : compileNode);
  const prefix = `${NAMESPACE}.`;
  if (name.startsWith(prefix)) {
    const ours = findFunction(name.slice(prefix.length));
    if (ours === undefined) return () => NO_NAME;
    const isLeftOut = nodes.map((node) => node.kind === 'literal' && node.value === null);
    return (place) =>
      valueOf(
        ours.evaluate(
          args.map((arg, index) => (isLeftOut[index] ? undefined : matrixOf(arg(place)))),
        ),
      );
  }
  switch (name) {
    case 'IF':
      return condition(args);
    case 'IFERROR':
      return otherwise(args);
    case 'INDEX':
      return index(args);
    case 'ROW':
    case 'COLUMN':
      return position(name, nodes);
    case 'ISFORMULA':
      return isFormula(nodes);
  }
  const native = NATIVE_FUNCTIONS[name];
  if (native === undefined) {
    throw new FormulaSyntaxError(`no function ${name} is known here`);
  }
  const given = compileArguments(args);
  return (place) => native(given(place));
}

/** Only the branch that is taken is computed, so that the other may be circular or wrong. */
function condition([test, then, otherwise]: readonly Compiled[]): Compiled {
  if (test === undefined || then === undefined) {
    throw new FormulaSyntaxError('IF needs a condition and a value');
  }
  return (place) => {
    const tested = test(place);
    if (isCells(tested)) {
      return spread(
        ([is, yes, no]) => {
          const truth = asTruth(is!);
          return truth instanceof CellError ? truth : truth ? yes! : no!;
        },
        [tested, then(place), otherwise?.(place) ?? false],
      );
    }
    const truth = asTruth(tested);
    if (truth instanceof CellError) return truth;
    if (truth) return then(place);
    return otherwise === undefined ? false : otherwise(place);
  };
}

function otherwise([value, instead]: readonly Compiled[]): Compiled {
  if (value === undefined || instead === undefined) {
    throw new FormulaSyntaxError('IFERROR needs two values');
  }
  return (place) => {
    const found = value(place);
    if (isCells(found)) {
      return spread(
        ([cell, other]) => (cell instanceof CellError ? other! : cell!),
        [found, instead(place)],
      );
    }
    return found instanceof CellError ? instead(place) : found;
  };
}

/** Reads one cell of an area, never the others. */
function index([of, down, across]: readonly Compiled[]): Compiled {
  if (of === undefined || down === undefined) {
    throw new FormulaSyntaxError('INDEX needs an area and a place');
  }
  return (place) => {
    const found = down(place);
    const row = isCells(found) ? ERRORS.badEntry : asNumber(found);
    if (row instanceof CellError) return row;
    const foundAcross = across?.(place) ?? null;
    const column = isCells(foundAcross) ? ERRORS.badEntry : asNumber(foundAcross);
    if (column instanceof CellError) return column;
    const area = of(place);
    if (!isCells(area)) {
      if (area instanceof CellError) return area;
      return row === 1 && (column === 1 || column === 0) ? area : ERRORS.outside;
    }
    // With one place, a row of cells is counted across.
    const isRow = across === undefined && area.rows === 1;
    const [r, c] = isRow ? [1, row] : [row, across === undefined ? 1 : column];
    if (r < 1 || c < 1 || r > area.rows || c > area.columns) return ERRORS.outside;
    return area.at(Math.floor(r) - 1, Math.floor(c) - 1);
  };
}

/** Whether a formula stands in a cell, whatever it comes to. */
function isFormula([of]: readonly Node[]): Compiled {
  if (of?.kind !== 'area' || of.first !== of.last) {
    throw new FormulaSyntaxError('ISFORMULA is known here of a single cell');
  }
  const { sheet, first } = of;
  return (place) =>
    (sheet === undefined ? place.sheet : place.reader.sheet(sheet)).hasFormula(
      rowAt(first, place),
      first.column,
    );
}

/** Rows or columns as a spreadsheet counts them, of the formula's own cell or of an area. */
function position(name: 'ROW' | 'COLUMN', given: readonly Node[]): Compiled {
  const [of] = given;
  const isRow = name === 'ROW';
  if (of === undefined) return (place) => (isRow ? place.row : place.column) + 1;
  const firstOf = (place: Place): NamedArea | undefined => {
    if (of.kind === 'name') return place.reader.named(of.name.toLowerCase());
    if (of.kind !== 'area') return undefined;
    const [one, other] = [rowAt(of.first, place), rowAt(of.last, place)];
    return {
      sheet: of.sheet === undefined ? place.sheet : place.reader.sheet(of.sheet),
      row: Math.min(one, other),
      column: Math.min(of.first.column, of.last.column),
      rows: Math.abs(other - one) + 1,
      columns: Math.abs(of.last.column - of.first.column) + 1,
    };
  };
  return (place) => {
    const at = firstOf(place);
    if (at === undefined) return ERRORS.outside;
    const [first, count] = isRow ? [at.row, at.rows] : [at.column, at.columns];
    if (count === 1) return first + 1;
    const all = Array.from({ length: count }, (_, index) => first + index + 1);
    return isRow ? cellsOf(count, 1, all) : cellsOf(1, count, all);
  };
}
