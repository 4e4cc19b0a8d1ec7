/** Writes dist/manifest.xml for the origin in LOOM_ORIGIN, or for the development server where none is set. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { DEVELOPMENT_ORIGIN, manifestFor } from './manifest-for';

const root = new URL('../../', import.meta.url);
const origin = process.env['LOOM_ORIGIN'] ?? DEVELOPMENT_ORIGIN;
const manifest = manifestFor(readFileSync(new URL('manifest.xml', root), 'utf8'), origin);

mkdirSync(new URL('dist/', root), { recursive: true });
writeFileSync(new URL('dist/manifest.xml', root), manifest);
