/** A file from which no list could be read; the message is a sentence for the user. Nothing was taken from it. */
export class UnreadableFile extends Error {
  override readonly name = 'UnreadableFile';
}

/** A file's name as it stands in a sentence. */
export function quotedName(fileName: string): string {
  return `"${fileName}"`;
}
