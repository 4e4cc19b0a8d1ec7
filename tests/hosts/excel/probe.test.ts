/** What the check of Excel asks of it, against the stand-in: each provocation is refused in the words it expects. */
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { area } from '../../../src/sheets/plan/area';
import type { RecordingExcel } from './recording-excel';
import { samplePlan } from './sample-plan';
import { patientHost, stateOf, workbook } from './stand-in';

const host = patientHost();
let excel: RecordingExcel;

beforeEach(async () => {
  Object.assign(globalThis, {
    Office: {
      context: {
        diagnostics: { platform: 'PC', version: '16.0.1' },
        requirements: { isSetSupported: (_: string, version: string) => version === '1.9' },
      },
    },
  });
  excel = workbook();
  await host.insert([samplePlan()]);
});

afterEach(() => {
  Reflect.deleteProperty(globalThis, 'Office');
});

it.each(host.probe.provocations.map((provocation) => [provocation.what, provocation] as const))(
  '%s is refused, says why, and leaves nothing',
  async (_, { provoke, says }) => {
    const before = stateOf(excel);
    expect(await provoke({ ownSheet: 'Runs' })).toMatch(says);
    expect(stateOf(excel)).toBe(before);
    expect(excel.sheetNamed('Runs')!.isProtected).toBe(false);
  },
);

describe('the sheets of the check', () => {
  it('are read by name', async () => {
    expect((await host.probe.read('Runs'))?.values[2]?.[0]).toBe('Run');
    expect(await host.probe.read('Notes')).toBeNull();
  });

  it('are written cell by cell, blank and formula too', async () => {
    const write = (content: Parameters<typeof host.probe.write>[2]) =>
      host.probe.write('Runs', area(9, 1), content);
    const cell = () => excel.sheetNamed('Runs')!.at(9, 1);
    await write(7);
    expect(cell()?.value).toBe(7);
    await write({ formula: '=1+1' });
    expect(cell()?.formula).toBe('=1+1');
    await write(null);
    expect(cell()).toBeUndefined();
  });

  it('are given a table row', async () => {
    expect(await host.probe.addTableRow!('Runs', 'RunsTable')).toEqual(area(2, 0, 5, 4));
  });

  it('say which Excel it is', async () => {
    expect(await host.probe.about()).toEqual([
      'Platform: PC, version 16.0.1',
      expect.stringMatching(/^ExcelApi: 1\.9 of the sets asked for/),
    ]);
  });
});
