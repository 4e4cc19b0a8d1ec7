/** A part of a workbook read as XML, element by element, while it is unpacked. */
import { SaxesParser } from 'saxes';
import { TooMuch } from '../bounds';
import type { Archive } from './zip';

export type Attributes = Readonly<Record<string, string>>;

/** What a reader of a part hears; names come without their prefix. */
export interface Listener {
  opened(name: string, attributes: Attributes): void;
  closed?(name: string): void;
  text?(text: string): void;
}

/** What is wrong with a part. */
export class BadPart extends Error {}

/** Thrown by a listener that has all it wants. */
export class Enough extends Error {}

const local = (name: string) => name.slice(name.indexOf(':') + 1);

const MARKS: readonly (readonly [readonly number[], string])[] = [
  [[0xff, 0xfe], 'utf-16le'],
  [[0xfe, 0xff], 'utf-16be'],
];

/** The decoder for a part, by its first bytes. Throws BadPart for an encoding that nobody knows. */
function decoderFor(first: Uint8Array): TextDecoder {
  const [, marked] = MARKS.find(([mark]) => mark.every((byte, at) => first[at] === byte)) ?? [];
  const head = String.fromCharCode(...first.subarray(0, 100));
  const named = /^[^<]*<\?xml[^>]*\sencoding\s*=\s*["']([^"']+)/.exec(head)?.[1];
  try {
    return new TextDecoder(marked ?? named ?? 'utf-8');
  } catch (cause) {
    throw new BadPart(`unknown encoding ${named}`, { cause });
  }
}

/** Reads a part. Throws BadPart where it is no XML, TooMuch, and what unpacking throws. */
export function readPart(archive: Archive, name: string, listener: Listener): void {
  const parser = new SaxesParser({ position: false, xmlns: false });
  parser.on('error', (cause) => {
    throw new BadPart(`${name} is no XML`, { cause });
  });
  // No spreadsheet writes one, and what it declares could grow without bounds.
  parser.on('doctype', () => {
    throw new BadPart(`${name} declares a document type`);
  });
  parser.on('opentag', (tag) => {
    if ((archive.left.elements -= 1) < 0) throw new TooMuch('elements');
    listener.opened(local(tag.name), tag.attributes);
  });
  parser.on('closetag', (tag) => {
    listener.closed?.(local(tag.name));
  });
  if (listener.text !== undefined) {
    const heard = (text: string) => listener.text?.(text);
    parser.on('text', heard);
    parser.on('cdata', heard);
  }
  let decoder: TextDecoder | undefined;
  try {
    archive.unpack(name, (piece) => {
      decoder ??= decoderFor(piece);
      parser.write(decoder.decode(piece, { stream: true }));
    });
    parser.write(decoder?.decode() ?? '').close();
  } catch (fault) {
    if (!(fault instanceof Enough)) throw fault;
  }
}

/** An attribute by its name without a prefix, such as the id of a relationship. */
export function prefixed(attributes: Attributes, name: string): string | undefined {
  return Object.entries(attributes).find(([key]) => key !== name && local(key) === name)?.[1];
}
