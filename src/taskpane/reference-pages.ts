/** The plain pages, which the build writes beside the pane's own: file names and titles. */
export const REFERENCE_PAGES = {
  'reference.html': 'All functions',
  'numbers.html': 'How the numbers are made',
  'try.html': 'Try it in Excel',
  'host.html': 'Host it',
  'licences.html': 'Licences',
} as const;
export type ReferencePage = keyof typeof REFERENCE_PAGES;
