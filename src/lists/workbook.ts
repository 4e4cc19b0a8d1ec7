/** A workbook from its bytes, or a sentence that says why there is none. */
import { TooMuch } from './bounds';
import { quotedName, UnreadableFile } from './unreadable';
import { openBook, type Book } from './xlsx/book';
import { BadPart } from './xlsx/part';
import { BadArchive } from './xlsx/zip';

/** The same work, with what is wrong with a file told of it by its name. Throws UnreadableFile. */
export async function told<Result>(
  fileName: string,
  work: () => Result | Promise<Result>,
): Promise<Result> {
  try {
    return await work();
  } catch (cause) {
    if (cause instanceof TooMuch) {
      throw new UnreadableFile(
        `${quotedName(fileName)} is no list of runs: ${cause.message}. Save the list alone, as .xlsx or .csv, and take that in.`,
        { cause },
      );
    }
    if (cause instanceof BadArchive || cause instanceof BadPart) {
      throw new UnreadableFile(
        `${quotedName(fileName)} is damaged, or no workbook: it could not be opened. Save it anew as .xlsx and try again.`,
        { cause },
      );
    }
    throw cause;
  }
}

/** Opens the bytes of an .xlsx. Throws UnreadableFile where they are none. */
export async function openWorkbook(bytes: Uint8Array, fileName: string): Promise<Book> {
  const book = await told(fileName, () => openBook(bytes));
  if (book === undefined || book.tables.length === 0) {
    throw new UnreadableFile(
      `${quotedName(fileName)} holds no sheets. If another program made it, save it there as .xlsx.`,
    );
  }
  return book;
}
