/** The Wire list of a station, calculated: its lines and its runs as records of what the cells show. */
import { CellError, type Cell } from '../../../src/functions/cell';
import { calculate } from '../../../src/sheets/calculate/calculate';
import type { SheetPlan } from '../../../src/sheets/plan/plan';
import { scheduleNames } from '../../../src/sheets/station/naming';
import {
  BUY_KEYS,
  buyColumn,
  LINES,
  RUN_KEYS,
  runColumn,
  WIRE_ROW,
  wireListName,
  type BuyKey,
  type RunKey,
} from '../../../src/sheets/wire-list/layout';

export type Shown<Key extends string> = Readonly<Record<Key, string | number>>;

export interface WireRows {
  readonly lines: readonly Shown<BuyKey>[];
  readonly total: Shown<BuyKey>;
  readonly missing: string | number;
  /** By the place of the run in the list. */
  readonly runs: readonly Shown<RunKey>[];
}

function shown(cell: Cell): string | number {
  if (cell instanceof CellError) throw new Error(`${cell.code} on the Wire list`);
  return typeof cell === 'number' ? cell : String(cell ?? '');
}

/** The sheet as it stands in calculated plans; lines without a wire are left out. */
export function wireRows(plans: readonly SheetPlan[], runs: number): WireRows {
  const sheets = calculate(plans);
  const name = wireListName(scheduleNames());
  const at = (row: number, column: number) => shown(sheets.at(name, row, column));
  const record = <Key extends string>(
    keys: readonly Key[],
    column: (key: Key) => number,
    row: number,
  ) => Object.fromEntries(keys.map((key) => [key, at(row, column(key))])) as Shown<Key>;
  const places = (count: number) => [...Array(count).keys()];
  return {
    lines: places(LINES)
      .map((line) => record(BUY_KEYS, buyColumn, WIRE_ROW.firstLine + line))
      .filter(({ wire }) => wire !== ''),
    total: record(BUY_KEYS, buyColumn, WIRE_ROW.total),
    missing: at(WIRE_ROW.missing, 0),
    runs: places(runs).map((run) => record(RUN_KEYS, runColumn, WIRE_ROW.firstRun + run)),
  };
}
