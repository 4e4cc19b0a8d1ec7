/** Steady temperature of one insulated conductor lying level in still air. */
import { ohmsPerMAt20C, resistanceRatio } from './conductor';
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

/** A temperature of the surface, and what follows from it. */
interface Balance {
  readonly surfaceC: number;
  readonly metalC: number;
  /** Watts per metre given off beyond those that the metal makes; below 0 it warms on. */
  readonly surplusWPerM: number;
}

/** A surface temperature in degC as a balance. */
type BalanceAt = (surfaceC: number) => Balance;

/** Watts per square metre and kelvin that a small cable in still air gives off, roughly; only where the search begins. */
const ROUGHLY_SHEDS_W_PER_M2_K = 15;
/** The balance is estimated to this and better, kelvin; what lies nearer to it is looked at. */
const ESTIMATED_K = 1e-5;
const MOST_ROUNDS = 12;

/** About where the surplus passes 0, by secants: they take a few balances where halving takes twenty. */
function estimateSurfaceC(at: BalanceAt, air: Balance, outsideM: number): number | undefined {
  let before = air;
  let surfaceC = air.surfaceC - air.surplusWPerM / (Math.PI * outsideM * ROUGHLY_SHEDS_W_PER_M2_K);
  for (let round = 0; round < MOST_ROUNDS; round += 1) {
    const here = at(Math.min(Math.max(surfaceC, air.surfaceC), RESISTANCE_LAW_MOST_C));
    const slope = (here.surplusWPerM - before.surplusWPerM) / (here.surfaceC - before.surfaceC);
    surfaceC = here.surfaceC - here.surplusWPerM / slope;
    if (Math.abs(surfaceC - here.surfaceC) < ESTIMATED_K) return surfaceC;
    before = here;
  }
  return undefined;
}

/** Halves the span between a surface too cool and one warm enough until the metal is settled; answers the warm one. */
function halve(at: BalanceAt, tooCool: Balance, warmEnough: Balance): Balance {
  let [cool, warm] = [tooCool, warmEnough];
  while (warm.metalC - cool.metalC > SETTLED_K) {
    const middle = at((cool.surfaceC + warm.surfaceC) / 2);
    if (middle.surplusWPerM >= 0) warm = middle;
    else cool = middle;
  }
  return warm;
}

/**
 * The same halving from the air to the end of the law, with the halves taken by an estimate as long as the metal cannot
 * be settled yet: so the answer does not depend on the estimate. Undefined where the estimate was wrong.
 */
function halveByEstimate(at: BalanceAt, airC: number, estimateC: number): Balance | undefined {
  let [coolC, warmC] = [airC, RESISTANCE_LAW_MOST_C];
  // The metal is never less apart than the surfaces.
  while (warmC - coolC > SETTLED_K) {
    const middleC = (coolC + warmC) / 2;
    const isWarm =
      Math.abs(middleC - estimateC) > ESTIMATED_K
        ? middleC > estimateC
        : at(middleC).surplusWPerM >= 0;
    if (isWarm) warmC = middleC;
    else coolC = middleC;
  }
  const [cool, warm] = [at(coolC), at(warmC)];
  return cool.surplusWPerM < 0 && warm.surplusWPerM >= 0 ? halve(at, cool, warm) : undefined;
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
  const at20CWPerM = amps ** 2 * ohmsPerMAt20C(size, material);

  const at: BalanceAt = (surfaceC) => {
    const shedWPerM =
      convectionWattsPerM(outsideM, surfaceC, ambientC) +
      radiationWattsPerM(outsideM, surfaceC, ambientC, INSULATION_EMISSIVITY);
    const metalC = surfaceC + shedWPerM * wallKmPerW;
    const madeWPerM = at20CWPerM * resistanceRatio(material, metalC);
    return { surfaceC, metalC, surplusWPerM: shedWPerM - madeWPerM };
  };

  const tooHot = () =>
    noAnswer(
      `${amps} A would heat ${formatSize(size)} beyond ${RESISTANCE_LAW_MOST_C} degC: take a thicker size or less current`,
    );
  // Shed heat grows faster than made heat is able to, so the surface that sheds all that is made is met once.
  const air = at(ambientC);
  const estimateC = estimateSurfaceC(at, air, outsideM);
  let settled = estimateC === undefined ? undefined : halveByEstimate(at, ambientC, estimateC);
  if (settled === undefined) {
    const hottest = at(RESISTANCE_LAW_MOST_C);
    if (hottest.surplusWPerM < 0) return tooHot();
    settled = halve(at, air, hottest);
  }
  return settled.metalC <= RESISTANCE_LAW_MOST_C ? settled.metalC : tooHot();
}
