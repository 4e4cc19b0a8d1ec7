/**
 * The formulas of our own sheets are calculated by our own evaluation, as they are when the sheets are new. The grid's
 * engine (0.25.1) needs eleven seconds for an edit in a schedule of 500 runs, a third of them to find out what hangs on
 * what; evaluating everything anew takes half a second. What people write on other sheets, and formulas in a language that
 * our evaluation does not know, stay the engine's, as do the rules of colours: it is told which cells have changed.
 */
import {
  IUniverInstanceService,
  ObjectMatrix,
  UniverInstanceType,
  type ICellData,
  type IRange,
  type IUnitRange,
  type Nullable,
  type Univer,
  type Workbook as GridWorkbook,
} from '@univerjs/core';
import {
  deserializeRangeWithSheet,
  FormulaExecutedStateType,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IDefinedNamesService,
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  LexerTreeBuilder,
  type IFormulaDataItem,
} from '@univerjs/engine-formula';
import { CellError, type Cell } from '../../functions/cell';
import { BeyondThis, Workbook, type Elsewhere, type Sheet } from '../../sheets/calculate/workbook';
import type { Area } from '../../sheets/plan/area';
import { valueObjectOf } from './cells';
import { OwnRules, type Rules, type Where } from './own-rules';
import type { Sentences } from './sentences';
import { gridValueOf } from './snapshot';
import {
  isPlanned,
  KnownFormulas,
  putStanding,
  takeChanges,
  type OwnCell,
  type PutIn,
  type Reading,
  type Spill,
  type StandingSheet,
} from './standing-sheets';
import { Turns } from './turns';

type Config = IFormulaCurrentConfigService;

/** What the engine is to calculate, which it keeps to itself. */
interface InnerConfig {
  _formulaData: ReturnType<Config['getFormulaData']>;
  _dirtyRanges: IUnitRange[];
  _excludedCell: ReturnType<Config['getExcludedRange']>;
  _forceCalculate: boolean;
}

/** The engine's calculation, with the part that it keeps to itself. */
interface InnerCalculation {
  _executeStep(): Promise<unknown>;
}

/** Cells between looks at the time. */
const CELLS_A_LOOK = 32;
/** Where our formulas and those of the engine lead to each other in more steps than this, the engine calculates all. */
const MOST_ROUNDS = 6;

const isSame = (one: Nullable<ICellData>, other: Nullable<ICellData>) =>
  one?.v === other?.v && one?.t === other?.t;

const PLAIN_ADDRESS = /^(?:'(?:[^']|'')+'|[^'!]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/;
const WHOLE_WORKBOOK = 'AllDefaultWorkbook';

/** A sheet that our evaluation reads. */
interface Opened {
  readonly sheetId: string;
  readonly putIn: PutIn;
}

type FormulasOfSheet = Record<number, Record<number, Nullable<IFormulaDataItem>>>;

/** All planned sheets as they stand, to be evaluated. */
interface Evaluation {
  readonly book: Workbook;
  readonly opened: ReadonlyMap<string, Opened>;
  /** The sheets and names that there were. */
  readonly index: string;
  readonly rules: Rules;
}

class Stopped extends Error {}

class OwnFormulas {
  private readonly config: Config;
  private readonly runtime: IFormulaRuntimeService;
  private readonly dependencies: IDependencyManagerService;
  private readonly defined: IDefinedNamesService;
  private readonly lexer: LexerTreeBuilder;
  private readonly instances: IUniverInstanceService;
  private readonly known = new KnownFormulas();
  private readonly rules: OwnRules;
  private readonly shifts = new Map<string, string>();
  /** Which cells of a planned sheet the engine knows the formulas of, by the sheet's id. */
  private readonly knownToEngine = new Map<string, string>();
  /** The last evaluation, to be gone on from. */
  private last: Evaluation | undefined = undefined;
  /** The ids of the sheets that the last evaluation read. */
  private read = new Set<string>();

  constructor(
    univer: Univer,
    private readonly sentences: Sentences,
  ) {
    const injector = univer.__getInjector();
    this.config = injector.get(IFormulaCurrentConfigService);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.dependencies = injector.get(IDependencyManagerService);
    this.defined = injector.get(IDefinedNamesService);
    this.lexer = injector.get(LexerTreeBuilder);
    this.instances = injector.get(IUniverInstanceService);
    this.rules = new OwnRules(univer, this.known, (formula, columns) =>
      this.shifted(formula, columns),
    );
    const calculation = injector.get(ICalculateFormulaService) as unknown as InnerCalculation;
    const step = calculation._executeStep.bind(calculation);
    calculation._executeStep = () => this.calculate(step);
  }

  private get inner(): InnerConfig {
    return this.config as unknown as InnerConfig;
  }

  private get gridWorkbook(): Nullable<GridWorkbook> {
    return this.instances.getCurrentUnitOfType<GridWorkbook>(UniverInstanceType.UNIVER_SHEET);
  }

  private isPlannedId(sheetId: string): boolean {
    const sheet = this.gridWorkbook?.getSheetBySheetId(sheetId);
    return sheet !== null && sheet !== undefined && isPlanned(sheet.getConfig());
  }

  /** Calculates our sheets, and has the engine calculate the rest by `step`. */
  private async calculate(step: () => Promise<unknown>): Promise<unknown> {
    const unitId = this.gridWorkbook?.getUnitId();
    const planned = (this.gridWorkbook?.getSheets() ?? []).filter((sheet) =>
      isPlanned(sheet.getConfig()),
    );
    if (unitId === undefined || planned.length === 0) return step();
    const { _formulaData: all, _dirtyRanges: dirty, _excludedCell: excluded } = this.inner;
    const names = planned.map((sheet) => sheet.getName());
    let isDone = false;
    let isExecuted = false;
    this.rules.hide(new Set(planned.map((sheet) => sheet.getSheetId())));
    for (let round = 0; round < MOST_ROUNDS && !isDone; round += 1) {
      let changed: IUnitRange[] = [];
      let evaluation: Evaluation | undefined;
      if (round > 0 || this.concerns(dirty)) {
        try {
          evaluation = await this.evaluated(unitId, names);
        } catch (fault) {
          if (!(fault instanceof Stopped)) throw fault;
          this.runtime.setFormulaExecuteStage(FormulaExecuteStageType.IDLE);
          this.runtime.markedAsStopFunctionsExecuted();
          return undefined;
        }
        changed = this.writeResults(unitId, evaluation);
        if (this.writeRules(unitId, evaluation, names)) isExecuted = true;
        this.leaveToEngine(unitId, all, evaluation);
      } else this.leaveToEngine(unitId, all, undefined);
      this.inner._dirtyRanges = round === 0 ? [...dirty, ...changed] : changed;
      this.inner._excludedCell = excluded;
      if (round > 0) this.inner._forceCalculate = false;
      const seen = evaluation === undefined ? undefined : this.cameOtherwise(unitId, evaluation);
      await step();
      if (this.runtime.isStopExecution()) {
        // What the rules came to has not reached the grid.
        evaluation?.rules.clear();
        return undefined;
      }
      const { functionsExecutedState } = this.runtime.getAllRuntimeData();
      isExecuted ||=
        changed.length > 0 || functionsExecutedState === FormulaExecutedStateType.SUCCESS;
      isDone = !seen?.();
    }
    if (!isDone) {
      for (const sheet of planned) this.knownToEngine.set(sheet.getSheetId(), 'all');
      this.rules.hide(new Set());
      Object.assign(this.inner, { _formulaData: all, _dirtyRanges: dirty, _forceCalculate: true });
      return step();
    }
    if (isExecuted) this.runtime.markedAsSuccessfullyExecuted();
    return true;
  }

  private writeRules(unitId: string, evaluation: Evaluation, names: readonly string[]): boolean {
    const written = names.map((name) => {
      const { sheetId } = evaluation.opened.get(name)!;
      return this.rules.write(unitId, sheetId, this.where(unitId, evaluation, name));
    });
    return written.includes(true);
  }

  /** Whether what has changed may be read by our sheets. */
  private concerns(dirty: readonly IUnitRange[]): boolean {
    const isAny = (map: object) => Object.keys(map).length > 0;
    const isWholesale =
      this.config.isForceCalculate() ||
      isAny(this.config.getDirtyNameMap()) ||
      isAny(this.config.getDirtyDefinedNameMap()) ||
      isAny(this.config.getClearDependencyTreeCache());
    if (isWholesale) {
      this.known.forget();
      this.last = undefined;
    }
    return (
      isWholesale ||
      isAny(this.config.getDirtyUnitOtherFormulaMap()) ||
      dirty.some(({ sheetId }) => this.read.has(sheetId) || this.isPlannedId(sheetId))
    );
  }

  /** Evaluates all planned sheets; formulas that ask for more than is known here are left to the engine. */
  private async evaluated(unitId: string, names: readonly string[]): Promise<Evaluation> {
    for (;;) {
      const last = this.last;
      this.last = undefined;
      const evaluation = last !== undefined && this.takeChanges(unitId, last) ? last : undefined;
      const asked = evaluation ?? this.open(unitId);
      try {
        await this.evaluate(unitId, asked, names);
      } catch (fault) {
        if (fault instanceof Stopped) this.last = asked;
        if (!(fault instanceof BeyondThis) || fault.formula === undefined) throw fault;
        this.known.leave(fault.formula.text);
        continue;
      }
      this.read = new Set([...asked.opened.values()].map(({ sheetId }) => sheetId));
      if (!asked.book.metCircle) this.last = asked;
      // What comes of a circle hangs on who asked first: as where all is new.
      if (asked.book.metCircle && evaluation !== undefined) continue;
      return asked;
    }
  }

  /** Takes into an earlier evaluation what stands in the grid now; false where it cannot be gone on from. */
  private takeChanges(unitId: string, { book, opened, index }: Evaluation): boolean {
    if (index !== this.index(unitId)) return false;
    book.revise();
    return [...opened].every(([name, { sheetId, putIn }]) => {
      const isThere = this.config.getSheetNameMap()[unitId]?.[name] === sheetId;
      const standing = this.standing(unitId, sheetId);
      if (!isThere || standing === undefined) return false;
      return takeChanges(book.sheet(name), standing, putIn, this.reading(unitId));
    });
  }

  private async evaluate(
    unitId: string,
    evaluation: Evaluation,
    names: readonly string[],
  ): Promise<void> {
    const { book, opened } = evaluation;
    const turns = new Turns();
    const goOn = async () => {
      if (!turns.isDue()) return;
      await turns.take();
      if (this.runtime.isStopExecution()) throw new Stopped();
    };
    for (const name of names) {
      book.sheet(name);
      const { sheetId, putIn } = opened.get(name)!;
      for (const [asked, { row, column }] of putIn.own.entries()) {
        book.at(name, row, column);
        if (asked % CELLS_A_LOOK === 0) await goOn();
      }
      const coloured = this.rules.cells(unitId, sheetId, this.where(unitId, evaluation, name));
      for (const [asked, { value }] of coloured.entries()) {
        value();
        if (asked % CELLS_A_LOOK === 0) await goOn();
      }
    }
  }

  /** Where the formulas of a sheet's rules are evaluated. */
  private where(unitId: string, { book, opened, rules }: Evaluation, name: string): Where {
    const { sheetId } = opened.get(name)!;
    const { rowCount = 0, columnCount = 0 } = this.data(unitId, sheetId) ?? {};
    return { book, sheet: book.sheet(name), rules, rowCount, columnCount };
  }

  private index(unitId: string): string {
    const names = Object.values(this.defined.getDefinedNameMap(unitId) ?? {});
    return JSON.stringify([
      this.config.getSheetNameMap()[unitId],
      names.map(({ name, formulaOrRefString }) => [name, formulaOrRefString]),
    ]);
  }

  private open(unitId: string): Evaluation {
    const opened = new Map<string, Opened>();
    const fill = (sheet: Sheet): boolean => {
      const sheetId = this.config.getSheetNameMap()[unitId]?.[sheet.name];
      if (sheetId === undefined || sheetId === null) return false;
      const standing = this.standing(unitId, sheetId);
      if (standing === undefined) return false;
      const putIn = putStanding(sheet, standing, this.reading(unitId));
      opened.set(sheet.name, { sheetId, putIn });
      return true;
    };
    const named: Elsewhere['named'] = (name) => this.named(unitId, name);
    return {
      book: new Workbook({ fill, named }, true),
      opened,
      index: this.index(unitId),
      rules: new Map(),
    };
  }

  private standing(unitId: string, sheetId: string): StandingSheet | undefined {
    const data = this.data(unitId, sheetId);
    return (
      data && {
        isPlanned: this.isPlannedId(sheetId),
        cells: data.cellData,
        came: (row, column) => this.came(unitId, sheetId)?.getValue(row, column),
        spills: this.spills(unitId, sheetId),
      }
    );
  }

  private reading(unitId: string): Reading {
    return {
      known: this.known,
      styles: this.config.getUnitStylesData()[unitId] ?? undefined,
      shifted: (formula, columns) => this.shifted(formula, columns),
    };
  }

  private data(unitId: string, sheetId: string) {
    return this.config.getUnitData()[unitId]?.[sheetId] ?? undefined;
  }

  /** What formulas of a sheet have come to in this calculation. */
  private came(unitId: string, sheetId: string) {
    return this.runtime.getUnitData()[unitId]?.[sheetId] ?? undefined;
  }

  /** The lists that formulas of a sheet spill, as they are by now. */
  private spills(unitId: string, sheetId: string): readonly Spill[] {
    const found = new Map<string, Spill>();
    const take = (
      ranges: Nullable<Record<number, Record<number, Nullable<IRange>>>>,
      cells: Nullable<ObjectMatrix<ICellData>>,
    ) => {
      new ObjectMatrix(ranges ?? {}).forValue((row, column, range) => {
        if (range) found.set(`${row} ${column}`, { range, cells: cells ?? undefined });
      });
    };
    const { config, runtime } = this;
    take(
      config.getArrayFormulaRange()[unitId]?.[sheetId],
      config.getArrayFormulaCellData()[unitId]?.[sheetId] as never,
    );
    take(
      runtime.getUnitArrayFormula()[unitId]?.[sheetId],
      runtime.getRuntimeArrayFormulaCellData()[unitId]?.[sheetId] as never,
    );
    return [...found.values()];
  }

  private named(
    unitId: string,
    name: string,
  ): (Area & { readonly sheet: string }) | null | undefined {
    const known = Object.values(this.defined.getDefinedNameMap(unitId) ?? {}).find(
      (of) => of.name.toLowerCase() === name,
    );
    if (known === undefined) return undefined;
    const { formulaOrRefString: address, localSheetId = WHOLE_WORKBOOK } = known;
    if (!PLAIN_ADDRESS.test(address) || localSheetId !== WHOLE_WORKBOOK) return null;
    const { sheetName, range } = deserializeRangeWithSheet(address);
    return {
      sheet: sheetName,
      row: range.startRow,
      column: range.startColumn,
      rows: range.endRow - range.startRow + 1,
      columns: range.endColumn - range.startColumn + 1,
    };
  }

  private shifted(formula: string, columns: number): string {
    const key = `${columns} ${formula}`;
    let known = this.shifts.get(key);
    if (known === undefined) {
      known = this.lexer.moveFormulaRefOffset(formula, columns, 0);
      this.shifts.set(key, known);
    }
    return known;
  }

  /** Hands the engine what our formulas have come to; returns where that is something new. */
  private writeResults(unitId: string, { book, opened }: Evaluation): IUnitRange[] {
    return [...opened].flatMap(([name, { sheetId, putIn }]) => {
      const changed = new ChangedCells(unitId, sheetId);
      const { rowCount = 0, columnCount = 0 } = this.data(unitId, sheetId) ?? {};
      for (const cell of putIn.own) {
        const { row, column, stands } = cell;
        const value = book.at(name, row, column);
        this.keepSentence(sheetId, cell, value);
        const list = this.list(book, name, cell);
        if (isSame(stands, gridValueOf(value ?? 0)) && list.every(({ isOld }) => isOld)) continue;
        this.runtime.setCurrent(row, column, rowCount, columnCount, sheetId, unitId);
        const values = list.length === 0 ? [value] : list.map((of) => of.value);
        this.runtime.setRuntimeData(valueObjectOf(values.map((of) => [of ?? ''])));
        for (let below = 0; below < values.length; below += 1) changed.add(row + below, column);
      }
      return changed.ranges();
    });
  }

  /** The values that a formula fills cells with, where it fills more than its own. */
  private list(book: Workbook, name: string, { row, column, spill }: OwnCell) {
    if (spill === undefined) return [];
    const { range, cells } = spill;
    return Array.from({ length: range.endRow - row + 1 }, (_, below) => {
      const value = book.at(name, row + below, column);
      const stands = cells?.getValue(row + below, column);
      return { value, isOld: isSame(stands, gridValueOf(value ?? '')) };
    });
  }

  private keepSentence(sheetId: string, { row, column, stands }: OwnCell, value: Cell): void {
    if (value instanceof CellError) this.sentences.keep(sheetId, row, column, [[value]]);
    else if (typeof stands.v === 'string' && stands.v.startsWith('#')) {
      this.sentences.forgetCell(sheetId, row, column);
    }
  }

  /** Takes our own formulas out of what the engine is to calculate. */
  private leaveToEngine(
    unitId: string,
    all: InnerConfig['_formulaData'],
    evaluation: Evaluation | undefined,
  ): void {
    const sheets: Record<string, Nullable<FormulasOfSheet>> = { ...all[unitId] };
    const byId = new Map([...(evaluation?.opened.values() ?? [])].map((of) => [of.sheetId, of]));
    for (const sheetId of Object.keys(sheets)) {
      if (!this.isPlannedId(sheetId)) continue;
      const left = byId.get(sheetId)?.putIn.left ?? this.leftBefore.get(sheetId) ?? [];
      this.leftBefore.set(sheetId, left);
      const formulas = new ObjectMatrix<IFormulaDataItem>();
      for (const { row, column } of left) {
        const item = sheets[sheetId]?.[row]?.[column];
        if (item) formulas.setValue(row, column, { f: this.textAt(item) });
      }
      sheets[sheetId] = formulas.getMatrix();
      const places = left.map(({ row, column }) => `${row} ${column}`).join();
      if ((this.knownToEngine.get(sheetId) ?? '') === places) continue;
      this.knownToEngine.set(sheetId, places);
      this.dependencies.clearFormulaDependency(unitId, sheetId);
      this.dependencies.clearOtherFormulaDependency(unitId, sheetId);
    }
    this.inner._formulaData = { ...all, [unitId]: sheets };
  }

  /** What was left to the engine when our sheets were evaluated last. */
  private readonly leftBefore = new Map<string, PutIn['left']>();

  private textAt({ f, x = 0, y = 0 }: IFormulaDataItem): string {
    return x === 0 && y === 0 ? f : this.lexer.moveFormulaRefOffset(f, x, y);
  }

  /** Notes what was read of the engine's formulas; the answer says whether they have come to something else since. */
  private cameOtherwise(unitId: string, { opened }: Evaluation): () => boolean {
    const cellsOf = ({ sheetId, putIn }: Opened) =>
      putIn.left.map(
        ({ row, column }) =>
          this.came(unitId, sheetId)?.getValue(row, column) ??
          this.data(unitId, sheetId)?.cellData.getValue(row, column),
      );
    const spillsOf = ({ sheetId, putIn }: Opened) => {
      const own = new Set(putIn.own.filter(({ spill }) => spill).map(({ spill }) => spill!.range));
      const isOwn = ({ startRow, startColumn }: IRange) =>
        [...own].some((of) => of.startRow === startRow && of.startColumn === startColumn);
      return this.spills(unitId, sheetId)
        .filter(({ range }) => !isOwn(range))
        .map(({ range, cells }) => {
          const values: unknown[] = [
            range.startRow,
            range.startColumn,
            range.endRow,
            range.endColumn,
          ];
          for (let row = range.startRow; row <= range.endRow; row += 1) {
            for (let column = range.startColumn; column <= range.endColumn; column += 1) {
              values.push(cells?.getValue(row, column)?.v);
            }
          }
          return values;
        });
    };
    const all = () =>
      JSON.stringify(
        [...opened.values()].map((of) => [
          cellsOf(of).map((cell) => [cell?.v, cell?.t]),
          spillsOf(of),
        ]),
      );
    const before = all();
    return () => all() !== before;
  }
}

/** Cells that have changed, as ranges. */
class ChangedCells {
  private readonly columns = new Map<number, IRange[]>();

  constructor(
    private readonly unitId: string,
    private readonly sheetId: string,
  ) {}

  /** Cells of a column come in the order of their rows. */
  add(row: number, column: number): void {
    let ranges = this.columns.get(column);
    if (ranges === undefined) this.columns.set(column, (ranges = []));
    const last = ranges.at(-1);
    if (last?.endRow === row - 1) last.endRow = row;
    else ranges.push({ startRow: row, endRow: row, startColumn: column, endColumn: column });
  }

  ranges(): IUnitRange[] {
    const { unitId, sheetId } = this;
    return [...this.columns.values()].flat().map((range) => ({ unitId, sheetId, range }));
  }
}

/**
 * Calculates the formulas of planned sheets here from now on. To be called when the grid's plugins are registered and its
 * engine is mended, before any workbook.
 */
export function calculateOwnSheets(univer: Univer, sentences: Sentences): void {
  new OwnFormulas(univer, sentences);
}
