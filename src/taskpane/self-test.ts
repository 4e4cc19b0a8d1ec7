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
import { linesPrinted, printing } from '../sheets/crew/sheet';
import { columnOf, ROW } from '../sheets/schedule/layout';
import { readSchedule } from '../sheets/schedule/reading';
import { roomyRows } from '../sheets/schedule/sheet';
import type { StationContent } from '../sheets/station/content';
import { DEMO } from '../sheets/station/demo';
import { freeScheduleNames, type ScheduleNames } from '../sheets/station/naming';
import type { ScheduleRun } from '../sheets/station/run';
import { FEED_KEYS } from '../sheets/station/references';
import { COLUMN_KEYS } from '../sheets/station/schedule-keys';
import type { ReferenceStyle, SheetPlan } from '../sheets/plan/plan';
import { withNumbersAsText } from '../sheets/plan/typed-text';
import { WORD } from '../sheets/station/verdicts';
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
  /** What could not be removed, to be tried again; the findings name it. */
  readonly removals: readonly Removal[];
}

type Removal = () => Promise<void>;

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
const ROW_RUN: ScheduleRun = { run: 'Check row', peak: 3, length: 12 };
const ENTRIES = ['run', 'peak', 'length'] as const;
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
}

/** A sheet as it has to be, from a row on. */
interface Expected {
  readonly name: string;
  readonly fromRow: number;
  readonly rows: number;
  readonly columns: number;
  at(row: number, column: number): GridValue;
}

/** Sheets with the values that their formulas come to. */
function expectedOf(plans: readonly SheetPlan[]): readonly Expected[] {
  const values = calculate(plans);
  return plans.map(({ name, blocks }) => ({
    name,
    fromRow: 0,
    rows: Math.max(...blocks.map(({ area: of }) => of.row + of.rows)),
    columns: Math.max(...blocks.map(({ area: of }) => of.column + of.columns)),
    at(row, column) {
      const cell = values.at(name, row, column);
      return typeof cell === 'object' && cell !== null ? cell.code : cell;
    },
  }));
}

/** The sheets of the check while it runs. */
class Scratch {
  constructor(
    private readonly probe: HostProbe,
    readonly names: ScheduleNames,
    readonly rows: number,
    private readonly patience: Patience,
    private readonly references: ReferenceStyle,
    /** Lines of the crew's page that were set to print, by what its sheet came to when it was inserted. */
    private readonly crewLines: number,
    private readonly isCalculating: () => Promise<boolean>,
  ) {}

  /** Whether a verdict was misjudged while something in its row was still being calculated. */
  misjudged = 0;
  /** Whether cells were seen while they were calculated. */
  sawBusy = 0;

  /** A cell of the schedule's sheet that nothing of it uses. */
  private readonly spare = area(ROW.title, COLUMN_KEYS.length + FEED_KEYS.length + 2);

  /** The sheets with so many rows more in the schedule than they were inserted with, as a table grows. */
  private plans(content: StationContent, more = 0): readonly SheetPlan[] {
    const layout = { names: this.names, references: 'cells' as const, rows: this.rows };
    // Where cells are no table, a number in a text cell is text.
    const drawn = (plan: SheetPlan) => {
      const typed = this.references === 'cells' ? withNumbersAsText(plan) : plan;
      return plan.name === this.names.crewSheet ? printing(typed, this.crewLines) : typed;
    };
    const inserted = addInSheets(layout, content).map(drawn);
    if (more === 0) return inserted;
    const grown = addInSheets({ ...layout, rows: this.rows + more }, content).map(drawn);
    // Protection is no table, and keeps its rows.
    return grown.map((plan, at) =>
      plan.name === this.names.protectionSheet ? inserted[at]! : plan,
    );
  }

  /** Compares every cell of every sheet with what a content comes to, once the spreadsheet has calculated. */
  compare(content: StationContent): Promise<Comparison> {
    return this.compareCells(expectedOf(this.plans(content)));
  }

  /** Compares the row that was added to the schedule's table. */
  compareAddedRow(content: StationContent): Promise<Comparison> {
    const schedule = expectedOf(this.plans(content, 1)).filter(
      ({ name }) => name === this.names.sheet,
    );
    const fromRow = ROW.first + this.rows;
    return this.compareCells(
      schedule.map((sheet) => ({
        ...sheet,
        fromRow,
        rows: fromRow + 1,
        columns: COLUMN_KEYS.length,
      })),
    );
  }

  private async compareCells(sheets: readonly Expected[]): Promise<Comparison> {
    const { mostMs, quietMs } = this.patience;
    const start = Date.now();
    let [changed, seen] = [start, ''];
    for (;;) {
      const compared = await this.compareOnce(sheets);
      const now = Date.now();
      const wrong = compared.wrong.join();
      const isBusy = compared.isBusy || (wrong !== '' && (await this.isCalculating()));
      if (wrong !== seen || isBusy) [changed, seen] = [now, wrong];
      const isOver = now - start > mostMs || now - changed > quietMs;
      if (wrong === '' || isOver) return compared;
      await new Promise((resolve) => setTimeout(resolve, this.patience.pauseMs));
    }
  }

  private async compareOnce(sheets: readonly Expected[]): Promise<Comparison> {
    const wrong: string[] = [];
    let cells = 0;
    let isBusy = false;
    for (const sheet of sheets) {
      const read = (await this.probe.read(sheet.name))?.values ?? [];
      if (sheet.name === this.names.sheet) this.watchVerdicts(read);
      for (let row = sheet.fromRow; row < sheet.rows; row += 1) {
        for (let column = 0; column < sheet.columns; column += 1) {
          const value = read[row]?.[column] ?? null;
          const expected = sheet.at(row, column);
          if (value === null && (expected ?? '') === '') continue;
          cells += 1;
          isBusy ||= BUSY.has(value);
          if (same(value, expected)) continue;
          const at = `${sheet.name}!${cellAddress(row, column)}`;
          wrong.push(
            `${at} is ${JSON.stringify(value ?? '')}, not ${JSON.stringify(expected ?? '')}`,
          );
        }
      }
    }
    return { cells, wrong, isBusy };
  }

  private watchVerdicts(values: Values): void {
    for (const row of readSchedule(values)?.rows ?? []) {
      if (!values[row.row]!.some((value) => BUSY.has(value))) continue;
      this.sawBusy += 1;
      if (row.values.verdict === WORD.checkEntries) this.misjudged += 1;
    }
  }

  /** Whether asking for a calculation makes one: a cell of chance gets another number. */
  async calculatesWhenAsked(ask: () => Promise<void>): Promise<Omit<Finding, 'what'>> {
    const { name, row, column } = { name: this.names.sheet, ...this.spare };
    const shown = async () => (await this.probe.read(name))?.values[row]?.[column] ?? null;
    await this.probe.write(name, this.spare, { formula: '=RAND()' });
    try {
      const before = await shown();
      const start = Date.now();
      await ask();
      for (;;) {
        const now = await shown();
        if (typeof now === 'number' && now !== before) {
          return { held: true, found: 'a cell of chance got another number' };
        }
        if (Date.now() - start > this.patience.quietMs) {
          return { held: false, found: `a cell of chance stayed at ${JSON.stringify(now)}` };
        }
        await new Promise((resolve) => setTimeout(resolve, this.patience.pauseMs));
      }
    } finally {
      await this.probe.write(name, this.spare, null);
    }
  }

  write(run: number, key: 'run' | 'peak' | 'length' | 'target', value: GridValue): Promise<void> {
    return this.probe.write(this.names.sheet, area(ROW.first + run, columnOf(key)), value);
  }
}

function comparisonFound({ cells, wrong, isBusy }: Comparison): Omit<Finding, 'what'> {
  if (wrong.length === 0) return { held: true, found: `all ${cells} cells as shipped` };
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
  const removals: Removal[] = [];
  const attempt: Attempt = async (what, action) => {
    tell(what);
    try {
      findings.push({ what, ...(await action()) });
    } catch (fault) {
      findings.push({ what, held: false, found: messageOf(fault) });
      if (fault instanceof InsertionFault && fault.removeRest) removals.push(fault.removeRest);
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
    const { crewSheet } = names!;
    scratch = new Scratch(
      probe,
      names!,
      rows,
      patience,
      host.references,
      linesPrinted(plans.find(({ name }) => name === crewSheet)!),
      async () => (await host.view()).calculation === 'under way',
    );
    const { missing } = made;
    return missing.length === 0
      ? { held: true, found: `${plans.length} sheets, nothing missing` }
      : { held: false, found: `refused or not confirmed: ${missing.join('; ')}` };
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
    const { isBack, inView } = await bringBack();
    return { held: isBack, found: `“${inView}” is in view` };
  });
  return { called: probe.called, about, findings, removals };
}

type Attempt = (what: string, action: () => Promise<Omit<Finding, 'what'>>) => Promise<void>;

/** What a person does with the sheets: reads them, fills a row, types over entries and formulas. */
async function checkSheets(host: SheetHost, scratch: Scratch, attempt: Attempt): Promise<void> {
  const { probe } = host;
  const compared = async (content: StationContent) =>
    comparisonFound(await scratch.compare(content));
  const isManual = (await host.view().catch(() => undefined))?.calculation === 'manual';
  // All cells are calculated at this, where a spreadsheet was given their values along with the formulas.
  await attempt('Calculating when asked', () =>
    scratch.calculatesWhenAsked(() => host.calculate()),
  );
  await attempt('Every cell of the demonstration', () => compared(DEMO));

  const added = DEMO.runs.length;
  const afterTyping = async (content: StationContent) => {
    if (isManual) await host.calculate();
    return compared(content);
  };
  const withRun = (run: ScheduleRun): StationContent => ({ ...DEMO, runs: [...DEMO.runs, run] });
  await attempt('A run filled in below the others', async () => {
    for (const key of ENTRIES) await scratch.write(added, key, ADDED_RUN[key] ?? null);
    return afterTyping(withRun(ADDED_RUN));
  });
  const longer = { ...ADDED_RUN, length: LONGER };
  await attempt('An entry typed over', async () => {
    await scratch.write(added, 'length', LONGER);
    return afterTyping(withRun(longer));
  });
  const ownTarget = { ...longer, target: OWN_TARGET };
  await attempt('A formula typed over', async () => {
    await scratch.write(added, 'target', OWN_TARGET);
    return afterTyping(withRun(ownTarget));
  });
  if (isManual) {
    await attempt('Calculating by itself', () =>
      Promise.resolve({
        held: false,
        found: 'manual: this workbook calculates only when asked, as the check did each time',
      }),
    );
  }
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
    await addTableRow(scratch.names.sheet, scratch.names.table);
    const place = scratch.rows;
    for (const key of ENTRIES) await scratch.write(place, key, ROW_RUN[key] ?? null);
    if (isManual) await host.calculate();
    const between = Array.from({ length: place - added - 1 }, (): ScheduleRun => ({}));
    const runs = [...DEMO.runs, ownTarget, ...between, ROW_RUN];
    return comparisonFound(await scratch.compareAddedRow({ ...DEMO, runs }));
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
  /** `isMeant`: whether what was said is the refusal that was to be provoked, and no other. */
  const refused = async (
    insertion: () => Promise<Inserted>,
    isMeant: (said: string) => boolean,
  ) => {
    const before = await workbook();
    const made = await insertion().catch((fault: unknown) => {
      // What is left of it is told with the fault.
      if (!(fault instanceof InsertionFault) || fault.removeRest) throw fault;
      return fault.message;
    });
    if (typeof made !== 'string') await made.remove();
    const found = typeof made === 'string' ? made : 'it was not refused';
    if ((await workbook()) === before) return { held: isMeant(found), found };
    return { held: false, found: `${found} Yet sheets, tables or names differ from before.` };
  };

  await attempt('Inserting under a name that is taken', () =>
    refused(
      async () => {
        const [first, ...others] = scheduleSheets(DEMO, host.references, await host.taken());
        return host.insert([{ ...first!, name: names.sheet }, ...others]);
      },
      (said) => said.includes(names.sheet) && said.includes('already'),
    ),
  );
  const stopping = new AbortController();
  await attempt('Stopping an insertion', () =>
    refused(
      async () => {
        const progress = (share: number) => {
          if (share > 0.5) stopping.abort();
        };
        const { inserted } = await insertUnderFreeNames(
          host,
          (taken) => scheduleSheets(DEMO, host.references, taken),
          { progress, signal: stopping.signal },
        );
        return inserted;
      },
      (said) => stopping.signal.aborted && /stopped/i.test(said) && said.includes('as it was'),
    ),
  );
  await attempt('Going to a sheet that is not there', async () => {
    const said = await host.select(`${names.sheet.slice(0, 20)} not there`, area(0, 0)).then(
      () => undefined,
      (fault: unknown) => messageOf(fault),
    );
    const isMeant = said !== undefined && /no longer there|There is no sheet/.test(said);
    return { held: isMeant, found: said ?? 'it was not refused' };
  });
  for (const { what, provoke, says } of host.probe.provocations) {
    await attempt(`Refusing ${what}`, async () => {
      const said = await provoke({ ownSheet: names.sheet });
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
