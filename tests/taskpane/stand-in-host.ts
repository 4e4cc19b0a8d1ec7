/** A spreadsheet in memory for the pane's tests: it keeps what it is given and computes nothing. */
import type {
  Calculation,
  HostProbe,
  Inserted,
  SheetHost,
  SheetView,
  TakenNames,
} from '../../src/hosts/sheet-host';
import type { RowFill, Selected, SheetEdits, TypedCell } from '../../src/hosts/edits';
import type { ComputedGrid, GridValue, SheetGrid } from '../../src/sheets/plan/grid';
import type { Area } from '../../src/sheets/plan/area';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { SCHEDULE_COLUMNS } from '../../src/sheets/schedule/columns';
import { SHOWN_KEYS } from '../../src/sheets/station/schedule-keys';
import type { ReadRow } from '../../src/sheets/schedule/reading';

export class StandInHost implements SheetHost {
  readonly references = 'cells';
  readonly plans: SheetPlan[] = [];
  readonly selected: { readonly sheetName: string; readonly area: Area }[] = [];
  grid: SheetGrid | null = null;
  /** What the next calls are rejected with. */
  fault: Error | undefined;
  /** What the next insertions are rejected with, one each. */
  readonly insertionFaults: Error[] = [];
  /** What insertions lack in looks. */
  missing: readonly string[] = [];
  calculation: Calculation = 'done';
  /** What was typed and filled, in order. */
  readonly typed: { readonly sheetName: string; readonly cells: readonly TypedCell[] }[] = [];
  readonly filled: RowFill[] = [];
  readonly hidden = new Set<number>();
  selectedCell: Selected | null = null;
  readonly edits: SheetEdits = {
    type: (sheetName, cells) => {
      this.typed.push({ sheetName, cells });
      return this.answer(undefined);
    },
    fillRows: (_, fills) => {
      this.filled.push(...fills);
      return this.answer(undefined);
    },
    rearrange: (changes) => {
      for (const { sheetName, cells, fills } of changes) {
        this.typed.push({ sheetName, cells });
        this.filled.push(...fills);
      }
      return this.answer(undefined);
    },
    hiddenColumns: () => this.answer([...this.hidden]),
    showColumns: (_, columns, isShown) => {
      for (const column of columns) {
        if (isShown) this.hidden.delete(column);
        else this.hidden.add(column);
      }
      return this.answer(undefined);
    },
    selected: () => this.answer(this.selectedCell),
    onSelection: () => () => undefined,
  };
  readonly probe: HostProbe = {
    called: 'the stand-in',
    about: () => Promise.resolve([]),
    keepView: () => Promise.resolve(() => Promise.resolve({ isBack: true, inView: 'Hill runs' })),
    read: () => Promise.resolve(null),
    write: () => Promise.resolve(),
    provocations: [],
  };

  taken(): Promise<TakenNames> {
    return this.answer({
      sheets: new Set(this.plans.map(({ name }) => name.toLowerCase())),
      names: new Set(
        this.plans.flatMap(({ names, table }) =>
          [...names, ...(table === undefined ? [] : [table])].map(({ name }) => name.toLowerCase()),
        ),
      ),
    });
  }

  async insert(plans: readonly SheetPlan[]): Promise<Inserted> {
    const fault = this.insertionFaults.shift();
    if (fault !== undefined) throw fault;
    await this.answer(undefined);
    this.plans.push(...plans);
    return this.inserted(plans, this.missing);
  }

  private inserted(plans: readonly SheetPlan[], missing: readonly string[]): Inserted {
    return {
      missing,
      repair: () => Promise.resolve(this.inserted(plans, [])),
      remove: () => {
        for (const plan of plans) this.plans.splice(this.plans.indexOf(plan), 1);
        return Promise.resolve();
      },
    };
  }

  view(): Promise<SheetView> {
    return this.answer({ grid: this.grid, calculation: this.calculation });
  }

  calculate(): Promise<void> {
    return this.answer(undefined);
  }

  activeGrid(): Promise<SheetGrid | null> {
    return this.answer(this.grid);
  }

  /** Every cell of the one sheet counts as typed. */
  allGrids(): Promise<readonly ComputedGrid[]> {
    return this.answer(this.grid === null ? [] : [{ ...this.grid, computed: [] }]);
  }

  async select(sheetName: string, area: Area): Promise<void> {
    await this.answer(undefined);
    this.selected.push({ sheetName, area });
  }

  onChange(): () => void {
    return () => undefined;
  }

  private answer<T>(value: T): Promise<T> {
    return this.fault === undefined ? Promise.resolve(value) : Promise.reject(this.fault);
  }
}

/** Two rows above the headings and a column left of them, since a schedule is found by its headings. */
const ABOVE: readonly (readonly GridValue[])[] = [['A schedule'], []];

/** What a schedule shows, and the level beside it. */
const KEYS = [...SHOWN_KEYS, 'level'] as const;

/** A schedule's sheet with the values of each run; the first run stands in row 4. */
export function scheduleGrid(...runs: readonly Partial<ReadRow['values']>[]): SheetGrid {
  return {
    sheetName: 'Hill runs',
    values: [
      ...ABOVE,
      [null, ...KEYS.map((key) => SCHEDULE_COLUMNS[key].heading)],
      ...runs.map((run) => [null, ...KEYS.map((key) => run[key] ?? null)]),
    ],
  };
}
