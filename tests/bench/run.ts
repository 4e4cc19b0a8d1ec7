/**
 * Builds the benchmark of the functions as the functions themselves are built, and runs it: loaded from their sources one
 * by one they are several times slower.
 */
import { spawnSync } from 'node:child_process';
import path from 'node:path';
import webpack from 'webpack';

const TOP = path.resolve(__dirname, '../..');
const OUT = path.join(TOP, '.cache/bench');

webpack(
  {
    mode: 'production',
    optimization: { minimize: false },
    devtool: false,
    entry: { functions: path.join(TOP, 'tests/bench/functions.ts') },
    target: 'node20',
    output: { path: OUT, filename: '[name].js' },
    resolve: { extensions: ['.ts', '.js'] },
    module: {
      rules: [{ test: /\.ts$/, use: { loader: 'ts-loader', options: { transpileOnly: true } } }],
    },
    performance: { hints: false },
  },
  (error, stats) => {
    if (error !== null || stats === undefined || stats.hasErrors()) {
      throw new Error(error?.message ?? stats?.toString('errors-only'));
    }
    const { status } = spawnSync(
      process.execPath,
      [path.join(OUT, 'functions.js'), ...process.argv.slice(2)],
      { stdio: 'inherit' },
    );
    process.exitCode = status ?? 1;
  },
);
