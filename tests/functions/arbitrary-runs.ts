/** Runs of the kind people wire, for property tests; arguments in the order that the run functions take them. */
import fc from 'fast-check';
import type { Cell } from '../../src/functions/cell';

export const anyAmps = fc.double({ min: 0.05, max: 150, noNaN: true });
export const anyLength = fc.double({ min: 0.05, max: 200, noNaN: true });
export const anyUnit = fc.constantFrom('ft', 'in', 'm', 'cm', 'mm');
export const anyVolts = fc.double({ min: 5, max: 58, noNaN: true });
export const anyTarget = fc.double({ min: 0.002, max: 0.499, noNaN: true });

/** Sizes thinnest first, as the contract of the series lists them. */
export const SIZES_OF_SERIES: Readonly<Record<'AWG' | 'AWG all' | 'mm2', readonly string[]>> = {
  AWG: ['18', '16', '14', '12', '10', '8', '6', '4', '2', '1/0', '2/0', '3/0', '4/0'].map(
    (gauge) => `${gauge} AWG`,
  ),
  'AWG all': [
    ...Array.from({ length: 40 }, (_, index) => `${40 - index} AWG`),
    ...['1/0', '2/0', '3/0', '4/0'].map((gauge) => `${gauge} AWG`),
  ],
  mm2: [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120].map((area) => `${area} mm2`),
};

export const anySeries = fc.constantFrom('AWG', 'AWG all', 'mm2');

export const anySize = fc.oneof(
  fc.constantFrom(...SIZES_OF_SERIES['AWG all'], ...SIZES_OF_SERIES.mm2),
  fc.integer({ min: 50, max: 400_000 }).map((thousandths) => `${thousandths / 1000} mm2`),
);

/** Material, conductor temperature, joints in milliohms. */
export const anyConductor = fc.tuple(
  fc.constantFrom('copper', 'tinned copper', 'aluminium', 'copper-clad aluminium', null),
  fc.oneof(fc.double({ min: -40, max: 120, noNaN: true }), fc.constant(null)),
  fc.oneof(fc.constantFrom(0, null), fc.double({ min: 0, max: 30, noNaN: true })),
) as fc.Arbitrary<Cell[]>;

/** Nothing for a second conductor, or milliohms of the chassis that brings the current back. */
export const anyReturn = fc.oneof(
  fc.constant(null),
  fc.double({ min: 0.01, max: 40, noNaN: true }),
) as fc.Arbitrary<Cell>;

/** Conductor and return, as the functions take them that have nothing between. */
export const anyRoute = fc
  .tuple(anyConductor, anyReturn)
  .map(([conductor, back]): Cell[] => [...conductor, back]);

/** Insulation rating, ambient, conductors together, how installed, whether continuous. */
export const anyInstallation = fc.tuple(
  fc.constantFrom(60, 70, 75, 90, 105, 125, null),
  fc.oneof(fc.integer({ min: -20, max: 70 }), fc.constant(null)),
  fc.constantFrom(2, 3, 4, 8, 24, null),
  fc.constantFrom('cable', 'air', 'craft', 'engine space', null),
  fc.constantFrom(true, false, null),
) as fc.Arbitrary<Cell[]>;

export const anyFuseLimit = fc.constantFrom('none', 'NFPA 70 240.4(D)', null) as fc.Arbitrary<Cell>;
