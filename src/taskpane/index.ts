/** The pane's page in Excel: waits for Office, then mounts the pane over the workbook. */
import './page.css';
import { ExcelHost } from '../hosts/excel/excel-host';
import { make } from './make';
import { mountPane } from './pane';
import { followTheme } from './theme';

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (found === null) throw new Error(`The page has no element #${id}.`);
  return found;
}

const OUTSIDE_EXCEL =
  'This pane runs inside Excel, where the Loomsheet add-in opens it. In a browser, use the workbench: the same pane beside a spreadsheet.';

/** Where the page stands alone in a browser, it says so and points to the workbench beside it. */
function tellOutside(root: HTMLElement): void {
  followTheme();
  root.append(
    make(
      'div',
      { class: 'loom-outside' },
      make('p', {}, OUTSIDE_EXCEL),
      make('p', {}, make('a', { href: 'workbench.html' }, 'Open the workbench')),
    ),
  );
}

async function start(): Promise<void> {
  const root = element('pane');
  const faults = element('faults');
  const { host } = await Office.onReady();
  if (host !== Office.HostType.Excel) {
    tellOutside(root);
    return;
  }
  mountPane(
    root,
    new ExcelHost((fault) => {
      faults.textContent = fault.message;
    }),
  );
}

start().catch((fault: unknown) => {
  element('faults').textContent =
    `The pane could not start: ${fault instanceof Error ? fault.message : String(fault)}`;
});
