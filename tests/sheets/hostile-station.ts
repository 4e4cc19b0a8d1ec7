/** A station of 300 runs: every kind of mistake, many times over, and well rows between them. */
import type { ScheduleRun } from '../../src/sheets/station/run';
import type { StationContent } from '../../src/sheets/station/content';
import type { VerdictKey } from '../../src/sheets/station/verdicts';

const ROWS = 300;

/** A run, and the words of which at least one has to be said of it; none for a run that is well. */
export interface Told {
  readonly run: ScheduleRun;
  readonly says: readonly VerdictKey[];
}

/** Rows that belong together; names are made their own by `called`. */
type Group = (called: (name: string) => string) => readonly Told[];

const single =
  (entries: ScheduleRun, ...says: readonly VerdictKey[]): Group =>
  (called) => [{ run: { run: called('Lamp'), peak: 2, length: 2, ...entries }, says }];

/** Entries that no row can use. */
const ENTRIES: readonly ScheduleRun[] = [
  { peak: 'abc' },
  { peak: -4 },
  { peak: '2 A or so' },
  { kind: 'VA' },
  { length: 'far' },
  { length: -5 },
  { volts: 0 },
  { volts: -12 },
  { volts: 'many' },
  { target: 3 },
  { target: 0 },
  { target: 'low' },
  { joints: -1 },
  { joints: 'bad' },
  { ownSize: 'thick' },
  { ownSize: '99 AWG' },
  { ownSize: '-1' },
  { fused: 'perhaps' },
  { leastVolts: 0 },
  { leastVolts: 'much' },
  { atOnce: 2 },
  { atOnce: -1 },
  { efficiency: 0, kind: 'W' },
  { efficiency: 'good', kind: 'W' },
  { unfused: -1 },
  { unfused: 'short' },
];

const chain =
  (length: number, says: (place: number) => readonly VerdictKey[]): Group =>
  (called) =>
    Array.from({ length }, (_, place) => ({
      run: {
        run: called(`Link ${place + 1}`),
        length: 1,
        ...(place > 0 && { fedFrom: called(`Link ${place}`) }),
        ...(place === length - 1 && { peak: 2 }),
      },
      says: says(place),
    }));

const MISTAKES: readonly Group[] = [
  ...ENTRIES.map((entries) => single(entries, 'checkEntries')),
  single({ fedFrom: 'Van mian' }, 'feederNotListed'),
  single({ fedFrom: '*' }, 'feederNotListed'),
  single({ fedFrom: '=1/0' }, 'feederNotListed'),
  single({ fedFrom: 'panel' }, 'panelMissing'),
  single({ length: 1e9 }, 'noSize'),
  single({ peak: 400, length: 100 }, 'noSize'),
  single({ ownSize: '0.05 mm2' }, 'noAmpacity', 'checkEntries'),
  single({ ownSize: '18 AWG', peak: 30 }, 'heat'),
  single({ ownSize: '18 AWG', length: 200 }, 'drop'),
  () => [{ run: { fedFrom: 'Van main', peak: 2, length: 2 }, says: ['nameMissing'] }],
  (called) => [{ run: { run: called('Idle'), length: 2 }, says: ['peakMissing'] }],
  (called) => [{ run: { run: called('Idle'), peak: 2 }, says: ['lengthMissing'] }],
  (called) => [
    { run: { run: called('Twin'), peak: 2, length: 2 }, says: ['nameTwice'] },
    { run: { run: called('TWIN'), peak: 2, length: 2 }, says: ['nameTwice'] },
    {
      run: { run: called('Fed by twins'), fedFrom: called('twin'), peak: 2, length: 2 },
      says: ['tiedToAnother'],
    },
  ],
  (called) => [
    { run: { run: called('Trunk'), length: 2 }, says: ['tiedToAnother'] },
    {
      run: { run: called('Branch'), fedFrom: called('Trunk'), peak: 'abc', length: 2 },
      says: ['checkEntries'],
    },
    {
      run: { run: called('Sister'), fedFrom: called('Trunk'), peak: 2, length: 2 },
      says: ['tiedToAnother', 'voltsUnknown'],
    },
  ],
  (called) => [
    { run: { run: called('Trunk'), length: 'far' }, says: ['checkEntries'] },
    {
      run: { run: called('Branch'), fedFrom: called('Trunk'), peak: 2, length: 2 },
      says: ['tiedToAnother'],
    },
  ],
  (called) => [
    { run: { run: called('Panel'), fedFrom: 'Panel', length: 2 }, says: ['panelMissing'] },
    {
      run: { run: called('Charger'), fedFrom: called('Panel'), peak: 2, length: 2 },
      says: ['panelMissing'],
    },
  ],
];

/** Runs that have no place among those that are followed from the source. */
const LOOPS_AND_CHAINS: readonly Group[] = [
  (called) => [
    { run: { run: called('Self'), fedFrom: called('Self'), peak: 2, length: 2 }, says: ['inLoop'] },
  ],
  (called) => [
    {
      run: { run: called('Here'), fedFrom: called('There'), peak: 2, length: 2 },
      says: ['inLoop'],
    },
    { run: { run: called('There'), fedFrom: called('Here'), length: 2 }, says: ['inLoop'] },
    {
      run: { run: called('Below'), fedFrom: called('There'), peak: 2, length: 2 },
      says: ['inLoop', 'tiedToAnother', 'tooDeep'],
    },
  ],
  chain(8, (place) => (place > 4 ? ['tooDeep'] : ['tiedToAnother', 'tooDeep', 'voltsUnknown'])),
];

/** What is computed as though nothing else were in the list. */
const WELL: readonly Group[] = [
  single({}),
  single({ peak: 60, kind: 'W', leastVolts: 10.5, efficiency: 0.9, length: 3 }),
  single({ ownSize: '10 AWG', joints: 1, unfused: 0.1, atOnce: 0.5 }),
  (called) => [
    { run: { run: called('Trunk'), length: 2 }, says: [] },
    { run: { run: called('Radio'), fedFrom: called('trunk'), peak: 12, length: 1 }, says: [] },
    {
      run: { run: called('Lamp'), fedFrom: called('Trunk'), peak: 1, length: 1, leastVolts: 10 },
      says: [],
    },
  ],
];

function rowsOf(mistakes: readonly Group[]): readonly Told[] {
  const rows: Told[] = [];
  for (let group = 0; ; group += 1) {
    const groups = group % 3 === 2 ? WELL : mistakes;
    const nth = group % 3 === 2 ? (group - 2) / 3 : group - Math.floor(group / 3);
    const made = groups[nth % groups.length]!((name) => `${name} of ${group}`);
    if (rows.length + made.length > ROWS) break;
    rows.push(...made);
  }
  while (rows.length < ROWS) {
    rows.push({ run: { run: `Spare ${rows.length}`, peak: 2, length: 2 }, says: [] });
  }
  return rows;
}

const ALL = [...MISTAKES, ...LOOPS_AND_CHAINS];
export const MISTAKE_KINDS = ALL.length;
export const HOSTILE = rowsOf(ALL);
export const WITHOUT_LOOPS = rowsOf(MISTAKES);

/** A battery that hundreds of loads hardly pull down, and whose faults a blade breaks. */
export function stationOf(runs: readonly ScheduleRun[]): StationContent {
  return {
    title: 'Hostile station',
    rules: { unit: 'm' },
    supply: {
      chemistry: 'lead-acid',
      ampHours: 400,
      milliohms: 0.01,
      batteryShortAmps: 900,
    },
    runs,
  };
}
