/** Faults of the grid's formula engine in comparing, put right before any formula is calculated. */
import type { Univer } from '@univerjs/core';
import {
  BooleanValueObject,
  CELL_INVERTED_INDEX_CACHE,
  IFunctionService,
  StringValueObject,
  type BaseFunction,
} from '@univerjs/engine-formula';
import { mendMethod } from './mend-method';

/**
 * Makes the engine compare every cell afresh. From the second comparison of a cell on, the engine (0.25.1) looks the
 * answer up in an index of values, in which 0 and empty text are one entry: =A1="" is TRUE for a cell that holds 0,
 * and a formula guarded against blank rows then falls silent for an honest zero. Without the index it compares rightly.
 */
export function compareAfresh(): void {
  CELL_INVERTED_INDEX_CACHE.canUseCache = () => ({ rowsInCache: [], rowsNotInCache: [] });
}

/** While an operator such as "=" compares, and no criterion of COUNTIF or the like. */
let isOperator = false;

/** The engine's text, with a part that it keeps to itself. */
interface InnerText {
  _checkWildcard(value: string, operator: string): unknown;
  _compareString(own: string, value: string, operator: string): boolean;
  getValue(): string;
}

/**
 * Makes the operators compare text as it stands. The engine (0.25.1) takes * and ? in it for any letters, as COUNTIF does:
 * two runs whose names are alike but for those would be one.
 */
export function compareTextAsItStands(univer: Univer): void {
  const functions = univer.__getInjector().get(IFunctionService);
  mendMethod(
    Object.getPrototypeOf(functions) as IFunctionService,
    'registerExecutors',
    (register) =>
      function (this: IFunctionService, ...given) {
        const compare = given.find(({ name }) => name === 'COMPARE');
        if (compare !== undefined) noteOperator(Object.getPrototypeOf(compare) as BaseFunction);
        register.apply(this, given);
      },
  );
  mendMethod(
    StringValueObject.prototype as unknown as InnerText,
    '_checkWildcard',
    (check) =>
      function (this: InnerText, value, operator) {
        if (!isOperator) return check.call(this, value, operator);
        const own = this.getValue().toLocaleLowerCase();
        return BooleanValueObject.create(this._compareString(own, value, operator));
      },
  );
}

function noteOperator(compare: BaseFunction): void {
  mendMethod(
    compare,
    'calculate',
    (calculate) =>
      function (this: BaseFunction, ...given) {
        isOperator = true;
        try {
          return calculate.apply(this, given);
        } finally {
          isOperator = false;
        }
      },
  );
}
