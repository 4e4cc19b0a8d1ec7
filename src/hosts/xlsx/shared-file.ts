/** The file that "Share a copy" makes. Pages load this module, and the library behind it, when it is first asked for. */
import type { StationContent } from '../../sheets/book';
import { sharedWorkbook } from '../../sheets/without-add-in/shared-workbook';
import { writeWorkbook } from './write';

/** The schedule as an .xlsx that computes without the add-in. */
export function sharedFile(content: StationContent): Promise<Uint8Array> {
  return writeWorkbook(sharedWorkbook(content));
}
