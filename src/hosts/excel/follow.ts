/**
 * The schedule in view, kept up to date at little cost: whether a sheet is one of ours is told by its tables' headings and
 * the workbook's names, never by its cells; after a change only the cells are read that it touched, and after a
 * calculation only the computed columns.
 */
import { area, type Area } from '../../sheets/plan/area';
import { SCHEDULE_COLUMNS } from '../../sheets/schedule/columns';
import { SHOWN_KEYS, type ShownKey } from '../../sheets/station/schedule-keys';
import { NAME_STEMS } from '../../sheets/station/naming';
import type { Calculation, SheetView } from '../sheet-host';
import type { GridValue } from '../../sheets/plan/grid';
import { gridOf } from './read';
import { request } from './request';
import { rangeOf } from './range-of';

/** A sheet that holds a schedule: in a table, whose place is known, or by its names alone. */
interface Known {
  readonly sheetId: string;
  readonly table:
    | {
        readonly area: Area;
        /** What is read: the rows right below it too. */
        readonly read: Area;
        readonly computed: readonly Area[];
      }
    | undefined;
  /** Cells from A1 on; those outside of what is read are null. */
  readonly values: GridValue[][];
}

/** What has happened since the last reading: everything may be new, or these parts of the known table. */
type Pending = 'all' | Area[];

export interface Changed {
  readonly worksheetId: string;
  readonly address: string;
  readonly changeType: string;
}

/** Where Excel does not take a row typed below a table into it, the row is to be found there. */
export const ROWS_BELOW = 10;
const ROWS_OF_EXCEL = 1_048_576;

const HEADINGS = new Map(
  SHOWN_KEYS.map((key) => [SCHEDULE_COLUMNS[key].heading.toLowerCase(), key] as const),
);
/** Of a schedule; old ones have their house rules on the same sheet and no other names there. */
const OWN_NAME = new RegExp(`^(?:${NAME_STEMS.schedule}|${NAME_STEMS.rule})\\d*_`, 'i');

/** Places of our headings in a table's header row; undefined where one is missing. */
function placesOf(headings: readonly unknown[]): ReadonlyMap<ShownKey, number> | undefined {
  const places = new Map<ShownKey, number>();
  for (const [place, heading] of headings.entries()) {
    const key = HEADINGS.get(String(heading).trim().toLowerCase());
    if (key !== undefined && !places.has(key)) places.set(key, place);
  }
  return places.size === SHOWN_KEYS.length ? places : undefined;
}

/** Columns side by side as one area each. */
function columnAreas(columns: readonly number[], rows: Pick<Area, 'row' | 'rows'>): Area[] {
  const areas: Area[] = [];
  for (const column of [...columns].sort((one, other) => one - other)) {
    const last = areas.at(-1);
    if (last !== undefined && last.column + last.columns === column) {
      areas[areas.length - 1] = { ...last, columns: last.columns + 1 };
    } else areas.push(area(rows.row, column, rows.rows, 1));
  }
  return areas;
}

/** A1 or A1:C4, on whatever sheet; undefined for anything else. */
export function areaOf(address: string): Area | undefined {
  const found = /^(?:.*!)?\$?([A-Z]{1,3})\$?(\d+)(?::\$?([A-Z]{1,3})\$?(\d+))?$/.exec(address);
  if (found === null) return undefined;
  const [, firstColumn = '', firstRow = '', lastColumn = firstColumn, lastRow = firstRow] = found;
  const place = (letters: string) =>
    [...letters].reduce((sum, letter) => sum * 26 + letter.charCodeAt(0) - 64, 0) - 1;
  const [row, column] = [Number(firstRow) - 1, place(firstColumn)];
  return area(row, column, Number(lastRow) - row, place(lastColumn) - column + 1);
}

function common(one: Area, other: Area): Area | undefined {
  const row = Math.max(one.row, other.row);
  const column = Math.max(one.column, other.column);
  const rows = Math.min(one.row + one.rows, other.row + other.rows) - row;
  const columns = Math.min(one.column + one.columns, other.column + other.columns) - column;
  return rows > 0 && columns > 0 ? area(row, column, rows, columns) : undefined;
}

function calculationOf({ calculationMode, calculationState }: Excel.Application): Calculation {
  if (calculationMode === 'Manual') return 'manual';
  return calculationState === 'Done' ? 'done' : 'under way';
}

export class SheetInView {
  private known: Known | undefined;
  private pending: Pending = 'all';
  private isReading = false;

  /** Another sheet came into view. */
  activated(): void {
    this.pending = 'all';
  }

  /** Cells were edited; false where that does not concern what is followed. */
  changed({ worksheetId, address, changeType }: Changed): boolean {
    if (!this.concerns(worksheetId)) return false;
    const edited = changeType === 'RangeEdited' ? areaOf(address) : undefined;
    const table = this.known?.table?.area;
    if (edited === undefined || table === undefined || this.pending === 'all') {
      this.pending = 'all';
      return true;
    }
    // Something typed right below or beside a table makes it grow, or should.
    const around = area(
      Math.max(0, table.row - 1),
      Math.max(0, table.column - 1),
      table.rows + 1 + ROWS_BELOW,
      table.columns + 2,
    );
    const touched = common(edited, table);
    const isInside =
      touched?.rows === edited.rows && touched.columns === edited.columns && edited.row > table.row;
    if (touched !== undefined && isInside) this.pending.push(touched);
    else if (common(edited, around) !== undefined) this.pending = 'all';
    else return false;
    return true;
  }

  /** A sheet was calculated; false where that does not concern what is followed. */
  calculated(worksheetId: string): boolean {
    if (!this.concerns(worksheetId)) return false;
    const computed = this.known?.table?.computed;
    if (computed === undefined) this.pending = 'all';
    else if (this.pending !== 'all') this.pending.push(...computed);
    return true;
  }

  /** While a sheet is read for the first time it is not known yet whose it is. */
  private concerns(worksheetId: string): boolean {
    return this.known === undefined ? this.isReading : this.known.sheetId === worksheetId;
  }

  /** The schedule in view. What happens meanwhile waits for the next reading. */
  async read(): Promise<SheetView> {
    const pending = this.pending;
    this.pending = [];
    this.isReading = true;
    try {
      const known = this.known;
      const again =
        pending === 'all' || known?.table === undefined ? undefined : await reread(known, pending);
      if (again !== undefined) return again;
      const { found, view } = await readAnew();
      this.known = found;
      return view;
    } catch (fault) {
      // What could not be read is still to be read.
      this.pending = 'all';
      throw fault;
    } finally {
      this.isReading = false;
    }
  }
}

/** The parts of a known sheet that have changed; undefined where another sheet is in view. */
function reread(known: Known, parts: readonly Area[]): Promise<SheetView | undefined> {
  return request(async (context) => {
    const { application, workbook } = context;
    application.load('calculationMode,calculationState');
    const sheet = workbook.worksheets.getActiveWorksheet();
    sheet.load('id,name');
    const followed = workbook.worksheets.getItemOrNullObject(known.sheetId);
    const read = distinct(parts).map((part) => {
      const range = rangeOf(followed, part);
      range.load('values');
      return { part, range };
    });
    await context.sync();
    if (sheet.id !== known.sheetId) return undefined;
    for (const { part, range } of read) put(known.values, part, range.values as GridValue[][]);
    const values = known.values.map((row) => [...row]);
    return { grid: { sheetName: sheet.name, values }, calculation: calculationOf(application) };
  });
}

function distinct(parts: readonly Area[]): readonly Area[] {
  return [...new Map(parts.map((part) => [JSON.stringify(part), part])).values()];
}

function put(values: GridValue[][], at: Area, cells: readonly (readonly GridValue[])[]): void {
  for (const [down, line] of cells.entries()) {
    const row = values[at.row + down];
    if (row === undefined) continue;
    for (const [across, cell] of line.entries())
      row[at.column + across] = cell === '' ? null : cell;
  }
}

interface Anew {
  readonly found: Known | undefined;
  readonly view: SheetView;
}

/** What is shown of a schedule's table, and which of it computes. */
function tableOf(
  places: ReadonlyMap<ShownKey, number>,
  whole: Excel.Range,
): NonNullable<Known['table']> {
  const columns = [...places.values()].map((place) => whole.columnIndex + place);
  const first = Math.min(...columns);
  const shown = area(whole.rowIndex, first, whole.rowCount, Math.max(...columns) - first + 1);
  const computed = [...places]
    .filter(([key]) => SCHEDULE_COLUMNS[key].kind !== 'typed')
    .map(([, place]) => whole.columnIndex + place);
  const body = { row: shown.row + 1, rows: shown.rows - 1 };
  const rows = Math.min(shown.rows + ROWS_BELOW, ROWS_OF_EXCEL - shown.row);
  return { area: shown, read: { ...shown, rows }, computed: columnAreas(computed, body) };
}

/** Finds out whose sheet is in view, and reads it where it is ours. */
function readAnew(): Promise<Anew> {
  return request(async (context) => {
    const { application, workbook } = context;
    application.load('calculationMode,calculationState');
    const sheet = workbook.worksheets.getActiveWorksheet();
    sheet.load('id,name');
    sheet.tables.load('items/showHeaders');
    workbook.names.load('items/name,items/formula');
    await context.sync();
    const calculation = calculationOf(application);
    const { id: sheetId, name: sheetName } = sheet;

    const headers = sheet.tables.items
      .filter(({ showHeaders }) => showHeaders)
      .map((table) => {
        const row = table.getHeaderRowRange();
        row.load('values');
        const whole = table.getRange();
        whole.load('rowIndex,columnIndex,rowCount,columnCount');
        return { row, whole };
      });
    if (headers.length > 0) await context.sync();
    const ours = headers.flatMap(({ row, whole }) => {
      const places = placesOf((row.values as unknown[][])[0] ?? []);
      return places === undefined ? [] : [{ places, whole }];
    })[0];
    if (ours !== undefined) {
      const table = tableOf(ours.places, ours.whole);
      const { read } = table;
      const range = rangeOf(sheet, read);
      range.load('values');
      await context.sync();
      const values = Array.from({ length: read.row + read.rows }, () =>
        new Array<GridValue>(read.column + read.columns).fill(null),
      );
      put(values, read, range.values as GridValue[][]);
      const grid = { sheetName, values: values.map((line) => [...line]) };
      return { found: { sheetId, table, values }, view: { grid, calculation } };
    }

    // A schedule without its table, as in a copy that was made to be shared, is known by its names.
    const isOurs = workbook.names.items.some(
      ({ name, formula }) =>
        OWN_NAME.test(name) &&
        [`=${sheetName}!`, `='${sheetName.replaceAll("'", "''")}'!`].some((start) =>
          String(formula).startsWith(start),
        ),
    );
    // Its id is kept so that what happens on it is known to be of no concern.
    if (!isOurs)
      return {
        found: { sheetId: '', table: undefined, values: [] },
        view: { grid: null, calculation },
      };
    const used = sheet.getUsedRangeOrNullObject(true);
    used.load('values,rowIndex,columnIndex');
    await context.sync();
    const grid = used.isNullObject ? null : gridOf(sheetName, used);
    return { found: { sheetId, table: undefined, values: [] }, view: { grid, calculation } };
  });
}
