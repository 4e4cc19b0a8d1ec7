/** What each formula hangs on, noted in a time that grows with its areas and not with all formulas there are. */
import type { IUnitRange, Univer } from '@univerjs/core';
import {
  FormulaDependencyTree,
  FormulaDependencyTreeVirtual,
  ICalculateFormulaService,
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  type BaseAstNode,
} from '@univerjs/engine-formula';
import { AreaIndex, holds } from './area-index';
import { mendMethod } from './mend-method';

type Manager = IDependencyManagerService;
type Tree = Parameters<Manager['addDependencyRTreeCache']>[0];

/** The engine's calculation, with the parts that it keeps to itself. */
interface InnerCalculation {
  _apply(isOfSpilledCells?: boolean): Promise<unknown>;
}

/**
 * Makes the grid's engine (0.25.1) read the areas of a formula once, where it works all of them out anew for each, keep
 * them in an index of ours, and note them when they are new alone. Its second round, for formulas that read cells of a list
 * that spills and not its first, is left out where there are none. To be called before the first formula is there.
 */
export function noteAreasOnce(univer: Univer): void {
  const injector = univer.__getInjector();
  const manager: Manager = injector.get(IDependencyManagerService);
  const index = new AreaIndex();
  // The engine's own field, which it takes for private.
  (manager as unknown as { _dependencyRTreeCache: AreaIndex })._dependencyRTreeCache = index;
  const note = manager.addDependencyRTreeCache.bind(manager);
  manager.addDependencyRTreeCache = ({ treeId, rangeList }) => {
    if (index.tell(treeId, rangeList)) note({ treeId, rangeList } as Tree);
  };

  const config = injector.get(IFormulaCurrentConfigService);
  /** Whether a formula reads one of these spilled cells without the first of its list. */
  const isReadFromWithin = () => {
    const heads = config.getExcludedRange() ?? {};
    const readsHead = ({ unitId, sheetId, range }: IUnitRange) => {
      let reads = false;
      heads[unitId]?.[sheetId]?.forValue((row, column) => {
        reads ||= holds(range, row, column);
      });
      return reads;
    };
    return config.getDirtyRanges().some((spilled) =>
      [...index.searchGenerator(spilled)].some((id) => {
        const areas = index.areasOf(id);
        return areas?.some(readsHead) !== true;
      }),
    );
  };
  const calculation = injector.get(ICalculateFormulaService) as unknown as InnerCalculation;
  const apply = calculation._apply.bind(calculation);
  calculation._apply = async (isOfSpilledCells) =>
    isOfSpilledCells === true && !isReadFromWithin() ? undefined : apply(isOfSpilledCells);
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
 * every formula calculated, and circular references found where there are none.
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
