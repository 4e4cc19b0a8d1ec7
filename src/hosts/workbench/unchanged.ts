/** Formulas whose cells came to what they were are not gone on from: nothing behind them can be another. */
import type { ICellData, IRange, IUnitRange, Univer } from '@univerjs/core';
import {
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaDependencyGenerator,
  IFormulaRuntimeService,
} from '@univerjs/engine-formula';

/** A formula that the engine has put on its list, of its own or of another feature. */
interface Listed {
  readonly treeId: number;
  /** Set for features that say themselves what they have changed. */
  readonly getDirtyData?: unknown;
}

/** The engine's search for what is to be calculated, with the parts that it keeps to itself. */
interface InnerGenerator {
  generate(isCalculateTreeModel?: boolean): Promise<Listed[]>;
  _getUpdateTreeListAndMakeDependency(): Listed[];
  _addDependencyTreeByAddressFunction(tree: Listed, ranges: readonly IUnitRange[]): void;
}

interface Sheet {
  readonly unitId: string;
  readonly sheetId: string;
}

/** Whether a value stands there as it did, alike in value and kind. */
const isSame = (before: ICellData | undefined, now: ICellData | undefined) =>
  before !== undefined && now !== undefined && before.v === now.v && before.t === now.t;

/**
 * Makes the grid's engine (0.25.1) leave out formulas of which no cell that they read has changed. It calculates all that
 * hangs on an edit by however many steps: nearly every formula of a schedule, since the sums of whole columns lie between,
 * though most of the sums stay as they are. Formulas that were never calculated in this page are not left out, for the
 * sentences that their functions give; nor is anything where the engine has formulas that work out where they read,
 * circular references, or all to calculate. To be called before the first formula is there.
 */
export function leaveUnchanged(univer: Univer): void {
  const injector = univer.__getInjector();
  const generator = injector.get(IFormulaDependencyGenerator) as unknown as InnerGenerator;
  const dependencies = injector.get(IDependencyManagerService);
  const config = injector.get(IFormulaCurrentConfigService);
  const runtime = injector.get(IFormulaRuntimeService);

  /** Every formula that was calculated in this page, by the engine's number for it. */
  const calculated = new Set<number>();
  /** The formulas of this run of which something that they read has changed. */
  let wanted = new Set<number>();
  let leavesOut = false;
  /** Whether a formula works out where it reads, as OFFSET does. */
  let hasAddresses = false;

  const changedAt = generator._getUpdateTreeListAndMakeDependency.bind(generator);
  generator._getUpdateTreeListAndMakeDependency = () => {
    const trees = changedAt();
    wanted = new Set(trees.map(({ treeId }) => treeId));
    return trees;
  };
  const addByAddress = generator._addDependencyTreeByAddressFunction.bind(generator);
  generator._addDependencyTreeByAddressFunction = (tree, ranges) => {
    hasAddresses = true;
    addByAddress(tree, ranges);
  };

  const mayLeaveOut = (trees: readonly Listed[]) =>
    !config.isForceCalculate() &&
    !runtime.isCycleDependency() &&
    !hasAddresses &&
    !trees.some(({ getDirtyData }) => typeof getDirtyData === 'function');

  const generate = generator.generate.bind(generator);
  generator.generate = async (isCalculateTreeModel) => {
    hasAddresses = false;
    const trees = await generate(isCalculateTreeModel);
    if (config.isForceCalculate()) calculated.clear();
    leavesOut = mayLeaveOut(trees);
    const take = () => Array.prototype.pop.call(trees) as Listed | undefined;
    trees.pop = () => {
      let tree = take();
      // The last is always calculated: the engine takes one whenever there is any.
      while (
        tree !== undefined &&
        trees.length > 0 &&
        leavesOut &&
        calculated.has(tree.treeId) &&
        !wanted.has(tree.treeId)
      ) {
        tree = take();
      }
      if (tree !== undefined) calculated.add(tree.treeId);
      return tree;
    };
    return trees;
  };

  /** Whether a list that spills stands as it did, every cell of it. */
  const isSameList = ({ unitId, sheetId }: Sheet, before: IRange, now: IRange) => {
    const earlier = config.getArrayFormulaCellData()[unitId]?.[sheetId];
    const later = runtime.getRuntimeArrayFormulaCellData()[unitId]?.[sheetId];
    if (before.endRow !== now.endRow || before.endColumn !== now.endColumn) return false;
    for (let row = now.startRow; row <= now.endRow; row += 1) {
      for (let column = now.startColumn; column <= now.endColumn; column += 1) {
        const cell = (of: typeof later) => of?.getValue(row, column) ?? undefined;
        if (!isSame(cell(earlier), cell(later))) return false;
      }
    }
    return true;
  };

  const keep = runtime.setRuntimeData.bind(runtime);
  runtime.setRuntimeData = (value) => {
    const { currentUnitId: unitId, currentSubUnitId: sheetId } = runtime;
    const { currentRow: row, currentColumn: column } = runtime;
    const come = () => runtime.getUnitData()[unitId]?.[sheetId]?.getValue(row, column) ?? undefined;
    const earlier = come();
    keep(value);
    if (!leavesOut) return;
    const spilled = config.getArrayFormulaRange()[unitId]?.[sheetId]?.[row]?.[column] ?? undefined;
    const spills = runtime.getUnitArrayFormula()[unitId]?.[sheetId]?.[row]?.[column] ?? undefined;
    // What came already in this run is what those behind have read.
    const stood =
      earlier ??
      config.getUnitData()[unitId]?.[sheetId]?.cellData.getValue(row, column) ??
      undefined;
    const isAsBefore =
      spilled === undefined && spills === undefined
        ? isSame(stood, come())
        : earlier === undefined &&
          spilled !== undefined &&
          spills !== undefined &&
          isSameList({ unitId, sheetId }, spilled, spills);
    if (isAsBefore) return;
    const cell = { startRow: row, startColumn: column, endRow: row, endColumn: column };
    const changed = [cell, spilled, spills].filter((range) => range !== undefined);
    for (const id of dependencies.searchDependency(
      changed.map((range) => ({ unitId, sheetId, range })),
    )) {
      wanted.add(id);
    }
  };
}
