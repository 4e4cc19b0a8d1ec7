/** LibreOffice without a window, as a judge of written workbooks: it calculates them anew and prints them. */
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runDebianTool, type DebianTool } from '../published/debian-tool';

export const SOFFICE: DebianTool = {
  command: 'soffice',
  debianPackage: 'libreoffice-calc',
  timeoutMs: 600_000,
};

/** Calculates every workbook anew on loading, whatever values came along, and asks nobody. */
const SETTINGS = `<?xml version="1.0" encoding="UTF-8"?>
<oor:items xmlns:oor="http://openoffice.org/2001/registry" xmlns:xs="http://www.w3.org/2001/XMLSchema" xmlns:xsi="http://www.w3.org/2001/XMLSchema-instance">
<item oor:path="/org.openoffice.Office.Calc/Formula/Load"><prop oor:name="OOXMLRecalcMode" oor:op="fuse"><value>0</value></prop></item>
</oor:items>`;

export type Files = Readonly<Record<string, Uint8Array>>;

/**
 * Converts workbooks, all in one run of the program with a profile of its own. Names come without an ending; the answer
 * has the same names. Throws where a file did not come out.
 */
function convert(workbooks: Files, ending: 'xlsx' | 'pdf' | 'xls' | 'ods' | 'csv'): Files {
  const room = mkdtempSync(join(tmpdir(), 'loomsheet-soffice-'));
  try {
    const profile = join(room, 'profile');
    const out = join(room, 'out');
    mkdirSync(join(profile, 'user'), { recursive: true });
    writeFileSync(join(profile, 'user', 'registrymodifications.xcu'), SETTINGS);
    const paths = Object.entries(workbooks).map(([name, bytes]) => {
      const path = join(room, `${name}.xlsx`);
      writeFileSync(path, bytes);
      return path;
    });
    const printed = runDebianTool(SOFFICE, [
      `-env:UserInstallation=${pathToFileURL(profile).href}`,
      '--headless',
      '--norestore',
      '--convert-to',
      ending,
      '--outdir',
      out,
      ...paths,
    ]);
    return Object.fromEntries(
      Object.keys(workbooks).map((name) => {
        const file = `${name}.${ending}`;
        if (!readdirSync(out).includes(file)) {
          throw new Error(`LibreOffice wrote no ${file}; it said:\n${printed}`);
        }
        return [name, new Uint8Array(readFileSync(join(out, file)))];
      }),
    );
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}

/** The workbooks after a full calculation. */
export function recalculated(workbooks: Files): Files {
  return convert(workbooks, 'xlsx');
}

/** The workbooks saved as another kind of file; a .csv holds the first sheet. */
export function savedAs(workbooks: Files, ending: 'xls' | 'ods' | 'csv'): Files {
  return convert(workbooks, ending);
}

/** The workbooks as LibreOffice prints them. */
export function printed(workbooks: Files): Files {
  return convert(workbooks, 'pdf');
}
