/** Builds the bundles with webpack, from a script rather than its command line, and the manifest and plain pages beside them. */
import { readFileSync, writeFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import path from 'node:path';
import webpack, { type Configuration, type MultiStats } from 'webpack';
import { builtFolder, projectFolder } from './build-folders';
import { hostingAsked } from './hosting';
import { shippedPackages } from './licences/shipped-packages';
import { DEVELOPMENT_ORIGIN, manifestFor } from './manifest-for';
import { writeLeavingWorker } from './offline/write-offline';
import { writePages } from './reference/write-pages';

/** The bundles by the names that webpack.config.js gives them. */
export type Bundle = 'functions' | 'taskpane' | 'workbench';
const ALL_BUNDLES: readonly Bundle[] = ['functions', 'taskpane', 'workbench'];

type ConfigurationMaker = (env: unknown, argv: { mode: string }) => Configuration[];

function configurations(
  mode: 'development' | 'production',
  bundles: readonly Bundle[],
): Configuration[] {
  const load = createRequire(import.meta.url);
  const make = load(path.join(projectFolder, 'webpack.config.js')) as ConfigurationMaker;
  const known = make({}, { mode });
  return bundles.map((bundle) => {
    const found = known.find(({ name }) => name === bundle);
    if (found === undefined) throw new Error(`webpack.config.js has no bundle ${bundle}.`);
    return found;
  });
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

/**
 * Builds these bundles, or all, into the usual folder or another. Rejects with webpack's own words where a file does not
 * compile, and where what is in the bundles may not ship.
 */
export async function build(
  mode: 'development' | 'production',
  bundles: readonly Bundle[] = ALL_BUNDLES,
  folder = builtFolder,
): Promise<void> {
  const { address = DEVELOPMENT_ORIGIN, officeJs } = hostingAsked(process.env);
  const manifest = manifestFor(
    readFileSync(path.join(projectFolder, 'manifest.xml'), 'utf8'),
    address,
  );
  const compiler = webpack(
    configurations(mode, bundles).map((configuration) => ({
      ...configuration,
      output: { ...configuration.output, path: folder },
    })),
  );
  const stats = await run(compiler);
  // Closing writes the cache that makes the next start quick.
  await new Promise<void>((resolve, reject) => {
    compiler.close((fault) => {
      if (fault) reject(fault);
      else resolve();
    });
  });
  if (stats.hasErrors()) throw new Error(stats.toString('errors-only'));
  writeFileSync(path.join(folder, 'manifest.xml'), manifest);
  if (mode === 'development') writeLeavingWorker(folder);
  writePages(folder, shippedPackages(stats), bundles.includes('taskpane') ? officeJs : 'none');
}
