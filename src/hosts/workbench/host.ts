/** The workbench's spreadsheet, as the pane sees it. */
import type { FWorksheet } from '@univerjs/sheets/facade';
import { areaAddress, quotedSheetName, type Area } from '../../sheets/plan/area';
import type { SheetPlan } from '../../sheets/plan/plan';
import { withNumbersAsText } from '../../sheets/plan/typed-text';
import { oneAtATime } from '../one-at-a-time';
import {
  InsertionFault,
  type HostProbe,
  type Inserted,
  type SheetHost,
  type SheetView,
  type TakenNames,
  type Watch,
} from '../sheet-host';
import type { ComputedGrid, SheetGrid } from '../../sheets/plan/grid';
import { watchCalculation, type CalculationWatch } from './calculation';
import type { SheetEdits } from '../edits';
import { workbenchEdits } from './edits';
import { nameRunsOfEntries } from './for-run';
import { growSchedules } from './growth';
import { keepRowsTogether } from './row-commands';
import { watchChanges, type Changes } from './changes';
import type { Grid } from './grid';
import { insertedSheets, removeSheets, stepOf } from './insertion';
import { workbenchProbe } from './probe';
import { readComputed, readSheet } from './read';
import { growRows } from './row-heights';
import { AS_IT_STANDS, gridRange, highlightRule, validationRule } from './rules';
import { sheetSnapshot } from './snapshot';
import {
  AddDataValidationMutation,
  SheetDataValidationModel,
} from '@univerjs/preset-sheets-data-validation';
import type { Calculated } from '../../sheets/calculate/calculate';
import { EVALUATED, evaluate, tellEngine, valuesOf, withoutCalculating } from './filled-in';
import { insertName } from './names';
import { ICommandService, LifecycleService, LifecycleStages } from '@univerjs/core';
import { ILayoutService } from '@univerjs/preset-sheets-core';
import { RemoveSheetMutation, SetRangeValuesMutation } from '@univerjs/sheets';

export class WorkbenchHost implements SheetHost {
  readonly references = 'cells';
  readonly changes: Changes;
  /** Resolves when no cell waits to be calculated. */
  readonly calculated: () => Promise<void>;
  private readonly calculation: CalculationWatch;
  private readonly writing = oneAtATime();
  readonly edits: SheetEdits;
  private readonly refusals = new Set<(sentence: string) => void>();

  constructor(readonly grid: Grid) {
    this.changes = watchChanges(grid);
    this.calculation = watchCalculation(grid);
    const hears = this.afterFirstDrawing();
    this.calculated = async () => {
      await hears;
      await this.calculation.settled();
    };
    this.edits = workbenchEdits(grid, this.changes, this.calculated);
    const refuse = (sentence: string) => {
      for (const listener of this.refusals) listener(sentence);
    };
    keepRowsTogether(grid, this.edits, refuse);
    growSchedules(grid, refuse);
    nameRunsOfEntries(grid);
    growRows(grid, this.changes, this.calculation.isUnderWay);
  }

  /**
   * Before the grid has been drawn for the first time, its engine does not hear of edits: one that was made by then has
   * everything calculated.
   */
  private async afterFirstDrawing(): Promise<void> {
    const injector = this.grid.univer.__getInjector();
    let isEdited = false;
    const edits = injector.get(ICommandService).onCommandExecuted(({ id }, options) => {
      if (id === SetRangeValuesMutation.id && options?.onlyLocal !== true) isEdited = true;
    });
    await injector.get(LifecycleService).onStage(LifecycleStages.Rendered);
    edits.dispose();
    if (isEdited) this.grid.api.getFormula().executeCalculation();
  }

  taken(): Promise<TakenNames> {
    const { workbook } = this.grid;
    return Promise.resolve({
      sheets: new Set(workbook.getSheets().map((sheet) => sheet.getSheetName().toLowerCase())),
      names: new Set(workbook.getDefinedNames().map((name) => name.getName().toLowerCase())),
    });
  }

  insert(plans: readonly SheetPlan[], watch: Watch = {}): Promise<Inserted> {
    return this.writing(() => this.add(plans.map(withNumbersAsText), watch));
  }

  private async add(plans: readonly SheetPlan[], watch: Watch): Promise<Inserted> {
    const { workbook } = this.grid;
    const inView = workbook.getActiveSheet().getSheetId();
    const added: FWorksheet[] = [];
    const named: string[] = [];
    const values = valuesOf(plans);
    const add = (taken: TakenNames) => {
      stepOf(watch, EVALUATED);
      for (const plan of plans) added.push(this.addSheet(plan, taken, values));
      for (const plan of plans) named.push(...this.addNames(plan, taken));
      // The rules come last: their formulas may use names and other new sheets.
      for (const [index, plan] of plans.entries()) this.addRules(added[index]!, plan);
      stepOf(watch, 0.9);
    };
    try {
      if (values !== undefined) await evaluate(plans, values, watch);
      const taken = await this.taken();
      if (values === undefined) add(taken);
      else {
        withoutCalculating(this.grid, () => {
          add(taken);
        });
      }
    } catch (fault) {
      removeSheets(this.grid, added, named);
      workbook.setActiveSheet(inView);
      const why = fault instanceof Error ? fault.message : String(fault);
      throw new InsertionFault(
        `The sheet could not be added, and the workbook is as it was: ${why}`,
        { cause: fault },
      );
    }
    if (added[0] !== undefined) workbook.setActiveSheet(added[0]);
    if (values === undefined) await this.calculated();
    else {
      for (const [index, plan] of plans.entries()) {
        tellEngine(this.grid, added[index]!, plan, values);
      }
    }
    return insertedSheets(this.grid, this.writing, added, named);
  }

  get probe(): HostProbe {
    return workbenchProbe(this.grid, this.writing, this.calculated);
  }

  view(): Promise<SheetView> {
    const calculation = this.calculation.isUnderWay() ? 'under way' : 'done';
    return this.activeGrid().then((grid) => ({ grid, calculation }));
  }

  async calculate(): Promise<void> {
    await this.grid.univer.__getInjector().get(LifecycleService).onStage(LifecycleStages.Rendered);
    this.grid.api.getFormula().executeCalculation();
    await this.calculated();
  }

  activeGrid(): Promise<SheetGrid | null> {
    return Promise.resolve(readSheet(this.grid, this.grid.workbook.getActiveSheet()));
  }

  allGrids(): Promise<readonly ComputedGrid[]> {
    return Promise.resolve(
      this.grid.workbook.getSheets().map((sheet) => {
        const read = readSheet(this.grid, sheet);
        return read === null
          ? { sheetName: sheet.getSheetName(), values: [], computed: [] }
          : { ...read, computed: readComputed(this.grid, sheet, read) };
      }),
    );
  }

  select(sheetName: string, area: Area): Promise<void> {
    const sheet = this.grid.workbook.getSheetByName(sheetName);
    if (sheet === null) {
      return Promise.reject(new Error(`There is no sheet named ${sheetName}.`));
    }
    this.grid.workbook.setActiveSheet(sheet);
    sheet.getRange(gridRange(area)).activate();
    sheet.scrollToCell(Math.max(0, area.row - 3), 0);
    return Promise.resolve();
  }

  takeKeys(): void {
    this.grid.univer.__getInjector().get(ILayoutService).focus();
  }

  /** Calls back with a sentence where the grid refuses to put in or move rows. */
  onRefusal(listener: (sentence: string) => void): void {
    this.refusals.add(listener);
  }

  onChange(listener: () => void): () => void {
    const stops = [this.changes.onChange(listener), this.calculation.onNothingToDo(listener)];
    return () => {
      for (const stop of stops) stop();
    };
  }

  private addSheet(plan: SheetPlan, taken: TakenNames, values: Calculated | undefined): FWorksheet {
    // The grid itself would quietly take another name, and the formulas would point at the wrong sheet.
    if (taken.sheets.has(plan.name.toLowerCase())) {
      throw new Error(`there is a sheet named ${plan.name} already.`);
    }
    const { workbook } = this.grid;
    const styles = workbook.getWorkbook().getStyles();
    const sheet = workbook.insertSheet(plan.name, {
      sheet: sheetSnapshot(plan, values, (style) => styles.setValue(style) ?? undefined),
    });
    if (sheet.getSheetName() !== plan.name) {
      throw new Error(`the grid refused a sheet named ${plan.name}.`);
    }
    return sheet;
  }

  /** Takes the blank sheet away that the grid opens with, past undo; a sheet that holds anything stays. */
  removeBlankSheet(): void {
    const { workbook } = this.grid;
    const [first, ...others] = workbook.getSheets();
    if (first === undefined || others.length === 0 || readSheet(this.grid, first) !== null) return;
    this.grid.univer
      .__getInjector()
      .get(ICommandService)
      .syncExecuteCommand(RemoveSheetMutation.id, {
        unitId: workbook.getId(),
        subUnitId: first.getSheetId(),
        subUnitName: first.getSheetName(),
      });
  }

  private addNames(plan: SheetPlan, taken: TakenNames): string[] {
    return plan.names.map(({ name, area }) => {
      if (taken.names.has(name.toLowerCase())) {
        throw new Error(`the name ${name} is taken already.`);
      }
      const address = `${quotedSheetName(plan.name)}!${areaAddress(area, 'both')}`;
      insertName(this.grid, name, address);
      return name;
    });
  }

  private addRules(sheet: FWorksheet, plan: SheetPlan): void {
    const injector = this.grid.univer.__getInjector();
    const commands = injector.get(ICommandService);
    const model = injector.get(SheetDataValidationModel);
    const [unitId, subUnitId] = [this.grid.workbook.getId(), sheet.getSheetId()];
    for (const entry of plan.entries) {
      // What is typed stays, whatever it is; the row itself says that a formula is missing.
      if (entry.workedOut) continue;
      const rule = validationRule(entry);
      const formulas = model.getValidator(rule.type)?.normalizeFormula(rule, unitId, subUnitId);
      const done = commands.syncExecuteCommand(AddDataValidationMutation.id, {
        unitId,
        subUnitId,
        rule: { ...rule, ...formulas },
        source: AS_IT_STANDS,
      });
      if (!done) throw new Error(`the grid refused the rule for ${areaAddress(entry.area)}.`);
    }
    // The grid gives the rule added last the highest rank; the plan lists the most telling first.
    for (const highlight of [...plan.highlights].reverse()) {
      sheet.addConditionalFormattingRule(highlightRule(highlight));
    }
  }
}
