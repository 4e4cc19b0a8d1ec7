/** Names for a new schedule that nothing in the workbook has yet. */
import { RULE_KEYS, type RuleReferences } from './house-rules';
import { FEED_KEYS, type FeedKey } from './references';
import { DATA_KEYS, type NativeNames } from './native-references';
import { PROTECTION_NAME_KEYS, type ProtectionNameKey } from './protection-keys';
import { SUPPLY_KEYS, type SupplyKey } from '../supply/cells';

export interface ScheduleNames {
  readonly sheet: string;
  readonly supplySheet: string;
  readonly protectionSheet: string;
  readonly table: string;
  readonly rule: RuleReferences;
  readonly feed: Readonly<Record<FeedKey, string>>;
  readonly supply: Readonly<Record<SupplyKey, string>>;
  readonly protect: Readonly<Record<ProtectionNameKey, string>>;
  /** Of the sheets that travel along where there is no add-in. */
  readonly native: NativeNames;
}

/** Names already in a workbook, in lower case, since spreadsheets do not tell case apart. */
export interface NamesInUse {
  readonly sheets: ReadonlySet<string>;
  readonly names: ReadonlySet<string>;
}

function namedAfter<Key extends string>(
  keys: readonly Key[],
  stem: string,
): Readonly<Record<Key, string>> {
  return Object.fromEntries(keys.map((key) => [key, `${stem}_${key}`])) as Record<Key, string>;
}

/** The names of the schedule of a number; the first has none in its names. */
export function scheduleNames(number = 1): ScheduleNames {
  const suffix = number === 1 ? '' : String(number);
  const numbered = (name: string) => (number === 1 ? name : `${name} ${number}`);
  return {
    sheet: numbered('Run schedule'),
    supplySheet: numbered('Supply'),
    protectionSheet: numbered('Protection'),
    table: `LoomRuns${suffix}`,
    rule: namedAfter(RULE_KEYS, `LoomRules${suffix}`),
    feed: namedAfter(FEED_KEYS, `LoomFeed${suffix}`),
    supply: namedAfter(SUPPLY_KEYS, `LoomSupply${suffix}`),
    protect: namedAfter(PROTECTION_NAME_KEYS, `LoomProtection${suffix}`),
    native: {
      conductorsSheet: numbered('Conductors'),
      fusesSheet: numbered('Fuses'),
      workingsSheet: numbered('Workings'),
      data: namedAfter(DATA_KEYS, `LoomData${suffix}`),
    },
  };
}

/** The first numbering of which no name is taken. */
export function freeScheduleNames(taken: NamesInUse): ScheduleNames {
  for (let number = 1; ; number += 1) {
    const names = scheduleNames(number);
    const { conductorsSheet, fusesSheet, workingsSheet, data } = names.native;
    const sheets = [
      names.sheet,
      names.supplySheet,
      names.protectionSheet,
      conductorsSheet,
      fusesSheet,
      workingsSheet,
    ];
    const named: readonly Readonly<Record<string, string>>[] = [
      names.rule,
      names.feed,
      names.supply,
      names.protect,
      data,
    ];
    const wanted = [names.table, ...named.flatMap((keyed) => Object.values(keyed))];
    const free =
      !sheets.some((name) => taken.sheets.has(name.toLowerCase())) &&
      !wanted.some((name) => taken.names.has(name.toLowerCase()));
    if (free) return names;
  }
}
