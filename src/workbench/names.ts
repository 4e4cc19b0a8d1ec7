/** Names and roles that the grid's own markup (0.25.1) lacks, for those who hear the page. */

/** What a control of the grid is called, by where it stands; the first that fits. */
const NAMES: readonly (readonly [string, string])[] = [
  ['[aria-haspopup] > button[data-u-comp="sheet-bar-append-button"]', 'All sheets'],
  ['button[data-u-comp="sheet-bar-append-button"]', 'Add a sheet'],
  ['button[data-u-comp="button"]:has(~ * [data-loom-handle])', 'Zoom out'],
  [':has([data-loom-handle]) ~ button[data-u-comp="button"]', 'Zoom in'],
  ['[role="handle"], [data-loom-handle]', 'Zoom'],
  ['[role="track"] a, [data-loom-track] a', 'Zoom to 100 %'],
];

/** "sheet.command.set-range-bold" as "set range bold". */
const wordsOf = (command: string) => command.replace(/^.*\./, '').replaceAll('-', ' ');

function nameOf(control: Element): string {
  const known = NAMES.find(([selector]) => control.matches(selector))?.[1];
  if (known !== undefined) return known;
  const command = control.closest('[data-u-command]')?.getAttribute('data-u-command');
  if (command) return wordsOf(command);
  if (control instanceof HTMLInputElement) return 'Cell, or name of cells';
  return 'More';
}

const isNamed = (control: Element) =>
  control.hasAttribute('aria-label') ||
  control.hasAttribute('aria-labelledby') ||
  (control.textContent ?? '').trim() !== '';

function mend(grid: HTMLElement): void {
  for (const menu of grid.querySelectorAll(
    'div[aria-expanded]:not([role]), a[aria-expanded]:not([role])',
  )) {
    menu.setAttribute('role', 'group');
    menu.removeAttribute('aria-expanded');
  }
  for (const bar of grid.querySelectorAll('[aria-label^="ribbon."]')) {
    bar.setAttribute('aria-label', 'Tools of the grid');
  }
  // Roles that no standard knows.
  for (const track of grid.querySelectorAll('[role="track"]')) {
    track.removeAttribute('role');
    track.setAttribute('data-loom-track', '');
  }
  for (const handle of grid.querySelectorAll('[role="handle"]')) {
    handle.removeAttribute('role');
    handle.setAttribute('data-loom-handle', '');
  }
  for (const control of grid.querySelectorAll('button, input, [role="button"]')) {
    if (!isNamed(control)) control.setAttribute('aria-label', nameOf(control));
  }
}

/** Mends the grid's markup now, and whenever the grid makes more of it. */
export function nameControls(grid: HTMLElement): void {
  let isWaiting = false;
  const mendSoon = () => {
    if (isWaiting) return;
    isWaiting = true;
    setTimeout(() => {
      isWaiting = false;
      mend(grid);
    }, 100);
  };
  new MutationObserver(mendSoon).observe(grid, {
    subtree: true,
    childList: true,
    attributeFilter: ['aria-expanded', 'role'],
  });
  mend(grid);
}
