/** Width and height in a PNG's header (PNG specification, third edition, 5.2 and 11.2.1: signature, then IHDR). */
import { readFileSync } from 'node:fs';

const SIGNATURE = Buffer.from([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);

/** Reads the size of a PNG file in pixels. Throws where the file is no PNG. */
export function pngSizePx(file: string | URL): { readonly width: number; readonly height: number } {
  const bytes = readFileSync(file);
  if (!bytes.subarray(0, 8).equals(SIGNATURE) || bytes.toString('latin1', 12, 16) !== 'IHDR') {
    throw new Error(`${String(file)} is no PNG`);
  }
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}
