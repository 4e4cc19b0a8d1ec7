/** What each formula hangs on, noted in a time that grows with its areas and not with all formulas there are. */
import type { Univer } from '@univerjs/core';
import { IDependencyManagerService } from '@univerjs/engine-formula';
import { AreaIndex } from './area-index';

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
