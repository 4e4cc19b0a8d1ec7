/** The page that stands in for Excel: the grid with our functions, the demo, the pane, and a line that explains cells. */
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css';
import './workbench.css';
import { CATALOGUE } from '../functions/catalogue';
import { openGrid } from '../hosts/workbench/grid';
import { WorkbenchHost } from '../hosts/workbench/host';
import { mountPane } from '../taskpane/pane';
import { workbenchHandle } from './handle';
import { showStatus } from './status-line';
import { newSchedule } from '../sheets/new-schedule';

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element #${id}.`);
  return found;
}

/** Inserts the demonstration, then mounts the pane: before that, both would choose the same free names. */
async function start(host: WorkbenchHost): Promise<void> {
  try {
    await host.insert(newSchedule('demo', host.references, await host.taken()));
  } finally {
    mountPane(element('pane'), host);
  }
  document.documentElement.dataset['ready'] = 'true';
}

const host = new WorkbenchHost(openGrid(element('grid'), CATALOGUE));
showStatus(host, element('status'));
const ready = start(host);
ready.catch((fault: unknown) => {
  element('status').textContent = fault instanceof Error ? fault.message : String(fault);
});
window.loomWorkbench = workbenchHandle(host, ready);
