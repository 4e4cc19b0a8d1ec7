/**
 * How long a schedule of many runs takes in a browser: to be inserted, to answer a changed length, and a changed house rule.
 * With our functions, with the formulas of a copy without the add-in in the same grid, and that copy in LibreOffice. The
 * built pages are measured: `npm run build` first. Times hang on the machine; the ratios say more.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout } from 'node:timers/promises';
import type { Page } from 'playwright-core';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { cellAddress } from '../../src/sheets/plan/area';
import { addInSheets } from '../../src/sheets/book';
import { ruleArea } from '../../src/sheets/rules/layout';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { roomyRows } from '../../src/sheets/schedule/sheet';
import { sharedCopy } from '../../src/sheets/shared-copy';
import type { ScheduleRun } from '../../src/sheets/station/run';
import { scheduleNames } from '../../src/sheets/station/naming';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import type { WorkbenchHandle } from '../../src/workbench/handle';
import { withBuiltPages } from '../story/with-built-pages';

declare global {
  interface Window {
    loomWorkbench?: WorkbenchHandle;
    longestTaskMs: number;
  }
}

const EDITS = 5;
/** The demonstration stands in the page already. */
const NAMES = scheduleNames(2);
const TAKEN = { sheets: new Set([scheduleNames().sheet.toLowerCase()]), names: new Set<string>() };
const LONGEST_MS = 300_000;
class TooLong extends Error {}

/** Trunks of five branches, one in seven of them in watts. */
function runsOf(count: number): readonly ScheduleRun[] {
  return Array.from({ length: count }, (_, place) => {
    const trunk = place - (place % 6);
    const length = `${4 + (place % 9)} ft`;
    return place === trunk
      ? { run: `Trunk ${place}`, length }
      : {
          run: `Load ${place}`,
          fedFrom: `Trunk ${trunk}`,
          peak: place % 7 === 0 ? '40 W' : `${1 + (place % 5)} A`,
          length,
        };
  });
}

const content = (count: number) => ({ title: 'Many runs', runs: runsOf(count) });

/** Seconds by what was done; what took longer than is waited for ends the measuring of a schedule. */
type Times = Partial<
  Record<'insert' | 'firstEdit' | 'edit' | 'rule' | 'frozenInsert' | 'frozenEdit', number>
>;

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)]!;

/** Seconds that something takes in the page, and the longest task in it. */
async function timed(page: Page, work: () => Promise<unknown>): Promise<readonly [number, number]> {
  await page.evaluate(() => {
    window.longestTaskMs = 0;
  });
  const began = performance.now();
  await Promise.race([
    work(),
    setTimeout(LONGEST_MS, undefined, { ref: false }).then(() => {
      throw new TooLong();
    }),
  ]);
  const seconds = (performance.now() - began) / 1000;
  // Long tasks are told of a moment later.
  await page.waitForTimeout(200);
  return [seconds, (await page.evaluate(() => window.longestTaskMs)) / 1000];
}

async function measured(
  page: Page,
  plans: readonly SheetPlan[],
  sheet: string,
  rulesSheet: string,
  count: number,
  times: Times,
): Promise<void> {
  const write = (on: string, address: string, value: string | number) =>
    page.evaluate(([name, cell, typed]) => window.loomWorkbench!.writeCell(name, cell, typed), [
      on,
      address,
      value,
    ] as const);
  [times.insert, times.frozenInsert] = await timed(page, () =>
    page.evaluate(async (given) => {
      await window.loomWorkbench!.host.insert(given);
      await window.loomWorkbench!.calculated();
    }, plans as SheetPlan[]),
  );
  const length = cellAddress(ROW.first + Math.floor(count / 2), columnOf('length'));
  [times.firstEdit] = await timed(page, () => write(sheet, length, '11 ft'));
  const edits: (readonly [number, number])[] = [];
  for (let edit = 0; edit < EDITS; edit += 1) {
    edits.push(await timed(page, () => write(sheet, length, `${12 + edit} ft`)));
  }
  times.edit = median(edits.map(([seconds]) => seconds));
  times.frozenEdit = Math.max(...edits.map(([, frozen]) => frozen));
  const target = cellAddress(ruleArea('target').row, ruleArea('target').column);
  [times.rule] = await timed(page, () => write(rulesSheet, target, 0.05));
  const last = cellAddress(ROW.first + count - 1, columnOf('verdict'));
  const verdict = await page.evaluate(
    ([name, cell]) => window.loomWorkbench!.readCell(name, cell),
    [sheet, last] as const,
  );
  if (typeof verdict !== 'string')
    throw new Error(`No verdict in the last row: ${String(verdict)}`);
}

/** Seconds that LibreOffice takes to open the copy, calculate all of it and write it, less its own start. */
async function libreOfficeS(count: number): Promise<number> {
  const { plans, values } = sharedCopy(content(count), { rows: count });
  const folder = mkdtempSync(join(tmpdir(), 'loomsheet-bench-'));
  try {
    const file = join(folder, 'copy.xlsx');
    writeFileSync(file, await writeWorkbook(plans, values));
    const run = (...args: string[]) => {
      const began = performance.now();
      execFileSync(
        'soffice',
        [`-env:UserInstallation=file://${folder}/profile`, '--headless', ...args],
        { stdio: 'ignore' },
      );
      return (performance.now() - began) / 1000;
    };
    run('--terminate_after_init');
    const start = run('--terminate_after_init');
    return run('--convert-to', 'ods', '--outdir', folder, file) - start;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

async function main(): Promise<void> {
  const counts = process.argv.slice(2).map(Number);
  const rows: Record<string, Record<string, string>> = {};
  for (const count of counts.length === 0 ? [17, 200, 2000] : counts) {
    await withBuiltPages(async (browser, origin) => {
      for (const form of ['our functions', 'native'] as const) {
        const page = await browser.newPage({ viewport: { width: 1400, height: 900 } });
        page.setDefaultTimeout(LONGEST_MS);
        await page.addInitScript(() => {
          window.longestTaskMs = 0;
          new PerformanceObserver((list) => {
            for (const { duration } of list.getEntries()) {
              window.longestTaskMs = Math.max(window.longestTaskMs, duration);
            }
          }).observe({ type: 'longtask' });
        });
        await page.goto(`${origin}/workbench.html`);
        await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
        const plans =
          form === 'native'
            ? sharedCopy(content(count), { rows: count, taken: TAKEN }).plans
            : addInSheets(
                { names: NAMES, references: 'cells', rows: roomyRows(count) },
                content(count),
              );
        const times: Times = {};
        try {
          await measured(page, plans, NAMES.sheet, NAMES.rulesSheet, count, times);
        } catch (fault) {
          if (!(fault instanceof TooLong)) throw fault;
          console.error(`What comes next took over ${LONGEST_MS / 1000} s`);
        }
        rows[`${count} runs, ${form}`] = Object.fromEntries(
          Object.entries(times).map(([key, seconds]) => [key, seconds.toFixed(2)]),
        );
        // Told at once: the next may take minutes.
        console.error(`${count} runs, ${form}:`, rows[`${count} runs, ${form}`]);
        await page.close();
      }
    });
    rows[`${count} runs, LibreOffice`] = {
      'opened, calculated, written': (await libreOfficeS(count)).toFixed(2),
    };
  }
  console.table(rows);
}

main().catch((fault: unknown) => {
  console.error(fault);
  process.exitCode = 1;
});
