/**
 * The formulas of our own sheets are calculated by our own evaluation, as they are when the sheets are new. The grid's
 * engine (0.25.1) needs eleven seconds for an edit in a schedule of 500 runs, a third of them to find out what hangs on
 * what. What people write on other sheets, and formulas in a language that our evaluation does not know, stay the engine's:
 * it is told which cells have changed, and we look at what its formulas came to.
 */
import { ObjectMatrix, type ICellData, type IUnitRange, type Nullable } from '@univerjs/core';
import type { IRange, Univer } from '@univerjs/core';
import {
  FormulaExecutedStateType,
  FormulaExecuteStageType,
  ICalculateFormulaService,
  IDependencyManagerService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  LexerTreeBuilder,
  type IFormulaDataItem,
} from '@univerjs/engine-formula';
import { CellError, type Cell } from '../../functions/cell';
import type { Workbook } from '../../sheets/calculate/workbook';
import { valueObjectOf } from './cells';
import { EngineData } from './engine-data';
import { OwnEvaluation, Stopped, type Evaluation, type Opened } from './own-evaluation';
import type { Sentences } from './sentences';
import { gridValueOf } from './snapshot';
import type { OwnCell, PutIn } from './standing-sheets';

/** The engine's calculation, with the parts that it keeps to itself. */
interface InnerCalculation {
  _executeStep(): Promise<unknown>;
  readonly _executionInProgressListener$: { next(state: unknown): void };
}

type FormulasOfSheet = Record<number, Record<number, Nullable<IFormulaDataItem>>>;
type Formulas = ReturnType<IFormulaCurrentConfigService['getFormulaData']>;

/** What the engine is to calculate, which it keeps to itself. */
interface Task {
  _formulaData: Formulas;
  _dirtyRanges: readonly IUnitRange[];
  _excludedCell: ReturnType<IFormulaCurrentConfigService['getExcludedRange']>;
  _forceCalculate: boolean;
}

/** Where our formulas and those of the engine lead to each other in more steps than this, the engine calculates all. */
const MOST_ROUNDS = 6;

const isSame = (one: Nullable<ICellData>, other: Nullable<ICellData>) =>
  one?.v === other?.v && one?.t === other?.t;

class OwnFormulas {
  private readonly config: IFormulaCurrentConfigService;
  private readonly runtime: IFormulaRuntimeService;
  private readonly dependencies: IDependencyManagerService;
  private readonly lexer: LexerTreeBuilder;
  private readonly calculation: InnerCalculation;
  private readonly data: EngineData;
  private readonly evaluation: OwnEvaluation;
  /** What was left to the engine when our sheets were evaluated last, by the sheet's id. */
  private readonly left = new Map<string, PutIn['left']>();
  /** Which cells of a planned sheet the engine knows the formulas of, by the sheet's id. */
  private readonly knownToEngine = new Map<string, string>();

  constructor(
    univer: Univer,
    private readonly sentences: Sentences,
  ) {
    const injector = univer.__getInjector();
    this.config = injector.get(IFormulaCurrentConfigService);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.dependencies = injector.get(IDependencyManagerService);
    this.lexer = injector.get(LexerTreeBuilder);
    this.data = new EngineData(univer);
    this.evaluation = new OwnEvaluation(univer, this.data);
    this.calculation = injector.get(ICalculateFormulaService) as unknown as InnerCalculation;
    const step = this.calculation._executeStep.bind(this.calculation);
    this.calculation._executeStep = () => this.calculate(step);
  }

  private get task(): Task {
    return this.config as unknown as Task;
  }

  /** Calculates our sheets, and has the engine calculate the rest by `step`. */
  private async calculate(step: () => Promise<unknown>): Promise<unknown> {
    const planned = this.data.planned();
    if (planned.length === 0) return step();
    const given = { ...this.task };
    this.evaluation.rules.hide(new Set(planned.map(({ sheetId }) => sheetId)));
    this.sayUnderWay();
    try {
      const names = planned.map(({ name }) => name);
      if (await this.inTurns(names, given, step)) return true;
    } catch (fault) {
      if (fault instanceof Stopped) {
        this.runtime.setFormulaExecuteStage(FormulaExecuteStageType.IDLE);
        this.runtime.markedAsStopFunctionsExecuted();
        return undefined;
      }
      // Whatever it is, the cells are calculated: by the engine. The page hears of it.
      setTimeout(() => {
        throw fault;
      });
    }
    for (const { sheetId } of planned) this.knownToEngine.set(sheetId, 'all');
    this.evaluation.rules.hide(new Set());
    const { _formulaData, _dirtyRanges, _excludedCell } = given;
    Object.assign(this.task, { _formulaData, _dirtyRanges, _excludedCell, _forceCalculate: true });
    return step();
  }

  /**
   * From now on a change stops this calculation and begins the next with what was to be done in both. Before it is said, the
   * grid would begin another beside it.
   */
  private sayUnderWay(): void {
    this.runtime.setFormulaExecuteStage(FormulaExecuteStageType.CURRENTLY_CALCULATING);
    this.calculation._executionInProgressListener$.next(this.runtime.getRuntimeState());
  }

  /** Our evaluation and the engine in turns; false where they do not come to an end. Throws Stopped. */
  private async inTurns(
    names: readonly string[],
    given: Task,
    step: () => Promise<unknown>,
  ): Promise<boolean> {
    let isExecuted = false;
    for (let round = 0; round < MOST_ROUNDS; round += 1) {
      const isAsked = round > 0 || this.concerns(given._dirtyRanges);
      const evaluated = isAsked ? await this.evaluation.evaluated(names) : undefined;
      const changed = evaluated === undefined ? [] : this.writeCells(evaluated);
      if (evaluated !== undefined && this.writeRules(evaluated, names)) isExecuted = true;
      Object.assign(this.task, {
        _formulaData: this.leftToEngine(given._formulaData, evaluated),
        _dirtyRanges: round === 0 ? [...given._dirtyRanges, ...changed] : changed,
        _excludedCell: given._excludedCell,
        _forceCalculate: round === 0 && given._forceCalculate,
      });
      const seen = evaluated === undefined ? undefined : this.ofEngine(evaluated);
      await step();
      if (this.runtime.isStopExecution()) {
        // What the rules came to has not reached the grid.
        evaluated?.rules.clear();
        throw new Stopped();
      }
      const { functionsExecutedState: state } = this.runtime.getAllRuntimeData();
      isExecuted ||= changed.length > 0 || state === FormulaExecutedStateType.SUCCESS;
      if (evaluated === undefined || this.ofEngine(evaluated) === seen) {
        if (isExecuted) this.runtime.markedAsSuccessfullyExecuted();
        return true;
      }
    }
    return false;
  }

  /** Whether what has changed may be read by our sheets. */
  private concerns(dirty: readonly IUnitRange[]): boolean {
    const { config } = this;
    const isAny = (map: object) => Object.keys(map).length > 0;
    const isWholesale =
      config.isForceCalculate() ||
      isAny(config.getDirtyNameMap()) ||
      isAny(config.getDirtyDefinedNameMap()) ||
      isAny(config.getClearDependencyTreeCache());
    if (isWholesale) this.evaluation.beginAnew();
    return (
      isWholesale ||
      isAny(config.getDirtyUnitOtherFormulaMap()) ||
      dirty.some(({ sheetId }) => this.evaluation.hasRead(sheetId) || this.data.isPlanned(sheetId))
    );
  }

  /** Hands the engine what our formulas have come to; returns where that is something new. */
  private writeCells({ book, opened }: Evaluation): IUnitRange[] {
    const { unitId } = this.data;
    return [...opened].flatMap(([name, { sheetId, putIn }]) => {
      const changed = new ChangedCells(unitId, sheetId);
      const { rowCount = 0, columnCount = 0 } = this.data.data(sheetId) ?? {};
      for (const cell of putIn.own) {
        const { row, column, stands } = cell;
        const value = book.at(name, row, column);
        this.keepSentence(sheetId, cell, value);
        const list = listOf(book, name, cell);
        if (isSame(stands, gridValueOf(value ?? 0)) && list.every(({ isOld }) => isOld)) continue;
        this.runtime.setCurrent(row, column, rowCount, columnCount, sheetId, unitId);
        const values = list.length === 0 ? [value] : list.map((of) => of.value);
        this.runtime.setRuntimeData(valueObjectOf(values.map((of) => [of ?? ''])));
        for (let below = 0; below < values.length; below += 1) changed.add(row + below, column);
      }
      return changed.ranges();
    });
  }

  private keepSentence(sheetId: string, { row, column, stands }: OwnCell, value: Cell): void {
    if (value instanceof CellError) this.sentences.keep(sheetId, row, column, [[value]]);
    else if (typeof stands.v === 'string' && stands.v.startsWith('#')) {
      this.sentences.forgetCell(sheetId, row, column);
    }
  }

  private writeRules(evaluated: Evaluation, names: readonly string[]): boolean {
    const written = names.map((name) => {
      const { sheetId } = evaluated.opened.get(name)!;
      const where = this.evaluation.where(evaluated, name);
      return this.evaluation.rules.write(this.data.unitId, sheetId, where);
    });
    return written.includes(true);
  }

  /** What of all formulas the engine is to calculate: those that we do not. */
  private leftToEngine(all: Formulas, evaluated: Evaluation | undefined): Formulas {
    const { unitId } = this.data;
    for (const { sheetId, putIn } of evaluated?.opened.values() ?? []) {
      this.left.set(sheetId, putIn.left);
    }
    const sheets: Record<string, Nullable<FormulasOfSheet>> = { ...all[unitId] };
    for (const sheetId of Object.keys(sheets)) {
      if (!this.data.isPlanned(sheetId)) continue;
      const left = this.left.get(sheetId) ?? [];
      const formulas = new ObjectMatrix<IFormulaDataItem>();
      for (const { row, column } of left) {
        const item = sheets[sheetId]?.[row]?.[column];
        if (item) formulas.setValue(row, column, { f: this.textOf(item) });
      }
      sheets[sheetId] = formulas.getMatrix();
      this.tellEngine(sheetId, left.map(({ row, column }) => `${row} ${column}`).join());
    }
    return { ...all, [unitId]: sheets };
  }

  /** The engine keeps what hangs on what by cells: where others are left to it, it has to begin anew. */
  private tellEngine(sheetId: string, places: string): void {
    if ((this.knownToEngine.get(sheetId) ?? '') === places) return;
    this.knownToEngine.set(sheetId, places);
    this.dependencies.clearFormulaDependency(this.data.unitId, sheetId);
    this.dependencies.clearOtherFormulaDependency(this.data.unitId, sheetId);
  }

  private textOf({ f, x = 0, y = 0 }: IFormulaDataItem): string {
    return x === 0 && y === 0 ? f : this.lexer.moveFormulaRefOffset(f, x, y);
  }

  /** All that the engine's formulas have come to on the sheets that ours read. */
  private ofEngine({ opened }: Evaluation): string {
    return JSON.stringify(
      [...opened.values()].map((of) => [this.cellsOfEngine(of), this.listsOfEngine(of)]),
    );
  }

  private cellsOfEngine({ sheetId, putIn }: Opened) {
    const cells = this.data.data(sheetId)?.cellData;
    return putIn.left.map(({ row, column }) => {
      const cell = this.data.came(sheetId)?.getValue(row, column) ?? cells?.getValue(row, column);
      return [cell?.v, cell?.t];
    });
  }

  private listsOfEngine({ sheetId, putIn }: Opened) {
    const isOwn = ({ startRow, startColumn }: IRange) =>
      putIn.own.some(
        ({ row, column, spill }) => spill && row === startRow && column === startColumn,
      );
    return this.data
      .spills(sheetId)
      .filter(({ range }) => !isOwn(range))
      .map(({ range: { startRow, endRow, startColumn, endColumn }, cells }) => {
        const values: unknown[] = [startRow, endRow, startColumn, endColumn];
        for (let row = startRow; row <= endRow; row += 1) {
          for (let column = startColumn; column <= endColumn; column += 1) {
            values.push(cells?.getValue(row, column)?.v);
          }
        }
        return values;
      });
  }
}

/** The values that a formula fills cells with, where it fills more than its own. */
function listOf(book: Workbook, name: string, { row, column, spill }: OwnCell) {
  if (spill === undefined) return [];
  const { range, cells } = spill;
  return Array.from({ length: range.endRow - row + 1 }, (_, below) => {
    const value = book.at(name, row + below, column);
    const stands = cells?.getValue(row + below, column);
    return { value, isOld: isSame(stands, gridValueOf(value ?? '')) };
  });
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
