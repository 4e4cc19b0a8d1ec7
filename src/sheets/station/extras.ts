/** Sheets that a station has where they are wanted: what follows the sizing, out of the same schedule. */
export const EXTRA_KEYS = ['wireList', 'parts', 'labels', 'asBuilt'] as const;
export type ExtraKey = (typeof EXTRA_KEYS)[number];

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
};
