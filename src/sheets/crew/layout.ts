/** Where the parts of the Crew sheet stand: the printed columns, and the workings out of sight right of them. */
import { area, areaAddress, cellAddress, type Area } from '../plan/area';
import { runsFollowed } from '../schedule/layout';
import type { Layout } from '../station/layout';
import { LEVELS } from '../station/verdicts';

/** Zero-based rows of the sheet's parts. */
export const CREW_ROW = { title: 0, summary: 1, warning: 2, header: 3, first: 4 } as const;

/** What is printed of a run, from the left. */
export const CREW_KEYS = ['done', 'run', 'route', 'length', 'wire', 'fuse', 'volts'] as const;
export type CrewKey = (typeof CREW_KEYS)[number];

/** Lines that what is wrong with a run may take. */
export const TEXT_LINES = [1, 2, 3, 4, 5] as const;
export type TextLine = (typeof TEXT_LINES)[number];

/** By the run's place in the schedule: its level, how many of each level there are down to here, its place on the page. */
const BY_PLACE = ['levelThere', 'count1', 'count2', 'count3', 'count4', 'count5', 'order'] as const;
/** By the run's order on the page: its place in the schedule, what is said of it, and where its lines begin. */
const BY_ORDER = [
  'place',
  'level',
  'text',
  'end1',
  'end2',
  'end3',
  'end4',
  'end5',
  'begins',
  'wants',
  'lines',
] as const;
/** By the line of the page: the run that it is of, and which of its lines. */
const BY_LINE = ['of', 'line', 'ofPlace', 'ofLevel'] as const;

type PlaceKey = (typeof BY_PLACE)[number];
type OrderKey = (typeof BY_ORDER)[number];
type LineKey = (typeof BY_LINE)[number];
export type CrewWorkingKey = PlaceKey | OrderKey | LineKey;
export const CREW_WORKING_KEYS: readonly CrewWorkingKey[] = [...BY_PLACE, ...BY_ORDER, ...BY_LINE];

/** Between what is printed and the workings; nothing ever stands in it. */
export const GAP_COLUMN = CREW_KEYS.length;
const WORKINGS_FROM = GAP_COLUMN + 1;

/** Lines for what is wrong; where they run out, each run still has its own line. */
const LEAST_TEXT_LINES = 40;

/** Lines that a page takes in print of 9 points, readable at arm's length; a print is never cut shorter. */
export const PAGE_LINES = 58;
/** Lines that a print has room for below what stands there at the start. */
const SPARE_LINES = 4;

/** How many lines the sheet has. */
export function lineCount(layout: Layout): number {
  return 2 * runsFollowed(layout) + LEAST_TEXT_LINES;
}

/** Lines to print where so many are wanted. */
export function linesToPrint(wanted: number): number {
  return wanted <= PAGE_LINES ? PAGE_LINES : wanted + SPARE_LINES;
}

export function crewColumn(key: CrewKey): number {
  return CREW_KEYS.indexOf(key);
}

/** The column of a working, over its rows. */
export function workingArea(key: CrewWorkingKey, layout: Layout): Area {
  const rows = (BY_LINE as readonly string[]).includes(key)
    ? lineCount(layout)
    : runsFollowed(layout);
  return area(CREW_ROW.first, WORKINGS_FROM + CREW_WORKING_KEYS.indexOf(key), rows, 1);
}

export const WORKING_COLUMNS: readonly number[] = CREW_WORKING_KEYS.map(
  (_, index) => WORKINGS_FROM + index,
);

/** Cells above the workings: a row of words, of counts, and of runs ahead, each by level; then three single ones. */
const byLevel = (row: number) => area(row, WORKINGS_FROM, 1, LEVELS.length);
export const HEAD_AREAS = {
  words: byLevel(0),
  counts: byLevel(1),
  ahead: byLevel(2),
  all: area(1, WORKINGS_FROM + LEVELS.length),
  used: area(1, WORKINGS_FROM + LEVELS.length + 1),
  wanted: area(1, WORKINGS_FROM + LEVELS.length + 2),
  printed: area(1, WORKINGS_FROM + LEVELS.length + 3),
} as const satisfies Record<string, Area>;
export type HeadKey = keyof typeof HEAD_AREAS;

export interface CrewReferences {
  readonly head: Readonly<Record<HeadKey, string>>;
  /** Whole columns of workings. */
  readonly column: Readonly<Record<CrewWorkingKey, string>>;
  /** Their cells in the first row, to be filled down, and those one row above. */
  readonly cell: Readonly<Record<CrewWorkingKey, string>>;
  readonly above: Readonly<Record<CrewWorkingKey, string>>;
  /** The row's number from 1. */
  readonly number: string;
}

export function crewReferences(layout: Layout): CrewReferences {
  const keyed = (point: (of: Area) => string) =>
    Object.fromEntries(
      CREW_WORKING_KEYS.map((key) => [key, point(workingArea(key, layout))]),
    ) as Record<CrewWorkingKey, string>;
  return {
    head: Object.fromEntries(
      Object.entries(HEAD_AREAS).map(([key, of]) => [key, areaAddress(of, 'both')]),
    ) as Record<HeadKey, string>,
    column: keyed((of) => areaAddress(of, 'both')),
    cell: keyed(({ row, column }) => cellAddress(row, column, 'column')),
    above: keyed(({ row, column }) => cellAddress(row - 1, column, 'column')),
    number: `(ROW()-ROW(${cellAddress(CREW_ROW.header, 0, 'both')}))`,
  };
}
