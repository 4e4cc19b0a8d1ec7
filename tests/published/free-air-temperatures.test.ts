/**
 * The computed temperature of single copper conductors in free air of 30 degC at the published ampacities: each column
 * of a table says that its amps bring the conductor to that column's temperature. The whole comparison is printed.
 *
 * Why they differ. NFPA 70 table 310.17 goes back to measurements and a heat model of the 1930s on rubber-covered
 * wire, with walls about twice as thick as the thin PVC assumed here, and is rounded to 5 A; a wall of 0.4 mm in place
 * of 0.8 mm alone makes 14 AWG 6 to 9 K hotter and 4/0 AWG under 1 K. One step of 5 A is 4 K on 12 AWG in the 60 degC
 * column and 6 K on 14 AWG in the 90 degC column. The 90 degC column was set lower than the model for thick sizes.
 * 33 CFR 183.425 table 5 repeats 310.17 at 60 and 75 degC from 6 AWG up; under 10 AWG it keeps one current for both
 * columns, and its 90 degC column allows more than 310.17 for thin sizes and less for thick ones.
 */
import { afterAll, describe, expect, test } from 'vitest';
import { conductorTempC } from '../../src/core/conductor-temp';
import { awg, formatSize } from '../../src/core/size';
import type { AmpacityTable } from '../../src/core/tables/ampacity-table';
import { CFR33_183_425 } from '../../src/core/tables/33cfr-183-425';
import { NFPA70_310_17 } from '../../src/core/tables/nfpa70-310-17';

const COLUMNS_C = [60, 75, 90] as const;
type ColumnC = (typeof COLUMNS_C)[number];

/** Kelvin that the computed temperature may lie below and above the column's, for thin (12 AWG down) and thick sizes. */
interface Tolerance {
  readonly thin: readonly [below: number, above: number];
  readonly thick: readonly [below: number, above: number];
}

const TABLES: readonly {
  readonly table: AmpacityTable;
  readonly tolerances: Readonly<Record<ColumnC, Tolerance>>;
}[] = [
  {
    table: NFPA70_310_17,
    tolerances: {
      60: { thin: [5, 10], thick: [5, 5] },
      75: { thin: [5, 10], thick: [5, 5] },
      90: { thin: [8, 14], thick: [8, 5] },
    },
  },
  {
    table: CFR33_183_425,
    tolerances: {
      60: { thin: [12, 5], thick: [5, 5] },
      75: { thin: [27, 5], thick: [16, 5] },
      90: { thin: [8, 15], thick: [15, 5] },
    },
  },
];

describe.each(TABLES)('$table.title', ({ table, tolerances }) => {
  const printed: string[] = [];

  afterAll(() => {
    console.log(
      [
        `${table.title}, computed degC at the published amps, 30 degC air, copper, usual thin wall`,
        ['AWG', ...COLUMNS_C.map((columnC) => `${columnC} degC column`)].join(' | '),
        ...printed,
      ].join('\n'),
    );
  });

  test.each([...table.copper])('%d AWG', (gauge, row) => {
    const cells = COLUMNS_C.map((columnC) => {
      const amps = row[table.columnsC.indexOf(columnC)];
      if (typeof amps !== 'number') return '-';
      const computedC = conductorTempC(amps, {
        size: awg(gauge),
        material: 'copper',
        ambientC: table.referenceAmbientC,
        insulationMm: undefined,
      });
      const [below, above] = tolerances[columnC][gauge >= 12 ? 'thin' : 'thick'];
      expect(computedC).toBeGreaterThan(columnC - below);
      expect(computedC).toBeLessThan(columnC + above);
      return `${amps} A ${(computedC as number).toFixed(1)}`;
    });
    printed.push([formatSize(awg(gauge)), ...cells].join(' | '));
  });
});
