/** The shape that every published ampacity table has here. */

/** Amps by column; null where the table leaves the cell empty. */
export type AmpacityRow = readonly (number | null)[];

export interface AmpacityTable {
  readonly title: string;
  /** Its edition, and what of it is from memory, by the columns that a material has. */
  readonly edition: Readonly<Record<'copper' | 'aluminium', string>>;
  /** Insulation ratings, degC, ascending. */
  readonly columnsC: readonly number[];
  /** Ambient the table is drawn up for, degC. */
  readonly referenceAmbientC: number;
  /** Rows by gauge (1/0 is 0, 4/0 is -3), thinnest first. */
  readonly copper: ReadonlyMap<number, AmpacityRow>;
  readonly aluminium: ReadonlyMap<number, AmpacityRow>;
  /** Where the rule has thinner rows than it lets a single conductor be: the thinnest gauge, and the rule in words. */
  readonly thinnestSingle?: { readonly gauge: number; readonly rule: string };
}
