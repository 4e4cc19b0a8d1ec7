/**
 * IEC 60228, maximum d.c. resistance of a conductor at 20 degC, in ohm per kilometre.
 * Flexible copper, class 5 (table 3), plain and metal-coated; read in reproductions.
 * Aluminium, class 2 (table 2), read in a reproduction; the standard lists no flexible aluminium.
 */
export interface Iec60228Row {
  readonly areaMm2: number;
  readonly plainCopper: number;
  readonly tinnedCopper: number;
  readonly aluminium?: number;
}

export const IEC_60228: readonly Iec60228Row[] = [
  { areaMm2: 0.5, plainCopper: 39.0, tinnedCopper: 40.1 },
  { areaMm2: 0.75, plainCopper: 26.0, tinnedCopper: 26.7 },
  { areaMm2: 1, plainCopper: 19.5, tinnedCopper: 20.0 },
  { areaMm2: 1.5, plainCopper: 13.3, tinnedCopper: 13.7 },
  { areaMm2: 2.5, plainCopper: 7.98, tinnedCopper: 8.21 },
  { areaMm2: 4, plainCopper: 4.95, tinnedCopper: 5.09 },
  { areaMm2: 6, plainCopper: 3.3, tinnedCopper: 3.39 },
  { areaMm2: 10, plainCopper: 1.91, tinnedCopper: 1.95, aluminium: 3.08 },
  { areaMm2: 16, plainCopper: 1.21, tinnedCopper: 1.24, aluminium: 1.91 },
  { areaMm2: 25, plainCopper: 0.78, tinnedCopper: 0.795, aluminium: 1.2 },
  { areaMm2: 35, plainCopper: 0.554, tinnedCopper: 0.565, aluminium: 0.868 },
  { areaMm2: 50, plainCopper: 0.386, tinnedCopper: 0.393, aluminium: 0.641 },
  { areaMm2: 70, plainCopper: 0.272, tinnedCopper: 0.277, aluminium: 0.443 },
  { areaMm2: 95, plainCopper: 0.206, tinnedCopper: 0.21, aluminium: 0.32 },
  { areaMm2: 120, plainCopper: 0.161, tinnedCopper: 0.164, aluminium: 0.253 },
  { areaMm2: 150, plainCopper: 0.129, tinnedCopper: 0.132, aluminium: 0.206 },
  { areaMm2: 185, plainCopper: 0.106, tinnedCopper: 0.108, aluminium: 0.164 },
  { areaMm2: 240, plainCopper: 0.0801, tinnedCopper: 0.0817, aluminium: 0.125 },
  { areaMm2: 300, plainCopper: 0.0641, tinnedCopper: 0.0654, aluminium: 0.1 },
  { areaMm2: 400, plainCopper: 0.0486, tinnedCopper: 0.0495, aluminium: 0.0778 },
];
