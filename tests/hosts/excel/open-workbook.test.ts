/** Opening a written file beside the workbook, where the platform can. */
import { afterEach, expect, it } from 'vitest';
import { ExcelHost } from '../../../src/hosts/excel/excel-host';
import { OfficeError } from './recording-excel';

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Excel');
  Reflect.deleteProperty(globalThis, 'Office');
});

/** A platform that knows requirement sets up to `version`, and opens workbooks as told. */
function platform(version: number, createWorkbook: (base64: string) => Promise<void>): void {
  const isSetSupported = (set: string, wanted: string) =>
    set === 'ExcelApi' && Number(wanted) <= version;
  Object.assign(globalThis, {
    Office: { context: { requirements: { isSetSupported } } },
    Excel: { createWorkbook },
  });
}

const host = new ExcelHost(() => undefined);
/** Longer than the arguments that a call can take, and with every byte in it. */
const FILE = Uint8Array.from({ length: 300_000 }, (_, index) => index % 256);

it('hands the file over whole', async () => {
  const opened: string[] = [];
  platform(1.8, (base64) => {
    opened.push(base64);
    return Promise.resolve();
  });
  await host.openWorkbook?.(FILE);
  expect(opened).toHaveLength(1);
  expect(Buffer.from(opened[0]!, 'base64').equals(FILE)).toBe(true);
});

it('is not offered by an older platform', () => {
  platform(1.7, () => Promise.resolve());
  expect(host.openWorkbook).toBeUndefined();
});

it('says so where Excel refuses', async () => {
  platform(1.8, () => Promise.reject(new OfficeError('AccessDenied')));
  await expect(host.openWorkbook?.(FILE)).rejects.toThrow(
    /^The copy could not be opened as a new workbook/,
  );
});
