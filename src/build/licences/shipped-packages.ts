/** The packages that built bundles are made of, from the bundler's own list of modules. */
import { createRequire } from 'node:module';
import path from 'node:path';
import type { MultiStats, StatsModule } from 'webpack';
import { projectFolder } from '../build-folders';
import { noticeOf, type PackageNotice } from './package-notice';

const FOLDER = /^.*[\\/]node_modules[\\/](?:@[^\\/]+[\\/])?[^\\/]+/;

/** Whose code the bundler itself puts into a bundle, by what it calls that part. */
function ownFolder({ moduleType, name = '' }: StatsModule): string | undefined {
  if (moduleType !== 'runtime') return undefined;
  const maker = name.includes('css') ? 'mini-css-extract-plugin' : 'webpack';
  return path.dirname(
    createRequire(import.meta.url).resolve(path.join(maker, 'package.json'), {
      paths: [projectFolder],
    }),
  );
}

function foldersOf(module: StatsModule): readonly string[] {
  if (module.modules !== undefined && module.modules.length > 0) {
    return module.modules.flatMap(foldersOf);
  }
  const folder = ownFolder(module) ?? FOLDER.exec(module.nameForCondition ?? '')?.[0];
  return folder === undefined ? [] : [folder];
}

/** Each package of these bundles once, by name; throws where one says nothing that could be shown. */
export function shippedPackages(stats: MultiStats): readonly PackageNotice[] {
  const { children = [] } = stats.toJson({
    all: false,
    modules: true,
    nestedModules: true,
    runtimeModules: true,
    cachedModules: true,
    dependentModules: true,
    orphanModules: false,
    modulesSpace: Infinity,
    nestedModulesSpace: Infinity,
    groupModulesByAttributes: false,
    groupModulesByCacheStatus: false,
    groupModulesByExtension: false,
    groupModulesByLayer: false,
    groupModulesByPath: false,
    groupModulesByType: false,
  });
  const folders = new Set(children.flatMap(({ modules = [] }) => modules.flatMap(foldersOf)));
  const notices = [...folders].map(noticeOf);
  const byName = new Map<string, PackageNotice>();
  // Versions differ where a package comes twice.
  for (const notice of notices) {
    byName.set(`${notice.name} ${notice.version ?? ''}`, notice);
  }
  return [...byName.values()].sort((one, other) => (one.name < other.name ? -1 : 1));
}
