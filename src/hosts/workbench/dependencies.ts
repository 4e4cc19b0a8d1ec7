/** What each formula hangs on, noted in a time that grows with its areas and not with all formulas there are. */
import type { Univer } from '@univerjs/core';
import {
  FormulaDependencyTree,
  FormulaDependencyTreeVirtual,
  IDependencyManagerService,
  IFormulaDependencyGenerator,
  type BaseAstNode,
} from '@univerjs/engine-formula';
import { AreaIndex } from './area-index';
import { mendMethod } from './mend-method';

type Manager = IDependencyManagerService;
type Tree = Parameters<Manager['addDependencyRTreeCache']>[0];

/**
 * Makes the grid's engine (0.25.1) read the areas of a formula once, where it works all of them out anew for each, and keep
 * them in an index of ours. To be called before the first formula is there.
 */
export function noteAreasOnce(univer: Univer): void {
  const manager: Manager = univer.__getInjector().get(IDependencyManagerService);
  // The engine's own field, which it takes for private.
  (manager as unknown as { _dependencyRTreeCache: AreaIndex })._dependencyRTreeCache =
    new AreaIndex();
  const note = manager.addDependencyRTreeCache.bind(manager);
  manager.addDependencyRTreeCache = ({ treeId, rangeList }) => {
    note({ treeId, rangeList } as Tree);
  };
}

/** The engine's search for what a formula hangs on, with the parts that it keeps to itself. */
interface InnerGenerator {
  _detectForcedRecalculationNodeRecursion(node: BaseAstNode): boolean;
  _getAddressFunctionNodeList(node: BaseAstNode | null): BaseAstNode[];
  _nodeTraversalRef(node: BaseAstNode, found: BaseAstNode[]): void;
}

/**
 * Makes the engine search a formula's tree once. It does so three times for every formula of the workbook at each edit;
 * the tree is shared by all cells that the formula is filled into, and kept.
 */
export function searchTreesOnce(univer: Univer): void {
  const generator = univer
    .__getInjector()
    .get(IFormulaDependencyGenerator) as unknown as InnerGenerator;

  const volatile = new WeakMap<BaseAstNode, boolean>();
  const isVolatile = generator._detectForcedRecalculationNodeRecursion.bind(generator);
  generator._detectForcedRecalculationNodeRecursion = (node) => {
    let is = volatile.get(node);
    if (is === undefined) volatile.set(node, (is = isVolatile(node)));
    return is;
  };

  const addressed = new WeakMap<BaseAstNode, readonly BaseAstNode[]>();
  const addressesOf = generator._getAddressFunctionNodeList.bind(generator);
  generator._getAddressFunctionNodeList = (node) => {
    if (node === null) return [];
    let found = addressed.get(node);
    if (found === undefined) addressed.set(node, (found = addressesOf(node)));
    return [...found];
  };

  const references = new WeakMap<BaseAstNode, readonly BaseAstNode[]>();
  const search = generator._nodeTraversalRef.bind(generator);
  generator._nodeTraversalRef = (node, found) => {
    let below = references.get(node);
    if (below === undefined) {
      const first: BaseAstNode[] = [];
      search(node, first);
      references.set(node, (below = first));
    }
    found.push(...below);
  };
}

/** Whether a formula belongs to a rule of colours or of entries. */
const isOfRule = ({ formulaId }: FormulaDependencyTree | FormulaDependencyTreeVirtual) =>
  typeof formulaId === 'string' && formulaId !== '';

/**
 * Makes the engine take the formulas of rules for what they are: they fill no cell. It counts the cells from the corner that
 * a rule begins at, and so takes a rule for something that other cells hang on: an edit that touched a colour had nearly
 * every formula calculated, and circles found where there are none.
 */
export function fillNoCellsByRules(): void {
  mendMethod(
    FormulaDependencyTree.prototype,
    'toRTreeItem',
    (filled) =>
      function (this: FormulaDependencyTree) {
        return isOfRule(this) ? [] : filled.call(this);
      },
  );
  mendMethod(
    FormulaDependencyTreeVirtual.prototype,
    'toRTreeItem',
    (filled) =>
      function (this: FormulaDependencyTreeVirtual) {
        return isOfRule(this) ? [] : filled.call(this);
      },
  );
}
