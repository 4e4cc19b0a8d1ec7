/** The texts that the cells of a workbook share. */
import { unescapeText } from '../escape';
import { readPart } from './part';
import type { Archive } from './zip';

/** Puts together a text that may be in pieces of several looks; its pronunciation is no part of it. */
export class TextPieces {
  private pieces = '';
  private isText = false;
  private isSaid = false;

  opened(name: string): void {
    if (name === 'rPh') this.isSaid = true;
    this.isText = name === 't' && !this.isSaid;
  }

  closed(name: string): void {
    if (name === 'rPh') this.isSaid = false;
    this.isText = false;
  }

  text(piece: string): void {
    if (this.isText) this.pieces += piece;
  }

  /** The text so far, from here on empty again. */
  taken(): string {
    const whole = this.pieces;
    this.pieces = '';
    return unescapeText(whole);
  }
}

/** The shared texts, in their order. */
export function readTexts(archive: Archive, part: string): readonly string[] {
  const texts: string[] = [];
  const pieces = new TextPieces();
  readPart(archive, part, {
    opened(name) {
      pieces.opened(name);
    },
    closed(name) {
      pieces.closed(name);
      if (name === 'si') texts.push(pieces.taken());
    },
    text(piece) {
      pieces.text(piece);
    },
  });
  return texts;
}
