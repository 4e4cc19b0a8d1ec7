/** Where the checkout and what is built of it stand. */
import path from 'node:path';

/** The checkout's top folder. */
export const projectFolder = path.resolve(import.meta.dirname, '../..');

/** Where the built pages and scripts stand. */
export const builtFolder = path.join(projectFolder, 'dist');
