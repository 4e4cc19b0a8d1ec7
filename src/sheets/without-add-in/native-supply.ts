/** The Supply sheet's formulas in functions that every spreadsheet knows. */
import { BRIGHT_SUN, CONTINUOUS, RATED_AT_C } from '../../core/solar';
import * as supplyParameter from '../../functions/parameters/supply';
import { BAD_ENTRY } from './gauge';
import type { DataKey } from '../station/native-references';
import type { SupplyReferences } from '../supply/cells';
import type { DutyFormulas, SupplyFormulas } from '../supply/sheet';

type Data = Readonly<Record<DataKey, string>>;

const amount = (cell: string) => `AND(ISNUMBER(${cell}),${cell}>=0)`;

/** Volts of a rested pack: straight between the points of its chemistry. */
function restingVolts(data: Data, chemistry: string, charge: string, cells: string): string {
  const { chemistries, restingCharge, restingVolts } = data;
  const first = `MATCH(${chemistry},${chemistries},0)`;
  const points = `COUNTIF(${chemistries},${chemistry})`;
  const reached = `SUMPRODUCT((${chemistries}=${chemistry})*(${restingCharge}<=${charge}))`;
  const from = `(${first}-1+MAX(1,MIN(${points}-1,${reached})))`;
  const point = (of: string, step = '') => `INDEX(${of},${from}${step})`;
  const rise = `(${point(restingVolts, '+1')}-${point(restingVolts)})/(${point(restingCharge, '+1')}-${point(restingCharge)})`;
  return (
    `IF(AND(ISNUMBER(${charge}),${charge}>=0,${charge}<=1,COUNTIF(${chemistries},${chemistry})>0),` +
    `(${point(restingVolts)}+(${charge}-${point(restingCharge)})*${rise})*${cells},${BAD_ENTRY})`
  );
}

/** What replaces the formulas that call our functions; cells that are blank where one is needed give empty text. */
export function nativeSupplyFormulas(data: Data): SupplyFormulas {
  const blankAsk = (cells: readonly string[], expression: string) =>
    `IF(OR(${cells.map((cell) => `${cell}=""`).join(',')}),"",${expression})`;
  return {
    fullRest: ({ supply: cell }) =>
      blankAsk([cell.chemistry], restingVolts(data, cell.chemistry, '1', cell.cells)),
    lowRest: ({ supply: cell }) =>
      blankAsk(
        [cell.chemistry, cell.lowCharge],
        restingVolts(data, cell.chemistry, cell.lowCharge, cell.cells),
      ),
    panelDesignAmps: ({ supply: cell }) =>
      blankAsk(
        [cell.shortCircuitAmps],
        `IF(${amount(cell.shortCircuitAmps)},${BRIGHT_SUN}*${CONTINUOUS}*${cell.shortCircuitAmps},${BAD_ENTRY})`,
      ),
    panelColdVolts: ({ supply: cell }) => {
      const { least, most } = supplyParameter.percentPerC.bounds ?? {};
      const cold = supplyParameter.coldestC.bounds ?? {};
      return blankAsk(
        [cell.openCircuitVolts, cell.coldestC, cell.percentPerC],
        `IF(AND(ISNUMBER(${cell.openCircuitVolts}),${cell.openCircuitVolts}>0,ISNUMBER(${cell.coldestC}),${cell.coldestC}>=${cold.least},${cell.coldestC}<=${cold.most},` +
          `ISNUMBER(${cell.percentPerC}),${cell.percentPerC}>=${least},${cell.percentPerC}<=${most}),` +
          `${cell.openCircuitVolts}*(1+${cell.percentPerC}/100*(${cell.coldestC}-${RATED_AT_C})),${BAD_ENTRY})`,
      );
    },
    batteryHours: ({ supply: cell }: SupplyReferences) =>
      `IF(${cell.meanAmps}=0,"",${blankAsk(
        [cell.ampHours],
        `IF(AND(ISNUMBER(${cell.ampHours}),${cell.ampHours}>0,ISNUMBER(${cell.usable}),${cell.usable}>0,${cell.usable}<=1,ISNUMBER(${cell.peukert}),${cell.peukert}>=1,${cell.peukert}<=2),` +
          `${cell.usable}*${supplyParameter.ratedHours.fallback}*(${cell.ampHours}/(${cell.meanAmps}*${supplyParameter.ratedHours.fallback}))^${cell.peukert},${BAD_ENTRY})`,
      )})`,
  };
}

/** Mean and r.m.s. of a row of states; each state wants both its amps and its share. */
const states = (amps: string, shares: string, expression: string) =>
  `IF(SUMPRODUCT(--ISNUMBER(${amps}))+SUMPRODUCT(--ISNUMBER(${shares}))=0,"",` +
  `IF(AND(SUMPRODUCT(--(ISNUMBER(${amps})<>ISNUMBER(${shares})))=0,SUMPRODUCT(--ISTEXT(${amps}))+SUMPRODUCT(--ISTEXT(${shares}))=0,` +
  `SUM(${shares})<=1.000000001,MIN(${amps},${shares})>=0),${expression},${BAD_ENTRY}))`;

export const NATIVE_DUTY: DutyFormulas = {
  mean: (amps, shares) => states(amps, shares, `SUMPRODUCT(${amps},${shares})`),
  heating: (amps, shares) => states(amps, shares, `SQRT(SUMPRODUCT(${amps},${amps},${shares}))`),
};
