/** What the Excel host draws, and in which order, against a stand-in that queues, syncs and refuses as Excel does. */
import { describe, expect, it } from 'vitest';
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import type { RecordingExcel } from './recording-excel';
import { samplePlan } from './sample-plan';
import { patientHost, workbook } from './stand-in';

const host = patientHost();

async function inserted(...plans: readonly SheetPlan[]): Promise<RecordingExcel> {
  const excel = workbook();
  expect((await host.insert(plans)).missing).toEqual([]);
  return excel;
}

const pathsOf = (excel: RecordingExcel) => excel.done.map((step) => step.path);

/** Where in the order of steps those stand whose path matches; fails where none does. */
function placesOf(excel: RecordingExcel, pattern: RegExp): readonly number[] {
  const places = pathsOf(excel).flatMap((path, index) => (pattern.test(path) ? [index] : []));
  expect(places, `${pattern.source} was never done`).not.toEqual([]);
  return places;
}

function expectOrder(excel: RecordingExcel, earlier: RegExp, later: RegExp): void {
  const last = Math.max(...placesOf(excel, earlier));
  const first = Math.min(...placesOf(excel, later));
  expect(last, `${earlier.source} before ${later.source}`).toBeLessThan(first);
}

/** The one value given at a step whose path ends so. */
function givenAt(excel: RecordingExcel, ending: string): unknown {
  const steps = excel.done.filter((step) => step.path.endsWith(ending));
  expect(steps, ending).toHaveLength(1);
  return steps[0]?.given[0];
}

const contentAt = (excel: RecordingExcel, row: number, column: number, sheet = 'Runs') => {
  const cell = excel.sheetNamed(sheet)?.at(row, column);
  return cell?.formula ?? cell?.value;
};

describe('drawing', () => {
  it('sets number formats before values, so that 1/0 stays text', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(excel, /\)\.numberFormat$/, /\.values$/);
    expect(contentAt(excel, 3, 2)).toBe('1/0');
  });

  it('never formats a cell as text that is to hold a formula', async () => {
    const excel = await inserted(samplePlan());
    const formats = [2, 3].map((column) => excel.sheetNamed('Runs')!.formatAt(3, column));
    expect(formats).toEqual(['@', 'General']);
  });

  it('makes the table over filled cells, then gives each computed column its formula once', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(excel, /\.values$/, /!tables\.add$/);
    expectOrder(excel, /!tables\.add$/, /\.getDataBodyRange\(\)\.formulas$/);
    const formula = '=IF([@Amps]="","","10 AWG")';
    expect(givenAt(excel, 'columns.getItemAt(3).getDataBodyRange().formulas')).toBe(formula);
    expect([3, 5].map((row) => contentAt(excel, row, 3))).toEqual([formula, formula]);
    expect([0, 1, 2, 3].map((column) => contentAt(excel, 2, column))).toEqual([
      'Run',
      'Amps',
      'Size',
      'Suggested',
    ]);
    expect(excel.tableNames).toEqual(['RunsTable']);
  });

  it('writes what is typed over a computed column after its formulas, and nothing else over them', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(
      excel,
      /\.getDataBodyRange\(\)\.formulas$/,
      /getRangeByIndexes\([^)]*\)\.formulas$/,
    );
    expect(contentAt(excel, 4, 3)).toBe('2 AWG');
  });

  it('writes a filled formula once and copies it down, around what is typed over it', async () => {
    const filled = {
      ...samplePlan(),
      blocks: [
        {
          area: area(10, 5, 4, 1),
          cells: [[null], [null], ['own'], [null]],
          fill: ['=A11*B$3&"A11"'],
        },
      ],
    };
    const excel = await inserted(filled);
    expect([10, 11, 12, 13].map((row) => contentAt(excel, row, 5))).toEqual([
      '=A11*B$3&"A11"',
      '=A12*B$3&"A11"',
      'own',
      '=A14*B$3&"A11"',
    ]);
  });

  it('lets a later block decide, also where it leaves a cell empty', async () => {
    const blocks = [
      { area: area(10, 0, 1, 3), cells: [['a', 'b', 'c']] },
      { area: area(10, 1, 1, 2), cells: [['B', null]] },
    ];
    const excel = await inserted({ ...samplePlan(), blocks });
    expect([0, 1, 2].map((column) => contentAt(excel, 10, column))).toEqual(['a', 'B', undefined]);
  });

  it('writes formulas after every sheet, name and table they may refer to', async () => {
    const excel = await inserted(samplePlan('Runs'), samplePlan('Data'));
    expectOrder(excel, /^workbook\.worksheets\.add$/, /\.formulas$/);
    expectOrder(excel, /^workbook\.names\.add$/, /\.formulas$/);
    expectOrder(excel, /!tables\.add$/, /\.formulas$/);
    expect(contentAt(excel, 6, 1)).toBe('=SUM(RunsTable[Amps])');
  });

  it('sets what may be typed, with prompts and refusals', async () => {
    const excel = await inserted(samplePlan());
    const amps = 'getRangeByIndexes(3,1,3,1).dataValidation';
    expect(givenAt(excel, `${amps}.rule`)).toEqual({
      decimal: { operator: 'Between', formula1: 0, formula2: 1000 },
    });
    expect(givenAt(excel, `${amps}.errorAlert`)).toMatchObject({ showAlert: true, style: 'Stop' });
    const size = 'getRangeByIndexes(3,2,3,1).dataValidation';
    expect(givenAt(excel, `${size}.rule`)).toEqual({
      list: { inCellDropDown: true, source: '1/0 AWG,10 AWG' },
    });
    expect(givenAt(excel, `${size}.errorAlert`)).toMatchObject({ showAlert: false });
    expect(givenAt(excel, 'getRangeByIndexes(2,1,1,1).dataValidation.prompt')).toMatchObject({
      message: 'Amps at the load.',
      showPrompt: true,
    });
  });

  it('never lets a note take the rule of an entry away', async () => {
    const plan = samplePlan();
    const note = { area: plan.entries[0]!.area, text: 'Amps, once more.' };
    const excel = await inserted({ ...plan, notes: [note] });
    expect(givenAt(excel, 'getRangeByIndexes(3,1,3,1).dataValidation.rule')).toHaveProperty(
      'decimal',
    );
  });

  it('adds highlights last to first, since Excel puts each new one on top', async () => {
    const excel = await inserted(samplePlan());
    const rules = excel.done.filter((step) => step.path.endsWith('.custom.rule.formula'));
    expect(rules.map((step) => step.given[0])).toEqual(['=$B4>9', '=$B4>10']);
  });

  it('sets up view and page', async () => {
    const excel = await inserted(samplePlan());
    expect(pathsOf(excel)).toContain('Runs!freezePanes.freezeAt');
    expect(givenAt(excel, 'pageLayout.orientation')).toBe('Landscape');
    expect(givenAt(excel, 'pageLayout.zoom')).toEqual({ horizontalFitToPages: 1 });
    expect(givenAt(excel, 'pageLayout.setPrintTitleRows')).toBe('$3:$3');
    expect(givenAt(excel, 'defaultForAllPages.centerFooter')).toBe('Advice && cautions');
    // 8.43 characters of Calibri 11 are the 48 points of a new sheet's columns.
    expect(givenAt(excel, 'getRangeByIndexes(0,1,1,1).format.columnWidth')).toBeCloseTo(48, 1);
    expect(givenAt(excel, 'getRangeByIndexes(2,0,1,1).format.rowHeight')).toBe(30);
  });

  it('hides the columns that the plan hides, and no other', async () => {
    const excel = await inserted(samplePlan());
    expect(givenAt(excel, 'getRangeByIndexes(0,2,1,2).columnHidden')).toBe(true);
    expect(placesOf(excel, /columnHidden$/)).toHaveLength(1);
    const open = { ...samplePlan(), hiddenColumns: [] };
    expect(pathsOf(await inserted(open)).join()).not.toContain('columnHidden');
  });

  it('asks for inner lines only where there is something between cells', async () => {
    const excel = await inserted(samplePlan());
    const lines = (range: string) =>
      pathsOf(excel).flatMap((path) => {
        const found = /format\.borders\.getItem\("(\w+)"\)\.style$/.exec(path);
        return found && path.includes(range) ? [found[1]] : [];
      });
    expect(lines('getRangeByIndexes(6,0,1,2)')).toEqual(['EdgeBottom']);
    expect(lines('getRangeByIndexes(2,0,4,4)')).toHaveLength(6);
  });

  it('brings the first sheet into view', async () => {
    const excel = await inserted(samplePlan('Runs'), samplePlan('Data'));
    expect(pathsOf(excel).filter((path) => path.endsWith('activate'))).toEqual(['Runs!activate']);
    expect(excel.active.name).toBe('Runs');
  });

  it('takes no more round trips and steps for many rows than for few', async () => {
    const small = await inserted(samplePlan('Runs', 2));
    const large = await inserted(samplePlan('Runs', 400));
    expect(large.syncs).toBe(small.syncs);
    expect(large.done.length).toBe(small.done.length);
  });

  it('does nothing where there is nothing to insert', async () => {
    const excel = await inserted();
    expect(excel.sheetNames).toEqual(['Notes']);
    expect(excel.syncs).toBe(0);
  });
});
