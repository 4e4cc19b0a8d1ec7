/** What the grid's engine has in hand while it calculates: cells, what formulas have come to by now, lists that spill, names. */
import {
  IUniverInstanceService,
  ObjectMatrix,
  UniverInstanceType,
  type ICellData,
  type IRange,
  type Nullable,
  type Univer,
  type Workbook as GridWorkbook,
} from '@univerjs/core';
import {
  deserializeRangeWithSheet,
  IDefinedNamesService,
  IFormulaCurrentConfigService,
  IFormulaRuntimeService,
  LexerTreeBuilder,
} from '@univerjs/engine-formula';
import type { Area } from '../../sheets/plan/area';
import { isPlanned, type Spill, type StandingSheet } from './standing-sheets';

const PLAIN_ADDRESS = /^(?:'(?:[^']|'')+'|[^'!]+)!\$?[A-Z]+\$?\d+(?::\$?[A-Z]+\$?\d+)?$/;
const WHOLE_WORKBOOK = 'AllDefaultWorkbook';

export class EngineData {
  private readonly config: IFormulaCurrentConfigService;
  private readonly runtime: IFormulaRuntimeService;
  private readonly defined: IDefinedNamesService;
  private readonly lexer: LexerTreeBuilder;
  private readonly instances: IUniverInstanceService;
  private readonly shifts = new Map<string, string>();

  constructor(univer: Univer) {
    const injector = univer.__getInjector();
    this.config = injector.get(IFormulaCurrentConfigService);
    this.runtime = injector.get(IFormulaRuntimeService);
    this.defined = injector.get(IDefinedNamesService);
    this.lexer = injector.get(LexerTreeBuilder);
    this.instances = injector.get(IUniverInstanceService);
  }

  private get workbook(): Nullable<GridWorkbook> {
    return this.instances.getCurrentUnitOfType<GridWorkbook>(UniverInstanceType.UNIVER_SHEET);
  }

  get unitId(): string {
    return this.workbook?.getUnitId() ?? '';
  }

  /** The sheets that were laid out by a plan. */
  planned(): readonly { readonly sheetId: string; readonly name: string }[] {
    return (this.workbook?.getSheets() ?? [])
      .filter((sheet) => isPlanned(sheet.getConfig()))
      .map((sheet) => ({ sheetId: sheet.getSheetId(), name: sheet.getName() }));
  }

  isPlanned(sheetId: string): boolean {
    const sheet = this.workbook?.getSheetBySheetId(sheetId);
    return sheet !== null && sheet !== undefined && isPlanned(sheet.getConfig());
  }

  sheetId(name: string): string | undefined {
    return this.config.getSheetNameMap()[this.unitId]?.[name] ?? undefined;
  }

  get styles() {
    return this.config.getUnitStylesData()[this.unitId] ?? undefined;
  }

  /** All sheets and names, to see whether they are still the same. */
  index(): string {
    const names = Object.values(this.defined.getDefinedNameMap(this.unitId) ?? {});
    return JSON.stringify([
      this.config.getSheetNameMap()[this.unitId],
      names.map(({ name, formulaOrRefString }) => [name, formulaOrRefString]),
    ]);
  }

  /** A sheet as it stands; undefined where the engine knows of none. */
  standing(sheetId: string): StandingSheet | undefined {
    const data = this.data(sheetId);
    return (
      data && {
        isPlanned: this.isPlanned(sheetId),
        cells: data.cellData,
        came: (row, column) => this.came(sheetId)?.getValue(row, column),
        spills: this.spills(sheetId),
      }
    );
  }

  data(sheetId: string) {
    return this.config.getUnitData()[this.unitId]?.[sheetId] ?? undefined;
  }

  /** What formulas of a sheet have come to in this calculation. */
  came(sheetId: string) {
    return this.runtime.getUnitData()[this.unitId]?.[sheetId] ?? undefined;
  }

  /** The lists that formulas of a sheet spill, as they are by now. */
  spills(sheetId: string): readonly Spill[] {
    const found = new Map<string, Spill>();
    const take = (
      ranges: Nullable<Record<number, Record<number, Nullable<IRange>>>>,
      cells: Nullable<ObjectMatrix<ICellData>>,
    ) => {
      new ObjectMatrix(ranges ?? {}).forValue((row, column, range) => {
        if (range) found.set(`${row} ${column}`, { range, cells: cells ?? undefined });
      });
    };
    const { config, runtime, unitId } = this;
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

  /** The area that a name (in lower case) stands for; null where it stands for something else. */
  named(name: string): (Area & { readonly sheet: string }) | null | undefined {
    const known = Object.values(this.defined.getDefinedNameMap(this.unitId) ?? {}).find(
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

  /** What a formula becomes so many columns further on. */
  shifted(formula: string, columns: number): string {
    const key = `${columns} ${formula}`;
    let known = this.shifts.get(key);
    if (known === undefined) {
      known = this.lexer.moveFormulaRefOffset(formula, columns, 0);
      this.shifts.set(key, known);
    }
    return known;
  }
}
