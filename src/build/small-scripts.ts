/** A plugin of the build: makes the scripts of pages small, in a second where the usual tool takes minutes. */
import { transform } from 'esbuild';
import { Compilation, sources, type Compiler } from 'webpack';

export class SmallScripts {
  apply(compiler: Compiler): void {
    compiler.hooks.compilation.tap('SmallScripts', (compilation) => {
      compilation.hooks.processAssets.tapPromise(
        { name: 'SmallScripts', stage: Compilation.PROCESS_ASSETS_STAGE_OPTIMIZE_SIZE },
        async (assets) => {
          const scripts = Object.keys(assets).filter((name) => name.endsWith('.js'));
          await Promise.all(
            scripts.map(async (name) => {
              const { code } = await transform(assets[name]!.source().toString(), {
                minify: true,
                target: 'es2022',
                charset: 'utf8',
                // Notices stand whole on the page of licences.
                legalComments: 'none',
              });
              compilation.updateAsset(name, new sources.RawSource(code), { minimized: true });
            }),
          );
        },
      );
    });
  }
}
