/** What each formula hangs on is read once. The engine (0.25.1) works all areas of a copied formula out anew for each. */
import type { Univer } from '@univerjs/core';
import { IDependencyManagerService } from '@univerjs/engine-formula';

type Manager = IDependencyManagerService;
type Tree = Parameters<Manager['addDependencyRTreeCache']>[0];

/** Makes the grid's engine note the areas of a formula in a time that grows with their number, not with its square. */
export function noteAreasOnce(univer: Univer): void {
  const manager: Manager = univer.__getInjector().get(IDependencyManagerService);
  const note = manager.addDependencyRTreeCache.bind(manager);
  manager.addDependencyRTreeCache = ({ treeId, rangeList }) => {
    note({ treeId, rangeList } as Tree);
  };
}
