/** What is said on the sheets of a schedule that stand where they are wanted. */
import type { ExtrasContent } from '../sheets/station/content';
import { EXTRA_KEYS } from '../sheets/station/extras';
import type { LabelsTyped } from '../sheets/station/labels';
import type { ScheduleRun } from '../sheets/station/run';
import { hasDrawing } from './drawing';
import { hasDropChart } from './drop-chart';
import { readFuseMap, withPositions, type FuseMapRead } from './fuse-map';
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
  readonly fuseMap?: FuseMapRead;
  readonly drawing?: true;
  readonly dropChart?: true;
}

/** What belongs to the schedule on a sheet. */
export function extrasIn(tables: readonly RawTable[], schedule: string): ExtrasRead {
  const wireList = readWireList(tables, schedule);
  const parts = readParts(tables, schedule);
  const labels = readLabels(tables, schedule);
  const asBuilt = readAsBuilt(tables, schedule);
  const fuseMap = readFuseMap(tables, schedule);
  return {
    ...(wireList && { wireList }),
    ...(parts && { parts }),
    ...(labels && { labels }),
    ...(asBuilt && { asBuilt }),
    ...(fuseMap && { fuseMap }),
    ...(hasDrawing(tables, schedule) && { drawing: true }),
    ...(hasDropChart(tables, schedule) && { dropChart: true }),
  };
}

/** The same for the runs that were taken, in their order; nothing where the schedule has no such sheet. */
export function withExtrasOf(
  read: ExtrasRead,
  places: readonly number[],
  runs: readonly ScheduleRun[],
): ExtrasContent {
  const { wireList, parts, labels, asBuilt, fuseMap } = read;
  const extras = EXTRA_KEYS.filter((key) => read[key] !== undefined);
  if (extras.length === 0) return {};
  return {
    extras,
    ...(wireList && { wireList: withColours(wireList, places) }),
    ...(parts && { parts: withContacts(parts, places) }),
    ...(labels && { labels }),
    ...(asBuilt && { asBuilt: withReadings(asBuilt, places, runs) }),
    ...(fuseMap && { fuseMap: withPositions(fuseMap, places) }),
  };
}
