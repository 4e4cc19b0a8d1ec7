/** Builds the bundles with webpack, from a script rather than its command line. */
import { createRequire } from 'node:module';
import path from 'node:path';
import webpack, { type Configuration, type MultiStats } from 'webpack';

/** The checkout's top folder. */
export const projectFolder = path.resolve(import.meta.dirname, '../..');

/** Where the built pages and scripts stand. */
export const builtFolder = path.join(projectFolder, 'dist');

type ConfigurationMaker = (env: unknown, argv: { mode: string }) => Configuration[];

function configurations(mode: 'development' | 'production'): Configuration[] {
  const load = createRequire(import.meta.url);
  const make = load(path.join(projectFolder, 'webpack.config.js')) as ConfigurationMaker;
  return make({}, { mode });
}

function run(compiler: webpack.MultiCompiler): Promise<MultiStats> {
  return new Promise((resolve, reject) => {
    compiler.run((fault, stats) => {
      if (fault !== null) reject(fault);
      else if (stats === undefined) reject(new Error('webpack gave no result.'));
      else resolve(stats);
    });
  });
}

/** Builds everything; rejects with webpack's own words where a file does not compile. */
export async function build(mode: 'development' | 'production'): Promise<void> {
  const compiler = webpack(configurations(mode));
  const stats = await run(compiler);
  // Closing writes the cache that makes the next start quick.
  await new Promise<void>((resolve, reject) => {
    compiler.close((fault) => {
      if (fault) reject(fault);
      else resolve();
    });
  });
  if (stats.hasErrors()) throw new Error(stats.toString('errors-only'));
}
