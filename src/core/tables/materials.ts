/** Conductor materials: resistivity at 20 degC, its temperature coefficient at 20 degC, density. */
export const MATERIALS = ['copper', 'tinned copper', 'aluminium', 'copper-clad aluminium'] as const;
export type Material = (typeof MATERIALS)[number];

export interface MaterialConstants {
  readonly ohmMm2PerM: number;
  readonly perKelvin: number;
  readonly gramsPerCm3: number;
  /** Which columns of an ampacity table hold for it. */
  readonly ampacityAs: 'copper' | 'aluminium';
  readonly source: string;
}

/** 100 % IACS: 58 MS/m at 20 degC (IEC 60028). */
const IACS_OHM_MM2_PER_M = 1 / 58;

export const MATERIAL_CONSTANTS: Readonly<Record<Material, MaterialConstants>> = {
  copper: {
    ohmMm2PerM: IACS_OHM_MM2_PER_M,
    perKelvin: 0.00393,
    gramsPerCm3: 8.89,
    ampacityAs: 'copper',
    source: 'annealed copper, IEC 60028',
  },
  'tinned copper': {
    ohmMm2PerM: IACS_OHM_MM2_PER_M / 0.9616,
    perKelvin: 0.00393,
    gramsPerCm3: 8.89,
    ampacityAs: 'copper',
    source:
      'ASTM B33, tinned strands of 0.28 to 0.51 mm, 96.16 % IACS (from memory; it gives the coated solid rows 18 to 10 AWG of NFPA 70 chapter 9 table 8 within 0.3 %)',
  },
  aluminium: {
    ohmMm2PerM: IACS_OHM_MM2_PER_M / 0.61,
    perKelvin: 0.00403,
    gramsPerCm3: 2.703,
    ampacityAs: 'aluminium',
    source: 'electrical aluminium, 61 % IACS, ASTM B230, IEC 60111 (density from memory)',
  },
  'copper-clad aluminium': {
    ohmMm2PerM: IACS_OHM_MM2_PER_M / 0.644,
    // Aluminium's coefficient, the larger of the two metals', so that heat never flatters the conductor.
    perKelvin: 0.00403,
    gramsPerCm3: 3.63,
    ampacityAs: 'aluminium',
    source: '15 % copper by volume, ASTM B566 class 15A, 64.4 % IACS (density from memory)',
  },
};

/** The resistance law R = R20 (1 + a (T - 20)) is straight only over the temperatures cables live at. */
export const RESISTANCE_LAW_LEAST_C = -100;
export const RESISTANCE_LAW_MOST_C = 300;
