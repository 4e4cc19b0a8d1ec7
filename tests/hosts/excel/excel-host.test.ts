/** The Excel host against a stand-in that queues, syncs and fails as Excel does. */
import { afterEach, describe, expect, it } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { RecordingExcel, type Step, type Used } from './recording-excel';
import { samplePlan } from './sample-plan';

const faults: Error[] = [];
const host = new ExcelHost((fault) => faults.push(fault));

/** Puts the stand-in where the code looks for Excel. */
function workbook(sheets: Readonly<Record<string, Used | null>> = { Notes: null }): RecordingExcel {
  const excel = new RecordingExcel(sheets);
  Object.assign(globalThis, { Excel: excel });
  return excel;
}

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Excel');
  faults.length = 0;
});

async function inserted(...plans: readonly SheetPlan[]): Promise<RecordingExcel> {
  const excel = workbook();
  await host.insert(plans);
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

describe('drawing', () => {
  it('sets number formats before values, so that 1/0 stays text', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(excel, /\)\.numberFormat$/, /\.values$/);
    expect(givenAt(excel, 'getRangeByIndexes(3,2,3,2).values')).toEqual([
      ['1/0', null],
      ['1/0', null],
      ['1/0', null],
    ]);
  });

  it('never formats a cell as text that is to hold a formula', async () => {
    const excel = await inserted(samplePlan());
    expect(givenAt(excel, 'getRangeByIndexes(3,2,3,2).numberFormat')).toEqual([
      ['@', 'General'],
      ['@', 'General'],
      ['@', 'General'],
    ]);
  });

  it('makes the table over filled cells, then writes its computed columns whole', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(excel, /\.values$/, /\.tables\.add\(/);
    expectOrder(excel, /\.tables\.add\(/, /\.getDataBodyRange\(\)\.formulas$/);
    const column = 'columns.getItemAt(3).getDataBodyRange().formulas';
    const formula = '=IF([@Amps]="","","10 AWG")';
    expect(givenAt(excel, column)).toEqual([[formula], [formula], [formula]]);
    expect(givenAt(excel, 'getRangeByIndexes(2,0,1,4).values')).toEqual([
      ['Run', 'Amps', 'Size', 'Suggested'],
    ]);
    expect([...excel.tables]).toEqual([['RunsTable', 'Runs']]);
  });

  it('writes what is typed over a computed column after its formulas, and nothing else over them', async () => {
    const excel = await inserted(samplePlan());
    expectOrder(
      excel,
      /\.getDataBodyRange\(\)\.formulas$/,
      /\)\.getRangeByIndexes\(.*\)\.formulas$/,
    );
    expect(givenAt(excel, 'getRangeByIndexes(3,2,3,2).formulas')).toEqual([
      [null, null],
      [null, "'2 AWG"],
      [null, null],
    ]);
  });

  it('writes formulas after every sheet, name and table they may refer to', async () => {
    const excel = await inserted(samplePlan('Runs'), samplePlan('Data'));
    expectOrder(excel, /^workbook\.worksheets\.add$/, /\.formulas$/);
    expectOrder(excel, /^workbook\.names\.add$/, /\.formulas$/);
    expectOrder(excel, /\.tables\.add\(/, /\.formulas$/);
    expect(givenAt(excel, 'add("Runs").getRangeByIndexes(6,0,1,2).formulas')).toEqual([
      [null, '=SUM(RunsTable[Amps])'],
    ]);
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

  it('adds highlights last to first, since Excel puts each new one on top', async () => {
    const excel = await inserted(samplePlan());
    const rules = excel.done.filter((step) => step.path.endsWith('.custom.rule.formula'));
    expect(rules.map((step) => step.given[0])).toEqual(['=$B4>9', '=$B4>10']);
  });

  it('sets up view and page', async () => {
    const excel = await inserted(samplePlan());
    expect(pathsOf(excel)).toContain('workbook.worksheets.add("Runs").freezePanes.freezeAt');
    expect(givenAt(excel, 'pageLayout.orientation')).toBe('Landscape');
    expect(givenAt(excel, 'pageLayout.zoom')).toEqual({ horizontalFitToPages: 1 });
    expect(givenAt(excel, 'pageLayout.setPrintTitleRows')).toBe('$3:$3');
    expect(givenAt(excel, 'defaultForAllPages.centerFooter')).toBe('Advice && cautions');
    // 8.43 characters of Calibri 11 are the 48 points of a new sheet's columns.
    expect(givenAt(excel, 'getRangeByIndexes(0,1,1,1).format.columnWidth')).toBeCloseTo(48, 1);
    expect(givenAt(excel, 'getRangeByIndexes(2,0,1,1).format.rowHeight')).toBe(30);
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
    expect(pathsOf(excel).filter((path) => path.endsWith('.activate'))).toEqual([
      'workbook.worksheets.add("Runs").activate',
    ]);
  });

  it('takes no more round trips for many sheets and rows than for few', async () => {
    const small = await inserted(samplePlan('Runs', 2));
    const large = await inserted(samplePlan('Runs', 400), samplePlan('Data', 50));
    expect(large.syncs).toBe(small.syncs);
  });

  it('takes no more steps for many rows than for few', async () => {
    const small = await inserted(samplePlan('Runs', 2));
    const large = await inserted(samplePlan('Runs', 400));
    expect(large.done.length).toBe(small.done.length);
  });

  it('does nothing where there is nothing to insert', async () => {
    const excel = await inserted();
    expect([...excel.sheets.keys()]).toEqual(['Notes']);
  });
});

describe('a failure half-way', () => {
  const plans = [samplePlan('Runs'), samplePlan('Data')];

  /** Inserts while the step at a place of the drawing is refused, with the steps of clearing up let through. */
  async function failingAt(place: number, code: string) {
    const excel = workbook();
    excel.names.add('Kept');
    const isDrawing = (step: Step) =>
      !step.path.includes('OrNullObject') && !step.path.endsWith('.load');
    let drawn = 0;
    excel.refuse = (step) => (isDrawing(step) && drawn++ === place ? code : undefined);
    const outcome = await host.insert(plans).then(
      () => 'inserted',
      (error: Error) => error.message,
    );
    return { excel, outcome };
  }

  it('leaves the workbook as it was, whichever step fails', async () => {
    const { done } = await inserted(...plans);
    const steps = done.filter((step) => !step.path.endsWith('.load')).length;
    expect(steps).toBeGreaterThan(100);
    for (let place = 0; place < steps; place += 1) {
      const { excel, outcome } = await failingAt(place, 'InvalidArgument');
      expect(outcome).toMatch(/^Nothing was inserted, the workbook is as it was: Excel refused/);
      expect([...excel.sheets.keys()]).toEqual(['Notes']);
      expect([...excel.names]).toEqual(['Kept']);
      expect([...excel.tables]).toEqual([]);
    }
    expect((await failingAt(steps, 'InvalidArgument')).outcome).toBe('inserted');
  });

  it.each([
    ['AccessDenied', /protected/],
    ['InvalidOperationInCellEditMode', /being edited/],
    ['NeverHeardOf', /Excel says "Excel's own words for NeverHeardOf"/],
  ])('explains %s in one sentence', async (code, words) => {
    const { outcome } = await failingAt(5, code);
    expect(outcome).toMatch(words);
    expect(outcome).toMatch(/^[^.]+\.$/);
  });

  it('says which sheets to delete where clearing up fails too', async () => {
    const excel = workbook();
    excel.refuse = (step) =>
      step.path.endsWith('.formulas') || step.path.includes('OrNullObject')
        ? 'Conflict'
        : undefined;
    await expect(host.insert(plans)).rejects.toThrow(/Delete the sheets "Runs", "Data" by hand/);
  });

  it('refuses a plan that Excel could not take, and says why', async () => {
    workbook();
    const plan: SheetPlan = {
      ...samplePlan(),
      notes: [{ area: area(0, 0), text: 'x'.repeat(256) }],
    };
    await expect(host.insert([plan])).rejects.toThrow(/has 256 characters, Excel allows 255\.$/);
  });

  it.each([
    ['a sheet', (excel: RecordingExcel) => excel.sheets.set('RUNS', null), 'Runs'],
    ['a defined name', (excel: RecordingExcel) => excel.names.add('runs_VOLTS'), 'Runs_volts'],
    ['a table', (excel: RecordingExcel) => excel.tables.set('RunsTable', 'Notes'), 'RunsTable'],
  ])('touches nothing where %s has the name already', async (_, take, name) => {
    const excel = workbook();
    take(excel);
    const sheets = [...excel.sheets.keys()];
    await expect(host.insert(plans)).rejects.toThrow(`already has a "${name}"`);
    expect([...excel.sheets.keys()]).toEqual(sheets);
    expect(pathsOf(excel).every((path) => path.endsWith('.load'))).toBe(true);
  });
});

describe('reading', () => {
  const used: Used = {
    rowIndex: 1,
    columnIndex: 2,
    values: [
      ['a', '', '#N/A'],
      [1, true, 0],
    ],
    formulas: [
      ['a', '', '=NA()'],
      [1, true, '=1-1'],
    ],
  };

  it('gives every sheet from A1 on, in two round trips', async () => {
    const excel = workbook({ Runs: used, Empty: null, Data: used });
    const grids = await host.allGrids();
    expect(grids.map((grid) => grid.sheetName)).toEqual(['Runs', 'Empty', 'Data']);
    expect(grids[0]?.values).toEqual([
      [null, null, null, null, null],
      [null, null, 'a', null, '#N/A'],
      [null, null, 1, true, 0],
    ]);
    expect(grids[1]?.values).toEqual([]);
    expect(grids[0]?.computed).toEqual([
      [],
      [false, false, false, false, true],
      [false, false, false, false, true],
    ]);
    expect(excel.syncs).toBe(2);
  });

  it('says so where a sheet is too large for Excel to hand over', async () => {
    workbook({ Huge: { rowIndex: 0, columnIndex: 0, values: null } });
    await expect(host.allGrids()).rejects.toThrow(/"Huge" has more cells than Excel hands over/);
    await expect(host.activeGrid()).rejects.toThrow(/"Huge" has more cells than Excel hands over/);
  });

  it('lists every name in lower case', async () => {
    const excel = workbook({ Runs: null });
    excel.names.add('Volts');
    excel.tables.set('RunTable', 'Runs');
    expect(await host.taken()).toEqual({
      sheets: new Set(['runs']),
      names: new Set(['volts', 'runtable']),
    });
    expect(excel.syncs).toBe(1);
  });

  it('selects cells, and says so where the sheet is gone', async () => {
    const excel = workbook({ Runs: null });
    await host.select('Runs', area(4, 1, 1, 3));
    expect(pathsOf(excel)).toContain(
      'workbook.worksheets.getItem("Runs").getRangeByIndexes(4,1,1,3).select',
    );
    excel.refuse = () => 'ItemNotFound';
    await expect(host.select('Gone', area(0, 0))).rejects.toThrow(
      'The cells on "Gone" could not be selected: the sheet or the cells are no longer there.',
    );
  });
});

describe('listening', () => {
  const settled = () => new Promise((resolve) => setTimeout(resolve, 0));

  it('hears edits, calculations and another sheet in view, until told to stop', async () => {
    const excel = workbook();
    let heard = 0;
    const stop = host.onChange(() => (heard += 1));
    await settled();
    const events = ['onChanged', 'onCalculated', 'onActivated'];
    expect([...excel.listeners.keys()]).toEqual(events);
    const all = [...excel.listeners.values()].flatMap((listeners) => [...listeners]);
    for (const listener of all) await listener();
    expect(heard).toBe(3);
    stop();
    for (const listener of all) await listener();
    expect(heard).toBe(3);
    await settled();
    for (const event of events) expect(excel.listeners.get(event)?.size).toBe(0);
  });

  it('reports where it cannot listen', async () => {
    const excel = workbook();
    excel.refuse = () => 'ApiNotFound';
    const stop = host.onChange(() => undefined);
    await settled();
    stop();
    await settled();
    expect(faults.map((fault) => fault.message)).toEqual([
      'The pane does not follow changes in the workbook: this version of Excel is too old for it.',
    ]);
  });
});
