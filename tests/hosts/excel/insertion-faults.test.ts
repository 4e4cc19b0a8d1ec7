/** Faults of an insertion that are told by name: what cannot be removed, and looks that Excel refuses for good. */
import { describe, expect, it } from 'vitest';
import { newSchedule } from '../../../src/sheets/new-schedule';
import type { RecordingExcel, Step } from './recording-excel';
import { outcomeOf, patientHost, stateOf, workbook } from './stand-in';

const host = patientHost();
const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const plans = newSchedule('demo', 'table', FREE);

async function insertion(refuse: RecordingExcel['refuse']) {
  const excel = workbook({ Notes: { rowIndex: 0, columnIndex: 0, values: [['Loom', 1]] } });
  excel.weighs = false;
  const before = stateOf(excel);
  excel.refuse = refuse;
  const outcome = await outcomeOf(host.insert(plans));
  excel.refuse = () => undefined;
  return { excel, before, outcome };
}

describe('what cannot be removed', () => {
  it('keeps the other removals going where one sheet cannot be deleted, and says which', async () => {
    const isStuck = ({ path }: Step) => path === 'Supply!delete';
    const { excel, before, outcome } = await insertion((step) =>
      step.path.endsWith('copyFrom') || isStuck(step) ? 'AccessDenied' : undefined,
    );
    expect(excel.sheetNames).toEqual(['Notes', 'Supply']);
    expect(outcome.said).toMatch(/the sheet “Supply” is still there\./);
    expect(outcome.said).toMatch(/protected/);
    await outcome.fault!.removeRest!();
    expect(stateOf(excel)).toBe(before);
  });

  it('names defined names that stay', async () => {
    const { excel, before, outcome } = await insertion(({ path }) =>
      path.endsWith('copyFrom') || path.startsWith('workbook.names.getItemOrNullObject("LoomFeed_')
        ? 'Conflict'
        : undefined,
    );
    expect(excel.sheetNames).toEqual(['Notes']);
    expect(outcome.said).toMatch(/the defined names \d that begin with LoomFeed_ are still there/);
    await outcome.fault!.removeRest!();
    expect(stateOf(excel)).toBe(before);
  });
});

describe('looks that Excel refuses for good', () => {
  it('are named, and made by “Repair the sheet” once they can be', async () => {
    const { excel, outcome } = await insertion(({ path }) =>
      /^Supply!pageLayout|^Protection!.*conditionalFormats/.test(path)
        ? 'NotImplemented'
        : undefined,
    );
    const inserted = outcome.inserted!;
    expect(inserted.missing).toEqual([
      expect.stringMatching(/^the print set-up of “Supply” \(this version of Excel cannot/),
      expect.stringMatching(/^the highlights of “Protection” \(/),
    ]);
    excel.refuse = ({ path }) => (path.startsWith('Protection!') ? 'AccessDenied' : undefined);
    const again = await inserted.repair();
    expect(again.missing).toEqual([expect.stringMatching(/highlights of “Protection”.*protected/)]);
    excel.refuse = () => undefined;
    expect((await again.repair()).missing).toEqual([]);
    expect([...excel.sheetNamed('Supply')!.looks.keys()]).toContain('pageLayout.orientation');
  });

  it('say so where their sheet was deleted meanwhile', async () => {
    const { excel, outcome } = await insertion(({ path }) =>
      path.includes('pageLayout') ? 'NotImplemented' : undefined,
    );
    const supply = excel.sheetNamed('Supply')!;
    supply.isGone = true;
    excel.sheets.splice(excel.sheets.indexOf(supply), 1);
    expect((await outcome.inserted!.repair()).missing).toEqual([
      expect.stringMatching(
        /print set-up of “Supply” \(the sheet or the cells are no longer there/,
      ),
    ]);
  });
});
