/** The spreadsheet is Excel itself: a SheetHost over Office.js. */
import type { Area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import { oneAtATime, type Queue } from '../one-at-a-time';
import type {
  HostProbe,
  Inserted,
  SheetHost,
  SheetPictures,
  SheetView,
  TakenNames,
  Watch,
} from '../sheet-host';
import type { ComputedGrid, SheetGrid } from '../../sheets/plan/grid';
import type { SheetEdits } from '../edits';
import type { Pause } from './clearing';
import { excelEdits } from './edits';
import { failure, told, type Failing } from './failure';
import { SheetInView } from './follow';
import { insertPlans } from './insertion';
import { excelPictures } from './pictures';
import { excelProbe } from './probe';
import { rangeOf } from './range-of';
import { readActive, readAll, readTaken } from './read';
import { request } from './request';

const CALCULATING: Failing = {
  refused: 'It could not be calculated',
  unknown: 'Excel did not say whether it calculated',
};
const OPENING: Failing = {
  refused: 'The copy could not be opened as a new workbook',
  unknown: 'Excel did not say whether it opened the copy as a new workbook',
};

const forMs: Pause = (ms) => new Promise((resolve) => setTimeout(resolve, ms));

export class ExcelHost implements SheetHost {
  readonly references = 'table';
  readonly hasCharts = true;
  /** All that writes waits here for its turn. */
  private readonly writing: Queue = oneAtATime();
  private readonly inView = new SheetInView();
  readonly edits: SheetEdits;
  readonly pictures: SheetPictures;

  /** `onFault` hears of what fails where no promise can carry it: listening for changes. */
  constructor(
    private readonly onFault: (fault: Error) => void,
    private readonly pause: Pause = forMs,
  ) {
    this.edits = excelEdits(this.writing, onFault);
    this.pictures = excelPictures(this.writing);
  }

  taken(): Promise<TakenNames> {
    return told('The names in the workbook could not be read', () => request(readTaken));
  }

  activeGrid(): Promise<SheetGrid | null> {
    return told('The sheet in view could not be read', () => request(readActive));
  }

  view(): Promise<SheetView> {
    return told('The sheet in view could not be read', () => this.inView.read());
  }

  allGrids(): Promise<readonly ComputedGrid[]> {
    return told('The sheets of the workbook could not be read', () => request(readAll));
  }

  insert(plans: readonly SheetPlan[], watch: Watch = {}): Promise<Inserted> {
    const { writing, pause } = this;
    return writing(() =>
      insertPlans(plans, watch, { taken: () => request(readTaken), writing, pause }),
    );
  }

  calculate(): Promise<void> {
    return this.writing(() =>
      told(CALCULATING, () =>
        request(async (context) => {
          context.application.calculate('Recalculate');
          await context.sync();
        }),
      ),
    );
  }

  get probe(): HostProbe {
    return excelProbe(this.writing);
  }

  /** From ExcelApi 1.8 on. */
  get openWorkbook(): ((file: Uint8Array) => Promise<void>) | undefined {
    return Office.context.requirements.isSetSupported('ExcelApi', '1.8') ? openBeside : undefined;
  }

  select(sheetName: string, area: Area): Promise<void> {
    const selecting: Failing = {
      refused: `The cells on “${sheetName}” could not be selected`,
      unknown: `Excel did not say whether it selected the cells on “${sheetName}”`,
    };
    return told(selecting, () =>
      request(async (context) => {
        const sheet = context.workbook.worksheets.getItem(sheetName);
        sheet.activate();
        rangeOf(sheet, area).select();
        await context.sync();
      }),
    );
  }

  onChange(listener: () => void): () => void {
    let stopped = false;
    const hear = (concerns: boolean) => {
      if (concerns && !stopped) listener();
      return Promise.resolve();
    };
    const { inView } = this;
    const listening = Excel.run(async (context) => {
      const { worksheets } = context.workbook;
      const handlers = [
        worksheets.onChanged.add((event) => hear(inView.changed(event))),
        worksheets.onCalculated.add((event) => hear(inView.calculated(event.worksheetId))),
        worksheets.onActivated.add(() => {
          inView.activated();
          return hear(true);
        }),
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
}

function openBeside(file: Uint8Array): Promise<void> {
  return told(OPENING, async () => {
    let characters = '';
    for (const byte of file) characters += String.fromCharCode(byte);
    await Excel.createWorkbook(btoa(characters));
  });
}
