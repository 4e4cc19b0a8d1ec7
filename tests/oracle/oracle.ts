/**
 * An independent eye on the sheets: the figures of an ordinary station (every entry understood, every name known)
 * computed straight from the core, one run after the other. Nothing here knows of cells or formulas.
 */
import { formatSize, type ConductorSize } from '../../src/core/size';
import type { StationContent } from '../../src/sheets/station/content';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { leastFuseA, ownAmps, runAmps } from './amps';
import { batteryOf, isStated, type BatteryFigures } from './battery';
import { daysOf, type Days, type DutyFigures } from './days';
import { faultsOf, heatOf, type Faults } from './faults';
import { from, NO_ANSWER, type Figure } from './figures';
import { protectorOf, type Protector } from './fuses';
import { houseOf } from './house';
import { mainFuseOf } from './main-fuse';
import { isOnBattery, pathOf, rootOf, runsOf } from './runs';
import { verdictOf } from './verdict';
import { voltsAtLoads } from './volts';
import { pathVolts, wiresOf } from './wires';

export interface OracleRun {
  readonly amps: number;
  readonly leastFuseA: number;
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
  /** Share of the source volts that the run may lose, and what a rounding of volts per ampere and weight makes of it. */
  readonly room: Figure;
  readonly roomPerRounding: number;
  readonly suggestedText: string | undefined;
  readonly feedsOthers: boolean;
  /** A fuse upstream protects it, of which something is said in one of the two rows. */
  readonly leansOnOtherFigures: boolean;
  /** Of a load in watts without minimum volts: terminal volts of the source when low less its target. */
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

  return {
    battery,
    days,
    duty,
    runs: runs.map((run, row): OracleRun => {
      const wire = wires[row]!;
      const amps = runAmps(run, own);
      const dropVolts = from(wire.ohms, (of) => amps * of);
      const lost = pathVolts(run, own, wires);
      const fuse = fuses[row];
      const { size } = wire;
      const heat = size === NO_ANSWER ? undefined : heatOf(size, house, amps);
      const faults =
        size === NO_ANSWER || rootOf(run).fromPanel
          ? undefined
          : faultsOf(run, house, battery, wires, size, fuse);
      const onBattery = isOnBattery(run, house);
      const target = run.volts * run.target;
      const { suggested } = wire;
      const saidOf = (at: number) => content.protection?.fuses?.[at] ?? {};
      const said = [row, fuse?.row ?? row].map(saidOf);
      return {
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
        heatW: from(wire.ohms, (of) => amps ** 2 * of),
        protector: fuse,
        faults,
        steadyC: heat?.steadyC ?? NO_ANSWER,
        room: from(wire.allowedOhms, (of) => ((of + run.jointMilliohms / 1000) * amps) / run.volts),
        roomPerRounding: ((run.lengthM / house.metresPerUnit) * Math.sqrt(amps) * amps) / run.volts,
        suggestedText: suggested === NO_ANSWER ? undefined : formatSize(suggested),
        feedsOthers: run.feeds.length > 0,
        leansOnOtherFigures:
          fuse !== undefined &&
          !fuse.isOwn &&
          said.some(({ kind, i2t }) => kind !== undefined || i2t !== undefined),
        mostAssumableVolts:
          run.isWatts && run.leastVolts === undefined
            ? (onBattery
                ? battery.lowTerminal - (own[row]!.rest * battery.milliohms) / 1000
                : run.volts) - target
            : undefined,
        floorVolts: run.volts / 2,
        verdict: verdictOf({
          run,
          house,
          battery,
          isBatteryStated: isStated(content),
          panelColdVolts: days.panelColdVolts,
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
