/** Files made to fill the memory or to keep a program busy: each is answered with a sentence, after bounded work. */
import { zipSync, strToU8 } from 'fflate';
import { describe, expect, it } from 'vitest';
import { MOST } from '../../src/lists/bounds';
import { readRuns, UnreadableFile } from '../../src/lists/read-runs';
import { openArchive } from '../../src/lists/xlsx/zip';
import { archiveOf, AROUND, growingArchive, MAIN, sheetOf } from './archive';

const text = (address: string, words: string) =>
  `<c r="${address}" t="inlineStr"><is><t>${words}</t></is></c>`;
const LIST = `<row r="1">${text('A1', 'Amps')}${text('B1', 'Length (ft)')}</row><row r="2"><c r="A2"><v>12</v></c><c r="B2"><v>10</v></c></row>`;
const SHEET = `<worksheet xmlns="${MAIN}"><sheetData>`;

async function refused(bytes: Uint8Array, name = 'list.xlsx'): Promise<string> {
  const refusal: unknown = await readRuns(bytes, name).catch((error: unknown) => error);
  expect(refusal).toBeInstanceOf(UnreadableFile);
  const { message } = refusal as Error;
  expect(message.startsWith(`"${name}" `), message).toBe(true);
  return message;
}

const rows = (count: number, row: (line: number) => string) =>
  Array.from({ length: count }, (_, at) => row(at + 1)).join('');

describe('a workbook made to harm', () => {
  it('that unpacks to four gigabytes is left after its bound', async () => {
    const bomb = growingArchive(SHEET, `<c>${' '.repeat(1_000_000)}</c>`, 4_000);
    expect(bomb.length).toBeLessThan(10_000_000);
    expect(await refused(bomb)).toContain('it unpacks to more than 200 MB');
    const elements = growingArchive(SHEET, '<row/>'.repeat(100_000), 2_000);
    expect(await refused(elements)).toContain('more than 10,000,000 elements');
    let unpacked = 0;
    expect(() => {
      openArchive(bomb).unpack('xl/worksheets/sheet1.xml', (piece) => {
        unpacked += piece.length;
      });
    }).toThrow();
    expect(unpacked).toBeLessThanOrEqual(MOST.inflatedBytes);
  });

  it.each([
    [
      'entities that grow',
      archiveOf(
        `<!DOCTYPE worksheet [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;">]>${sheetOf(LIST)}`,
      ),
      'damaged, or no workbook',
    ],
    [
      'a cell far to the right',
      archiveOf(sheetOf(`${LIST}<row r="3"><c r="XFD3"><v>1</v></c></row>`)),
      'a column beyond the 2,000th',
    ],
    [
      'rows without end',
      archiveOf(sheetOf(rows(MOST.rowsOfSheet + 1, () => '<row><c><v>1</v></c></row>'))),
      'more than 50,000 rows',
    ],
    [
      'sheets without end',
      archiveOf(sheetOf(LIST), {
        'xl/workbook.xml': `<workbook xmlns="${MAIN}"><sheets>${rows(301, (at) => `<sheet name="S${at}"/>`)}</sheets></workbook>`,
      }),
      'more than 300 sheets',
    ],
    [
      'parts without end',
      zipSync(
        Object.fromEntries(
          Array.from({ length: MOST.parts + 1 }, (_, at) => [`p${at}`, strToU8('')]),
        ),
      ),
      'more than 10,000 parts',
    ],
    [
      'merged areas over whole sheets',
      archiveOf(
        sheetOf(
          rows(
            30_000,
            (line) => `<row><c r="A${line}"><v>1</v></c><c r="J${line}"><v>1</v></c></row>`,
          ),
          `<mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(5)}</mergeCells>`,
        ),
      ),
      'merged areas cover more than 100,000 cells',
    ],
    ['a sheet that is no XML', archiveOf('<worksheet><sheetData><row'), 'damaged, or no workbook'],
    ['no workbook in it', zipSync({ 'content.xml': strToU8('<office/>') }), 'holds no sheets'],
  ])('with %s is refused with a sentence', async (_, bytes, sentence) => {
    expect(await refused(bytes)).toContain(sentence);
  });

  it('is told from one whose bytes were changed on the way', async () => {
    const sound = archiveOf(sheetOf(LIST), {});
    await expect(readRuns(sound, 'list.xlsx')).resolves.toMatchObject({
      runs: [{ peak: 12, length: 10 }],
    });
    // Stored as it is, the sheet is still XML with other figures in it.
    const stored = zipSync(
      Object.fromEntries(
        Object.entries({ ...AROUND, 'xl/worksheets/sheet1.xml': sheetOf(LIST) }).map(
          ([name, content]) => [name, strToU8(content)],
        ),
      ),
      { level: 0 },
    );
    await expect(readRuns(stored, 'list.xlsx')).resolves.toBeDefined();
    const at = Buffer.from(stored).indexOf('<v>12</v>');
    stored[at + 3] = '9'.charCodeAt(0);
    expect(await refused(stored)).toContain('damaged');
  });

  it.each([
    ['widths of every column', sheetOf(LIST), '<cols><col min="1" max="16384" width="9"/></cols>'],
    [
      'rules and looks over whole sheets behind the cells',
      sheetOf(
        LIST,
        `<mergeCells><mergeCell ref="A9:XFD1048576"/></mergeCells><conditionalFormatting sqref="A1:XFD1048576"/><dataValidations><dataValidation sqref="A1:XFD1048576"/></dataValidations>`,
      ),
      '',
    ],
    ['rows that say no number', sheetOf(LIST.replaceAll(/ r="\w+"/g, '')), ''],
  ])('with %s is read all the same', async (_, sheet, before) => {
    const bytes = archiveOf(sheet.replace('<sheetData>', `${before}<sheetData>`), {
      'xl/workbook.xml': AROUND['xl/workbook.xml']!.replace(
        '</workbook>',
        `<definedNames>${rows(2000, (at) => `<definedName name="n${at}">Runs!$A$1:$XFD$1048576</definedName>`)}</definedNames></workbook>`,
      ),
    });
    const { runs } = await readRuns(bytes, 'list.xlsx');
    expect(runs).toEqual([{ peak: 12, length: 10 }]);
  });
});

describe('a text made to harm', () => {
  it.each([
    [
      'a million lines',
      'Amps,Length ft\n'.concat('1,2\n'.repeat(1_000_000)),
      'more than 100,000 lines',
    ],
    [
      'twenty thousand opened quotes',
      'Amps,Length ft\n'.concat('"1,2\n'.repeat(20_000).replaceAll('"1', '"a b"c,"1')),
      'quotes are opened and never closed',
    ],
  ])('with %s is refused with a sentence', async (_, content, sentence) => {
    expect(await refused(strToU8(content), 'list.csv')).toContain(sentence);
  });
});

describe('a workbook of another program', () => {
  it('is read in its own encoding, with its own way of naming parts', async () => {
    const parts = Object.entries({ ...AROUND, 'xl/worksheets/sheet1.xml': sheetOf(LIST) });
    const utf16 = (content: string) => Buffer.from(`\uFEFF${content}`, 'utf16le');
    const bytes = zipSync(
      Object.fromEntries(
        parts.map(([name, content]) => [
          name.replaceAll('/', '\\').replace('sheet1', 'SHEET1'),
          new Uint8Array(utf16(content)),
        ]),
      ),
    );
    const { runs } = await readRuns(bytes, 'list.xlsx');
    expect(runs).toEqual([{ peak: 12, length: 10 }]);
  });

  it('says which numbers are dates and shares by its formats', async () => {
    const styles = `<styleSheet xmlns="${MAIN}"><numFmts><numFmt numFmtId="164" formatCode="0.0\\ &quot;mm&quot;"/><numFmt numFmtId="165" formatCode="[h]:mm"/></numFmts><cellStyleXfs><xf numFmtId="14"/></cellStyleXfs><cellXfs><xf numFmtId="0"/><xf numFmtId="164"/><xf numFmtId="165"/><xf numFmtId="10"/></cellXfs></styleSheet>`;
    const headings = ['Amps', 'Length ft', 'Max drop'];
    const cells = (line: number, ...values: readonly string[]) =>
      `<row r="${line}">${values.map((value, at) => value.replace('<c', `<c r="${'ABC'[at]}${line}"`)).join('')}</row>`;
    const bytes = archiveOf(
      sheetOf(
        cells(1, ...headings.map((words) => `<c t="inlineStr"><is><t>${words}</t></is></c>`)) +
          cells(2, '<c s="1"><v>4</v></c>', '<c><v>7</v></c>', '<c s="3"><v>0.02</v></c>') +
          cells(
            3,
            '<c s="2"><v>0.2083</v></c>',
            '<c><v>7</v></c>',
            '<c><f>1/50</f><v>0.02</v></c>',
          ),
      ),
      { 'xl/styles.xml': styles },
    );
    const { runs, problems } = await readRuns(bytes, 'list.xlsx');
    expect(runs[0]).toMatchObject({ peak: 4, length: 7, target: 0.02 });
    expect(problems.map(({ line }) => line)).toContain(3);
  });
});
