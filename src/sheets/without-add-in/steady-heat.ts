/** The steady temperature of a run in a workbook without the add-in. */
import { CellError, type Cell, type ResultCell } from '../../functions/cell';
import { BAD_ENTRY, text } from '../plan/formula';
import { hasCurrent, there, type ProtectionReferences } from '../protection/formulas';
import { PROTECTION_FIGURES } from '../station/protection-words';

/** What a steady temperature was worked out from when the workbook was written, and what it came to. */
export interface SteadyAtWriting {
  readonly amps: ResultCell;
  readonly size: ResultCell;
  readonly airC: ResultCell;
  readonly material: Cell;
  readonly steady: ResultCell;
}

/**
 * The heat balance has no closed form, so the value of the writing stands for as long as what it was worked out from
 * stays as it was; after that the cell says that it is not computed.
 */
export function steadyAtWriting(
  row: ProtectionReferences,
  written: SteadyAtWriting | undefined,
): string {
  const otherwise = text(PROTECTION_FIGURES.notComputed);
  const value = written === undefined ? otherwise : asFormula(written, row, otherwise);
  return `IF(${hasCurrent(row)},${value},"")`;
}

function asFormula(
  { amps, size, airC, material, steady }: SteadyAtWriting,
  row: ProtectionReferences,
  otherwise: string,
): string {
  if (typeof amps !== 'number' || size instanceof CellError || typeof airC !== 'number') {
    return otherwise;
  }
  const value =
    steady instanceof CellError
      ? steady.code === '#N/A'
        ? 'NA()'
        : BAD_ENTRY
      : typeof steady === 'number'
        ? String(steady)
        : text(String(steady));
  const same = [
    `ABS(${there(row, 'runAmps')}-${amps})<=0.000001*${amps}`,
    `${there(row, 'size')}&""=${text(String(size))}`,
    `${row.protect.airC}=${airC}`,
    `${row.rule.material}&""=${text(String(material ?? ''))}`,
  ];
  return `IF(IFERROR(AND(${same.join(',')}),FALSE),${value},${otherwise})`;
}
