/**
 * NFPA 70 (National Electrical Code), 2011 edition and later, table 310.17 (numbered 310.15(B)(17) in 2011 to 2017):
 * single conductors in free air, 30 degC ambient. From memory; the 60 and 75 degC cells from 6 AWG up also stand in
 * 33 CFR 183.425 table 5, which was read. Aluminium and copper-clad aluminium from memory.
 * 18 and 16 AWG stand in the 90 degC column alone; their ampacities at 60 and 75 degC are not printed but computed from
 * it, by the equation of 310.15(B): see rowAmps.
 */
import type { AmpacityTable } from './ampacity-table';

export const NFPA70_310_17: AmpacityTable = {
  title: 'NFPA 70 table 310.17',
  edition: {
    copper: '2011 edition and later, from memory',
    aluminium: '2011 edition and later, from memory',
  },
  columnsC: [60, 75, 90],
  referenceAmbientC: 30,
  copper: new Map([
    [18, [null, null, 18]],
    [16, [null, null, 24]],
    [14, [25, 30, 35]],
    [12, [30, 35, 40]],
    [10, [40, 50, 55]],
    [8, [60, 70, 80]],
    [6, [80, 95, 105]],
    [4, [105, 125, 140]],
    [3, [120, 145, 165]],
    [2, [140, 170, 190]],
    [1, [165, 195, 220]],
    [0, [195, 230, 260]],
    [-1, [225, 265, 300]],
    [-2, [260, 310, 350]],
    [-3, [300, 360, 405]],
  ]),
  aluminium: new Map([
    [12, [25, 30, 35]],
    [10, [35, 40, 45]],
    [8, [45, 55, 60]],
    [6, [60, 75, 85]],
    [4, [80, 100, 115]],
    [3, [95, 115, 130]],
    [2, [110, 135, 150]],
    [1, [130, 155, 175]],
    [0, [150, 180, 205]],
    [-1, [175, 210, 235]],
    [-2, [200, 240, 270]],
    [-3, [235, 280, 315]],
  ]),
};
