/**
 * The pane's page for a hosted add-in: Office.js comes from the platform's own delivery address, as its store demands,
 * and the page's policy admits that one host for scripts.
 */
const LOCAL_OFFICE_JS = 'src="office-js/office.js"';
const DELIVERY_ORIGIN = 'https://appsforoffice.microsoft.com';
const DELIVERED_OFFICE_JS = `src="${DELIVERY_ORIGIN}/lib/1/hosted/office.js"`;
const LOCAL_SCRIPTS = "script-src 'self'";

/** The hosted page from the local one; throws where the local page no longer has what is to be replaced. */
export function hostedPage(localPage: string): string {
  for (const part of [LOCAL_OFFICE_JS, LOCAL_SCRIPTS]) {
    if (!localPage.includes(part)) throw new Error(`the page has no ${part} to replace`);
  }
  return localPage
    .replace(LOCAL_OFFICE_JS, DELIVERED_OFFICE_JS)
    .replace(LOCAL_SCRIPTS, `${LOCAL_SCRIPTS} ${DELIVERY_ORIGIN}`);
}
