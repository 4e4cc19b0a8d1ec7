/** Defined names of the grid. */
import { ICommandService } from '@univerjs/core';
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
