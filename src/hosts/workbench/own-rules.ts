/** The formulas of colours on our own sheets, calculated by our own evaluation with the cells that they colour. */
import type { IRange, Univer } from '@univerjs/core';
import {
  IFormulaRuntimeService,
  IOtherFormulaManagerService,
  type IOtherFormulaData,
} from '@univerjs/engine-formula';
import type { Cell } from '../../functions/cell';
import { isUnchanged } from '../../sheets/calculate/values';
import { Formula, type Sheet, type Workbook } from '../../sheets/calculate/workbook';
import { valueObjectOf } from './cells';
import type { KnownFormulas } from './standing-sheets';

/** A cell that a rule colours. */
interface Coloured {
  /** How far it is from the corner that the rule's formula is written for. */
  readonly across: number;
  readonly down: number;
  readonly value: () => Cell;
  /** What the grid was told last. */
  told: Cell | undefined;
}

interface Rule {
  readonly formula: string;
  readonly ranges: string;
  readonly cells: readonly Coloured[];
}

/** The rules of one evaluation, by the ids that the grid has for them. */
export type Rules = Map<string, Rule>;

/** Where the formulas of a sheet's rules are evaluated. */
export interface Where {
  readonly book: Workbook;
  readonly sheet: Sheet;
  readonly rules: Rules;
  readonly rowCount: number;
  readonly columnCount: number;
}

export class OwnRules {
  private readonly runtime: IFormulaRuntimeService;
  private readonly all: () => IOtherFormulaData;
  /** The sheets whose rules the engine is not to see. */
  private hidden: ReadonlySet<string> = new Set();

  constructor(
    univer: Univer,
    private readonly known: KnownFormulas,
    private readonly shifted: (formula: string, columns: number) => string,
  ) {
    const injector = univer.__getInjector();
    this.runtime = injector.get(IFormulaRuntimeService);
    const manager = injector.get(IOtherFormulaManagerService);
    this.all = manager.getOtherFormulaData.bind(manager);
    manager.getOtherFormulaData = () => this.leftToEngine();
  }

  /** From now on the engine sees no rules of these sheets that are calculated here. */
  hide(sheetIds: ReadonlySet<string>): void {
    this.hidden = sheetIds;
  }

  private leftToEngine(): IOtherFormulaData {
    const all = this.all();
    if (this.hidden.size === 0) return all;
    return Object.fromEntries(
      Object.entries(all).map(([unitId, sheets]) => [
        unitId,
        Object.fromEntries(
          Object.entries(sheets ?? {}).map(([sheetId, rules]) => [
            sheetId,
            this.hidden.has(sheetId)
              ? Object.fromEntries(
                  Object.entries(rules ?? {}).filter(([, { f }]) => !this.isOurs(f)),
                )
              : rules,
          ]),
        ),
      ]),
    );
  }

  private isOurs(formula: string): boolean {
    return this.known.has(formula);
  }

  /** The cells that rules of a sheet colour, each to be asked for its value. */
  cells(unitId: string, sheetId: string, where: Where): readonly Coloured[] {
    return this.rulesOf(unitId, sheetId).flatMap(([id, f, ranges]) => {
      const known = where.rules.get(id);
      const asText = JSON.stringify(ranges);
      if (known?.formula === f && known.ranges === asText) return known.cells;
      const cells = this.coloured(f, ranges, where);
      where.rules.set(id, { formula: f, ranges: asText, cells });
      return cells;
    });
  }

  private rulesOf(unitId: string, sheetId: string) {
    return Object.entries(this.all()[unitId]?.[sheetId] ?? {}).flatMap(([id, { f, ranges }]) =>
      this.isOurs(f) && ranges.length > 0 ? [[id, f, ranges] as const] : [],
    );
  }

  private coloured(f: string, ranges: readonly IRange[], where: Where): readonly Coloured[] {
    const { book, sheet, rowCount, columnCount } = where;
    const { startRow: firstRow, startColumn: firstColumn } = ranges[0]!;
    const formulas = new Map<number, Formula>();
    const cells: Coloured[] = [];
    for (const { startRow, endRow, startColumn, endColumn } of ranges) {
      for (let row = startRow; row <= Math.min(endRow, rowCount - 1); row += 1) {
        for (
          let column = startColumn;
          column <= Math.min(endColumn, columnCount - 1);
          column += 1
        ) {
          const [across, down] = [column - firstColumn, row - firstRow];
          let formula = formulas.get(across);
          if (formula === undefined) {
            formula = new Formula(across === 0 ? f : this.shifted(f, across), firstRow);
            formulas.set(across, formula);
          }
          const value = book.beside(sheet, formula, row, column);
          cells.push({ across, down, value, told: undefined });
        }
      }
    }
    return cells;
  }

  /** Hands the grid what the rules of a sheet come to, where that is something new; whether there was any. */
  write(unitId: string, sheetId: string, { rules, rowCount, columnCount }: Where): boolean {
    let isAny = false;
    for (const [id] of this.rulesOf(unitId, sheetId)) {
      for (const cell of rules.get(id)?.cells ?? []) {
        const value = cell.value();
        if (isUnchanged(cell.told, value)) continue;
        this.runtime.setCurrent(cell.down, cell.across, rowCount, columnCount, sheetId, unitId);
        this.runtime.setRuntimeOtherData(
          id,
          cell.across,
          cell.down,
          valueObjectOf([[value ?? '']]),
        );
        cell.told = value;
        isAny = true;
      }
    }
    return isAny;
  }
}
