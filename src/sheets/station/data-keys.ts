/** Keys of the named ranges on the sheets that travel along where there is no add-in. */
export const DATA_KEYS = [
  /** Sizes as text, and by size in the same rows: what follows. */
  'sizes',
  'areaMm2',
  'ohmsPerM',
  'ampacity',
  /** 1 for a size that may be suggested, else 0; its place among those; its ampacity, 0 where it may not. */
  'choose',
  'order',
  'chooseAmps',
  /** The greatest fuse that a size may have by its ampacity and the rule for small wires; 0 where it may not be suggested. */
  'chooseFuseA',
  /** By size, the greatest fuse that the rule for small wires allows. */
  'fuseLimitA',
  /** Metres in the length unit, and whether the rules that wires, heat and sizes hang on can be used. */
  'metresPer',
  'wireOk',
  'heatOk',
  'seriesOk',
  'limitOk',
  /** Standard ratings, ascending. */
  'fuses',
  'chemistries',
  'restingCharge',
  'restingVolts',
  /** Constants of the adiabatic equation by material. */
  'materials',
  'joulePerKelvinMm3',
  'betaK',
  'ohmMm',
  'meltsC',
] as const;
export type DataKey = (typeof DATA_KEYS)[number];
