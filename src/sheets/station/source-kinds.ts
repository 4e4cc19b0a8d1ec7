/** What a source can be. */
export const SOURCE_KINDS = ['battery', 'power supply', 'panel', 'charger', 'alternator'] as const;
export type SourceKind = (typeof SOURCE_KINDS)[number];
