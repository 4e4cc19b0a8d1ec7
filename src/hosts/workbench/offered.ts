/** Lists that only offer: a cell takes other text as well, and the grid (0.25.1) marks it all the same unless told. */
import { DataValidationErrorStyle, DataValidationType, type Univer } from '@univerjs/core';
import { DataValidatorRegistryService } from '@univerjs/preset-sheets-data-validation';

/** Leaves cells unmarked whose list has the mildest style. */
export function takeOtherThanOffered(univer: Univer): void {
  const registry = univer.__getInjector().get(DataValidatorRegistryService);
  let isDone = false;
  const change = () => {
    const list = registry.getValidatorItem(DataValidationType.LIST);
    if (list === undefined || isDone) return;
    isDone = true;
    const judge = list.validator.bind(list);
    list.validator = (cell, rule) =>
      rule.errorStyle === DataValidationErrorStyle.INFO ? Promise.resolve(true) : judge(cell, rule);
  };
  change();
  registry.validatorsChange$.subscribe(change);
}
