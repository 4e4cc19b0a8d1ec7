/** The page that stands in for Excel: a bar, the grid with our functions, a line that explains cells, the pane. */
import '@univerjs/preset-sheets-core/lib/index.css';
import '@univerjs/preset-sheets-data-validation/lib/index.css';
import '@univerjs/preset-sheets-conditional-formatting/lib/index.css';
import './workbench.css';
import { WorkbenchHost } from '../hosts/workbench/host';
import { followLook } from '../hosts/workbench/look';
import { newSchedule } from '../sheets/new-schedule';
import { mountPane, type Pane } from '../taskpane/pane';
import { followTheme } from '../taskpane/theme';
import { fillBar } from './bar';
import { workbenchHandle } from './handle';
import { keepWorkbook, type Keeper } from './keeper';
import { nameControls } from './names';
import { keepOffline, reloadsAsNewer } from './offline';
import { openWorkbook } from './opening';
import { followRegions } from './regions';
import { openShelf, type Keeping } from './shelf';
import { showStatus } from './status-line';

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element #${id}.`);
  return found;
}

const NOT_KEPT: Readonly<Record<Exclude<Keeping, 'here'>, string>> = {
  'in another tab':
    'this workbook is open in another tab, which keeps it. What you type here is gone with this tab',
  nowhere: 'this browser keeps nothing for this page',
};

const ANOTHERS =
  'Another tab keeps this workbook; start anew there, or close it and reload this one.';

const NEWER =
  'A newer version is here. It opens when you reload this page and have it in no other tab.';

async function start(): Promise<void> {
  if (await reloadsAsNewer()) return;
  const shelf = await openShelf();
  const { grid, isKept, fault } = await openWorkbook(element('grid'), shelf);
  followLook(grid);
  nameControls(element('grid'));
  const host = new WorkbenchHost(grid);

  let pane: Pane | undefined;
  let keeper: Keeper | undefined;
  const bar = fillBar(
    { files: element('files'), kept: element('kept'), told: element('told') },
    host,
    {
      open: (file) => pane?.takeIn(file),
      async startAnew() {
        if (shelf.keeping === 'in another tab') throw new Error(ANOTHERS);
        keeper?.stop();
        await shelf.clear();
        location.reload();
      },
    },
  );
  const setHint = showStatus(host, element('status'));
  followRegions(
    { bar: element('bar'), grid: element('grid'), pane: element('pane') },
    host,
    setHint,
  );

  /** The pane comes after the demonstration: before that, both would choose the same free names. */
  const ready = (async () => {
    try {
      if (!isKept) {
        await host.insert(newSchedule('demo', host.references, await host.taken()));
        host.removeBlankSheet();
      }
    } finally {
      pane = mountPane(element('pane'), host);
    }
    if (shelf.keeping === 'here') keeper = keepWorkbook(grid, shelf, bar.showKeeping);
    // What was kept may have been put away in the middle of a calculation.
    await (isKept ? host.calculate() : host.calculated());
    await shelf.opened();
    document.documentElement.dataset['ready'] = 'true';
  })();
  window.loomWorkbench = workbenchHandle(host, ready);

  if (shelf.keeping !== 'here') bar.showKeeping({ failed: NOT_KEPT[shelf.keeping] });
  if (fault !== undefined) {
    bar.tell(
      `The workbook that this browser kept could not be opened: ${fault}. It is set aside, and the demonstration stands here instead.`,
    );
  }
  await ready;
  await keepOffline(() => {
    bar.tell(NEWER);
  }).catch(() => {
    // A browser that keeps nothing for this page opens it from the network, as before.
  });
}

followTheme();
start().catch((fault: unknown) => {
  element('status').textContent = fault instanceof Error ? fault.message : String(fault);
});
