/** The house rules of a station as numbers and names, blanks taken as the contract says. */
import type { Installed } from '../../src/core/ampacity';
import type { FuseLimit } from '../../src/core/fuse-limit';
import { toMetres, type LengthUnit } from '../../src/core/length';
import type { Series } from '../../src/core/size';
import type { Material } from '../../src/core/tables/materials';
import type { StationContent } from '../../src/sheets/station/content';

export interface House {
  readonly metresPerUnit: number;
  readonly volts: number;
  readonly target: number;
  /** The target counts from the source to the load; else in each run by itself. */
  readonly countsToLoad: boolean;
  readonly series: Series;
  readonly material: Material;
  readonly tempC: number;
  readonly insulationC: number;
  readonly installed: Installed;
  readonly isCraft: boolean;
  readonly ambientC: number;
  readonly conductors: number;
  readonly continuous: boolean;
  readonly fuseLimit: FuseLimit;
  /** Of a run with its own fuse that says nothing of its joints. */
  readonly jointMilliohms: number;
  /** Conductor before a short circuit, and what its insulation bears briefly. */
  readonly startC: number;
  readonly limitC: number;
  /** Kind of the fuses that name none. */
  readonly fuseKind: string;
  /** Milliohms of a tired battery as a multiple of the usual. */
  readonly weakTimes: number;
}

/** The rules of a new sheet. */
const USUAL = {
  unit: 'ft',
  volts: 12,
  target: 0.03,
  series: 'AWG',
  material: 'copper',
  insulationC: 75,
  installed: 'cable',
  conductors: 2,
  duty: 'continuous',
  counts: 'to the load',
  joints: 3,
};

export function houseOf({ rules, protection }: StationContent): House {
  const rule = { ...USUAL, ...rules } as typeof USUAL & {
    readonly ambientC?: number;
    readonly tempC?: number;
    readonly fuseLimit?: FuseLimit;
  };
  const ambientC = rule.ambientC ?? (rule.installed === 'engine space' ? 50 : 30);
  const isCraft = rule.installed === 'craft' || rule.installed === 'engine space';
  return {
    metresPerUnit: toMetres(1, rule.unit as LengthUnit),
    volts: rule.volts,
    target: rule.target,
    countsToLoad: rule.counts === 'to the load',
    series: rule.series as Series,
    material: rule.material as Material,
    tempC: rule.tempC ?? ambientC,
    insulationC: rule.insulationC,
    installed: rule.installed as Installed,
    isCraft,
    ambientC,
    conductors: rule.conductors,
    continuous: rule.duty === 'continuous',
    fuseLimit: rule.fuseLimit ?? (isCraft ? 'none' : 'NFPA 70 240.4(D)'),
    jointMilliohms: rule.joints,
    startC: Number(protection?.startC ?? 70),
    limitC: Number(protection?.limitC ?? 160),
    fuseKind: String(protection?.fuseKind ?? 'by rating'),
    weakTimes: Number(protection?.weakTimes ?? 2),
  };
}
