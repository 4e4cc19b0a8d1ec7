/** The house rules of a station as numbers and names, blanks taken as the contract says. */
import type { Installed } from '../../src/core/ampacity';
import { toMetres, type LengthUnit } from '../../src/core/length';
import type { Series } from '../../src/core/size';
import type { Material } from '../../src/core/tables/materials';
import type { StationContent } from '../../src/sheets/station/content';

export interface House {
  readonly metresPerUnit: number;
  readonly volts: number;
  readonly target: number;
  readonly series: Series;
  readonly material: Material;
  readonly tempC: number;
  readonly insulationC: number;
  readonly installed: Installed;
  readonly ambientC: number;
  readonly conductors: number;
  readonly continuous: boolean;
  /** Conductor before a short circuit, and what its insulation bears briefly. */
  readonly startC: number;
  readonly limitC: number;
}

/** The rules of a new sheet. */
const USUAL = {
  unit: 'ft',
  volts: 12,
  target: 0.03,
  series: 'AWG',
  material: 'copper',
  tempC: 20,
  insulationC: 75,
  installed: 'cable',
  conductors: 2,
  duty: 'continuous',
};

export function houseOf({ rules, protection }: StationContent): House {
  const rule = { ...USUAL, ...rules } as typeof USUAL & { readonly ambientC?: number };
  return {
    metresPerUnit: toMetres(1, rule.unit as LengthUnit),
    volts: rule.volts,
    target: rule.target,
    series: rule.series as Series,
    material: rule.material as Material,
    tempC: rule.tempC,
    insulationC: rule.insulationC,
    installed: rule.installed as Installed,
    ambientC: rule.ambientC ?? (rule.installed === 'engine space' ? 50 : 30),
    conductors: rule.conductors,
    continuous: rule.duty === 'continuous',
    startC: Number(protection?.startC ?? 70),
    limitC: Number(protection?.limitC ?? 160),
  };
}
