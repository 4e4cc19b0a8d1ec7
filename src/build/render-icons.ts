/** Renders assets/icon.svg to the PNG sizes that Office asks for. Run with tsx after the drawing changed. */
import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { ICON_SIZES_PX } from './icon-sizes';

const assets = fileURLToPath(new URL('../../assets/', import.meta.url));

for (const size of ICON_SIZES_PX) {
  const side = String(size);
  const target = `${assets}icon-${side}.png`;
  try {
    execFileSync('rsvg-convert', ['-w', side, '-h', side, `${assets}icon.svg`, '-o', target]);
  } catch (error) {
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT') {
      throw new Error('rsvg-convert is missing: apt-get install librsvg2-bin', { cause: error });
    }
    throw error;
  }
}
