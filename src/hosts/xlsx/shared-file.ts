/** The file that "Share a copy" makes. Pages load this module, and the library behind it, when it is first asked for. */
import { sharedCopy, type CopyOptions } from '../../sheets/shared-copy';
import type { StationContent } from '../../sheets/station/content';
import { writeWorkbook } from './write';

/** The schedule as an .xlsx that computes without the add-in. */
export function sharedFile(
  content: StationContent,
  options: CopyOptions = {},
): Promise<Uint8Array> {
  const { plans, values } = sharedCopy(content, options);
  return writeWorkbook(plans, values);
}
