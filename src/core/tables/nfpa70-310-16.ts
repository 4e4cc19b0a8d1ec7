/**
 * NFPA 70 (National Electrical Code), 2011 edition and later, table 310.16 (numbered 310.15(B)(16) in 2011 to 2017):
 * not more than three current-carrying conductors in raceway, cable or earth, 30 degC ambient. Copper read in
 * reproductions of the edition before 2011 and, where that edition differs (four cells), from memory; aluminium and
 * copper-clad aluminium from memory. 18 and 16 AWG stand in the 90 degC column alone; their ampacities at 60 and 75 degC
 * are not printed but computed from it, by the equation of 310.15(B): see rowAmps.
 */
import type { AmpacityTable } from './ampacity-table';

export const NFPA70_310_16: AmpacityTable = {
  title: 'NFPA 70 table 310.16',
  edition: {
    copper: '2011 edition and later, four cells from memory',
    aluminium: '2011 edition and later, from memory',
  },
  columnsC: [60, 75, 90],
  referenceAmbientC: 30,
  copper: new Map([
    [18, [null, null, 14]],
    [16, [null, null, 18]],
    [14, [15, 20, 25]],
    [12, [20, 25, 30]],
    [10, [30, 35, 40]],
    [8, [40, 50, 55]],
    [6, [55, 65, 75]],
    [4, [70, 85, 95]],
    [3, [85, 100, 115]],
    [2, [95, 115, 130]],
    [1, [110, 130, 145]],
    [0, [125, 150, 170]],
    [-1, [145, 175, 195]],
    [-2, [165, 200, 225]],
    [-3, [195, 230, 260]],
  ]),
  aluminium: new Map([
    [12, [15, 20, 25]],
    [10, [25, 30, 35]],
    [8, [35, 40, 45]],
    [6, [40, 50, 55]],
    [4, [55, 65, 75]],
    [3, [65, 75, 85]],
    [2, [75, 90, 100]],
    [1, [85, 100, 115]],
    [0, [100, 120, 135]],
    [-1, [115, 135, 150]],
    [-2, [130, 155, 175]],
    [-3, [150, 180, 205]],
  ]),
};
