/** One conductor: resistance and mass. */
import { sizeAreaMm2, type ConductorSize } from './size';
import { IEC_60228, type Iec60228Row } from './tables/iec-60228';
import { MATERIAL_CONSTANTS, type Material } from './tables/materials';

const M_PER_KM = 1000;

const LISTED_AREAS = new Map(IEC_60228.map((row) => [row.areaMm2, row]));

/** The row of an area that IEC 60228 lists; undefined for gauges and for other areas. */
export function listedRow(size: ConductorSize): Iec60228Row | undefined {
  return size.kind === 'mm2' ? LISTED_AREAS.get(size.areaMm2) : undefined;
}

/** Ohm per km that IEC 60228 allows for a listed area; undefined where it does not list the material. */
export function publishedOhmsPerKm(row: Iec60228Row, material: Material): number | undefined {
  return PUBLISHED[material](row);
}

const PUBLISHED: Readonly<Record<Material, (row: Iec60228Row) => number | undefined>> = {
  copper: (row) => row.plainCopper,
  'tinned copper': (row) => row.tinnedCopper,
  aluminium: (row) => row.aluminium,
  'copper-clad aluminium': () => undefined,
};

/**
 * Ohms per metre at 20 degC. A gauge: resistivity over the area of ASTM B258. An area that IEC 60228 lists: its
 * maximum (class 5; class 2 for aluminium); where the standard lists the area but not the material, its plain copper
 * maximum times the ratio of resistivities, since real strands hold less metal than the nominal area. Any other
 * area: resistivity over area.
 */
export function ohmsPerMAt20C(size: ConductorSize, material: Material): number {
  const { ohmMm2PerM } = MATERIAL_CONSTANTS[material];
  const row = listedRow(size);
  if (row === undefined) return ohmMm2PerM / sizeAreaMm2(size);
  const ohmsPerKm =
    publishedOhmsPerKm(row, material) ??
    (row.plainCopper * ohmMm2PerM) / MATERIAL_CONSTANTS.copper.ohmMm2PerM;
  return ohmsPerKm / M_PER_KM;
}

/** How many times its 20 degC resistance a material has at a conductor temperature: 1 + a (T - 20), IEC 60028. */
export function resistanceRatio(material: Material, tempC: number): number {
  return 1 + MATERIAL_CONSTANTS[material].perKelvin * (tempC - 20);
}

/** Ohms per metre of one conductor at its temperature in degC. */
export function ohmsPerM(size: ConductorSize, material: Material, tempC: number): number {
  return ohmsPerMAt20C(size, material) * resistanceRatio(material, tempC);
}

/** Kilograms of metal in one conductor of a length in metres: area x length x density. */
export function conductorMassKg(size: ConductorSize, lengthM: number, material: Material): number {
  return (sizeAreaMm2(size) * lengthM * MATERIAL_CONSTANTS[material].gramsPerCm3) / 1000;
}
