/** The frame of a page of the reference, and its text made safe. Plain HTML: no script, no style but the one file. */

import { REFERENCE_PAGES, type ReferencePage } from '../../taskpane/reference-pages';

const ENTITIES: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
};

/** A text as it stands in HTML, between tags or in quotes. */
export const escaped = (text: string) => text.replace(/[&<>"]/g, (sign) => ENTITIES[sign]!);

/** The page that the bare address of a host leads to; the others name it by their first line. */
export const FRONT_PAGE = 'index.html';
const FRONT_TITLE = 'Loomsheet';

/** A whole page; `body` is HTML. */
export function pageOf(name: ReferencePage | typeof FRONT_PAGE, body: string): string {
  const title = name === FRONT_PAGE ? FRONT_TITLE : REFERENCE_PAGES[name];
  const links = Object.entries(REFERENCE_PAGES).map(([address, title]) =>
    address === name
      ? `<span aria-current="page">${title}</span>`
      : `<a href="${address}">${title}</a>`,
  );
  return `<!doctype html>
<html lang="en">
  <head>
    <meta charset="utf-8" />
    <meta name="viewport" content="width=device-width, initial-scale=1" />
    <meta
      http-equiv="Content-Security-Policy"
      content="default-src 'none'; style-src 'self'; img-src 'self'; base-uri 'none'; form-action 'none'"
    />
    <title>${name === FRONT_PAGE ? title : `${title} - Loomsheet`}</title>
    <link rel="icon" href="assets/icon-32.png" />
    <link rel="stylesheet" href="reference.css" />
  </head>
  <body>
    <header>
      <p>${name === FRONT_PAGE ? 'Low-voltage DC cable runs' : `<a href="${FRONT_PAGE}">Loomsheet</a>`}</p>
      <nav aria-label="Reference">${links.join(' ')}</nav>
    </header>
    <main>
      <h1>${title}</h1>
${body}
    </main>
  </body>
</html>
`;
}
