/**
 * NFPA 70 (National Electrical Code), 240.4(D), small conductors: the greatest fuse or breaker, amps, after the
 * corrections of the ampacity for ambient and bundling. Read in reproductions of the 2014 and 2017 editions; copper-clad
 * aluminium of 14 AWG came with the 2023 edition and is from memory. The conditions of 18 and 16 AWG (kinds of fuse, and
 * continuous loads of at most 5.6 and 8 A, which is 80 % of the figure; from memory) are not looked into here, but a fuse
 * of 125 % of a continuous load keeps the loads. The exceptions of 240.4(E) and (G) are not looked into either.
 */
import type { Material } from './materials';

/** Amps by gauge, thinnest first. */
type Rows = ReadonlyMap<number, number>;

const COPPER: Rows = new Map([
  [18, 7],
  [16, 10],
  [14, 15],
  [12, 20],
  [10, 30],
]);

const ALUMINIUM: Rows = new Map([
  [12, 15],
  [10, 25],
]);

const COPPER_CLAD_ALUMINIUM: Rows = new Map([[14, 10], ...ALUMINIUM]);

export const NFPA70_240_4_D: Readonly<Record<Material, Rows>> = {
  copper: COPPER,
  'tinned copper': COPPER,
  aluminium: ALUMINIUM,
  'copper-clad aluminium': COPPER_CLAD_ALUMINIUM,
};

/** Editions and what is from memory, for those who ask where a figure comes from. */
export const SMALL_WIRES_EDITIONS =
  '2014 edition and later, copper-clad aluminium of 14 AWG from memory';

/** The next size that NFPA 70 lists: from here on the rule sets no limit. */
export const UNLIMITED_FROM_GAUGE = 8;
