import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import ExcelJS from 'exceljs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../../src/hosts/xlsx/write';
import { calculate } from '../../../src/sheets/calculate/calculate';
import { areasOf } from '../../../src/hosts/xlsx/ignored-errors';
import { area, cellAddress } from '../../../src/sheets/plan/area';
import type { CellContent, SheetPlan } from '../../../src/sheets/plan/plan';
import { BARE_PLAN } from '../../sheets/bare-plan';
import { childrenOf, named, only, parseXml, type XmlElement } from '../../xml-tree';
import { runDebianTool } from '../../published/debian-tool';

const ALL = area(0, 0, 300, 4);

function planOf(parts: Partial<SheetPlan>): SheetPlan {
  return {
    ...BARE_PLAN,
    name: 'Sheet of one',
    print: { landscape: false, area: ALL, footer: 'this & that' },
    ...parts,
  };
}

async function drawn(...plans: readonly Partial<SheetPlan>[]): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  const bytes = await writeWorkbook(plans.map(planOf));
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return workbook;
}

async function sheetOf(parts: Partial<SheetPlan>): Promise<ExcelJS.Worksheet> {
  return (await drawn(parts)).worksheets[0]!;
}

function rows(cells: readonly (readonly CellContent[])[], style = {}) {
  return { blocks: [{ area: area(0, 0, cells.length, cells[0]!.length), cells, style }] };
}

interface Ruled {
  readonly dataValidations: { readonly model: Readonly<Record<string, ExcelJS.DataValidation>> };
}

/** The parts of a sheet in the order of ECMA-376 part 1, 18.3.1.99 (CT_Worksheet), from those that ours have on. */
const ORDER = [
  ...['sheetPr', 'dimension', 'sheetViews', 'sheetFormatPr', 'cols', 'sheetData', 'autoFilter'],
  ...['mergeCells', 'conditionalFormatting', 'dataValidations', 'hyperlinks', 'printOptions'],
  ...['pageMargins', 'pageSetup', 'headerFooter', 'rowBreaks', 'colBreaks', 'ignoredErrors'],
  ...['drawing', 'legacyDrawing', 'picture', 'tableParts', 'extLst'],
];

/** Each sheet of a written file, as its XML has it. */
async function sheetXml(plans: readonly Partial<SheetPlan>[]): Promise<readonly XmlElement[]> {
  const room = mkdtempSync(join(tmpdir(), 'loomsheet-write-'));
  try {
    const path = join(room, 'sheets.xlsx');
    const named = plans.map((plan, index) => planOf({ ...plan, name: `Sheet ${index + 1}` }));
    writeFileSync(path, await writeWorkbook(named));
    const unzip = { command: 'unzip', debianPackage: 'unzip' };
    return await Promise.all(
      plans.map((_, index) =>
        parseXml(runDebianTool(unzip, ['-p', path, `xl/worksheets/sheet${index + 1}.xml`])),
      ),
    );
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

const prompted = { promptTitle: 'Title', prompt: 'Prompt' };

describe('a plan as an .xlsx file', () => {
  it('holds texts as texts, and marks those that look like formulas as text for whoever edits them', async () => {
    const texts = ['=1+1', '+1', '-1', '@now', 'plain', '3'];
    const sheet = await sheetOf(
      rows(
        texts.map((text) => [text]),
        { numberFormat: '0.0' },
      ),
    );
    for (const [index, text] of texts.entries()) {
      const cell = sheet.getCell(index + 1, 1);
      expect([cell.value, cell.type]).toEqual([text, ExcelJS.ValueType.String]);
      expect(cell.numFmt).toBe(/^[=+\-@]/.test(text) ? '@' : '0.0');
    }
  });

  it('holds numbers, truth and formulas with what they came to', async () => {
    const plan = rows([[1.5, true, { formula: '=1+1' }, { formula: '=NA()' }]]);
    const whole = planOf(plan);
    const workbook = new ExcelJS.Workbook();
    const bytes = await writeWorkbook([whole], calculate([whole]));
    await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
    const sheet = workbook.worksheets[0]!;
    expect(sheet.getCell('A1').value).toBe(1.5);
    expect(sheet.getCell('B1').value).toBe(true);
    expect(sheet.getCell('C1').formula).toContain('1+1');
    expect(sheet.getCell('C1').result).toBe(2);
    expect(sheet.getCell('D1').result).toEqual({ error: '#N/A' });
  });

  it('has no hundred alike formulas below one another, which LibreOffice takes for circles', async () => {
    const cells = Array.from({ length: 300 }, () => [{ formula: '=ROW()' }]);
    const sheet = await sheetOf(rows(cells));
    const formulas = cells.map((_, index) => sheet.getCell(index + 1, 1).formula);
    let stretch = 0;
    for (const [index, formula] of formulas.entries()) {
      expect(['ROW()', '(ROW())']).toContain(formula);
      stretch = formula === formulas[index - 1] ? stretch + 1 : 1;
      expect(stretch).toBeLessThan(100);
    }
  });

  it('writes a formula that is filled down once, and one that names another sheet in every row', async () => {
    const at = (row: number) => [{ formula: `=B${row}*2` }, row, { formula: `=Else!B${row}*2` }];
    const sheet = await sheetOf(
      rows([[null, null, null], at(2), at(3), [1, 3, null], at(5), at(6)]),
    );
    const own = [2, 3, 5, 6].map((row) => sheet.getCell(row, 1));
    expect(own.map(({ value }) => value)).toEqual([
      expect.objectContaining({ formula: 'B2*2', ref: 'A2:A3' }),
      { sharedFormula: 'A2' },
      expect.objectContaining({ formula: 'B5*2', ref: 'A5:A6' }),
      { sharedFormula: 'A5' },
    ]);
    expect(own.map(({ formula }) => formula)).toEqual(['B2*2', 'B3*2', 'B5*2', 'B6*2']);
    for (const row of [2, 3, 5, 6]) {
      expect(sheet.getCell(row, 3).value).toEqual({ formula: `Else!B${row}*2` });
    }
  });

  it('never formats a formula as text, which would show the formula itself when edited', async () => {
    const sheet = await sheetOf(
      rows([[{ formula: '="10 AWG"' }, '10 AWG']], { numberFormat: '@' }),
    );
    expect(sheet.getCell('A1').numFmt ?? 'General').toBe('General');
    expect(sheet.getCell('B1').numFmt).toBe('@');
  });

  it('lays later blocks over earlier ones, field by field', async () => {
    const sheet = await sheetOf({
      blocks: [
        { area: area(0, 0, 2, 2), style: { bold: true, fill: '#112233' } },
        { area: area(0, 0, 1, 1), cells: [['under']] },
        {
          area: area(0, 0),
          cells: [['over']],
          style: { fill: '#445566', border: 'below', wrap: true, align: 'centre' },
        },
      ],
    });
    const cell = sheet.getCell('A1');
    expect(cell.value).toBe('over');
    expect(cell.font.bold).toBe(true);
    expect(cell.fill).toMatchObject({ fgColor: { argb: 'FF445566' } });
    expect(cell.alignment).toMatchObject({ horizontal: 'center', wrapText: true });
    expect(cell.border.bottom?.style).toBe('thin');
    expect(cell.border.top).toBeUndefined();
    expect(sheet.getCell('B2').fill).toMatchObject({ fgColor: { argb: 'FF112233' } });
  });

  it('keeps short lists in the rule and long or awkward ones on one hidden sheet', async () => {
    const long = Array.from({ length: 60 }, (_, index) => `${index + 1} AWG`);
    const workbook = await drawn(
      {
        entries: [
          { area: area(0, 0), choices: ['ft', 'm'], ...prompted },
          { area: area(1, 0), choices: long, ...prompted },
          { area: area(2, 0), choices: ['a, b', '"c"'], ...prompted },
          { area: area(3, 0), choices: long, othersAllowed: true, ...prompted },
        ],
      },
      { name: 'LISTS' },
    );
    const { model } = (workbook.worksheets[0] as unknown as Ruled).dataValidations;
    expect(model['A1']?.formulae).toEqual(['"ft,m"']);
    expect(model['A2']?.formulae).toEqual(["'Lists 2'!$A$1:$A$60"]);
    expect(model['A3']?.formulae).toEqual(["'Lists 2'!$B$1:$B$2"]);
    expect(model['A4']?.formulae).toEqual(model['A2']?.formulae);
    expect(model['A2']?.showErrorMessage).toBe(true);
    expect(model['A4']?.showErrorMessage ?? false).toBe(false);
    const lists = workbook.getWorksheet('Lists 2')!;
    expect(lists.state).toBe('hidden');
    expect(long.map((_, index) => lists.getCell(index + 1, 1).value)).toEqual(long);
    expect(lists.getCell('A1').numFmt).toBe('@');
    expect(lists.getCell('B2').value).toBe('"c"');
  });

  it('bounds numbers on the sides that have a bound', async () => {
    const sheet = await sheetOf({
      entries: [
        { area: area(0, 0), number: { least: 1, most: 5 }, ...prompted },
        { area: area(1, 0), number: { least: 0 }, ...prompted },
        { area: area(2, 0), number: { most: 9 }, ...prompted },
        { area: area(3, 0), number: {}, ...prompted },
        { area: area(4, 0), ...prompted },
      ],
    });
    const { model } = (sheet as unknown as Ruled).dataValidations;
    const bounds = ['A1', 'A2', 'A3'].map((at) => [
      model[at]?.operator ?? 'between',
      model[at]?.formulae,
    ]);
    expect(bounds).toEqual([
      ['between', [1, 5]],
      ['greaterThanOrEqual', [0]],
      ['lessThanOrEqual', [9]],
    ]);
    expect(model['A1']).toMatchObject({
      ...prompted,
      error: 'Give a number from 1 up to 5.',
      errorStyle: 'stop',
    });
    for (const at of ['A4', 'A5']) {
      expect(model[at]?.prompt).toBe('Prompt');
      expect(model[at]?.showErrorMessage ?? false).toBe(false);
    }
  });

  it('puts the first highlight of cells on top', async () => {
    const highlight = (formula: string, fill: string) => ({
      area: area(0, 0, 5, 1),
      formula,
      style: { fill, bold: true, fontColour: '#ffffff' },
      meaning: '',
    });
    const sheet = await sheetOf({
      highlights: [highlight('$A1>2', '#aa0000'), highlight('$A1>1', '#00aa00')],
    });
    const [formats, ...more] = (
      sheet as unknown as { conditionalFormattings: ExcelJS.ConditionalFormattingOptions[] }
    ).conditionalFormattings;
    expect(more).toEqual([]);
    expect(formats?.ref).toBe('A1:A5');
    expect(formats?.rules.map(({ priority }) => priority)).toEqual([1, 2]);
    expect(formats?.rules.map((rule) => (rule as { formulae?: string[] }).formulae)).toEqual([
      ['$A1>2'],
      ['$A1>1'],
    ]);
  });

  it('hides the columns that the plan hides, and no other', async () => {
    const sheet = await sheetOf({ columnWidths: [10, 10, 10, 10], hiddenColumns: [1, 2] });
    expect([1, 2, 3, 4].map((column) => sheet.getColumn(column).hidden)).toEqual([
      ...[false, true, true, false],
    ]);
  });

  it('prints and filters as planned', async () => {
    const workbook = await drawn({
      table: { name: 'T', area: area(2, 0, 10, 4), columns: [] },
      print: {
        landscape: true,
        area: ALL,
        repeatRows: { first: 1, last: 2 },
        footer: 'this & that',
      },
      names: [{ name: 'Somewhere', area: area(3, 2) }],
    });
    const sheet = workbook.worksheets[0]!;
    expect(sheet.pageSetup).toMatchObject({
      orientation: 'landscape',
      fitToPage: true,
      fitToWidth: 1,
      fitToHeight: 0,
      printArea: 'A1:D300',
      printTitlesRow: '2:3',
    });
    expect(sheet.headerFooter.oddFooter).toContain('this && that');
    expect(sheet.autoFilter).toBe('A3:D12');
    expect(workbook.definedNames.getRanges('Somewhere').ranges).toEqual(["'Sheet of one'!$C$4"]);
  });

  it('marks neither figures that are text on purpose nor formulas that stand in brackets', async () => {
    const { blocks } = rows(
      Array.from({ length: 70 }, () => ['10', 'note', { formula: '=1+1' }, 5]),
    );
    const texts = { area: area(2, 0, 5, 2), style: { numberFormat: '@' } };
    const below = { area: area(20, 0), style: { numberFormat: '@' } };
    const first = {
      blocks: [...blocks, texts, below],
      notes: [{ area: area(0, 0), text: 'with a drawing' }],
    };
    const [marked, bare] = await sheetXml([first, {}]);
    const parts = childrenOf(marked!).map((part) => part['#name']);
    expect(parts.filter((part) => part === 'ignoredErrors')).toHaveLength(1);
    // Excel opens no sheet whose parts stand in another order.
    expect(parts).toEqual([...parts].sort((a, b) => ORDER.indexOf(a) - ORDER.indexOf(b)));
    expect(parts.slice(parts.indexOf('ignoredErrors') + 1)).toEqual(['legacyDrawing']);
    expect(childrenOf(only(marked!, 'ignoredErrors')).map(({ $ }) => $)).toEqual([
      { sqref: 'A3:B7 A21', numberStoredAsText: '1' },
      { sqref: 'C65', formula: '1' },
    ]);
    expect(named(bare!, 'ignoredErrors')).toEqual([]);
  });

  it('leaves the marks off every cell of a text column, and off no other', () => {
    const place = fc.record({ row: fc.nat(12), column: fc.nat(6) });
    fc.assert(
      fc.property(fc.array(place), (places) => {
        const covered = areasOf(places).flatMap((of) =>
          Array.from({ length: of.rows * of.columns }, (_, index) =>
            cellAddress(of.row + Math.floor(index / of.columns), of.column + (index % of.columns)),
          ),
        );
        const wanted = new Set(places.map(({ row, column }) => cellAddress(row, column)));
        expect([...covered].sort()).toEqual([...wanted].sort());
      }),
    );
  });

  it('makes spreadsheets calculate on opening, whatever values travel along', async () => {
    const room = mkdtempSync(join(tmpdir(), 'loomsheet-write-'));
    try {
      const path = join(room, 'one.xlsx');
      writeFileSync(path, await writeWorkbook([planOf({})]));
      const unzip = { command: 'unzip', debianPackage: 'unzip' };
      const xml = runDebianTool(unzip, ['-p', path, 'xl/workbook.xml']);
      expect(xml).toMatch(/<calcPr [^>]*fullCalcOnLoad="1"/);
    } finally {
      rmSync(room, { recursive: true, force: true });
    }
  });
});
