/** What the check of Excel needs beyond the pane's own commands. Everything happens on sheets of the check's own. */
import { area, type Area } from '../../sheets/plan/area';
import type { Queue } from '../one-at-a-time';
import type { HostProbe, Provocation } from '../sheet-host';
import type { SheetGrid } from '../../sheets/plan/grid';
import { failure, reasonOf } from './failure';
import { gridOf } from './read';
import { request } from './request';
import { rangeOf } from './range-of';

/** The API sets that may be there beyond the one the add-in asks for. */
const SETS = ['1.9', '1.11', '1.13', '1.14', '1.17', '1.20'];

/** The sentence of what Excel refuses; null where it does not. */
async function refusal(batch: (context: Excel.RequestContext) => void): Promise<string | null> {
  try {
    await request(async (context) => {
      batch(context);
      await context.sync();
    });
    return null;
  } catch (cause) {
    return reasonOf(cause);
  }
}

const PROVOCATIONS: readonly Provocation[] = [
  {
    what: 'a sheet under a name that is taken',
    provoke: ({ ownSheet }) =>
      refusal(({ workbook }) => {
        workbook.worksheets.add(ownSheet.toUpperCase());
      }),
    says: /there already|refused a formula, a name/,
  },
  {
    what: 'a formula that cannot be read',
    provoke: ({ ownSheet }) =>
      refusal(({ workbook }) => {
        rangeOf(workbook.worksheets.getItem(ownSheet), area(0, 200)).formulas = [['=SUM((']];
      }),
    says: /refused a formula/,
  },
  {
    what: 'a sheet that is not there',
    provoke: ({ freeSheet }) =>
      refusal(({ workbook }) => {
        workbook.worksheets.getItem(freeSheet).activate();
      }),
    says: /no longer there/,
  },
  {
    what: 'a cell of a protected sheet',
    provoke: async ({ ownSheet }) => {
      try {
        return await refusal(({ workbook }) => {
          const sheet = workbook.worksheets.getItem(ownSheet);
          sheet.protection.protect();
          rangeOf(sheet, area(0, 200)).values = [[1]];
        });
      } finally {
        await refusal(({ workbook }) => {
          workbook.worksheets.getItem(ownSheet).protection.unprotect();
        });
      }
    },
    says: /protected/,
  },
];

function versionLines(): readonly string[] {
  const { diagnostics, requirements } = Office.context;
  const sets = SETS.filter((version) => requirements.isSetSupported('ExcelApi', version));
  return [
    `Platform: ${String(diagnostics.platform)}, version ${diagnostics.version}`,
    `ExcelApi: ${sets.at(-1) ?? 'under 1.9'} of the sets asked for (${SETS.join(', ')})`,
  ];
}

async function keepView(): Promise<() => Promise<void>> {
  const id = await told('The sheet in view could not be told', async (context) => {
    const sheet = context.workbook.worksheets.getActiveWorksheet();
    sheet.load('id');
    await context.sync();
    return sheet.id;
  });
  return () =>
    told('The sheet that was in view could not be brought back', async (context) => {
      context.workbook.worksheets.getItem(id).activate();
      await context.sync();
    });
}

/** A request that is refused with a sentence. */
async function told<T>(
  what: string,
  batch: (context: Excel.RequestContext) => Promise<T>,
): Promise<T> {
  try {
    return await request(batch);
  } catch (error) {
    throw failure(what, error);
  }
}

function readSheet(sheetName: string): Promise<SheetGrid | null> {
  return told(`“${sheetName}” could not be read`, async (context) => {
    const sheet = context.workbook.worksheets.getItem(sheetName);
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load('values,rowIndex,columnIndex');
    await context.sync();
    return used.isNullObject ? null : gridOf(sheetName, used);
  });
}

function addTableRow(sheetName: string, tableName: string): Promise<Area> {
  return told(`No row could be added to the table on “${sheetName}”`, async (context) => {
    const table = context.workbook.worksheets.getItem(sheetName).tables.getItem(tableName);
    table.rows.add();
    const whole = table.getRange();
    whole.load('rowIndex,columnIndex,rowCount,columnCount');
    await context.sync();
    const { rowIndex, columnIndex, rowCount, columnCount } = whole;
    return area(rowIndex, columnIndex, rowCount, columnCount);
  });
}

/** The probe of a host whose writing actions wait for one another. */
export function excelProbe(writing: Queue): HostProbe {
  return {
    called: 'Excel',
    about: () => Promise.resolve(versionLines()),
    keepView,
    read: readSheet,
    write: (sheetName, of, content) =>
      writing(() =>
        told(`Cells on “${sheetName}” could not be written`, async (context) => {
          const range = rangeOf(context.workbook.worksheets.getItem(sheetName), of);
          const written =
            typeof content === 'object' && content !== null ? content.formula : (content ?? '');
          range.formulas = Array.from({ length: of.rows }, () =>
            new Array<string | number | boolean>(of.columns).fill(written),
          );
          await context.sync();
        }),
      ),
    addTableRow: (sheetName, tableName) => writing(() => addTableRow(sheetName, tableName)),
    provocations: PROVOCATIONS.map((provocation) => ({
      ...provocation,
      provoke: (names) => writing(() => provocation.provoke(names)),
    })),
  };
}
