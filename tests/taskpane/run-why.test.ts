/** "Why?" of the selected run over a spreadsheet in memory: which run it tells of, and when it tells nothing. */
import { beforeEach, describe, expect, it } from 'vitest';
import { newSchedule } from '../../src/sheets/new-schedule';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { DEMO } from '../../src/sheets/station/demo';
import { OTHER_FIGURES, STILL_CALCULATING, whySelected } from '../../src/taskpane/why-text';
import { openGrids } from '../lists/open-grids';
import { StandInHost } from './stand-in-host';

const SHEET = 'Run schedule';
const NOTHING = { sheets: new Set<string>(), names: new Set<string>() };
const rowOf = (name: string) => ROW.first + DEMO.runs.findIndex(({ run }) => run === name);

/** A workbook open at its schedule, a run of it selected. */
class OpenHost extends StandInHost {
  readonly grids = openGrids(newSchedule('demo', 'cells', NOTHING));
  override allGrids = () => Promise.resolve(this.grids);
  override activeGrid = () => Promise.resolve(this.schedule);
  override view = () => Promise.resolve({ grid: this.schedule, calculation: this.calculation });

  get schedule() {
    return this.grids.find(({ sheetName }) => sheetName === SHEET)!;
  }

  choose(row: number, sheetName = SHEET) {
    this.selectedCell = { sheetName, row, column: 0 };
  }

  /** Types as a person does; nothing is calculated. */
  put(row: number, column: number, value: string | number) {
    this.schedule.values[row]![column] = value;
    this.schedule.computed[row]![column] = false;
  }
}

let host: OpenHost;
beforeEach(() => {
  host = new OpenHost();
});

describe('why', () => {
  it('is told of the selected run, and of another when that is selected', async () => {
    host.choose(rowOf('Relay set'));
    const relay = await whySelected(host);
    expect(relay.called).toBe('Relay set');
    expect(relay.said.map(({ word }) => word)).toEqual(['too few volts with the battery low']);
    expect(relay.working[0]).toBe('14 A over 5 ft of 12 AWG copper from 12.6 V.');
    host.choose(rowOf('Bench set'));
    expect((await whySelected(host)).working[0]).toMatch(/^20 A over 4 ft of 10 AWG /);
  });

  it('is told of nothing where no run of the schedule in view is selected', async () => {
    await expect(whySelected(host)).rejects.toThrow('No run is selected.');
    host.choose(0);
    await expect(whySelected(host)).rejects.toThrow('No run is selected.');
    host.choose(rowOf('Relay set'), 'Supply');
    await expect(whySelected(host)).rejects.toThrow('No run is selected.');
  });

  it('waits for figures that are still to come', async () => {
    host.choose(rowOf('Relay set'));
    host.calculation = 'under way';
    await expect(whySelected(host)).rejects.toThrow(STILL_CALCULATING);
  });

  it('is not told of figures that are not those of the entries', async () => {
    host.choose(rowOf('Relay set'));
    // Enough for the radio: the verdict that stands there is one of before.
    host.put(rowOf('Relay set'), columnOf('leastVolts'), 10);
    await expect(whySelected(host)).rejects.toThrow(OTHER_FIGURES);
  });
});
