/**
 * What sheets of ours had before: headings and labels that were renamed, and what is there since later. Whoever reads a
 * sheet takes the former names too, so that old copies and old workbooks are still understood.
 */
import type { ProtectionCellKey } from './protection-keys';
import type { RuleKey } from './house-rules';
import { RARE_KEYS, type ColumnKey } from './schedule-keys';
import type { SupplyKey } from './supply-keys';

/** Former headings of the schedule. */
export const FORMER_HEADINGS: Readonly<Partial<Record<ColumnKey, string>>> = {
  ownSize: 'Own size',
  leastVolts: 'Least volts',
  suggested: 'Suggested size',
  setBy: 'Set by',
  size: 'Size used',
  dropShare: 'Drop share',
  lowVolts: 'At low charge',
  mend: 'What would mend it',
};

/** Of the Parts sheet, where the contact of a run stood for both of its ends. */
export const FORMER_CONTACT_HEADING = 'My contact';

/** Former words of verdicts, by their keys. */
export const FORMER_WORDS = {
  batteryAssumed: 'sized right, fuse breaking not judged: tell the battery on the Supply sheet',
} as const;

/** Columns of the schedule that old ones lack. */
export const LATER_COLUMNS = [...RARE_KEYS, 'pathDrop'] as const satisfies readonly ColumnKey[];

/** Former labels of cells that a person types or may type over. */
export const FORMER_LABELS: Readonly<Partial<Record<RuleKey | SupplyKey, string>>> = {
  conductors: 'Conductors together',
  lowRest: 'Resting volts, low charge',
};

/** How far right of its label a rule's cell stood while the rules stood over the runs; it stands beside it now. */
export const FORMER_RULE_COLUMNS: Readonly<Record<RuleKey, number>> = {
  material: 2,
  series: 2,
  installed: 2,
  duty: 2,
  unit: 4,
  volts: 4,
  target: 4,
  tempC: 4,
  insulationC: 4,
  ambientC: 4,
  conductors: 4,
  returns: 4,
  counts: 4,
  joints: 4,
  fuseLimit: 4,
  chassis: 4,
};

/** The same in the oldest, which lack a rule that came with it. */
export const OLDEST_RULE_COLUMNS: Readonly<Partial<Record<RuleKey, number>>> = {
  insulationC: 3,
  ambientC: 3,
  conductors: 3,
};

/** Headings of the duty table, as they were. */
export const FORMER_DUTY_HEADINGS = [
  'Load',
  'Sending, A',
  'Receiving, A',
  'Standing by, A',
  'Share sending',
  'Share receiving',
  'Share standing by',
  'Mean current',
  'Heating current',
  'Drawn a day',
] as const;

/** Cells by which the sheets beside a schedule are known, old and new. */
export const LASTING_RULES = [
  'unit',
  'volts',
  'target',
  'counts',
] as const satisfies readonly RuleKey[];
export const LASTING_SUPPLY = [
  'chemistry',
  'ampHours',
  'milliohms',
  'lowCharge',
  'panelVolts',
  'panelTarget',
] as const satisfies readonly SupplyKey[];
export const LASTING_PROTECTION = [
  'startC',
  'limitC',
] as const satisfies readonly ProtectionCellKey[];
