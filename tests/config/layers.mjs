/** The layers of the source as lint rules: arrows point one way, and the core knows no platform. */
/** From the bottom up; each may know those before it. */
const LAYERS = [
  'core',
  'functions',
  'sheets',
  'drawing',
  'lists',
  'hosts',
  'taskpane',
  'workbench',
  'command',
];

/** Layers that are plain TypeScript: no package, no platform, nothing loaded later. */
const PURE = new Set(['core', 'functions', 'sheets']);

/**
 * What the core must not touch, as far as a fast answer in the editor goes; a test compiles the core without the types
 * of any platform and so knows them all.
 */
const PLATFORM_GLOBALS = [
  ...['window', 'document', 'navigator', 'location', 'localStorage', 'fetch', 'self'],
  ...['process', 'Buffer', 'global', 'require', 'module', '__dirname', '__filename'],
  ...['console', 'setTimeout', 'setInterval', 'queueMicrotask', 'performance', 'crypto'],
  ...['Office', 'Excel', 'OfficeExtension', 'CustomFunctions'],
];

/** The rooms of the sheets from the bottom up; the files beside them know them all, and no room knows those. */
const ROOMS = [
  'plan',
  'calculate',
  'station',
  'rules',
  'schedule',
  'supply',
  'protection',
  'crew',
  'wire-list',
  'parts',
  'labels',
  'as-built',
  'fuse-map',
  'drawing',
  'drop-chart',
  'without-add-in',
];

function patternsOf(layer) {
  const above = [...LAYERS.slice(LAYERS.indexOf(layer) + 1), 'build'];
  const patterns = [
    {
      regex: `^(\\./)?(\\.\\./)+(${above.join('|')})(/|$)`,
      message: `${layer} must not know ${above.join(', ')}.`,
    },
  ];
  if (PURE.has(layer)) {
    patterns.push({ regex: '^[^.]', message: `${layer} depends on no package and no platform.` });
  }
  return patterns;
}

function patternsOfRoom(room) {
  const above = ROOMS.slice(ROOMS.indexOf(room) + 1);
  return [
    ...patternsOf('sheets'),
    {
      regex: `^(\\./)?\\.\\./(${[...above, '[^/]+$'].join('|')})(/|$)`,
      message: `the room ${room} must not know ${[...above, 'the files beside the rooms'].join(', ')}.`,
    },
  ];
}

const restricted = (patterns) => ({ 'no-restricted-imports': ['error', { patterns }] });

/** Imports that the rule on import declarations does not see. */
const HIDDEN_IMPORTS = ['ImportExpression', 'TSImportType', 'TSImportEqualsDeclaration'].map(
  (selector) => ({
    selector,
    message: 'Import at the head of the file, where layers are checked.',
  }),
);

export const layerRules = [
  ...LAYERS.map((layer) => ({
    files: [`src/${layer}/**/*.ts`],
    rules: {
      ...restricted(patternsOf(layer)),
      ...(PURE.has(layer) ? { 'no-restricted-syntax': ['error', ...HIDDEN_IMPORTS] } : {}),
    },
  })),
  ...ROOMS.map((room) => ({
    files: [`src/sheets/${room}/**/*.ts`],
    rules: restricted(patternsOfRoom(room)),
  })),
  {
    files: ['src/core/**/*.ts'],
    rules: { 'no-restricted-globals': ['error', ...PLATFORM_GLOBALS] },
  },
];
