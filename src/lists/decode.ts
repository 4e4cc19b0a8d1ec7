/** Bytes of a text file as text, in whichever of the usual encodings they are. */
import { quotedName, UnreadableFile } from './unreadable';

export interface DecodedText {
  readonly text: string;
  /** As a sentence says it, where it is not the usual UTF-8. */
  readonly encoding?: string;
}

const BYTE_ORDER_MARKS: readonly {
  readonly mark: readonly number[];
  readonly label: string;
  readonly encoding?: string;
}[] = [
  { mark: [0xef, 0xbb, 0xbf], label: 'utf-8' },
  { mark: [0xff, 0xfe], label: 'utf-16le', encoding: 'UTF-16' },
  { mark: [0xfe, 0xff], label: 'utf-16be', encoding: 'UTF-16' },
];

/** What Windows-1252 has where Latin 1 has control characters, from 0x80 on (WHATWG Encoding, index windows-1252). */
const FROM_80 = '€\u0081‚ƒ„…†‡ˆ‰Š‹Œ\u008DŽ\u008F\u0090‘’“”•–—˜™š›œ\u009DžŸ';

/** Some engines decode Windows-1252 as Latin 1; what they leave is put right. */
function decodeWindows1252(bytes: Uint8Array): string {
  return new TextDecoder('windows-1252')
    .decode(bytes)
    .replace(/[\u0080-\u009F]/g, (left) => FROM_80[left.charCodeAt(0) - 0x80]!);
}

/** Enough of a file to tell text from anything else. */
const SAMPLE_BYTES = 4096;

function strictly(label: string, bytes: Uint8Array): string | undefined {
  try {
    return new TextDecoder(label, { fatal: true }).decode(bytes);
  } catch {
    return undefined;
  }
}

/** Which half of most pairs of bytes is zero tells UTF-16 without a mark, as far as its text is Latin. */
function unmarkedUtf16(bytes: Uint8Array): string | undefined {
  const sample = bytes.subarray(0, SAMPLE_BYTES);
  const zeros = [0, 0];
  for (const [index, byte] of sample.entries()) if (byte === 0) zeros[index % 2]! += 1;
  const pairs = sample.length / 2;
  if (zeros[1]! > pairs * 0.7 && zeros[0]! < pairs * 0.1) return 'utf-16le';
  if (zeros[0]! > pairs * 0.7 && zeros[1]! < pairs * 0.1) return 'utf-16be';
  return undefined;
}

/** The text of a file. Throws UnreadableFile where it is no text. */
export function decodeText(bytes: Uint8Array, fileName: string): DecodedText {
  const marked = BYTE_ORDER_MARKS.find(({ mark }) => mark.every((byte, at) => bytes[at] === byte));
  const unmarked = marked === undefined ? unmarkedUtf16(bytes) : undefined;
  const utf16 = unmarked === undefined ? {} : { encoding: 'UTF-16' };
  const named = marked?.encoding === undefined ? utf16 : { encoding: marked.encoding };
  const text = strictly(marked?.label ?? unmarked ?? 'utf-8', bytes);
  const decoded =
    text === undefined
      ? { text: decodeWindows1252(bytes), encoding: 'Windows-1252' }
      : { text, ...named };
  // A text has no NUL; whatever does is a picture, a program or the like.
  if (decoded.text.includes('\0')) {
    throw new UnreadableFile(
      `${quotedName(fileName)} is neither a workbook (.xlsx) nor a text of values (.csv).`,
    );
  }
  return decoded;
}
