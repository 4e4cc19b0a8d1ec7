/** The spreadsheet is Excel itself: a SheetHost over Office.js. */
import type { Area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import type { SheetHost, TakenNames } from '../sheet-host';
import type { ComputedGrid, SheetGrid } from '../../sheets/plan/grid';
import { drawPlans } from './draw';
import { failure, reasonOf } from './failure';
import { rangeOf } from './range-of';
import { readActive, readAll, readTaken } from './read';

export class ExcelHost implements SheetHost {
  readonly references = 'table';

  /** `onFault` hears of what fails where no promise can carry it: listening for changes. */
  constructor(private readonly onFault: (fault: Error) => void) {}

  taken(): Promise<TakenNames> {
    return this.read('The names in the workbook could not be read', readTaken);
  }

  activeGrid(): Promise<SheetGrid | null> {
    return this.read('The sheet in view could not be read', readActive);
  }

  allGrids(): Promise<readonly ComputedGrid[]> {
    return this.read('The sheets of the workbook could not be read', readAll);
  }

  async insert(plans: readonly SheetPlan[]): Promise<void> {
    const clash = firstClash(plans, await this.taken());
    // Checked beforehand, so that whatever bears a plan's name afterwards is ours to remove.
    if (clash !== undefined) {
      throw new Error(`Nothing was inserted: the workbook already has a "${clash}".`);
    }
    try {
      await Excel.run((context) => drawPlans(context, plans));
    } catch (error) {
      throw await this.clearedUp(plans, error);
    }
  }

  /** From ExcelApi 1.8 on. */
  get openWorkbook(): ((file: Uint8Array) => Promise<void>) | undefined {
    return Office.context.requirements.isSetSupported('ExcelApi', '1.8') ? openBeside : undefined;
  }

  async select(sheetName: string, area: Area): Promise<void> {
    try {
      await Excel.run(async (context) => {
        const sheet = context.workbook.worksheets.getItem(sheetName);
        sheet.activate();
        rangeOf(sheet, area).select();
        await context.sync();
      });
    } catch (error) {
      throw failure(`The cells on "${sheetName}" could not be selected`, error);
    }
  }

  onChange(listener: () => void): () => void {
    let stopped = false;
    const heard = () => {
      if (!stopped) listener();
      return Promise.resolve();
    };
    const listening = Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const handlers = [
        worksheets.onChanged.add(heard),
        worksheets.onCalculated.add(heard),
        worksheets.onActivated.add(heard),
      ];
      await context.sync();
      return { context, handlers };
    });
    listening.catch((error: unknown) => {
      this.onFault(failure('The pane does not follow changes in the workbook', error));
    });
    return () => {
      stopped = true;
      listening
        .then(({ context, handlers }) =>
          // A handler can only be removed in the context that it was added in.
          Excel.run(context, async (same) => {
            for (const handler of handlers) handler.remove();
            await same.sync();
          }),
        )
        .catch(() => {
          // Either it never listened, which onFault has heard, or Excel is gone; `stopped` keeps the listener quiet.
        });
    };
  }

  /** Reads wait until the user leaves a cell that is being edited, rather than fail. */
  private async read<T>(
    what: string,
    batch: (context: Excel.RequestContext) => Promise<T>,
  ): Promise<T> {
    try {
      return await Excel.run({ delayForCellEdit: true }, batch);
    } catch (error) {
      throw failure(what, error);
    }
  }

  /** Removes what a failed insertion left behind, and says in one sentence how that ended. */
  private async clearedUp(plans: readonly SheetPlan[], cause: unknown): Promise<Error> {
    const reason = reasonOf(cause);
    try {
      await Excel.run((context) => removeTraces(context, plans));
    } catch {
      const sheets = plans.map((plan) => `"${plan.name}"`).join(', ');
      return new Error(
        `The insertion failed half-way and could not be taken back: ${reason}. Delete the sheets ${sheets} by hand if they are there.`,
        { cause },
      );
    }
    return new Error(`Nothing was inserted, the workbook is as it was: ${reason}.`, { cause });
  }
}

async function openBeside(file: Uint8Array): Promise<void> {
  try {
    let characters = '';
    for (const byte of file) characters += String.fromCharCode(byte);
    await Excel.createWorkbook(btoa(characters));
  } catch (error) {
    throw failure('The copy could not be opened as a new workbook', error);
  }
}

/** The first name that the plans want and the workbook has. */
function firstClash(plans: readonly SheetPlan[], taken: TakenNames): string | undefined {
  for (const { name, names, table } of plans) {
    if (taken.sheets.has(name.toLowerCase())) return name;
    const wanted = [...names.map((named) => named.name), ...(table ? [table.name] : [])];
    const clash = wanted.find((candidate) => taken.names.has(candidate.toLowerCase()));
    if (clash !== undefined) return clash;
  }
  return undefined;
}

/** Deletes the plans' names and sheets where they exist; tables go with their sheets. */
async function removeTraces(
  context: Excel.RequestContext,
  plans: readonly SheetPlan[],
): Promise<void> {
  const { worksheets, names } = context.workbook;
  const traces = [
    ...plans.flatMap((plan) => plan.names).map(({ name }) => names.getItemOrNullObject(name)),
    ...plans.map((plan) => worksheets.getItemOrNullObject(plan.name)),
  ];
  await context.sync();
  for (const trace of traces) {
    if (!trace.isNullObject) trace.delete();
  }
  await context.sync();
}
