/**
 * Writes the station beside this file as the present version writes it, under that version: run it with tsx once for each
 * version that goes out, before the version number is raised. A file that is there is left as it is: it was written by its
 * version.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { sharedFile } from '../../../src/hosts/xlsx/shared-file';
import type { StationContent } from '../../../src/sheets/station/content';

const text = (name: string) => readFileSync(new URL(name, import.meta.url), 'utf8');

async function main(): Promise<void> {
  const { version } = JSON.parse(text('../../../package.json')) as { version: string };
  const file = fileURLToPath(new URL(`${version}.xlsx`, import.meta.url));
  if (existsSync(file)) throw new Error(`${version} has written its workbook already.`);
  const station = text('station.json');
  writeFileSync(file, await sharedFile(JSON.parse(station) as StationContent));
  writeFileSync(file.replace('.xlsx', '.json'), station);
}

main().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
