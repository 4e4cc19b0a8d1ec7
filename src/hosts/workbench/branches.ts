/** Only the branch of an IF that is taken is calculated. The engine (0.25.1) calculates both, and so most formulas twice. */
import type { Univer } from '@univerjs/core';
import {
  Interpreter,
  NullValueObject,
  type BaseAstNode,
  type BaseReferenceObject,
  type BaseValueObject,
  type ArrayValueObject,
} from '@univerjs/engine-formula';

/** The engine's kinds of node that matter here; it does not hand out its own list of them. */
const REFERENCE = 1;
const FUNCTION = 4;

/** The engine's interpreter, with the parts that it keeps to itself. */
interface InnerInterpreter {
  _runtimeService: { isStopExecution(): boolean };
  _execute(node: BaseAstNode, refOffsetX?: number, refOffsetY?: number): number;
  checkAsyncNode(node: BaseAstNode | null): boolean;
}

/** A parameter's value where it is one value; undefined where it is a range of several. */
function oneValue(node: BaseAstNode): BaseValueObject | undefined {
  let value = node.getValue();
  if (value?.isReferenceObject()) value = (value as BaseReferenceObject).toArrayValueObject();
  if (value?.isArray()) {
    const array = value as ArrayValueObject;
    if (array.getRowCount() !== 1 || array.getColumnCount() !== 1) return undefined;
    return array.get(0, 0) ?? undefined;
  }
  return (value as BaseValueObject | null | undefined) ?? undefined;
}

/** Which parameters of a function go unused, once its first is known; none where that cannot be told. */
type Unused = (first: BaseAstNode, count: number) => readonly number[];

const UNUSED: Readonly<Record<string, Unused>> = {
  IF(first, count) {
    const test = oneValue(first);
    if (test === undefined || count < 2 || count > 3) return [];
    if (test.isError()) return count === 3 ? [1, 2] : [1];
    if (!test.getValue()) return [1];
    return count === 3 ? [2] : [];
  },
  // A single cell is not one value here: the engine answers in the shape of both parameters.
  IFERROR(first, count) {
    const value = first.getValue();
    const isOne =
      value !== null && value !== undefined && !value.isReferenceObject() && !value.isArray();
    return count === 2 && isOne && !value.isError() ? [1] : [];
  },
};

/** What a node is, read off it once. */
interface Kind {
  readonly unused: Unused | undefined;
  readonly isReference: boolean;
  readonly isLambda: boolean;
}

function newKind(node: BaseAstNode): Kind {
  const token = node.getToken().toUpperCase();
  const type = Number(node.nodeType);
  return {
    unused: type === FUNCTION ? UNUSED[token] : undefined,
    isReference: type === REFERENCE,
    isLambda: token === 'LAMBDA',
  };
}

const NONE: readonly number[] = [];

/** Makes the grid's engine leave out the branches that are not taken. Their values change nothing: IF drops them. */
export function calculateTakenBranches(univer: Univer): void {
  const inner = univer.__getInjector().get(Interpreter) as unknown as InnerInterpreter;
  const isAsync = new WeakMap<BaseAstNode, boolean>();
  const searchAsync = inner.checkAsyncNode.bind(inner);

  // A formula's tree is shared by all cells that it is filled into; it is searched once.
  inner.checkAsyncNode = (node) => {
    if (node === null) return false;
    let found = isAsync.get(node);
    if (found === undefined) isAsync.set(node, (found = searchAsync(node)));
    return found;
  };
  const kinds = new WeakMap<BaseAstNode, Kind>();
  const kindOf = (node: BaseAstNode): Kind => {
    let kind = kinds.get(node);
    if (kind === undefined) kinds.set(node, (kind = newKind(node)));
    return kind;
  };
  inner._execute = (node, refOffsetX = 0, refOffsetY = 0) => {
    if (inner._runtimeService.isStopExecution()) return 1;
    const children = node.getChildren();
    const { unused, isReference } = kindOf(node);
    let leftOut = NONE;
    for (let index = 0; index < children.length; index++) {
      const child = children[index]!;
      if (index === 1 && unused !== undefined) leftOut = unused(children[0]!, children.length);
      if (leftOut.includes(index)) child.setValue(NullValueObject.create());
      else if (kindOf(child).isLambda && isEmptyLambda(child)) child.execute();
      else inner._execute(child, refOffsetX, refOffsetY);
    }
    if (isReference) (node as ReferenceNode).setRefOffset(refOffsetX, refOffsetY);
    node.execute();
    return 0;
  };
}

interface ReferenceNode extends BaseAstNode {
  setRefOffset(x: number, y: number): void;
}

const isEmptyLambda = (node: BaseAstNode) =>
  (node as unknown as { isEmptyParamFunction(): boolean }).isEmptyParamFunction();
