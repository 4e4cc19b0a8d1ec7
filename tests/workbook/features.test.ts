import ExcelJS from 'exceljs';
import { beforeAll, describe, expect, it } from 'vitest';
import { writeWorkbook } from '../../src/hosts/xlsx/write';
import { area, areaAddress } from '../../src/sheets/plan/area';
import { DEMO } from '../../src/sheets/station/demo';
import { scheduleNames } from '../../src/sheets/station/naming';
import { recalculated } from './libreoffice';
import { sharedCopy } from '../../src/sheets/shared-copy';

/** A few rows more than are filled in, as every copy has. */
const PLANS = sharedCopy(DEMO, { rows: DEMO.runs.length + 10 }).plans;
const SCHEDULE = PLANS.find(({ name }) => name === scheduleNames().sheet)!;

async function opened(bytes: Uint8Array): Promise<ExcelJS.Workbook> {
  const workbook = new ExcelJS.Workbook();
  await workbook.xlsx.load(bytes as unknown as ExcelJS.Buffer);
  return workbook;
}

/** Rules by cell; the library reads a rule over an area as one for each of its cells. */
interface Ruled {
  readonly dataValidations: { readonly model: Readonly<Record<string, ExcelJS.DataValidation>> };
  readonly conditionalFormattings: readonly ExcelJS.ConditionalFormattingOptions[];
}

describe('what a written workbook is besides its cells', () => {
  let ours: ExcelJS.Workbook;
  /** The same after LibreOffice read and wrote it: what it understood. */
  let theirs: ExcelJS.Workbook;

  beforeAll(async () => {
    const bytes = await writeWorkbook(PLANS);
    ours = await opened(bytes);
    theirs = await opened(recalculated({ demo: bytes })['demo']!);
  }, 120_000);

  const both = () => [ours, theirs].map((workbook) => workbook.getWorksheet(SCHEDULE.name)!);

  it('is the same file for the same sheets', { timeout: 60_000 }, async () => {
    const first = await writeWorkbook(PLANS);
    // Times inside a zip go by two seconds.
    await new Promise((resolve) => setTimeout(resolve, 2100));
    expect(Buffer.compare(first, await writeWorkbook(PLANS))).toBe(0);
  });

  it('has its sheets in order', () => {
    for (const workbook of [ours, theirs]) {
      expect(workbook.worksheets.map(({ name, state }) => [name, state])).toEqual(
        PLANS.map(({ name, hidden }) => [name, hidden === true ? 'hidden' : 'visible']),
      );
    }
  });

  it('has every name where the plan puts it', () => {
    for (const plan of PLANS) {
      for (const { name, area: of } of plan.names) {
        const [range] = ours.definedNames.getRanges(name).ranges;
        expect(range?.replaceAll("'", ''), name).toBe(`${plan.name}!${areaAddress(of, 'both')}`);
        const [kept] = theirs.definedNames.getRanges(name).ranges;
        expect(kept?.replaceAll("'", ''), name).toBe(`${plan.name}!${areaAddress(of, 'both')}`);
      }
    }
  });

  it('offers what may be typed, with a prompt, and refuses the rest', () => {
    for (const sheet of both()) {
      const { model } = (sheet as unknown as Ruled).dataValidations;
      for (const entry of SCHEDULE.entries) {
        const { row, column, rows } = entry.area;
        for (const at of [row, row + rows - 1]) {
          const rule = model[areaAddress(area(at, column))];
          expect(rule, entry.promptTitle).toBeDefined();
          expect(rule?.promptTitle).toBe(entry.promptTitle);
          expect(rule?.prompt).toBe(entry.prompt);
          expect(rule?.showInputMessage ?? false).toBe(entry.workedOut !== true);
          if (entry.workedOut) {
            expect(rule?.type).toBe('custom');
            // LibreOffice writes it as a number.
            expect(['FALSE', '0']).toContain(rule?.formulae[0]);
          }
          if (entry.choices !== undefined) expect(rule?.type).toBe('list');
          else if (entry.number !== undefined) expect(rule?.type).toBe('decimal');
          const refuses =
            entry.workedOut === true ||
            (entry.choices !== undefined && entry.othersAllowed !== true) ||
            entry.number !== undefined;
          expect(rule?.showErrorMessage ?? false).toBe(refuses);
        }
      }
    }
  });

  it('highlights what the plan highlights, in its colours', () => {
    for (const sheet of both()) {
      const found = (sheet as unknown as Ruled).conditionalFormattings.flatMap(({ ref, rules }) =>
        rules.map(({ style }) => [ref, (style?.fill as ExcelJS.FillPattern).bgColor?.argb]),
      );
      const planned = SCHEDULE.highlights.map(({ area: of, style }) => [
        areaAddress(of),
        `FF${style.fill!.slice(1).toUpperCase()}`,
      ]);
      expect(found.sort()).toEqual(planned.sort());
    }
  });

  it('has a note at every heading', () => {
    for (const sheet of both()) {
      for (const { area: of, text } of SCHEDULE.notes) {
        const { note } = sheet.getCell(of.row + 1, of.column + 1);
        const said =
          typeof note === 'string' ? note : note.texts?.map((part) => part.text).join('');
        expect(said).toBe(text);
      }
    }
  });

  it('keeps head and first column in view', () => {
    // Without a window LibreOffice has no view that it could write back.
    expect(ours.getWorksheet(SCHEDULE.name)!.views[0]).toMatchObject({
      state: 'frozen',
      xSplit: SCHEDULE.frozenColumns,
      ySplit: SCHEDULE.frozenRows,
    });
  });

  it('has the widths and heights of the plan, the library’s own default width among them', () => {
    const sheet = ours.getWorksheet(SCHEDULE.name)!;
    expect(SCHEDULE.columnWidths).toContain(sheet.properties.defaultColWidth);
    for (const [index, width] of SCHEDULE.columnWidths.entries()) {
      expect(sheet.getColumn(index + 1).width ?? sheet.properties.defaultColWidth).toBe(width);
      // LibreOffice rounds to its own steps.
      const kept = theirs.getWorksheet(SCHEDULE.name)!.getColumn(index + 1).width ?? 9;
      expect(Math.abs(kept - width), `column ${index + 1}`).toBeLessThan(0.5);
    }
    for (const [row, heightPt] of Object.entries(SCHEDULE.rowHeightsPt ?? {})) {
      expect(sheet.getRow(Number(row) + 1).height).toBe(heightPt);
    }
  });

  it('prints across, one page wide, with its heading on each', () => {
    for (const sheet of both()) {
      const { print } = SCHEDULE;
      expect(sheet.pageSetup).toMatchObject({
        paperSize: 9,
        orientation: 'landscape',
        fitToWidth: 1,
        fitToHeight: 0,
        printArea: areaAddress(print.area),
        printTitlesRow: `${print.repeatRows!.first + 1}:${print.repeatRows!.last + 1}`,
      });
      expect(sheet.headerFooter.oddFooter).toContain(print.footer);
    }
  });
});
