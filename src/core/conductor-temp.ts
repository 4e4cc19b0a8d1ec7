/** Steady temperature of one insulated conductor lying level in still air. */
import { ohmsPerM } from './conductor';
import { noAnswer, type Outcome } from './outcome';
import { formatSize, sizeAreaMm2, type ConductorSize } from './size';
import { convectionWattsPerM, radiationWattsPerM } from './still-air';
import { usualWallMm } from './tables/insulation-walls';
import { RESISTANCE_LAW_MOST_C, type Material } from './tables/materials';

/** Thermal resistivity of PVC 5 K m/W, IEC 60287-2-1 table 1, cables up to 3 kV (read where others reproduce it). */
const INSULATION_W_PER_M_K = 1 / 5;
/** Opaque plastic; thermographers' tables print 0.95, a little less is taken so that heat is not flattered. */
const INSULATION_EMISSIVITY = 0.9;
/** The answer lies within this of the balance, kelvin. */
const SETTLED_K = 0.001;

export interface StillAirCable {
  readonly size: ConductorSize;
  readonly material: Material;
  /** Surrounding air and walls. */
  readonly ambientC: number;
  /** Thickness of the insulation; left out, the usual wall of the size. */
  readonly insulationMm: number | undefined;
}

/** What the heat balance needs of the cable: conductor and insulation as round bodies. */
interface RoundCable {
  readonly outsideM: number;
  /** Kelvin between conductor and surface for each watt per metre. */
  readonly wallKmPerW: number;
}

/** The metal is taken as a solid round: strands make it wider, hence cooler, so this errs to the warm side. */
function roundCable({ size, insulationMm }: StillAirCable): RoundCable {
  const areaMm2 = sizeAreaMm2(size);
  const metalMm = Math.sqrt((4 / Math.PI) * areaMm2);
  const outsideMm = metalMm + 2 * (insulationMm ?? usualWallMm(areaMm2));
  return {
    outsideM: outsideMm / 1000,
    wallKmPerW: Math.log(outsideMm / metalMm) / (2 * Math.PI * INSULATION_W_PER_M_K),
  };
}

/**
 * Steady conductor temperature in degC at a current in amps: heat made in the metal at its own temperature equals heat
 * conducted through the insulation and given off its surface by natural convection (Churchill and Chu 1975) and
 * radiation. Solved to 0.01 K. One conductor alone, level, in still air at sea level, no sun: two side by side, a
 * bundle or a conduit run hotter. None where it would pass 300 degC, the end of the straight resistance law.
 */
export function conductorTempC(amps: number, cable: StillAirCable): Outcome<number> {
  const { size, material, ambientC } = cable;
  if (amps === 0) return ambientC;
  const { outsideM, wallKmPerW } = roundCable(cable);

  const at = (surfaceC: number) => {
    const shedWPerM =
      convectionWattsPerM(outsideM, surfaceC, ambientC) +
      radiationWattsPerM(outsideM, surfaceC, ambientC, INSULATION_EMISSIVITY);
    const metalC = surfaceC + shedWPerM * wallKmPerW;
    return { metalC, sheds: shedWPerM >= amps ** 2 * ohmsPerM(size, material, metalC) };
  };

  // Shed heat grows faster than made heat is able to, so the surface that sheds all that is made is met once.
  let tooCool = { surfaceC: ambientC, metalC: ambientC };
  let warmEnough = { surfaceC: RESISTANCE_LAW_MOST_C, ...at(RESISTANCE_LAW_MOST_C) };
  const tooHot = () =>
    noAnswer(
      `${amps} A would heat ${formatSize(size)} beyond ${RESISTANCE_LAW_MOST_C} degC: take a thicker size or less current`,
    );
  if (!warmEnough.sheds) return tooHot();
  while (warmEnough.metalC - tooCool.metalC > SETTLED_K) {
    const surfaceC = (tooCool.surfaceC + warmEnough.surfaceC) / 2;
    const middle = at(surfaceC);
    if (middle.sheds) warmEnough = { surfaceC, ...middle };
    else tooCool = { surfaceC, metalC: middle.metalC };
    if (tooCool.metalC > RESISTANCE_LAW_MOST_C) return tooHot();
  }
  return warmEnough.metalC <= RESISTANCE_LAW_MOST_C ? warmEnough.metalC : tooHot();
}
