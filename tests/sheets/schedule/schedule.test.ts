import { describe, expect, test } from 'vitest';
import { NAMESPACE } from '../../../src/functions/catalogue';
import { DEMO } from '../../../src/sheets/station/demo';
import { RULE_KEYS } from '../../../src/sheets/station/house-rules';
import { freeScheduleNames, scheduleNames } from '../../../src/sheets/station/naming';
import { layBlocks } from '../../../src/sheets/plan/lay-blocks';
import type { CellContent, SheetPlan } from '../../../src/sheets/plan/plan';
import { SCHEDULE_COLUMNS } from '../../../src/sheets/schedule/columns';
import { EXTRA_KEYS } from '../../../src/sheets/station/extras';
import { COLUMN_KEYS, SHOWN_KEYS } from '../../../src/sheets/station/schedule-keys';
import { BOOK } from '../../../src/sheets/book';
import { SCHEDULE_FORMULAS, type FormulaKey } from '../../../src/sheets/schedule/formulas';
import { ruleAreas } from '../../../src/sheets/rules/layout';
import { ROW } from '../../../src/sheets/schedule/layout';
import { PROTECTION_ROW } from '../../../src/sheets/protection/layout';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { sharedCopy } from '../../../src/sheets/shared-copy';

const NOTHING_TAKEN = { sheets: new Set<string>(), names: new Set<string>() };
const OUR_CALL = new RegExp(`\\b${NAMESPACE}\\.[A-Z_]+\\(`, 'g');

function formulaOf(content: CellContent): string | undefined {
  return typeof content === 'object' && content !== null ? content.formula : undefined;
}

/** Every formula of a plan, wherever it stands. */
function formulasOf(plan: SheetPlan): string[] {
  return [
    ...layBlocks(plan.blocks).map(({ content }) => formulaOf(content)),
    ...(plan.table?.columns ?? []).map(({ formula }) => formula),
    ...plan.highlights.map(({ formula }) => formula),
  ].filter((formula) => formula !== undefined);
}

describe('a schedule', () => {
  const plans = newSchedule('demo', 'table', NOTHING_TAKEN);
  const schedule = plans[0]!;

  test('has a place and a name for every house rule', () => {
    expect(
      ruleAreas()
        .map(([key]) => key)
        .sort(),
    ).toEqual([...RULE_KEYS].sort());
    const names = plans[1]!.names.map(({ name }) => name);
    expect(new Set(names).size).toBe(names.length);
  });

  test('asks our functions six times a row, and once more where a load is wanting', () => {
    // A column of a step answers in the rows of that depth only, and a formula makes one of the calls in its branches.
    const calls = new Map<string, number>();
    for (const key of Object.keys(SCHEDULE_FORMULAS) as FormulaKey[]) {
      const { heading } = SCHEDULE_COLUMNS[key];
      const { formula } = schedule.table!.columns.find((column) => column.heading === heading)!;
      const ids = new Set(formula?.match(OUR_CALL) ?? []);
      const step = key.replace(/\d$/, '');
      calls.set(step, Math.max(calls.get(step) ?? 0, ids.size));
    }
    const conditional = calls.get('exactly');
    calls.delete('exactly');
    expect(conditional).toBe(1);
    // The sixth asks whether a branch without a fuse may lean on the one upstream.
    expect([...calls.values()].reduce((sum, count) => sum + count, 0)).toBe(6);
  });

  test('names columns as Excel reads them: in two pairs of brackets, nothing that wants an escape', () => {
    for (const { heading } of schedule.table!.columns) expect(heading).not.toMatch(/[[\]#'"@\n]/);
    const headings = new Set(schedule.table!.columns.map(({ heading }) => heading));
    expect(headings.size).toBe(COLUMN_KEYS.length);
    expect(headings).not.toContain('');
    const references = plans
      .flatMap(formulasOf)
      .flatMap((formula) => [...formula.matchAll(/(?:LoomRuns\[|\[@)(.*?)\]\]/g)]);
    expect(references.length).toBeGreaterThan(100);
    for (const [whole, named] of references) {
      expect(named, whole).toMatch(/^\[/);
      expect(headings, whole).toContain(named!.slice(1));
    }
  });

  test('keeps its formulas out of text cells, where Excel would show them as text', () => {
    for (const key of COLUMN_KEYS) {
      const { kind, style } = SCHEDULE_COLUMNS[key];
      if (kind !== 'typed') expect(style?.numberFormat, key).not.toBe('@');
    }
  });

  // Of two quotes in a row the grid (0.25.1) loses one when it moves a formula, and with it the formula.
  test('has no doubled quotes within a text', () => {
    const texts = [
      ...plans.flatMap(formulasOf),
      ...plans.flatMap(({ highlights }) => highlights.map(({ formula }) => formula)),
    ].flatMap((formula) => formula.match(/"(?:[^"]|"")*"/g) ?? []);
    expect(texts.length).toBeGreaterThan(1000);
    expect(texts.filter((said) => said.slice(1, -1).includes('""'))).toEqual([]);
  });

  test('has warnings that only compare cells, since they cannot call our functions', () => {
    for (const plan of plans) {
      for (const { formula } of plan.highlights) expect(formula).not.toMatch(OUR_CALL);
    }
  });

  test('tells what to type within the limits of a spreadsheet', () => {
    for (const { promptTitle, prompt } of plans.flatMap(({ entries }) => entries)) {
      expect(promptTitle.length).toBeLessThanOrEqual(32);
      expect(prompt.length).toBeLessThanOrEqual(255);
      expect(prompt).toMatch(/[.)]\s*$/);
    }
  });

  test('prints what is typed and answered, and leaves further figures and workings beside the page', () => {
    expect(SHOWN_KEYS.slice(0, schedule.print.area.columns).at(-1)).toBe('notes');
    expect(SHOWN_KEYS.slice(0, 11)).toContain('verdict');
    expect(schedule.table!.columns.length).toBe(COLUMN_KEYS.length);
  });
});

describe('each sheet of a new schedule', () => {
  const plans = newSchedule('demo', 'table', NOTHING_TAKEN, EXTRA_KEYS);
  const written = (plan: SheetPlan) =>
    layBlocks(plan.blocks).filter(({ content }) => content !== null && content !== '');

  // Headings that stay in view.
  const headed = plans.filter(({ frozenRows }) => frozenRows > 0);
  test.each(headed.map((plan) => [plan.name, plan] as const))(
    '%s has a heading over each column of what it lists',
    (_, plan) => {
      const above = plan.frozenRows - 1;
      const cells = written(plan);
      const listed = cells.filter(
        ({ row, column }) => row === above + 1 && column < plan.print.area.columns,
      );
      const over = new Set(cells.filter(({ row }) => row === above).map(({ column }) => column));
      expect(over.size).toBeGreaterThan(0);
      for (const { column } of listed) expect(over).toContain(column);
    },
  );

  test.each(plans.map((plan) => [plan.name, plan] as const))(
    '%s has its cautions on paper',
    (_, plan) => {
      const cautions = written(plan).filter(
        ({ content }) => typeof content === 'string' && content.includes('Advice, not approval'),
      );
      for (const { row } of cautions) expect(row).toBeLessThan(plan.print.area.rows);
      if (plan === plans[0]) expect(cautions).not.toEqual([]);
    },
  );
});

describe('names', () => {
  test('take a number where a sheet, a table or a name is taken, whatever its case', () => {
    const first = scheduleNames();
    for (const taken of [
      { sheets: new Set(['run schedule']), names: new Set<string>() },
      { sheets: new Set<string>(), names: new Set([first.table.toLowerCase()]) },
      { sheets: new Set<string>(), names: new Set([first.rule.target.toLowerCase()]) },
      { sheets: new Set(['conductors']), names: new Set<string>() },
    ]) {
      expect(freeScheduleNames(taken, BOOK).sheet).toBe('Run schedule 2');
    }
    const free = freeScheduleNames(NOTHING_TAKEN, BOOK);
    expect(JSON.stringify(free)).toBe(JSON.stringify(first));
  });
});

describe('a workbook that needs no add-in', () => {
  const plans = sharedCopy(DEMO, { rows: 30 }).plans;

  /** Functions that Excel 2016, Excel for the web and LibreOffice 7.4 all know. */
  const KNOWN = new Set(
    'ABS AND CHAR COLUMN COUNT COUNTIF EXP IF IFERROR INDEX INT ISERROR ISFORMULA ISNA ISNUMBER ISTEXT LEFT LEN LN LOWER LOOKUP MATCH MAX MID MIN N NA NOT OR ROUND ERROR.TYPE ROW ROWS SEARCH SQRT SUM SUMIF SUMPRODUCT SUBSTITUTE RIGHT TEXT TRIM VALUE'.split(
      ' ',
    ),
  );

  test('uses functions that every spreadsheet knows, and none of ours', () => {
    const used = new Set<string>();
    for (const formula of plans.flatMap(formulasOf)) {
      const outsideText = formula.replace(/"(?:[^"]|"")*"/g, '""').replace(/'[^']*'!/g, '');
      for (const [, name] of outsideText.matchAll(/([A-Z][A-Z0-9_.]*)\(/g)) used.add(name!);
    }
    expect([...used].filter((name) => !KNOWN.has(name))).toEqual([]);
  });

  test('keeps every formula short enough for Excel', () => {
    for (const formula of plans.flatMap(formulasOf)) expect(formula.length).toBeLessThan(8192);
  });

  test('has a value for every result in sight, for viewers that do not calculate', () => {
    const { plans: written, values } = sharedCopy(DEMO, { rows: 30 });
    const schedule = written.find(({ name }) => name === scheduleNames().sheet);
    const results = layBlocks(schedule!.blocks).filter(
      ({ row, column, content }) =>
        row >= ROW.first &&
        row < ROW.first + DEMO.runs.length &&
        formulaOf(content) !== undefined &&
        schedule!.hiddenColumns?.includes(column) !== true,
    );
    expect(results.length).toBeGreaterThan(DEMO.runs.length * 10);
    for (const { row, column } of results) {
      expect(values.at(schedule!.name, row, column), `${row} ${column}`).not.toBeNull();
    }
  });

  test('shows nothing in the rows that are still free', () => {
    const { plans: written, values } = sharedCopy(DEMO, { rows: DEMO.runs.length + 30 });
    const firsts = [ROW.first, PROTECTION_ROW.first].map((first) => first + DEMO.runs.length);
    const free = [written[1]!, written[4]!].flatMap((plan, index) =>
      layBlocks(plan.blocks)
        .filter(({ row, content }) => row >= firsts[index]! && formulaOf(content) !== undefined)
        .map(({ row, column }) => values.at(plan.name, row, column)),
    );
    expect(free.length).toBeGreaterThan(1000);
    // The foot of the list that the values come from stands where the copy has formulas.
    expect(free.filter((value) => value !== null)).toEqual([]);
  });
});
