/** What the check of Excel needs beyond the pane's own commands. Everything happens on sheets of the check's own. */
import { area, type Area } from '../../sheets/plan/area';
import type { Queue } from '../one-at-a-time';
import type { HostProbe, Provocation } from '../sheet-host';
import type { SheetGrid } from '../../sheets/plan/grid';
import { reasonOf, told } from './failure';
import { gridOf } from './read';
import { request } from './request';
import { rangeOf } from './range-of';

/** The API sets that may be there beyond the one the add-in asks for. */
const SETS = ['1.9', '1.11', '1.13', '1.14', '1.17', '1.20'];

/** A cell of the check's own sheet that nothing else uses. */
const SPARE = area(0, 200);

/** The sentence of what Excel refuses; null where it does not. */
async function refusal(
  batch: (context: Excel.RequestContext) => Promise<void> | void,
): Promise<string | null> {
  try {
    await request(async (context) => {
      await batch(context);
      await context.sync();
    });
    return null;
  } catch (cause) {
    return reasonOf(cause);
  }
}

/** Protects a sheet or lifts that; rejects with a sentence. */
function setProtected(sheetName: string, isProtected: boolean): Promise<void> {
  const what = isProtected ? 'protected' : 'unprotected';
  return told(
    {
      refused: `“${sheetName}” could not be ${what}`,
      unknown: `Excel did not say whether it ${what} “${sheetName}”`,
    },
    () =>
      request(async (context) => {
        const { protection } = context.workbook.worksheets.getItem(sheetName);
        if (isProtected) protection.protect();
        else protection.unprotect();
        await context.sync();
      }),
  );
}

const PROVOCATIONS: readonly Provocation[] = [
  {
    what: 'a sheet under a name that is taken',
    async provoke({ ownSheet }) {
      let added: string | undefined;
      const said = await refusal(async (context) => {
        const sheet = context.workbook.worksheets.add(ownSheet.toUpperCase());
        sheet.load('id');
        await context.sync();
        added = sheet.id;
      });
      // An Excel that takes the name after all has a sheet too many now.
      const id = added;
      if (id !== undefined) {
        await told(
          {
            refused: 'The sheet that Excel took under a taken name could not be removed',
            unknown:
              'Excel did not say whether it removed the sheet that it took under a taken name',
          },
          () =>
            request(async (context) => {
              context.workbook.worksheets.getItem(id).delete();
              await context.sync();
            }),
        );
      }
      return said;
    },
    says: /there already|refused a formula, a name/,
  },
  {
    what: 'a formula that cannot be read',
    provoke: ({ ownSheet }) =>
      refusal(({ workbook }) => {
        rangeOf(workbook.worksheets.getItem(ownSheet), SPARE).formulas = [['=SUM((']];
      }),
    says: /refused a formula/,
  },
  {
    what: 'a cell of a protected sheet',
    async provoke({ ownSheet }) {
      // In a request of its own: a refusal to protect must not be taken for the refusal that is wanted.
      await setProtected(ownSheet, true).catch(async (fault: unknown) => {
        await setProtected(ownSheet, false).catch(() => undefined);
        throw fault;
      });
      const said = await refusal(({ workbook }) => {
        rangeOf(workbook.worksheets.getItem(ownSheet), SPARE).values = [[1]];
      });
      await setProtected(ownSheet, false).catch(() => setProtected(ownSheet, false));
      return said;
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

function sheetInView(): Promise<{ readonly id: string; readonly name: string }> {
  return told('The sheet in view could not be told', () =>
    request(async (context) => {
      const sheet = context.workbook.worksheets.getActiveWorksheet();
      sheet.load('id,name');
      await context.sync();
      const { id, name } = sheet;
      return { id, name };
    }),
  );
}

async function keepView(): ReturnType<HostProbe['keepView']> {
  const before = await sheetInView();
  return async () => {
    await told(
      {
        refused: 'The sheet that was in view could not be brought back',
        unknown: 'Excel did not say whether it brought back the sheet that was in view',
      },
      () =>
        request(async (context) => {
          context.workbook.worksheets.getItem(before.id).activate();
          await context.sync();
        }),
    );
    const now = await sheetInView();
    return { isBack: now.id === before.id, inView: now.name };
  };
}

function readSheet(sheetName: string): Promise<SheetGrid | null> {
  return told(`“${sheetName}” could not be read`, () =>
    request(async (context) => {
      const sheet = context.workbook.worksheets.getItem(sheetName);
      const used = sheet.getUsedRangeOrNullObject(true);
      used.load('values,rowIndex,columnIndex');
      await context.sync();
      return used.isNullObject ? null : gridOf(sheetName, used);
    }),
  );
}

/** Adds the row first and asks for the place of the table after: where asking fails, the row is there all the same. */
async function addTableRow(sheetName: string, tableName: string): Promise<Area> {
  const tableIn = ({ workbook }: Excel.RequestContext) =>
    workbook.worksheets.getItem(sheetName).tables.getItem(tableName);
  await told(
    {
      refused: `No row could be added to the table on “${sheetName}”`,
      unknown: `Excel did not say whether it added a row to the table on “${sheetName}”`,
    },
    () =>
      request(async (context) => {
        tableIn(context).rows.add();
        await context.sync();
      }),
  );
  return told(
    `A row was added to the table on “${sheetName}”, but its place could not be read`,
    () =>
      request(async (context) => {
        const whole = tableIn(context).getRange();
        whole.load('rowIndex,columnIndex,rowCount,columnCount');
        await context.sync();
        const { rowIndex, columnIndex, rowCount, columnCount } = whole;
        return area(rowIndex, columnIndex, rowCount, columnCount);
      }),
  );
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
        told(
          {
            refused: `Cells on “${sheetName}” could not be written`,
            unknown: `Excel did not say whether it wrote cells on “${sheetName}”`,
          },
          () =>
            request(async (context) => {
              const range = rangeOf(context.workbook.worksheets.getItem(sheetName), of);
              const written =
                typeof content === 'object' && content !== null ? content.formula : (content ?? '');
              range.formulas = Array.from({ length: of.rows }, () =>
                new Array<string | number | boolean>(of.columns).fill(written),
              );
              await context.sync();
            }),
        ),
      ),
    addTableRow: (sheetName, tableName) => writing(() => addTableRow(sheetName, tableName)),
    provocations: PROVOCATIONS.map((provocation) => ({
      ...provocation,
      provoke: (names) => writing(() => provocation.provoke(names)),
    })),
  };
}
