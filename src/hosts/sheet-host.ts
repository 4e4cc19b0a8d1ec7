/** The one thing the pane knows of a spreadsheet: it can be asked what is there, drawn into, and read back. */
import type { Area } from '../sheets/plan/area';
import type { ComputedGrid, GridValue, SheetGrid } from '../sheets/plan/grid';
import type { SheetEdits } from './edits';
import type { Formula, ReferenceStyle, SheetPlan } from '../sheets/plan/plan';

/** Names already used in the workbook, in lower case, since a spreadsheet does not tell case apart. */
export interface TakenNames {
  readonly sheets: ReadonlySet<string>;
  /** Tables and defined names share one name space in Excel. */
  readonly names: ReadonlySet<string>;
}

/** Whether the figures are those of the entries: "manual" where the spreadsheet calculates only when asked. */
export type Calculation = 'done' | 'under way' | 'manual';

/** The sheet in view, as far as the pane follows it. */
export interface SheetView {
  /** Null where no schedule is in view; the cells of other people's sheets are not read. */
  readonly grid: SheetGrid | null;
  readonly calculation: Calculation;
}

/** How an insertion is followed, and stopped, from outside. */
export interface Watch {
  /** Hears how much is done, from 0 to 1. */
  readonly progress?: (share: number) => void;
  /** Once it is aborted, the insertion stops at its next step and is taken back. */
  readonly signal?: AbortSignal;
}

/** An insertion whose content is complete. */
export interface Inserted {
  /**
   * Looks that the spreadsheet refused or did not confirm, each in words with its reason; empty where all are there. One
   * that is named may be there all the same, where an answer was lost.
   */
  readonly missing: readonly string[];
  /** Tries to make what is missing, and says what still is. */
  repair(): Promise<Inserted>;
  /** Whether a row added to its table gets its formulas by itself; absent where that was not found out. */
  readonly fillsRows?: boolean;
  /** Takes the insertion back: removes what it added, and nothing else. Rejects with an InsertionFault. */
  remove(): Promise<void>;
}

/** Why an insertion, or taking it back, did not come about. The message is a sentence for the user. */
export class InsertionFault extends Error {
  /** Whether it failed for names that the workbook has already; with others it may succeed. */
  readonly namesTaken: boolean;
  /** Tries again to remove what is left of it; absent where nothing is left. Rejects with an InsertionFault. */
  readonly removeRest: (() => Promise<void>) | undefined;

  constructor(
    message: string,
    about: { cause?: unknown; namesTaken?: boolean; removeRest?: () => Promise<void> } = {},
  ) {
    super(message, { cause: about.cause });
    this.namesTaken = about.namesTaken ?? false;
    this.removeRest = about.removeRest;
  }
}

/** Something that the spreadsheet must refuse, and what the refusal has to say. */
export interface Provocation {
  readonly what: string;
  /**
   * Resolves to the sentence of the refusal; to null where nothing was refused. Rejects where it could not come to that,
   * or could not put back what it changed.
   */
  readonly provoke: (names: ProvokedNames) => Promise<string | null>;
  readonly says: RegExp;
}

/** What a provocation may use: a sheet of the check's own. */
export interface ProvokedNames {
  readonly ownSheet: string;
}

/** What a check of the spreadsheet needs beyond what the pane does. It is used on sheets of the check's own alone. */
export interface HostProbe {
  /** What is checked, such as "Excel". */
  readonly called: string;
  /** Platform and version, as far as they can be told, one line each. */
  about(): Promise<readonly string[]>;
  /** Remembers the sheet in view; what it resolves to brings it back, and tells which is in view then. */
  keepView(): Promise<() => Promise<{ readonly isBack: boolean; readonly inView: string }>>;
  /** The used part of a sheet; null where it is empty. */
  read(sheetName: string): Promise<SheetGrid | null>;
  write(sheetName: string, area: Area, content: GridValue | Formula): Promise<void>;
  /** Adds a row to a table at its end; absent where there are no real tables. Resolves to the table's area. */
  readonly addTableRow?: (sheetName: string, tableName: string) => Promise<Area>;
  readonly provocations: readonly Provocation[];
}

/** A raster picture over cells, with words for whoever cannot see it. */
export interface Picture {
  /** By which it is known when it is put anew. */
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly pngBase64: string;
  readonly widthPt: number;
  readonly heightPt: number;
}

export interface SheetPictures {
  /**
   * Puts the picture at the place of the plan's, instead of one of the same name, and sets heights and page up for it.
   */
  put(plan: SheetPlan, picture: Picture): Promise<void>;
}

export interface SheetHost {
  /** Changes in sheets that stand already. */
  readonly edits: SheetEdits;
  /** How this host wants the formulas of a table written. */
  readonly references: ReferenceStyle;
  /** Every name that a new sheet, table or defined name must not take. */
  taken(): Promise<TakenNames>;
  /**
   * Adds the sheets in order and brings the first into view. The content is all or nothing: where a part fails, what was
   * added is removed and the promise is rejected with an InsertionFault. Looks may be missing in part.
   * Insertions wait for one another.
   */
  insert(plans: readonly SheetPlan[], watch?: Watch): Promise<Inserted>;
  /** The sheet in view, or null where it is empty. */
  activeGrid(): Promise<SheetGrid | null>;
  /** The schedule in view, at little cost: after a change only what it touched is read. */
  view(): Promise<SheetView>;
  /** Calculates what waits to be calculated. */
  calculate(): Promise<void>;
  /** Every sheet of the workbook, in order. */
  allGrids(): Promise<readonly ComputedGrid[]>;
  /** Whether it draws the charts of plans. */
  readonly hasCharts?: true;
  /** Pictures over cells; absent where the spreadsheet holds none. */
  readonly pictures?: SheetPictures;
  /** Opens an .xlsx file as a new workbook beside this one; absent where the platform cannot. */
  readonly openWorkbook?: ((file: Uint8Array) => Promise<void>) | undefined;
  /** Brings a sheet into view and selects cells in it. */
  select(sheetName: string, area: Area): Promise<void>;
  /** Gives the keyboard to the cells; absent where a pane cannot. */
  takeKeys?(): void;
  /** Calls back when what `view` gives may have changed; returns the way to stop. */
  onChange(listener: () => void): () => void;
  /** For checking the spreadsheet itself. */
  readonly probe: HostProbe;
}
