/** Sheets that a station has where they are wanted: what follows the sizing, out of the same schedule. */
export const EXTRA_KEYS = [
  'wireList',
  'parts',
  'labels',
  'asBuilt',
  'fuseMap',
  'drawing',
  'dropChart',
] as const;
export type ExtraKey = (typeof EXTRA_KEYS)[number];
/**
 * Those that follow the schedule by themselves: cells, which every spreadsheet holds, and a chart of them where it draws
 * charts.
 */
export function followingKeys({ hasCharts }: { readonly hasCharts: boolean }): readonly ExtraKey[] {
  return EXTRA_KEYS.filter((key) => key !== 'drawing' && (key !== 'dropChart' || hasCharts));
}

export interface Extra {
  /** As the first schedule of a workbook calls it. */
  readonly sheetName: string;
  /** What the defined names of the sheet begin with. */
  readonly stem: string;
  /** How the command is asked for it. */
  readonly word: string;
  /** What it is for, in a few words. */
  readonly purpose: string;
}

export const EXTRAS: Readonly<Record<ExtraKey, Extra>> = {
  wireList: {
    sheetName: 'Wire list',
    stem: 'LoomWire',
    word: 'wire-list',
    purpose: 'metres to buy and to cut, spools, waste, mass and cost',
  },
  parts: {
    sheetName: 'Parts',
    stem: 'LoomParts',
    word: 'parts',
    purpose:
      'fuses and holders to buy, contacts and lugs that fit, and what their joints sum up to',
  },
  labels: {
    sheetName: 'Labels',
    stem: 'LoomLabels',
    word: 'labels',
    purpose: 'two labels a run for plain label stock, one for either end',
  },
  asBuilt: {
    sheetName: 'As built',
    stem: 'LoomBuilt',
    word: 'as-built',
    purpose: 'readings of finished runs, and whether their joints are sound',
  },
  fuseMap: {
    sheetName: 'Fuse map',
    stem: 'LoomFuseMap',
    word: 'fuse-map',
    purpose: 'fuses of each block by position, rating, run and load, for the lid of the box',
  },
  drawing: {
    sheetName: 'Drawing',
    stem: 'LoomDrawing',
    word: 'drawing',
    purpose: 'one-line diagram of sources, fuses, runs and loads, for the lid of the box',
  },
  dropChart: {
    sheetName: 'Drop chart',
    stem: 'LoomDropChart',
    word: 'drop-chart',
    purpose: 'a chart of what is lost up to each load, against its target',
  },
};
