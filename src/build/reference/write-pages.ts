/** The plain pages beside the bundles, written into the built folder. */
import { copyFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import type { ReferencePage } from '../../taskpane/reference-pages';
import type { OfficeJs } from '../hosting';
import { licencesPage } from '../licences/licences-page';
import type { PackageNotice } from '../licences/package-notice';
import { frontPage } from './front-page';
import { functionsPage } from './functions-page';
import { hostPage } from './host-page';
import { numbersPage } from './numbers-page';
import type { FRONT_PAGE } from './page';
import { tryPage } from './try-page';

const STYLE = 'reference.css';

/** Writes every page that the pane's foot leads to. Throws where a package may not ship. */
export function writePages(
  folder: string,
  packages: readonly PackageNotice[],
  officeJs: OfficeJs,
): void {
  const pages: Readonly<Record<ReferencePage | typeof FRONT_PAGE, string>> = {
    'index.html': frontPage(),
    'reference.html': functionsPage(),
    'numbers.html': numbersPage(),
    'host.html': hostPage(),
    'try.html': tryPage(),
    'licences.html': licencesPage(packages, officeJs),
  };
  for (const [name, page] of Object.entries(pages)) writeFileSync(path.join(folder, name), page);
  copyFileSync(path.join(import.meta.dirname, STYLE), path.join(folder, STYLE));
}
