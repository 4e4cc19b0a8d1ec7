/** Rows put in, taken out, written and sorted by LibreOffice itself, as a person does there. */
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { runDebianTool } from '../published/debian-tool';
import { SOFFICE } from './libreoffice';

/** What is done to rows of a sheet; `row` counts from 0. */
export interface RowChange {
  readonly sheet: string;
  readonly row: number;
  /** What is done to the row; or what is typed into its cells, by their columns from 0. */
  readonly change: 'insert' | 'remove' | ReadonlyMap<number, string> | Sorting;
}

/** So many rows from there on, with so many columns from the first on, are put in order by one of these. */
export interface Sorting {
  readonly rows: number;
  readonly columns: number;
  readonly by: number;
}

const LIBRARY = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:library PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "library.dtd">
<library:library xmlns:library="http://openoffice.org/2000/library" library:name="Standard" library:readonly="false" library:passwordprotected="false">
 <library:element library:name="Hands"/>
</library:library>`;

const LIBRARIES = `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE library:libraries PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "libraries.dtd">
<library:libraries xmlns:library="http://openoffice.org/2000/library" xmlns:xlink="http://www.w3.org/1999/xlink">
 <library:library library:name="Standard" xlink:href="$(USER)/basic/Standard/script.xlb/" xlink:type="simple" library:link="false"/>
</library:libraries>`;

function stepsOf({ row, change }: RowChange): readonly string[] {
  if (typeof change === 'string') return [`sheet.Rows.${change}ByIndex(${row}, 1)`];
  if ('by' in change) {
    const { rows, columns, by } = change;
    return [
      `fields(0).Field = ${by}`,
      'order(0).Value = fields()',
      `sheet.getCellRangeByPosition(0, ${row}, ${columns - 1}, ${row + rows - 1}).sort(order())`,
    ];
  }
  return [...change].map(
    ([column, typed]) => `sheet.getCellByPosition(${column}, ${row}).setFormula("${typed}")`,
  );
}

/** For each file: open it, change the row, calculate, save it beside. */
function macro(jobs: readonly (RowChange & { readonly from: string; readonly to: string })[]) {
  const lines = jobs.map((job) => {
    const { from, to, sheet } = job;
    return [
      `book = StarDesktop.loadComponentFromURL("${pathToFileURL(from).href}", "_blank", 0, hidden())`,
      `sheet = book.Sheets.getByName("${sheet}")`,
      ...stepsOf(job),
      'book.calculateAll()',
      `book.storeToURL("${pathToFileURL(to).href}", kind())`,
      'book.close(True)',
    ].join('\n');
  });
  return `<?xml version="1.0" encoding="UTF-8"?>
<!DOCTYPE script:module PUBLIC "-//OpenOffice.org//DTD OfficeDocument 1.0//EN" "module.dtd">
<script:module xmlns:script="http://openoffice.org/2000/script" script:name="Hands" script:language="StarBasic">
Sub Main
Dim hidden(0) As New com.sun.star.beans.PropertyValue
Dim kind(0) As New com.sun.star.beans.PropertyValue
hidden(0).Name = "Hidden"
hidden(0).Value = True
Dim fields(0) As New com.sun.star.table.TableSortField
fields(0).IsAscending = True
Dim order(0) As New com.sun.star.beans.PropertyValue
order(0).Name = "SortFields"
kind(0).Name = "FilterName"
kind(0).Value = "Calc MS Excel 2007 XML"
${lines.join('\n')}
StarDesktop.terminate()
End Sub
</script:module>`;
}

/** A workbook after each change by itself, calculated anew. Throws where a changed one did not come out. */
export function withRowsChanged(
  workbook: Uint8Array,
  changes: Readonly<Record<string, RowChange>>,
): Readonly<Record<string, Uint8Array>> {
  const room = mkdtempSync(join(tmpdir(), 'loomsheet-hands-'));
  try {
    const basic = join(room, 'profile', 'user', 'basic');
    const start = (...told: string[]) =>
      runDebianTool(SOFFICE, [
        `-env:UserInstallation=${pathToFileURL(join(room, 'profile')).href}`,
        '--headless',
        '--norestore',
        ...told,
      ]);
    // The first start fills a new profile, over whatever macros stand in it.
    start('--terminate_after_init');
    const from = join(room, 'workbook.xlsx');
    writeFileSync(from, workbook);
    const jobs = Object.entries(changes).map(([name, change]) => ({
      ...change,
      from,
      to: join(room, `${name}.xlsx`),
    }));
    writeFileSync(join(basic, 'script.xlc'), LIBRARIES);
    writeFileSync(join(basic, 'Standard', 'script.xlb'), LIBRARY);
    writeFileSync(join(basic, 'Standard', 'Hands.xba'), macro(jobs));
    start('macro:///Standard.Hands.Main');
    return Object.fromEntries(
      Object.keys(changes).map((name, index) => [
        name,
        new Uint8Array(readFileSync(jobs[index]!.to)),
      ]),
    );
  } finally {
    rmSync(room, { recursive: true, force: true });
  }
}
