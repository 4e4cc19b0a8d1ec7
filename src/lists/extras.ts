/** What is said on the sheets of a schedule that stand where they are wanted. */
import type { ExtrasContent } from '../sheets/station/content';
import { EXTRA_KEYS } from '../sheets/station/extras';
import type { LabelsTyped } from '../sheets/station/labels';
import { readAsBuilt, withReadings, type AsBuiltRead } from './as-built';
import { readLabels } from './labels';
import { readParts, withContacts, type PartsRead } from './parts';
import { readWireList, withColours, type WireListRead } from './wire-list';
import type { RawTable } from './raw';

/** As read, with entries of runs by their places. */
export interface ExtrasRead {
  readonly wireList?: WireListRead;
  readonly parts?: PartsRead;
  readonly labels?: LabelsTyped;
  readonly asBuilt?: AsBuiltRead;
}

/** What belongs to the schedule on a sheet. */
export function extrasIn(tables: readonly RawTable[], schedule: string): ExtrasRead {
  const wireList = readWireList(tables, schedule);
  const parts = readParts(tables, schedule);
  const labels = readLabels(tables, schedule);
  const asBuilt = readAsBuilt(tables, schedule);
  return {
    ...(wireList && { wireList }),
    ...(parts && { parts }),
    ...(labels && { labels }),
    ...(asBuilt && { asBuilt }),
  };
}

/** The same for the runs that were taken, in their order; nothing where the schedule has no such sheet. */
export function withExtrasOf(read: ExtrasRead, places: readonly number[]): ExtrasContent {
  const { wireList, parts, labels, asBuilt } = read;
  const extras = EXTRA_KEYS.filter((key) => read[key] !== undefined);
  if (extras.length === 0) return {};
  return {
    extras,
    ...(wireList && { wireList: withColours(wireList, places) }),
    ...(parts && { parts: withContacts(parts, places) }),
    ...(labels && { labels }),
    ...(asBuilt && { asBuilt: withReadings(asBuilt, places) }),
  };
}
