/** "Licences": what the built pages are made of, with the notices that go with every copy. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { projectFolder } from '../build-folders';
import type { OfficeJs } from '../hosting';
import { escaped, pageOf } from '../reference/page';
import type { PackageNotice } from './package-notice';
import { isPermissive, PERMISSIVE } from './permissive';

const read = (...parts: string[]) => readFileSync(path.join(projectFolder, ...parts), 'utf8');

const label = ({ name, version, licence }: PackageNotice) =>
  `${name}${version === undefined ? '' : ` ${version}`}: ${licence}`;

/** Packages by the text that they share, in the order of their first. */
function byText(packages: readonly PackageNotice[]): ReadonlyMap<string, readonly PackageNotice[]> {
  const sharing = new Map<string, readonly PackageNotice[]>();
  for (const one of packages) sharing.set(one.text, [...(sharing.get(one.text) ?? []), one]);
  return sharing;
}

const block = (text: string) => `<pre>${escaped(text.trim())}</pre>`;

/** The platform's own script is no package of free licence: it ships only where a closed network asks for a copy. */
const OFFICE_JS: Readonly<Record<OfficeJs, () => string>> = {
  delivered: () =>
    '<p>Not part of these pages: the pane takes it from the platform’s delivery address, under the platform’s own terms.</p>',
  own: () =>
    `<p>A copy stands beside these pages, unchanged, for the pane alone. It is the platform’s own, under the terms below: not a free licence.</p>\n${block(read('node_modules/@microsoft/office-js/LICENSE.md'))}`,
  none: () => '<p>Not part of these pages.</p>',
};

/** The page, whole. Throws where a package has a licence that is not on the short list. */
export function licencesPage(packages: readonly PackageNotice[], officeJs: OfficeJs): string {
  const strict = packages.filter(({ licence }) => !isPermissive(licence));
  if (strict.length > 0) {
    throw new Error(
      `May not ship: ${strict.map(label).join(', ')}. Only ${[...PERMISSIVE].join(', ')} may.`,
    );
  }
  const texts = [...byText(packages)].map(
    ([text, sharing]) =>
      `<section>\n<ul>${sharing.map((one) => `<li>${escaped(label(one))}</li>`).join('\n')}</ul>\n${block(text)}\n</section>`,
  );
  return pageOf(
    'licences.html',
    `<p>Made by the build from what it put into the pages: ${packages.length} packages beside our own code, each with its notice. Names without a version came inside another package’s script.</p>
<h2>Loomsheet</h2>
${block(read('LICENSE'))}
<h2>Packages</h2>
<p>Of the packages under @univerjs, in which the grid comes, the build changes two things: fields of classes are set plainly instead of by a helper, and word patterns for hyphenation are left out. No other package is changed, except that scripts are made small.</p>
${texts.join('\n')}
<h2>Office.js</h2>
${OFFICE_JS[officeJs]()}`,
  );
}
