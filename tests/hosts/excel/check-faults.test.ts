/**
 * "Check this Excel" with an Excel that refuses something on the way: it ends with its table, nothing of it stays that the
 * table does not tell, and the sheet that was in view is back. The stand-in computes nothing, so that no comparison of cells
 * holds here: what is tried is what it leaves behind.
 */
import { expect, it } from 'vitest';
import { checkSpreadsheet, type Checked } from '../../../src/taskpane/self-test';
import { patientHost, stateOf, workbook } from './stand-in';
import type { RecordingExcel } from './recording-excel';

const SLOW_MS = 900_000;
/** `npm run faults` breaks off in every request; the test command in a few. */
const EVERY_REQUEST = process.env['LOOM_EVERY_STEP'] === '1';
const FEW = 5;

const HURRIED = { pauseMs: 0, quietMs: 0, mostMs: 0 };
const host = patientHost();

interface Tried {
  readonly excel: RecordingExcel;
  readonly before: string;
  readonly checked: Checked;
}

async function checkedWith(refuse: (sync: number) => string | undefined): Promise<Tried> {
  const excel = workbook({
    Notes: { rowIndex: 0, columnIndex: 0, values: [['Loom', 1]] },
    Other: null,
  });
  Object.assign(globalThis, {
    Office: {
      context: {
        diagnostics: { platform: 'double', version: '1' },
        requirements: { isSetSupported: () => true },
      },
    },
  });
  excel.weighs = false;
  excel.active = excel.sheetNamed('Other')!;
  const before = stateOf(excel);
  excel.refuse = () => refuse(excel.syncs);
  // Before it has begun it may end with a sentence instead of a table.
  const checked = await checkSpreadsheet(host, () => undefined, HURRIED).catch(
    ({ message }: Error): Checked => {
      expect(message).toMatch(/^The (?:names|sheet).*\.$/);
      expect(stateOf(excel)).toBe(before);
      return { called: 'Excel', about: [message], findings: [], removals: [] };
    },
  );
  excel.refuse = () => undefined;
  return { excel, before, checked };
}

const held = ({ findings }: Checked, what: string) =>
  findings.find((finding) => finding.what === what)?.held;

function expectTrue({ excel, before, checked }: Tried): void {
  for (const { found } of checked.findings) expect(found).not.toMatch(/Excel's own words/);
  if (held(checked, 'Removing its traces') === true) expect(stateOf(excel)).toBe(before);
  if (stateOf(excel) !== before) {
    const left = checked.findings.filter((finding) => !finding.held);
    expect(left.map(({ found }) => found).join(' ')).toMatch(
      /still there|not known whether something was left|differ from before/,
    );
  }
  if (held(checked, 'Bringing back the sheet in view') === true) {
    expect(excel.active.name).toBe('Other');
  }
}

it(
  'leaves nothing that it does not tell, wherever it is interrupted',
  async () => {
    let syncs = 0;
    const whole = await checkedWith((sync) => {
      syncs = sync;
      return undefined;
    });
    expect(stateOf(whole.excel)).toBe(whole.before);
    for (const what of ['Removing its traces', 'Bringing back the sheet in view']) {
      expect(held(whole.checked, what), what).toBe(true);
    }
    expectTrue(whole);
    const stride = EVERY_REQUEST ? 1 : Math.ceil(syncs / FEW);
    const came: Record<string, number> = {};
    for (let at = 2; at < syncs; at += stride) {
      for (const length of [1, 12]) {
        const tried = await checkedWith((sync) =>
          sync >= at && sync < at + length ? 'GeneralException' : undefined,
        );
        expectTrue(tried);
        const word = stateOf(tried.excel) === tried.before ? 'as before' : 'left, told';
        came[`${length} refused: ${word}`] = (came[`${length} refused: ${word}`] ?? 0) + 1;
      }
    }
    console.log(`the check of Excel: ${syncs} requests`, JSON.stringify(came));
  },
  SLOW_MS,
);
