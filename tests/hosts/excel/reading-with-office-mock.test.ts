/**
 * Reading through the platform's own mock, which refuses what was not loaded and synced. It has no collections, so it
 * reaches the sheet in view and no further; the rest runs against the stand-in beside it.
 */
import { OfficeMockObject } from 'office-addin-mock';
import { afterEach, expect, it } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Excel');
});

interface MockedExcel {
  readonly context: {
    readonly workbook: { readonly worksheets: { readonly sheet: { readonly used: object } } };
  };
}

function mockExcel(isNullObject: boolean): void {
  const excel = new OfficeMockObject({
    context: {
      workbook: {
        worksheets: {
          sheet: {
            name: 'Runs',
            used: { values: [['Van', 8.5]], rowIndex: 1, columnIndex: 0 },
            getUsedRangeOrNullObject(this: { readonly used: object }) {
              return this.used;
            },
          },
          getActiveWorksheet(this: { readonly sheet: object }) {
            return this.sheet;
          },
        },
      },
    },
    async run(this: MockedExcel, _options: object, batch: (context: object) => Promise<unknown>) {
      return batch(this.context);
    },
  }) as unknown as MockedExcel;
  Object.assign(excel.context.workbook.worksheets.sheet.used, { isNullObject });
  Object.assign(globalThis, { Excel: excel });
}

const host = new ExcelHost(() => undefined);

it('reads the sheet in view', async () => {
  mockExcel(false);
  expect(await host.activeGrid()).toEqual({
    sheetName: 'Runs',
    values: [
      [null, null],
      ['Van', 8.5],
    ],
  });
});

it('reads an empty sheet as null', async () => {
  mockExcel(true);
  expect(await host.activeGrid()).toBeNull();
});
