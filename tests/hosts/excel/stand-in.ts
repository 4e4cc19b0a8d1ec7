/** Putting the stand-in for Excel where the code looks for it, and telling workbooks apart. */
import { onTestFinished } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { InsertionFault, type Inserted } from '../../../src/hosts/sheet-host';
import { RecordingExcel, type Used } from './recording-excel';
import { chartsOf } from './remembered';

/** A workbook that is Excel's until the test ends. */
export function workbook(
  sheets: Readonly<Record<string, Used | null>> = { Notes: null },
): RecordingExcel {
  const excel = new RecordingExcel(sheets);
  Object.assign(globalThis, { Excel: excel });
  onTestFinished(() => {
    Reflect.deleteProperty(globalThis, 'Excel');
  });
  return excel;
}

/** A host that does not wait between its tries. */
export function patientHost(faults: Error[] = []): ExcelHost {
  return new ExcelHost(
    (fault) => faults.push(fault),
    () => Promise.resolve(),
  );
}

/** All that a person would miss: sheets and their protection, tables, names, and what cells hold. */
export function stateOf(excel: RecordingExcel): string {
  const sheets = excel.sheets.map(
    ({ id, name, cells, tables, isChart, isProtected }) =>
      [
        id,
        name,
        isChart,
        isProtected,
        tables.map(({ name: called, area: { row, column, rows, columns } }) => [
          called,
          [row, column, rows, columns],
        ]),
        [...cells].sort(([one], [other]) => one - other),
      ] as const,
  );
  return JSON.stringify([sheets, excel.definedNames]);
}

export type Outcome =
  | { readonly inserted: Inserted; readonly fault?: undefined; readonly said: '' }
  | { readonly inserted?: undefined; readonly fault: InsertionFault; readonly said: string };

/** What came of an insertion; anything but an InsertionFault is thrown on. */
export async function outcomeOf(insertion: Promise<Inserted>): Promise<Outcome> {
  try {
    return { inserted: await insertion, said: '' };
  } catch (fault) {
    if (!(fault instanceof InsertionFault)) throw fault;
    return { fault, said: fault.message };
  }
}

/** Everything of the looks, highlights among them in their order, charts, and the sheet in view. */
export function looksOf(excel: RecordingExcel): string {
  return JSON.stringify([
    excel.active.name,
    excel.sheets.map(({ name, looks, highlights, charts }) => [
      name,
      chartsOf(charts),
      [...looks].sort(),
      highlights.map(({ area: of, formula, format }) => [of, formula, [...format]]),
    ]),
  ]);
}
