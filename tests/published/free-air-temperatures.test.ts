/**
 * The computed temperature of single copper conductors in free air of 30 degC at the published ampacities: each column
 * of a table says that its amps bring the conductor to that column's temperature. The whole comparison is printed.
 *
 * Why they differ. NFPA 70 table 310.17 goes back to a heat model of the 1930s for rubber-covered wire (from memory),
 * whose walls were about twice as thick as the thin PVC assumed here: with 0.76 mm in place of 0.38 mm the model puts
 * 14 AWG 4 to 8 K lower, 4/0 AWG under 1 K. And the table goes in steps of 5 A, one of which is 9 K on 12 AWG (25 to
 * 30 A) and 19 K on 14 AWG (30 to 35 A). So thin sizes scatter, and the model errs to the warm side there.
 * 33 CFR 183.425 table 5 repeats 310.17 at 60 and 75 degC from 6 AWG up. From 10 AWG down it keeps one current for both
 * columns, hence the low temperatures at 75 degC; at 90 degC it allows more than 310.17 for 18 and 16 AWG, the same for
 * 12 and 10 AWG and less for all others.
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
