/** Defined names of the grid. */
import { ICommandService, ObjectMatrix } from '@univerjs/core';
import {
  FormulaDataModel,
  IDefinedNamesService,
  RemoveDefinedNameMutation,
} from '@univerjs/engine-formula';
import { InsertDefinedNameCommand } from '@univerjs/sheets';
import type { Grid } from './grid';

/**
 * Puts a name for an address into the workbook. The grid's own way for a name that may be changed reads every formula of
 * the workbook anew for each name, to follow the change; a new name changes none.
 */
export function insertName({ univer, workbook }: Grid, name: string, address: string): void {
  const param = workbook
    .newDefinedNameBuilder()
    .setName(name)
    .setRef(address)
    .setScopeToWorkbook()
    .build();
  const commands = univer.__getInjector().get(ICommandService);
  const done = commands.syncExecuteCommand(InsertDefinedNameCommand.id, {
    ...param,
    unitId: workbook.getId(),
  });
  if (!done) throw new Error(`the grid refused the name ${name}.`);
}

/** Every word in the formulas of the workbook, in lower case; names are among them. */
function wordsOfFormulas({ univer, workbook }: Grid): ReadonlySet<string> {
  const sheets = univer.__getInjector().get(FormulaDataModel).getFormulaData()[workbook.getId()];
  const words = new Set<string>();
  const known = new Set<string>();
  for (const cells of Object.values(sheets ?? {})) {
    new ObjectMatrix(cells ?? {}).forValue((_row, _column, cell) => {
      const formula = cell?.f;
      if (formula === undefined || known.has(formula)) return;
      known.add(formula);
      for (const [word] of formula.toLowerCase().matchAll(/[\p{L}_][\p{L}\p{N}_.]*/gu)) {
        words.add(word);
      }
    });
  }
  return words;
}

/**
 * Takes names out of the workbook. The grid's own way reads every formula of the workbook anew for each name, to write
 * #REF! where it stood; only a name that some formula still uses needs that.
 */
export function removeNames(grid: Grid, names: readonly string[]): void {
  const { univer, workbook } = grid;
  const injector = univer.__getInjector();
  const unitId = workbook.getId();
  const used = wordsOfFormulas(grid);
  for (const name of names) {
    const known = injector.get(IDefinedNamesService).getValueByName(unitId, name);
    if (known === null || known === undefined) continue;
    if (used.has(name.toLowerCase())) workbook.deleteDefinedName(name);
    else {
      injector
        .get(ICommandService)
        .syncExecuteCommand(RemoveDefinedNameMutation.id, { ...known, unitId });
    }
  }
}
