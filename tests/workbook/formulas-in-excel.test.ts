/** Every formula that is written, on live sheets and into files, is one that Excel takes, and names only what is there. */
import { strFromU8, unzipSync } from 'fflate';
import { beforeAll, describe, expect, it } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../src/functions/catalogue';
import { sharedFile } from '../../src/hosts/xlsx/shared-file';
import { newSchedule } from '../../src/sheets/new-schedule';
import { filledDown } from '../../src/sheets/plan/fill-down';
import type { ReferenceStyle, SheetPlan } from '../../src/sheets/plan/plan';
import { sharedCopy } from '../../src/sheets/shared-copy';
import { DEMO } from '../../src/sheets/station/demo';
import { EXTRA_KEYS } from '../../src/sheets/station/extras';
import { everythingIn, parseXml } from '../xml-tree';
import { FormulaFault, isName, LIMITS, readFormula, type FormulaFacts } from './excel-formula';

/** Functions of ECMA-376 part 1, 18.17.7, that the sheets call. */
const EXCELS_OWN = new Set([
  ...['ABS', 'AND', 'CHAR', 'COLUMN', 'COUNT', 'COUNTIF', 'ERROR.TYPE', 'EXP', 'IF', 'IFERROR'],
  ...['INDEX', 'INT', 'ISERROR', 'ISNA', 'ISNUMBER', 'ISTEXT', 'LEFT', 'LEN', 'LN', 'LOOKUP'],
  ...['LOWER', 'MATCH', 'MAX', 'MID', 'MIN', 'N', 'NA', 'NOT', 'OR', 'RIGHT', 'ROUND', 'ROW'],
  ...['ROWS', 'SEARCH', 'SQRT', 'SUBSTITUTE', 'SUM', 'SUMIF', 'SUMPRODUCT', 'TRIM', 'VALUE'],
]);
/** Later ones (Excel 2013): in files they bear a prefix, and only there ([MS-XLSX] 2.2.2, future functions; from memory). */
const LATER = ['ISFORMULA'];
const PREFIX = '_XLFN.';
const OURS = new Set(CATALOGUE.map(({ id }) => `${NAMESPACE}.${id}`));

interface Written {
  readonly where: string;
  /** Without its leading "=". */
  readonly formula: string;
  /** Formats by a rule, which may call no function of an add-in and name no table. */
  readonly isRule?: boolean;
  readonly isInFile?: boolean;
}

const bare = (formula: string) => {
  expect(formula.startsWith('='), formula).toBe(true);
  return formula.slice(1);
};

/** Every different formula of a sheet; of one that is filled down that of the first and of the last row. */
function writtenIn(plan: SheetPlan): readonly Written[] {
  const cells = plan.blocks.flatMap(({ cells: rows = [] }) =>
    rows
      .flat()
      .flatMap((content) =>
        typeof content === 'object' && content !== null ? [content.formula] : [],
      ),
  );
  const filled = plan.blocks.flatMap(({ fill = [], area }) =>
    fill.flatMap((formula) =>
      formula === null ? [] : [formula, filledDown(formula)(area.rows - 1)],
    ),
  );
  const columns = (plan.table?.columns ?? []).flatMap(({ formula }) => formula ?? []);
  const different = new Set([...cells, ...filled, ...columns]);
  return [
    ...[...different].map((formula) => ({ where: plan.name, formula: bare(formula) })),
    ...plan.highlights.map(({ formula }) => ({ where: plan.name, formula, isRule: true })),
  ];
}

/** What may be named in a workbook, in lower case: spreadsheets do not tell cases apart. */
interface Known {
  readonly names: ReadonlySet<string>;
  readonly sheets: ReadonlySet<string>;
  readonly tables: ReadonlyMap<string, ReadonlySet<string>>;
}

const lower = (texts: Iterable<string>) => new Set([...texts].map((one) => one.toLowerCase()));

function knownOf(plans: readonly SheetPlan[]): Known {
  const tables = plans.flatMap(({ table }) => (table === undefined ? [] : [table]));
  return {
    names: lower(plans.flatMap(({ names }) => names.map(({ name }) => name))),
    sheets: lower(plans.map(({ name }) => name)),
    tables: new Map(
      tables.map(({ name, columns }) => [
        name.toLowerCase(),
        lower(columns.map(({ heading }) => heading)),
      ]),
    ),
  };
}

/** What is wrong with a formula; nothing where Excel takes it. */
function faultOf(
  { where, formula, isRule = false, isInFile = false }: Written,
  { names, sheets, tables }: Known,
): string | undefined {
  let facts: FormulaFacts;
  try {
    facts = readFormula(formula);
  } catch (fault) {
    if (fault instanceof FormulaFault) return `${where}: ${fault.message}`;
    throw fault;
  }
  const later = LATER.map((id) => (isInFile ? PREFIX + id : id));
  const isKnown = (id: string) =>
    EXCELS_OWN.has(id) || later.includes(id) || (!isRule && OURS.has(id));
  const stray = [
    ...facts.functions.filter((id) => !isKnown(id)),
    ...facts.names.filter((name) => !names.has(name.toLowerCase())),
    ...facts.sheets.filter((name) => !sheets.has(name.toLowerCase())),
    ...facts.tables.flatMap(({ table, columns }) => {
      // A formula in a table's own rows need not name it.
      const headings =
        table === undefined ? [...tables.values()][0] : tables.get(table.toLowerCase());
      if (headings === undefined || isRule) return [`the table ${table ?? 'around it'}`];
      return columns.filter((heading) => !headings.has(heading.toLowerCase()));
    }),
  ];
  return stray.length === 0
    ? undefined
    : `${where}: no such thing: ${stray.join(', ')}; ${formula.slice(0, 200)}`;
}

const nothingTaken = { sheets: new Set<string>(), names: new Set<string>() };
const CONTENT = { ...DEMO, extras: EXTRA_KEYS };
const live = (filling: 'demo' | 'empty', style: ReferenceStyle) => () =>
  newSchedule(filling, style, nothingTaken, EXTRA_KEYS);

describe.each<[string, () => readonly SheetPlan[]]>([
  ['the demonstration in Excel', live('demo', 'table')],
  ['the demonstration in the workbench', live('demo', 'cells')],
  ['empty rows in Excel', live('empty', 'table')],
  ['a copy without the add-in', () => sharedCopy(CONTENT).plans],
  [
    'a metric copy with 9,999 rows',
    () =>
      sharedCopy({ ...CONTENT, rules: { ...DEMO.rules, series: 'mm2', unit: 'm' } }, { rows: 9999 })
        .plans,
  ],
])('%s', (_what, plansOf) => {
  let plans: readonly SheetPlan[];
  let written: readonly Written[];
  beforeAll(() => {
    plans = plansOf();
    written = plans.flatMap(writtenIn);
  });

  it('has formulas that Excel takes, of names and functions that are there', () => {
    const known = knownOf(plans);
    expect(written.length).toBeGreaterThan(200);
    expect(written.flatMap((one) => faultOf(one, known) ?? []).slice(0, 10)).toEqual([]);
  });

  it('is within the limits, which are told', () => {
    const facts = written.map(({ formula }) => readFormula(formula));
    const greatest = (key: 'levels' | 'mostArguments' | 'longestText' | 'bytes') =>
      facts.reduce((so, one) => Math.max(so, one[key]), 0);
    const characters = written.reduce((most, { formula }) => Math.max(most, formula.length + 1), 0);
    console.info(
      `${written.length} formulas: at most ${characters} characters, ${greatest('levels')} levels, ${greatest('mostArguments')} arguments, texts of ${greatest('longestText')}, ${greatest('bytes')} bytes`,
    );
    expect(characters).toBeLessThanOrEqual(LIMITS.characters);
    expect(greatest('levels')).toBeLessThanOrEqual(LIMITS.levels);
    expect(greatest('mostArguments')).toBeLessThanOrEqual(LIMITS.arguments);
  });

  it('has names and tables that may be called so, each once', () => {
    const names = plans.flatMap(({ names: own, table }) => [
      ...own.map(({ name }) => name),
      ...(table === undefined ? [] : [table.name]),
    ]);
    expect(names.filter((name) => !isName(name))).toEqual([]);
    expect(lower(names).size).toBe(names.length);
    for (const { name } of plans) {
      expect(name).toMatch(/^(?!')[^[\]*?:/\\]{1,31}(?<!')$/);
    }
    for (const { table } of plans) {
      const headings = table?.columns.map(({ heading }) => heading) ?? [];
      expect(lower(headings).size).toBe(headings.length);
      for (const heading of headings) expect(heading.length).toBeLessThanOrEqual(255);
    }
  });
});

describe('a written file', () => {
  /** Kinds of elements that hold formulas, with how many different ones of each there were. */
  const KINDS = ['f', 'formula', 'formula1', 'formula2', 'c:f', 'definedName'];

  it('has formulas that Excel takes wherever the file holds them', async () => {
    const known = knownOf(sharedCopy(CONTENT).plans);
    const parts = Object.entries(unzipSync(await sharedFile(CONTENT))).filter(([name]) =>
      /^xl\/(?:worksheets|charts)\/[^/]*\.xml$|^xl\/workbook\.xml$/.test(name),
    );
    const found = new Map<string, Set<string>>();
    const hiddenNames = new Set<string>();
    for (const [, xml] of parts) {
      for (const element of everythingIn(await parseXml(strFromU8(xml)))) {
        const kind = element['#name'];
        if (!KINDS.includes(kind) || element._ === undefined) continue;
        if (kind === 'definedName') hiddenNames.add(element.$!['name']!);
        found.set(kind, (found.get(kind) ?? new Set()).add(element._));
      }
    }
    expect([...found.keys()].sort()).toEqual([...KINDS].sort());
    // Lists to choose from have names of the file's own.
    const names = lower([...known.names, ...hiddenNames]);
    const faults = [...found].flatMap(([kind, formulas]) =>
      [...formulas].flatMap(
        (formula) =>
          faultOf(
            { where: kind, formula, isRule: kind !== 'f', isInFile: true },
            { ...known, names },
          ) ?? [],
      ),
    );
    expect(faults.slice(0, 10)).toEqual([]);
  });
});

describe('the grammar', () => {
  it.each([
    ['1+', 'nothing that a formula may hold'],
    ['SUM(1,2', '"\\)" belongs here'],
    ['SUM(1))', 'goes on after its end'],
    ['"no end', 'a text without an end'],
    [`"${'a'.repeat(256)}"`, 'a text longer'],
    [`${'ABS('.repeat(65)}1${')'.repeat(65)}`, 'more functions within'],
    [`SUM(${Array.from({ length: 256 }, () => '1').join(',')})`, 'more arguments'],
    [`1${'+1'.repeat(4096)}`, 'longer than Excel takes'],
    [Array.from({ length: 2700 }, () => 'A1').join('+'), 'more memory'],
    ['XFE1', 'may not be a name|beyond the sheet'],
    ['A1048577', 'beyond the sheet'],
    ["My Sheet'!A1", 'goes on after its end'],
    ['R1C1', 'may not be a name'],
    ['Run schedule!A1', 'goes on after its end'],
    ["'a:b'!A1", 'nothing that a formula may hold'],
    ['{1,2}', 'array constant'],
    ['LoomRuns[Drop, low]', 'wants brackets of its own'],
    ['[@Peak amps]', 'wants brackets of its own'],
    ["LoomRuns[[Peak '# amps]", '"]" belongs here'],
    ['LoomRuns[[a#b]]', 'wants an escape'],
    ["LoomRuns[[a'b]]", 'an escape of nothing'],
    ['LoomRuns[#Some]', 'no item'],
    ['#NOPE!', 'no error value'],
    ['SUM(1;2)', '"\\)" belongs here'],
  ])('refuses %s', (formula, said) => {
    expect(() => readFormula(formula)).toThrow(new RegExp(said));
  });

  it.each([
    ['[@[Peak amps]]*2', { tables: [{ table: undefined, columns: ['Peak amps'] }] }],
    [
      'SUM(LoomRuns[[#All],[Drop, low]])',
      { tables: [{ table: 'LoomRuns', columns: ['Drop, low'] }] },
    ],
    ["LoomRuns[[a'[b]:[c]]", { tables: [{ table: 'LoomRuns', columns: ['a[b', 'c'] }] }],
    ["'It''s'!$A$1:B2%", { sheets: ["It's"], names: [] }],
    [`${'ABS('.repeat(64)}1${')'.repeat(64)}`, { levels: 64 }],
    ['IF(,TRUE,"a ""b""")', { functions: ['IF'], mostArguments: 3, longestText: 5 }],
    ['LOOM.DCDROP(-1,A1:B2,#N/A,1.5E-3)^2<>Name_1', { names: ['Name_1'], mostArguments: 4 }],
  ])('reads %s', (formula, facts) => {
    expect(readFormula(formula)).toMatchObject(facts);
  });
});
