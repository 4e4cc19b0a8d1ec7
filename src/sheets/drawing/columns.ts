/** What stands over the workings of the Drawing sheet. */
import type { DrawingKey } from './layout';

export const DRAWING_HEADINGS: Readonly<Record<DrawingKey, string>> = {
  there: 'Is there',
  name: 'Called',
  far: 'Leads to',
  wire: 'Wire said',
  length: 'Length said',
  now: 'As it is now',
  drawn: 'As it was drawn',
};
