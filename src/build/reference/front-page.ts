/** What stands at the bare address of a host: where to go from there. */
import { CATALOGUE, NAMESPACE } from '../../functions/catalogue';
import { CAUTIONS } from '../../sheets/plan/cautions';
import { escaped, FRONT_PAGE, pageOf } from './page';

/** The page, whole. */
export function frontPage(): string {
  return pageOf(
    FRONT_PAGE,
    `<p>Sizes low-voltage DC cable runs in a sheet: for each run the thinnest wire that keeps the drop within its target and carries the current, the fuse that protects it, and a verdict in words.</p>
<dl>
<dt><a href="workbench.html">Open the workbench</a></dt><dd>A sheet in this browser, without Excel. Nothing that you type leaves it. Once opened it works without a network too.</dd>
<dt><a href="host.html#own-excel">Add it to Excel</a></dt><dd>${CATALOGUE.length} worksheet functions, such as <code>=${NAMESPACE}.DCDROP(...)</code>, and the same sheets and pane.</dd>
</dl>
<h2>Cautions</h2>
<ul>${CAUTIONS.map((caution) => `<li>${escaped(caution)}</li>`).join('\n')}</ul>`,
  );
}
