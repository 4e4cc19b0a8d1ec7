/**
 * Keeps a workbook as the present version's workbench keeps it in the browser's own database, under that version: run it with
 * tsx, after `npm run build`, once for each version that goes out, before the version number is raised. A file that is there is
 * left as it is: it was kept by its version. The workbook is that of `tests/lists/written`, taken in beside the demonstration.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { gzipSync } from 'node:zlib';
import { projectFolder } from '../../../src/build/build-folders';
import { withBuiltPages } from '../../story/with-built-pages';
import { readKeptText } from './database';

async function main(): Promise<void> {
  const description = readFileSync(path.join(projectFolder, 'package.json'), 'utf8');
  const { version } = JSON.parse(description) as { version: string };
  const file = path.join(import.meta.dirname, `${version}.json.gz`);
  if (existsSync(file)) throw new Error(`${version} has kept its workbook already.`);
  await withBuiltPages(async (browser, origin) => {
    const page = await browser.newPage({ viewport: { width: 1400, height: 800 } });
    page.setDefaultTimeout(120_000);
    await page.goto(`${origin}/workbench.html`);
    await page.waitForFunction(() => document.documentElement.dataset['ready'] === 'true');
    const list = path.join(projectFolder, 'tests/lists/written', `${version}.xlsx`);
    await page.getByLabel('File with a list of runs').setInputFiles(list);
    await page.getByRole('button', { name: 'Insert as a new schedule' }).click();
    await page.getByText('Inserted “Run schedule 2”').waitFor();
    await page.evaluate(() => window.loomWorkbench!.calculated());
    await page.waitForTimeout(3000);
    await page.getByText('Kept in this browser').waitFor();
    writeFileSync(file, gzipSync(await readKeptText(page), { level: 9 }));
  });
}

main().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
