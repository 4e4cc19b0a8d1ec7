/**
 * An independent eye on the sheets: the figures of an ordinary station (nearly every entry understood, every name known)
 * computed straight from the core, one run after the other. Nothing here knows of cells or formulas.
 */
import type { ConductorSize } from '../../src/core/size';
import type { StationContent } from '../../src/sheets/station/content';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { leastFuseA, ownAmps, runAmps } from './amps';
import { batteryOf, isStated, type BatteryFigures } from './battery';
import { daysOf, type Days, type DutyFigures } from './days';
import { faultsOf, heatOf, type Faults } from './faults';
import { from, NO_ANSWER, type Figure } from './figures';
import { protectorOf, type Protector } from './fuses';
import { houseOf, type House } from './house';
import { mainFuseOf } from './main-fuse';
import { isOnBattery, pathOf, rootOf, runsOf, type Run } from './runs';
import { verdictOf } from './verdict';
import { voltsAtLoads } from './volts';
import { pathVolts, wiresOf } from './wires';

export interface OracleRun {
  /** Its volts or its target are blank: the row shows nothing but what is missing. */
  readonly isBlank: boolean;
  /** Says neither yes nor no of its own fuse: no figure of a fuse is expected of it. */
  readonly isFuseMisread: boolean;
  readonly isWatts: boolean;
  readonly hasOwnSize: boolean;
  /** A run of its path, itself among them, carries amps that are not known. */
  readonly isOnUnknown: boolean;
  /** One of those above it does. */
  readonly isBelowUnknown: boolean;
  /** A run on the battery does, wherever it is. */
  readonly isBesideUnknown: boolean;
  /** In a loop of feeders, or below one. */
  readonly isOfLoop: boolean;
  readonly amps: Figure;
  readonly leastFuseA: Figure;
  readonly suggested: ConductorSize | typeof NO_ANSWER;
  readonly setBy: Figure<string>;
  readonly size: ConductorSize | typeof NO_ANSWER;
  readonly dropVolts: Figure;
  readonly dropShare: Figure;
  readonly pathDrop: Figure;
  readonly loadVolts: Figure;
  readonly lowVolts: Figure;
  readonly ampacityA: Figure;
  /** Of its own; nothing for a run that leans on another's. */
  readonly fuseA: Figure | undefined;
  readonly heatW: Figure;
  readonly protector: Protector | undefined;
  /** None for a run on a panel, and for one that has no size. */
  readonly faults: Faults | undefined;
  readonly steadyC: Figure;
  /** Of a load in watts without minimum volts: terminal volts of the source when low less what the path may lose. */
  readonly mostAssumableVolts: number | undefined;
  /** Never fewer than half the source volts are assumed. */
  readonly floorVolts: number;
  readonly verdict: ReadonlySet<VerdictKey>;
}

export interface OracleStation {
  readonly battery: BatteryFigures;
  readonly days: Days;
  readonly duty: readonly DutyFigures[];
  readonly runs: readonly OracleRun[];
}

/** Volts that a load may lose: its target, or in each run of its path the target of that. */
function mayLose(run: Run, { countsToLoad }: House): number {
  const losing = countsToLoad ? [run] : pathOf(run);
  return losing.reduce((sum, { target }) => sum + run.volts * target, 0);
}

const openCircuit = ({ supply }: StationContent): Figure =>
  supply?.openCircuitVolts === undefined ? NO_ANSWER : Number(supply.openCircuitVolts);

/**
 * `assumed`: by row the fewest volts of a load in watts that does not say its minimum. The issue leaves open how they are
 * estimated before the sizes are known, so they are taken from the sheet and held to what they stand for (see comparison).
 */
export function oracle(content: StationContent, assumed: readonly number[]): OracleStation {
  const house = houseOf(content);
  const runs = runsOf(content, house);
  const own = runs.map((run) => ownAmps(run, assumed[run.row]!));
  const battery = batteryOf(content, runs, house, own);
  const wires = wiresOf(runs, house, own);
  const ohms = wires.map((wire) => wire.ohms);
  const fitting = wires.map((wire) => wire.fittingA);
  const full = voltsAtLoads(runs, house, battery, battery.fullTerminal, own, ohms);
  const low = voltsAtLoads(runs, house, battery, battery.lowTerminal, own, ohms);
  const fuses = runs.map((run) => protectorOf(run, house, fitting, content));
  const main = mainFuseOf(content, house, battery);
  const { days, duty } = daysOf(content);
  const isUnknown = (run: Run) => runAmps(run, own) === NO_ANSWER;

  return {
    battery,
    days,
    duty,
    runs: runs.map((run, row): OracleRun => {
      const wire = wires[row]!;
      const amps = runAmps(run, own);
      const dropVolts = from(amps, (flows) => from(wire.ohms, (of) => flows * of));
      const lost = pathVolts(run, own, wires);
      const fuse = fuses[row];
      const { size } = wire;
      const heat = size === NO_ANSWER || amps === NO_ANSWER ? undefined : heatOf(size, house, amps);
      const faults =
        size === NO_ANSWER || amps === NO_ANSWER || run.fromPanel
          ? undefined
          : faultsOf(run, house, battery, wires, size, fuse);
      const onBattery = isOnBattery(run, house);
      return {
        isBlank: run.isPanelBlank && run.standing !== 'tooDeep' && !run.isLoadMisread,
        isFuseMisread: run.isMisread && !run.isLoadMisread,
        isWatts: run.isWatts,
        hasOwnSize: run.ownSize !== undefined,
        isOnUnknown: pathOf(run).some(isUnknown),
        isBelowUnknown: pathOf(run).slice(1).some(isUnknown),
        isBesideUnknown: runs.some((each) => isOnBattery(each, house) && isUnknown(each)),
        isOfLoop: rootOf(run).standing === 'inLoop',
        amps,
        leastFuseA: leastFuseA(run, house, own),
        suggested: wire.suggested,
        setBy: wire.setBy,
        size,
        dropVolts,
        dropShare: from(dropVolts, (volts) => volts / run.volts),
        pathDrop: from(lost, (volts) => volts / run.volts),
        loadVolts: full[row]!.volts,
        lowVolts: low[row]!.volts,
        ampacityA: wire.ampacityA,
        fuseA: run.fused ? wire.fittingA : undefined,
        heatW: from(dropVolts, (volts) => from(amps, (flows) => flows * volts)),
        protector: fuse,
        faults,
        steadyC: heat?.steadyC ?? NO_ANSWER,
        mostAssumableVolts:
          run.isWatts && run.leastVolts === undefined && amps !== NO_ANSWER
            ? Math.min(
                run.volts,
                (onBattery
                  ? battery.lowTerminal - (own[row]!.rest * battery.milliohms) / 1000
                  : run.volts) - mayLose(run, house),
              )
            : undefined,
        floorVolts: run.volts / 2,
        verdict: verdictOf({
          run,
          house,
          battery,
          isBatteryStated: isStated(content),
          panel: {
            coldVolts: days.panelColdVolts ?? NO_ANSWER,
            openVolts: openCircuit(content),
          },
          amps,
          wire,
          pathVolts: lost,
          assumedVolts: assumed[row]!,
          low: low[row]!,
          fuse,
          above: pathOf(run)
            .slice(1)
            .flatMap((feeder) => (feeder.fused ? (fuses[feeder.row] ?? []) : [])),
          main,
          faults,
          heat: heat ?? { steadyC: NO_ANSWER, isTooHot: false },
        }),
      };
    }),
  };
}
