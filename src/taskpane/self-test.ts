/**
 * Checking the spreadsheet itself: the demonstration on scratch sheets, changed as a person changes it, every cell compared
 * with the values that travel along with the add-in; then what the spreadsheet must refuse. Nothing of it stays.
 */
import { InsertionFault, type HostProbe, type Inserted, type SheetHost } from '../hosts/sheet-host';
import type { GridValue } from '../sheets/plan/grid';
import { addInSheets, BOOK } from '../sheets/book';
import { calculate } from '../sheets/calculate/calculate';
import { area, cellAddress } from '../sheets/plan/area';
import { scheduleSheets } from '../sheets/new-schedule';
import { columnOf, ROW } from '../sheets/schedule/layout';
import { readSchedule } from '../sheets/schedule/reading';
import { roomyRows } from '../sheets/schedule/sheet';
import type { StationContent } from '../sheets/station/content';
import { DEMO } from '../sheets/station/demo';
import { freeScheduleNames, type ScheduleNames } from '../sheets/station/naming';
import type { ScheduleRun } from '../sheets/station/run';
import { verdictsIn, WORD } from '../sheets/station/verdicts';
import { insertUnderFreeNames } from './insertion';

/** One thing that was tried. */
export interface Finding {
  readonly what: string;
  /** "not tried" where the occasion did not come up: nothing is claimed then. */
  readonly held: boolean | 'not tried';
  /** What was found, in words. */
  readonly found: string;
}

export interface Checked {
  readonly called: string;
  readonly about: readonly string[];
  readonly findings: readonly Finding[];
}

/** How the check waits for a spreadsheet that calculates by itself. */
export interface Patience {
  readonly pauseMs: number;
  /** So long without a change, nothing more will change. */
  readonly quietMs: number;
  readonly mostMs: number;
}

const PATIENCE: Patience = { pauseMs: 250, quietMs: 5000, mostMs: 60_000 };
const BUSY: ReadonlySet<GridValue> = new Set(['#BUSY!', '#GETTING_DATA']);
/** The grid of the workbench keeps fifteen digits; Excel does too. */
const RELATIVE_TOLERANCE = 1e-9;
const MOST_NAMED = 3;

const ADDED_RUN: ScheduleRun = { run: 'Check lamp', peak: 2, length: 30 };
const LONGER = 90;
const OWN_TARGET = 0.05;

type Values = readonly (readonly GridValue[])[];

function same(value: GridValue, expected: GridValue): boolean {
  if (typeof value === 'number' && typeof expected === 'number') {
    return Math.abs(value - expected) <= RELATIVE_TOLERANCE * Math.max(1, Math.abs(expected));
  }
  return (value ?? '') === (expected ?? '');
}

interface Comparison {
  readonly cells: number;
  /** Each as "Run schedule!N12: 3 instead of 4". */
  readonly wrong: readonly string[];
  readonly isBusy: boolean;
  /** Cells that differ by the spreadsheet's own known fault. */
  readonly excused: number;
}

/** A sheet as it has to be. */
interface Expected {
  readonly name: string;
  readonly rows: number;
  readonly columns: number;
  at(row: number, column: number): GridValue;
}

/** The sheets of the check while it runs. */
class Scratch {
  constructor(
    private readonly probe: HostProbe,
    readonly names: ScheduleNames,
    readonly rows: number,
    private readonly patience: Patience,
  ) {}

  /** Whether a verdict was misjudged while something in its row was still being calculated. */
  misjudged = 0;
  /** Whether cells were seen while they were calculated. */
  sawBusy = 0;

  /** Compares every cell of every sheet with what a content comes to, once the spreadsheet has calculated. */
  async compare(content: StationContent): Promise<Comparison> {
    const layout = { names: this.names, references: 'cells' as const, rows: this.rows };
    const plans = addInSheets(layout, content);
    const values = calculate(plans);
    const sheets = plans.map(({ name, blocks }): Expected => ({
      name,
      rows: Math.max(...blocks.map(({ area: of }) => of.row + of.rows)),
      columns: Math.max(...blocks.map(({ area: of }) => of.column + of.columns)),
      at(row, column) {
        const cell = values.at(name, row, column);
        return typeof cell === 'object' && cell !== null ? cell.code : cell;
      },
    }));
    const { mostMs, quietMs } = this.patience;
    const start = Date.now();
    let [changed, seen] = [start, ''];
    for (;;) {
      const compared = await this.compareOnce(sheets);
      const now = Date.now();
      const wrong = compared.wrong.join();
      if (wrong !== seen || compared.isBusy) [changed, seen] = [now, wrong];
      const isOver = now - start > mostMs || now - changed > quietMs;
      if (wrong === '' || isOver) return compared;
      await new Promise((resolve) => setTimeout(resolve, this.patience.pauseMs));
    }
  }

  private async compareOnce(sheets: readonly Expected[]): Promise<Comparison> {
    const wrong: string[] = [];
    let cells = 0;
    let isBusy = false;
    let excused = 0;
    const { ownFault } = this.probe;
    for (const sheet of sheets) {
      const read = (await this.probe.read(sheet.name))?.values ?? [];
      if (sheet.name === this.names.sheet) this.watchVerdicts(read);
      for (let row = 0; row < sheet.rows; row += 1) {
        for (let column = 0; column < sheet.columns; column += 1) {
          const value = read[row]?.[column] ?? null;
          const expected = sheet.at(row, column);
          if (value === null && (expected ?? '') === '') continue;
          cells += 1;
          isBusy ||= BUSY.has(value);
          if (same(value, expected)) continue;
          if (ownFault?.is === value && ownFault.insteadOf === expected) {
            excused += 1;
            continue;
          }
          const at = `${sheet.name}!${cellAddress(row, column)}`;
          wrong.push(
            `${at} is ${JSON.stringify(value ?? '')}, not ${JSON.stringify(expected ?? '')}`,
          );
        }
      }
    }
    return { cells, wrong, isBusy, excused };
  }

  private watchVerdicts(values: Values): void {
    for (const row of readSchedule(values)?.rows ?? []) {
      if (!values[row.row]!.some((value) => BUSY.has(value))) continue;
      this.sawBusy += 1;
      if (row.values.verdict === WORD.checkEntries) this.misjudged += 1;
    }
  }

  write(run: number, key: 'run' | 'peak' | 'length' | 'target', value: GridValue): Promise<void> {
    return this.probe.write(this.names.sheet, area(ROW.first + run, columnOf(key)), value);
  }
}

function comparisonFound(
  { cells, wrong, isBusy, excused }: Comparison,
  { ownFault }: HostProbe,
): Omit<Finding, 'what'> {
  if (wrong.length === 0) {
    const but = excused === 0 ? '' : `, but ${excused} where ${ownFault?.why ?? ''}`;
    return { held: true, found: `all ${cells} cells as shipped${but}` };
  }
  const named = wrong.slice(0, MOST_NAMED).join('; ');
  const more = wrong.length > MOST_NAMED ? `; and ${wrong.length - MOST_NAMED} more` : '';
  const busy = isBusy ? ' (cells were still being calculated when the check gave up waiting)' : '';
  return { held: false, found: `${wrong.length} of ${cells} cells differ${busy}: ${named}${more}` };
}

const messageOf = (fault: unknown) => (fault instanceof Error ? fault.message : String(fault));

/** Runs the whole check. Never rejects for what it finds: that is in the findings. `tell` hears what is being tried. */
export async function checkSpreadsheet(
  host: SheetHost,
  tell: (what: string) => void = () => undefined,
  patience: Patience = PATIENCE,
): Promise<Checked> {
  const { probe } = host;
  const findings: Finding[] = [];
  const attempt = async (what: string, action: () => Promise<Omit<Finding, 'what'>>) => {
    tell(what);
    try {
      findings.push({ what, ...(await action()) });
    } catch (fault) {
      findings.push({ what, held: false, found: messageOf(fault) });
    }
  };
  const workbook = async () => {
    const { sheets, names } = await host.taken();
    return JSON.stringify([[...sheets].sort(), [...names].sort()]);
  };

  const about = await probe.about().catch((fault: unknown) => [messageOf(fault)]);
  const before = await workbook();
  const bringBack = await probe.keepView();
  let inserted: Inserted | undefined;
  let scratch: Scratch | undefined;
  await attempt('Inserting the demonstration', async () => {
    let names: ScheduleNames | undefined;
    const rows = roomyRows(DEMO.runs.length);
    const { plans, inserted: made } = await insertUnderFreeNames(host, (taken) => {
      names = freeScheduleNames(taken, BOOK);
      return scheduleSheets(DEMO, host.references, taken);
    });
    inserted = made;
    scratch = new Scratch(probe, names!, rows, patience);
    const { missing } = made;
    return missing.length === 0
      ? { held: true, found: `${plans.length} sheets, nothing missing` }
      : { held: false, found: `missing: ${missing.join('; ')}` };
  });
  if (scratch !== undefined) {
    await checkSheets(host, scratch, attempt);
    await checkRefusals(host, scratch, attempt, workbook);
  }
  if (inserted !== undefined) {
    const made = inserted;
    await attempt('Removing its traces', async () => {
      await made.remove();
      const isAsBefore = (await workbook()) === before;
      return {
        held: isAsBefore,
        found: isAsBefore
          ? 'sheets, tables and names are as before'
          : 'sheets, tables or names differ from before (another person may have changed them)',
      };
    });
  }
  await attempt('Bringing back the sheet in view', async () => {
    await bringBack();
    return { held: true, found: 'the one that was in view before' };
  });
  return { called: probe.called, about, findings };
}

type Attempt = (what: string, action: () => Promise<Omit<Finding, 'what'>>) => Promise<void>;

/** What a person does with the sheets: reads them, fills a row, types over entries and formulas. */
async function checkSheets(host: SheetHost, scratch: Scratch, attempt: Attempt): Promise<void> {
  const { probe } = host;
  const compared = async (content: StationContent) =>
    comparisonFound(await scratch.compare(content), probe);
  await attempt('Calculation', async () => {
    const { calculation } = await host.view();
    return calculation === 'manual'
      ? { held: false, found: 'manual: this workbook calculates only when asked' }
      : { held: true, found: 'by itself' };
  });
  await attempt('Every cell of the demonstration', () => compared(DEMO));

  const added = DEMO.runs.length;
  let content: StationContent = { ...DEMO, runs: [...DEMO.runs, ADDED_RUN] };
  await attempt('A run filled in below the others', async () => {
    for (const key of ['run', 'peak', 'length'] as const) {
      await scratch.write(added, key, ADDED_RUN[key] ?? null);
    }
    return compared(content);
  });
  content = { ...content, runs: [...DEMO.runs, { ...ADDED_RUN, length: LONGER }] };
  await attempt('An entry typed over', async () => {
    await scratch.write(added, 'length', LONGER);
    return compared(content);
  });
  content = {
    ...content,
    runs: [...DEMO.runs, { ...ADDED_RUN, length: LONGER, target: OWN_TARGET }],
  };
  await attempt('A formula typed over', async () => {
    await scratch.write(added, 'target', OWN_TARGET);
    return compared(content);
  });
  await attempt('Calculating when asked', async () => {
    await host.calculate();
    return compared(content);
  });
  await attempt('Verdicts while cells are being calculated', () =>
    Promise.resolve(
      scratch.misjudged > 0
        ? {
            held: false,
            found: `“${WORD.checkEntries}” in ${scratch.misjudged} rows that were not calculated yet`,
          }
        : scratch.sawBusy === 0
          ? { held: 'not tried', found: 'no cell was seen while it was calculated' }
          : { held: true, found: `${scratch.sawBusy} rows seen, none misjudged` },
    ),
  );
  const { addTableRow } = probe;
  if (addTableRow === undefined) return;
  await attempt('A row added to the table', async () => {
    const table = await addTableRow(scratch.names.sheet, scratch.names.table);
    const run = table.row + table.rows - 1 - ROW.first;
    for (const key of ['run', 'peak', 'length'] as const) {
      await scratch.write(run, key, key === 'run' ? 'Check row' : (ADDED_RUN[key] ?? null));
    }
    await host.calculate();
    const grid = await probe.read(scratch.names.sheet);
    const verdict = grid?.values[ROW.first + run]?.[columnOf('verdict')] ?? null;
    return verdictsIn(String(verdict ?? '')).length === 0
      ? { held: false, found: 'its formulas were not filled in' }
      : { held: true, found: `its formulas came along; verdict “${String(verdict)}”` };
  });
}

/** What the spreadsheet must refuse, with a sentence, and without a trace. */
async function checkRefusals(
  host: SheetHost,
  scratch: Scratch,
  attempt: Attempt,
  workbook: () => Promise<string>,
): Promise<void> {
  const { names } = scratch;
  const plan = () => scheduleSheets(DEMO, host.references, { sheets: new Set(), names: new Set() });
  const refused = async (insertion: () => Promise<Inserted>, says: RegExp) => {
    const before = await workbook();
    let made: Inserted | undefined;
    let said = 'nothing was refused';
    let held = false;
    try {
      made = await insertion();
    } catch (fault) {
      said = messageOf(fault);
      held = fault instanceof InsertionFault && says.test(said);
    }
    await made?.remove();
    if ((await workbook()) === before) return { held, found: said };
    return { held: false, found: `${said} Yet sheets, tables or names differ from before.` };
  };

  await attempt('Inserting under a name that is taken', () =>
    refused(
      () => host.insert(plan().map((of) => ({ ...of, name: names.sheet }))),
      /already has a|there already/,
    ),
  );
  await attempt('Stopping an insertion', () =>
    refused(async () => {
      const stopping = new AbortController();
      const progress = (share: number) => {
        if (share > 0.5) stopping.abort();
      };
      const { inserted } = await insertUnderFreeNames(
        host,
        (taken) => scheduleSheets(DEMO, host.references, taken),
        { progress, signal: stopping.signal },
      );
      return inserted;
    }, /^Stopped: .*as it was/),
  );
  for (const { what, provoke, says } of host.probe.provocations) {
    await attempt(`Refusing ${what}`, async () => {
      const freeSheet = `${names.sheet.slice(0, 20)} not there`;
      const said = await provoke({ ownSheet: names.sheet, freeSheet });
      return { held: said !== null && says.test(said), found: said ?? 'it was not refused' };
    });
  }
}

/** How a finding begins, in one width. */
const TOLD: Readonly<Record<string, string>> = {
  true: 'held     ',
  false: 'NOT HELD ',
  'not tried': 'not tried',
};

/** The findings as text, to be sent to somebody. */
export function checkedText({ called, about, findings }: Checked): string {
  const failed = findings.filter(({ held }) => held === false).length;
  const open = findings.filter(({ held }) => held === 'not tried').length;
  const all = findings.length - open;
  const untried = open === 0 ? '' : `; ${open} could not be tried`;
  return [
    `Check of ${called}: ${failed === 0 ? `all ${all} points held` : `${failed} of ${all} points did not hold`}${untried}.`,
    ...about,
    '',
    ...findings.map(({ what, held, found }) => `${TOLD[String(held)] ?? ''} ${what}: ${found}`),
  ].join('\n');
}
