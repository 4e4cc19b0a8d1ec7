/** What is typed on a Wire list: its head, the colours of runs, the prices. */
import { formatSize, parseSize } from '../core/size';
import { isRefusal } from '../core/outcome';
import { PRICE_COLUMNS, RUN_COLUMNS } from '../sheets/wire-list/columns';
import { WIRE_LABELS } from '../sheets/wire-list/cells';
import { CELL_PLACES, PRICE_KEYS, type PriceKey } from '../sheets/wire-list/layout';
import {
  COLOUR_KEYS,
  WIRE_CELL_KEYS,
  type ColourKey,
  type WireListTyped,
  type WirePrice,
} from '../sheets/station/wire-list';
import { entriesByPlace, inPlaces, type ByPlace } from './by-place';
import { companion, typedBeside } from './labelled';
import type { RawTable } from './raw';

export const WIRE_SIGNS: readonly string[] = WIRE_CELL_KEYS.map((key) => WIRE_LABELS[key]);

export const COLOUR_HEADINGS = Object.fromEntries(
  COLOUR_KEYS.map((key) => [key, RUN_COLUMNS[key].heading]),
) as Record<ColourKey, string>;
const PRICE_HEADINGS = Object.fromEntries(
  PRICE_KEYS.map((key) => [key, PRICE_COLUMNS[key].heading]),
) as Record<PriceKey, string>;

export interface WireListRead {
  readonly typed: WireListTyped;
  readonly colours: ByPlace<ColourKey>;
}

/** Sizes with a price or a spool of their own, and those that somebody wrote into a free row. */
function pricesIn(table: RawTable): readonly WirePrice[] {
  return [...entriesByPlace(table, PRICE_HEADINGS).values()].flatMap((entries): WirePrice[] => {
    const { size, areaMm2, ...said } = entries;
    if (size === undefined) return [];
    const text = String(size);
    const parsed = parseSize(size);
    const isOurs = !isRefusal(parsed) && formatSize(parsed) === text;
    if (isOurs && Object.keys(said).length === 0) return [];
    return [{ size: text, ...(!isOurs && areaMm2 !== undefined && { areaMm2 }), ...said }];
  });
}

/** The Wire list that belongs to the schedule on a sheet; undefined where there is none. */
export function readWireList(
  tables: readonly RawTable[],
  schedule: string,
): WireListRead | undefined {
  const table = companion(tables, schedule, WIRE_SIGNS);
  if (table === undefined) return undefined;
  const right = CELL_PLACES.value - CELL_PLACES.label;
  const cells = typedBeside(
    table.rows,
    WIRE_CELL_KEYS.map((key) => ({ key, label: WIRE_LABELS[key], right })),
  );
  const prices = pricesIn(table);
  return {
    typed: { cells, ...(prices.length > 0 && { prices }) },
    colours: entriesByPlace(table, COLOUR_HEADINGS),
  };
}

/** With the colours of the runs that were taken, in their order. */
export function withColours(
  { typed, colours }: WireListRead,
  places: readonly number[],
): WireListTyped {
  const runs = inPlaces(colours, places)?.map((entries) =>
    Object.fromEntries(Object.entries(entries).map(([key, colour]) => [key, String(colour)])),
  );
  return runs === undefined ? typed : { ...typed, runs };
}
