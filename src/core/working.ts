/** The worked calculation of a run, to be read out to someone who asks why: each number, where it comes from, its margin. */
import {
  bundlingShare,
  columnFor,
  METHODS,
  publishedAmps,
  publishedRow,
  shareInAmbient,
  type Installed,
} from './ampacity';
import { listedRow, ohmsPerMAt20C, publishedOhmsPerKm, resistanceRatio } from './conductor';
import { conductorsOf, lostVolts, runOhmsOf } from './drop';
import { fuseShare, smallestFuseFor } from './fuse';
import { fuseLimitA } from './fuse-limit';
import { targetVolts, type RunDemand } from './gauge';
import { atMost } from './limits';
import { isRefusal, type Outcome } from './outcome';
import { amount } from './sentence';
import { awg, formatSize, sizeAreaMm2, type ConductorSize } from './size';
import { FUSE_RATINGS, FUSE_RATINGS_SOURCE } from './tables/iso-8820-ratings';
import { MATERIAL_CONSTANTS } from './tables/materials';
import { SMALL_WIRES_EDITIONS } from './tables/nfpa70-240-4-d';
import { judgeRun, verdictOf, type RunFindings } from './verdict';

/** What was typed, told in up to six figures. */
const typed = (value: number, unit: string) => amount(value, unit, 6);
/** What was computed, in four. */
const computed = (value: number, unit: string) => amount(value, unit, 4);

/** A margin so small a share of its limit is none. */
const NO_MARGIN_SHARE = 1e-6;

/** How a number stands to the limit that it keeps or is over, in one unit. */
export function margin(value: number, limit: number, keeps: boolean, unit: string): string {
  if (!keeps) return `over it by ${amount(value - limit, unit)}`;
  return limit - value > NO_MARGIN_SHARE * limit
    ? `within it, ${amount(limit - value, unit)} to spare`
    : 'just within it';
}

/** An ampacity never told as more than it is, to a hundredth. */
function shownAmps(amps: number): string {
  const hundredths = amps * 100;
  const nearest = Math.round(hundredths);
  return `${(atMost(nearest, hundredths) ? nearest : Math.floor(hundredths)) / 100} A`;
}

function wireLine({ material, tempC }: RunDemand, size: ConductorSize, perM: number): string {
  const { ohmMm2PerM } = MATERIAL_CONSTANTS[material];
  const name = formatSize(size);
  const row = listedRow(size);
  const listed = row && publishedOhmsPerKm(row, material);
  const at20C = `${computed(ohmsPerMAt20C(size, material), 'ohm per m')} at 20 degC.`;
  const area = `${computed(sizeAreaMm2(size), 'mm2')}${size.kind === 'awg' ? ' (ASTM B258)' : ''}`;
  const basis =
    row === undefined
      ? `${name} ${material}, ${computed(ohmMm2PerM, 'ohm mm2 per m')} over ${area} is ${at20C}`
      : listed === undefined
        ? `${name} of plain copper may have ${row.plainCopper} ohm per km (IEC 60228, class 5); by the ratio of resistivities ${material} has ${at20C}`
        : `${name} ${material} may have ${listed} ohm per km (IEC 60228, class ${material === 'aluminium' ? 2 : 5}), ${at20C}`;
  const warm =
    tempC === 20
      ? ''
      : ` At ${typed(tempC, 'degC')} ${amount(resistanceRatio(material, tempC), 'times', 4)} that: ${computed(perM, 'ohm per m')}.`;
  return `Wire: ${basis}${warm}`;
}

function runLine(demand: RunDemand, length: string, perM: number, ohms: number): string {
  const { lengthM, jointMilliohms, returnMilliohms } = demand;
  const count = conductorsOf(demand);
  const metres = typed(lengthM, 'm');
  const oneWay = metres === length ? metres : `${metres} (${length})`;
  const parts = [
    `${count} conductor${count === 1 ? '' : 's'} x ${oneWay} x ${computed(perM, 'ohm per m')}`,
    ...(jointMilliohms === 0 ? [] : [`${typed(jointMilliohms / 1000, 'ohm')} of joints`]),
    ...(returnMilliohms === undefined
      ? []
      : [`${typed(returnMilliohms / 1000, 'ohm')} of chassis`]),
  ];
  return `Run: ${parts.join(' + ')} = ${computed(ohms, 'ohm')}.`;
}

/** Where the drop line goes on to hold the drop against its target. */
const HELD_TO_TARGET = ' The target of ';

function dropLine(demand: RunDemand, ohms: number, keeps: boolean): string {
  const { amps, volts, maxDrop } = demand;
  const lost = lostVolts(amps, ohms);
  const target = targetVolts(demand);
  const share = amount((100 * lost) / volts, '%');
  return `Drop: ${typed(amps, 'A')} x ${computed(ohms, 'ohm')} = ${computed(lost, 'V')}, ${share} of ${typed(volts, 'V')}.${HELD_TO_TARGET}${amount(100 * maxDrop, '%')} allows ${computed(target, 'V')}: ${margin(lost, target, keeps, 'V')}.`;
}

const INSTALLED_AS: Readonly<Record<Installed, string>> = {
  cable: 'in a cable or bundle',
  air: 'single conductors in free air',
  craft: 'single conductors in a craft',
  'engine space': 'single conductors in an engine space',
};

/** The row and the column that a size is judged by. */
function cellOf({ installed, material }: RunDemand, size: ConductorSize, column: number): string {
  const { table } = METHODS[installed];
  const row = publishedRow(table, material, size, column);
  const name = formatSize(size);
  const gauge = row === undefined ? name : formatSize(awg(row.gauge));
  const standsFor = gauge === name ? '' : ` (the thickest not thicker than ${name})`;
  const hotter =
    row?.isPrinted === false ? ', computed from a hotter one by NFPA 70 310.15(B)' : '';
  return `row ${gauge}${standsFor}, ${table.columnsC[column]!} degC column${hotter}`;
}

/** The shares that the corrections leave, those that take nothing off left out. */
function sharesOf({ installed, conductors }: RunDemand, columnC: number, airC: number): string {
  const { bundled, ambientSource } = METHODS[installed];
  const times = (share: number, why: string) =>
    share === 1 ? '' : ` x ${Number(share.toPrecision(4))} for ${why}`;
  return [
    times(shareInAmbient(installed, columnC, airC), `the air (${ambientSource})`),
    bundled ? times(bundlingShare(conductors), 'the bundle (NFPA 70 310.15(C)(1))') : '',
  ].join('');
}

function heatLine(demand: RunDemand, size: ConductorSize, found: RunFindings): Outcome<string> {
  const { amps, installed, material, insulationC, conductors } = demand;
  const { table, bundled, usualAmbientC } = METHODS[installed];
  const column = columnFor(table, insulationC);
  if (isRefusal(column)) return column;
  const published = publishedAmps(table, material, size, column);
  if (isRefusal(published)) return published;
  const airC = demand.ambientC ?? usualAmbientC;
  const together =
    bundled && conductors > 1 ? `, ${conductors} current-carrying conductors together` : '';
  const shares = sharesOf(demand, table.columnsC[column]!, airC);
  const corrected = shares === '' ? '' : `${shares} = ${shownAmps(found.ampacityA)}`;
  return `Heat: ${INSTALLED_AS[installed]}, air of ${typed(airC, 'degC')}${together}. ${table.title}, ${cellOf(demand, size, column)}: ${published} A${corrected}. ${typed(amps, 'A')} is ${margin(amps, found.ampacityA, found.keepsHeat, 'A')}.`;
}

const FUSE_HEAD = 'Fuse: ';

function fuseLine(demand: RunDemand, size: ConductorSize, found: RunFindings): string {
  const { amps, continuous, fuseLimit, material } = demand;
  const share = continuous
    ? 'the load may run for hours, so at least 125 % of it (NFPA 70 210.20)'
    : 'the load comes in short bursts, so at least all of it';
  const needed = `${FUSE_HEAD}${share}, ${typed(amps * fuseShare(continuous), 'A')}.`;
  const ratingA = smallestFuseFor(amps, continuous);
  if (isRefusal(ratingA)) {
    return `${needed} The largest standard rating is ${FUSE_RATINGS.at(-1)!.ratingA} A (ISO 8820): no fuse fits.`;
  }
  const limitA = fuseLimitA(fuseLimit, size, material);
  const rule = limitA === undefined ? '' : `, and ${fuseLimit} allows so small a wire ${limitA} A`;
  const fits = found.hasFuse ? `a fuse of ${ratingA} A fits` : 'no fuse fits';
  return `${needed} The next standard rating is ${ratingA} A (ISO 8820); the wire may carry ${shownAmps(found.ampacityA)}${rule}: ${fits}.`;
}

/** Editions, and what is from memory. */
function sourcesLine({ installed, material, fuseLimit }: RunDemand): string {
  const { table } = METHODS[installed];
  const { source, ampacityAs } = MATERIAL_CONSTANTS[material];
  return `Sources: ${[
    `${material}: ${source}`,
    `${table.title}: ${table.edition[ampacityAs]}`,
    `ratings: ${FUSE_RATINGS_SOURCE}`,
    ...(fuseLimit === 'none' ? [] : [`${fuseLimit}: ${SMALL_WIRES_EDITIONS}`]),
  ].join('; ')}.`;
}

/**
 * The worked calculation of a run of a size, as lines of text: what RUN_VERDICT answers, and how its limits come about. The
 * findings are those of judgeRun, the numbers those of the functions that it judges by. `length` is the length as it was
 * given, "12 ft". None where the size has no published ampacity to judge by.
 */
export function showWorking(
  demand: RunDemand,
  size: ConductorSize,
  length: string,
): Outcome<string> {
  const found = judgeRun(demand, size);
  if (isRefusal(found)) return found;
  const { amps, volts, material } = demand;
  const ohms = runOhmsOf(found.ohmsPerM, demand);
  const heat = heatLine(demand, size, found);
  if (isRefusal(heat)) return heat;
  return [
    `${typed(amps, 'A')} over ${length} of ${formatSize(size)} ${material} from ${typed(volts, 'V')}: ${verdictOf(found)}.`,
    wireLine(demand, size, found.ohmsPerM),
    runLine(demand, length, found.ohmsPerM, ohms),
    dropLine(demand, ohms, found.keepsDrop),
    heat,
    fuseLine(demand, size, found),
    sourcesLine(demand),
    'A help for planning: local codes and licensed practice go first.',
  ].join('\n');
}

/**
 * The lines of a worked calculation without what is said of the run by itself: for one that is judged by more than itself,
 * whose target may count from the source and whose fuse is for all that hangs on it.
 */
export function unjudgedLines(working: string): readonly string[] {
  return working
    .split('\n')
    .filter((line) => !line.startsWith(FUSE_HEAD))
    .map((line, at) => {
      const end = at === 0 ? line.lastIndexOf(': ') : line.indexOf(HELD_TO_TARGET);
      if (end < 0) return line;
      return at === 0 ? `${line.slice(0, end)}.` : line.slice(0, end);
    });
}
