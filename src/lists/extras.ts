/** What is said on the sheets of a schedule that stand where they are wanted. */
import type { ExtrasContent } from '../sheets/station/content';
import type { ExtraKey } from '../sheets/station/extras';
import { readWireList, withColours, type WireListRead } from './wire-list';
import type { RawTable } from './raw';

/** As read, with entries of runs by their places. */
export interface ExtrasRead {
  readonly wireList?: WireListRead;
}

/** What belongs to the schedule on a sheet. */
export function extrasIn(tables: readonly RawTable[], schedule: string): ExtrasRead {
  const wireList = readWireList(tables, schedule);
  return { ...(wireList && { wireList }) };
}

/** The same for the runs that were taken, in their order; nothing where the schedule has no such sheet. */
export function withExtrasOf({ wireList }: ExtrasRead, places: readonly number[]): ExtrasContent {
  const extras: ExtraKey[] = wireList === undefined ? [] : ['wireList'];
  if (extras.length === 0) return {};
  return { extras, ...(wireList && { wireList: withColours(wireList, places) }) };
}
