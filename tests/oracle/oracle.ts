/**
 * An independent eye on the sheets: the figures of an ordinary station (every entry understood, every name known)
 * computed straight from the core, one run after the other. Nothing here knows of cells or formulas.
 */
import type { ConductorSize } from '../../src/core/size';
import type { StationContent } from '../../src/sheets/station/content';
import type { VerdictKey } from '../../src/sheets/station/verdicts';
import { runAmps } from './amps';
import { batteryOf, type BatteryFigures } from './battery';
import { daysOf, type Days, type DutyFigures } from './days';
import { faultsOf, heatOf, type Faults } from './faults';
import { from, NO_ANSWER, type Figure } from './figures';
import { protectorOf, type Protector } from './fuses';
import { houseOf } from './house';
import { rootOf, runsOf } from './runs';
import { verdictOf } from './verdict';
import { voltsAtLoads } from './volts';
import { wireOf } from './wires';

export interface OracleRun {
  readonly amps: number;
  readonly suggested: ConductorSize | typeof NO_ANSWER;
  readonly setBy: Figure<string>;
  readonly size: ConductorSize | typeof NO_ANSWER;
  readonly dropVolts: Figure;
  readonly dropShare: Figure;
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
  readonly verdict: ReadonlySet<VerdictKey>;
}

export interface OracleStation {
  readonly battery: BatteryFigures;
  readonly days: Days;
  readonly duty: readonly DutyFigures[];
  readonly runs: readonly OracleRun[];
}

export function oracle(content: StationContent): OracleStation {
  const house = houseOf(content);
  const runs = runsOf(content, house);
  const battery = batteryOf(content, runs, house);
  const wires = runs.map((run) => wireOf(run, house, runAmps(run)));
  const ohms = wires.map((wire) => wire.ohms);
  const fitting = wires.map((wire) => wire.fittingA);
  const full = voltsAtLoads(runs, house, battery.fullTerminal, ohms);
  const low = voltsAtLoads(runs, house, battery.lowTerminal, ohms);

  return {
    battery,
    ...daysOf(content),
    runs: runs.map((run, row): OracleRun => {
      const wire = wires[row]!;
      const amps = runAmps(run);
      const dropVolts = from(wire.ohms, (of) => amps * of);
      const fuse = protectorOf(run, fitting);
      const { size } = wire;
      const heat = size === NO_ANSWER ? undefined : heatOf(size, house, amps);
      const faults =
        size === NO_ANSWER || rootOf(run).fromPanel
          ? undefined
          : faultsOf(run, house, battery, ohms, size, fuse);
      return {
        amps,
        suggested: wire.suggested,
        setBy: wire.setBy,
        size,
        dropVolts,
        dropShare: from(dropVolts, (volts) => volts / run.volts),
        loadVolts: full[row]!.volts,
        lowVolts: low[row]!.volts,
        ampacityA: wire.ampacityA,
        fuseA: run.fused ? wire.fittingA : undefined,
        heatW: from(wire.ohms, (of) => amps ** 2 * of),
        protector: fuse,
        faults,
        steadyC: heat?.steadyC ?? NO_ANSWER,
        verdict: verdictOf({ run, amps, wire, low: low[row]!, fuse, faults, heat }),
      };
    }),
  };
}
