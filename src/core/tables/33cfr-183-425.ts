/**
 * 33 CFR 183.425 table 5, the public rule for conductors in boats, single copper conductors at 30 degC ambient;
 * read in full. Bundling is a matter of the section for circuits of 50 V and more (183.435); none applies under 50 V.
 * Table 5 names no aluminium: 183.425(a) wants stranded copper. Its row of 18 AWG is for conductors in a sheath: a single
 * conductor is at least 16 AWG, 183.425(d) and (e) (as a reader of the regulation gives them, the text not opened).
 */
import type { AmpacityTable } from './ampacity-table';

export const CFR33_183_425: AmpacityTable = {
  title: '33 CFR 183.425 table 5',
  edition: { copper: 'read in full', aluminium: 'it has none' },
  columnsC: [60, 75, 80, 90, 105, 125, 200],
  referenceAmbientC: 30,
  copper: new Map([
    [18, [10, 10, 15, 20, 20, 25, 25]],
    [16, [15, 15, 20, 25, 25, 30, 35]],
    [14, [20, 20, 25, 30, 35, 40, 45]],
    [12, [25, 25, 35, 40, 45, 50, 55]],
    [10, [40, 40, 50, 55, 60, 70, 70]],
    [8, [55, 65, 70, 70, 80, 90, 100]],
    [6, [80, 95, 100, 100, 120, 125, 135]],
    [4, [105, 125, 130, 135, 160, 170, 180]],
    [3, [120, 145, 150, 155, 180, 195, 210]],
    [2, [140, 170, 175, 180, 210, 225, 240]],
    [1, [165, 195, 210, 210, 245, 265, 280]],
    [0, [195, 230, 245, 245, 285, 305, 325]],
    [-1, [225, 265, 285, 285, 330, 355, 370]],
    [-2, [260, 310, 330, 330, 385, 410, 430]],
    [-3, [300, 360, 385, 385, 445, 475, 510]],
  ]),
  aluminium: new Map(),
  thinnestSingle: {
    gauge: 16,
    rule: '33 CFR 183.425 wants single conductors of at least 16 AWG, and 18 AWG only in a sheath',
  },
};

/**
 * Note 1 of the same table: what remains of the ampacity inside an engine space (50 degC), by insulation rating.
 * 105 degC read, the others from memory; each is sqrt((T - 50) / (T - 30)) within 0.006. At 200 degC the regulation
 * gives 1.00; the equation's smaller share is used there, to be on the safe side.
 */
export const ENGINE_SPACE_AMBIENT_C = 50;
export const ENGINE_SPACE_SHARE: ReadonlyMap<number, number> = new Map([
  [60, 0.58],
  [75, 0.75],
  [80, 0.78],
  [90, 0.82],
  [105, 0.85],
  [125, 0.89],
  [200, 0.939],
]);
