/**
 * Three bundles: the functions (one self-contained script, as Excel's shared runtime wants it), the task pane,
 * and the workbench page with its spreadsheet grid. Types are checked by the lint command, not here.
 */
require('tsx/cjs');
const path = require('node:path');
const CopyPlugin = require('copy-webpack-plugin');
const MiniCssExtractPlugin = require('mini-css-extract-plugin');

const here = (...parts) => path.join(__dirname, ...parts);

const scripts = (compiling) => [
  { test: /\.ts$/, use: { loader: 'ts-loader', options: { transpileOnly: true, ...compiling } } },
  { test: /\.css$/, use: [MiniCssExtractPlugin.loader, 'css-loader'] },
];

/** Already as small as it will be: without this mark, every copied script is minified again (a minute and a half). */
const asItIs = { info: { minimized: true } };

const icons = { from: here('assets/icon*'), to: 'assets/[name][ext]', ...asItIs };

/** What Office.js loads in Excel on the web, Windows and Mac; the other Office programs' parts stay behind. */
const officeFiles = [
  'office.js',
  'o15apptofilemappingtable.js',
  'excel-*-16.*.js',
  '*/office_strings.js',
];

/** The functions' description in the platform's metadata format, from the same catalogue as the functions. */
function functionsJson() {
  const { CATALOGUE } = require('./src/functions/catalogue.ts');
  const { functionsMetadata } = require('./src/functions/metadata.ts');
  return `${JSON.stringify(functionsMetadata(CATALOGUE), null, 2)}\n`;
}

/** What makes the grid's own packages quick, and small: see the files. */
const quickGrid = [
  {
    test: /@univerjs[\\/].*\.js$/,
    use: here('src/build/grid/plain-fields.ts'),
    resolve: { alias: { numfmt$: here('src/hosts/workbench/text-numbers.ts') } },
  },
  {
    test: /@univerjs[\\/]engine-render[\\/]lib[\\/]es[\\/]index\.js$/,
    use: here('src/build/grid/no-hyphenation.ts'),
  },
];

/** The library that writes workbooks, from its source: see the files. What it names of Node is stood in for, or never used. */
const leanWriter = {
  alias: {
    exceljs$: here('src/build/exceljs/writing.js'),
    // Its ready-made script would hide from the list of what ships what is inside.
    jszip$: require.resolve('jszip/lib/index.js'),
    [require.resolve('exceljs/lib/csv/csv.js')]: false,
    [require.resolve('exceljs/lib/utils/encryptor.js')]: false,
  },
  fallback: {
    ...{ fs: false, stream: false, crypto: false },
    ...Object.fromEntries(['buffer', 'events'].map((name) => [name, require.resolve(`${name}/`)])),
  },
};
const nodeNames = {
  test: /node_modules[\\/](exceljs|jszip|readable-stream|string_decoder|safe-buffer)[\\/].*\.js$/,
  use: here('src/build/exceljs/node-names.ts'),
};

/** The pane's page with Office.js from where this build takes it. */
function panePage(page) {
  const { hostedPage } = require('./src/build/hosted-page.ts');
  return officeJs() === 'delivered' ? hostedPage(page.toString()) : page;
}

function officeJs() {
  return require('./src/build/hosting.ts').hostingAsked(process.env).officeJs;
}

function smallScripts() {
  const { SmallScripts } = require('./src/build/small-scripts.ts');
  return new SmallScripts();
}

module.exports = (_env, { mode = 'production' } = {}) => {
  const development = mode === 'development';

  const bundle = (name, entry, settings = {}, compiling = {}) => ({
    name,
    mode,
    entry: { [name]: here(entry) },
    target: ['web', 'es2022'],
    // Never one of the "eval" kinds: the pages' Content-Security-Policy forbids them.
    devtool: false,
    // Parts loaded on demand (the .xlsx library, the drawing) stay out of the way of the pages; each bundle has its own,
    // since two bundles number their modules differently. A hosted part carries its content in its name, so that a page
    // of an older build finds nothing rather than a part of another build.
    output: {
      path: here('dist'),
      filename: '[name].js',
      chunkFilename: `parts/${name}.[name]${development ? '' : '.[contenthash:12]'}.js`,
      pathinfo: false,
    },
    resolve: { extensions: ['.ts', '.js'], ...leanWriter },
    module: { rules: [...scripts(compiling), ...quickGrid, nodeNames] },
    cache: development
      ? {
          type: 'filesystem',
          cacheDirectory: here('.cache/webpack'),
          buildDependencies: { config: [__filename] },
        }
      : false,
    performance: { hints: false },
    stats: 'errors-warnings',
    ...settings,
  });

  return [
    // --- functions -------------------------------------------------------------------------------------------
    bundle(
      'functions',
      'src/functions/associate.ts',
      {
        plugins: [
          new CopyPlugin({
            patterns: [
              {
                from: here('src/functions/metadata.ts'),
                to: 'functions.json',
                transform: functionsJson,
                ...asItIs,
              },
            ],
          }),
        ],
      },
      {
        getCustomTransformers: () => ({
          before: [require('./src/build/without-help.ts').withoutHelp],
        }),
      },
    ),

    // --- task pane -------------------------------------------------------------------------------------------
    bundle('taskpane', 'src/taskpane/index.ts', {
      // Of a twentieth more script, by the usual tool, every build would take half a minute longer.
      optimization: { minimize: false },
      plugins: [
        ...(development ? [] : [smallScripts()]),
        new MiniCssExtractPlugin(),
        new CopyPlugin({
          patterns: [
            { from: here('src/taskpane/taskpane.html'), transform: panePage, ...asItIs },
            icons,
            ...(officeJs() === 'own' ? officeFiles : []).map((file) => ({
              from: file,
              context: here('node_modules/@microsoft/office-js/dist'),
              to: 'office-js/',
              globOptions: { ignore: ['**/*.debug.js'] },
              ...asItIs,
            })),
          ],
        }),
      ],
    }),

    // --- workbench -------------------------------------------------------------------------------------------
    bundle('workbench', 'src/workbench/index.ts', {
      // The view library's checks for its developers
      // slow every edit: nothing of ours is written in it.
      optimization: { minimize: false, nodeEnv: 'production' },
      plugins: [
        ...(development ? [] : [smallScripts()]),
        new MiniCssExtractPlugin(),
        new CopyPlugin({
          patterns: [{ from: here('src/workbench/workbench.html'), ...asItIs }, icons],
        }),
      ],
    }),
  ];
};
