/** Names for a new schedule that nothing in the workbook has yet. */
import { DATA_KEYS, type DataKey } from './data-keys';
import { RULE_KEYS, type RuleKey } from './house-rules';
import {
  PROTECTION_COLUMN_NAME_KEYS,
  PROTECTION_NAME_KEYS,
  type ProtectionColumnNameKey,
  type ProtectionNameKey,
} from './protection-keys';
import { FEED_KEYS, VERDICT_NAME_KEYS, type FeedKey, type VerdictNameKey } from './references';
import { COLUMN_KEYS, type ColumnKey } from './schedule-keys';
import { SUPPLY_KEYS, type SupplyKey } from './supply-keys';

/** The sheets that point at one another, as the first schedule of a workbook calls them. */
export const SHEET_NAMES = {
  sheet: 'Run schedule',
  rulesSheet: 'House rules',
  supplySheet: 'Supply',
  protectionSheet: 'Protection',
  verdictsSheet: 'Verdicts',
  crewSheet: 'Crew sheet',
  conductorsSheet: 'Conductors',
  fusesSheet: 'Fuses',
  workingsSheet: 'Workings',
} as const;

/** Defined names by what they start with, before the schedule's number. */
export const NAME_STEMS = {
  schedule: 'LoomSchedule',
  column: 'LoomColumn',
  work: 'LoomWorkings',
  rule: 'LoomRules',
  feed: 'LoomFeed',
  supply: 'LoomSupply',
  protect: 'LoomProtection',
  verdicts: 'LoomVerdicts',
  data: 'LoomData',
} as const;
const TABLE = 'LoomRuns';
/** Names of the schedule itself: its rows, by which a reader tells which sheets are its own. */
export const SCHEDULE_NAME_KEYS = ['runs'] as const;
export type ScheduleNameKey = (typeof SCHEDULE_NAME_KEYS)[number];

type Named<Key extends string> = Readonly<Record<Key, string>>;

export interface ScheduleNames extends Named<keyof typeof SHEET_NAMES> {
  readonly table: string;
  readonly schedule: Named<ScheduleNameKey>;
  /** Columns of the schedule, in a file. */
  readonly column: Named<ColumnKey>;
  readonly rule: Named<RuleKey>;
  readonly feed: Named<FeedKey>;
  readonly supply: Named<SupplyKey>;
  readonly protect: Named<ProtectionNameKey>;
  /** Columns of the Protection sheet that others look at, in a file. */
  readonly protectColumn: Named<ProtectionColumnNameKey>;
  readonly verdicts: Named<VerdictNameKey>;
  readonly data: Named<DataKey>;
  /** The name of any other sheet of the same schedule. */
  sheetNamed(first: string): string;
  /** Defined names of any other sheet of the same schedule. */
  named<Key extends string>(stem: string, keys: readonly Key[]): Named<Key>;
}

/** Names already in a workbook, in lower case, since spreadsheets do not tell case apart. */
export interface NamesInUse {
  readonly sheets: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}

/** What a sheet of a schedule will be called, and the names that it defines. */
export interface WantedNames {
  readonly name: string;
  readonly defines?: readonly (readonly [stem: string, keys: readonly string[]])[];
}

const made = new Map<number, ScheduleNames>();

/** The names of the schedule of a number; the first has none in its names. The same object each time. */
export function scheduleNames(number = 1): ScheduleNames {
  let names = made.get(number);
  if (names === undefined) made.set(number, (names = namesOf(number)));
  return names;
}

function namesOf(number: number): ScheduleNames {
  const suffix = number === 1 ? '' : String(number);
  const sheetNamed = (first: string) => (number === 1 ? first : `${first} ${number}`);
  const named = <Key extends string>(stem: string, keys: readonly Key[]) =>
    Object.fromEntries(keys.map((key) => [key, `${stem}${suffix}_${key}`])) as Named<Key>;
  return {
    ...(Object.fromEntries(
      Object.entries(SHEET_NAMES).map(([key, first]) => [key, sheetNamed(first)]),
    ) as Named<keyof typeof SHEET_NAMES>),
    table: `${TABLE}${suffix}`,
    schedule: named(NAME_STEMS.schedule, SCHEDULE_NAME_KEYS),
    column: named(NAME_STEMS.column, COLUMN_KEYS),
    rule: named(NAME_STEMS.rule, RULE_KEYS),
    feed: named(NAME_STEMS.feed, FEED_KEYS),
    supply: named(NAME_STEMS.supply, SUPPLY_KEYS),
    protect: named(NAME_STEMS.protect, PROTECTION_NAME_KEYS),
    protectColumn: named(NAME_STEMS.protect, PROTECTION_COLUMN_NAME_KEYS),
    verdicts: named(NAME_STEMS.verdicts, VERDICT_NAME_KEYS),
    data: named(NAME_STEMS.data, DATA_KEYS),
    sheetNamed,
    named,
  };
}

/** The first numbering of which no name that the sheets want is taken. */
export function freeScheduleNames(
  taken: NamesInUse,
  sheets: readonly WantedNames[],
): ScheduleNames {
  for (let number = 1; ; number += 1) {
    const names = scheduleNames(number);
    const defined = sheets.flatMap(({ defines = [] }) =>
      defines.flatMap(([stem, keys]) => Object.values(names.named(stem, keys))),
    );
    const isFree =
      !sheets.some(({ name }) => taken.sheets.has(names.sheetNamed(name).toLowerCase())) &&
      ![names.table, ...defined].some((name) => taken.names.has(name.toLowerCase()));
    if (isFree) return names;
  }
}
