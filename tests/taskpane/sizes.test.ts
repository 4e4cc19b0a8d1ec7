/** Lightest sizes and sizes of one run over a spreadsheet in memory: where they are typed, and what is said. */
import { beforeEach, describe, expect, it } from 'vitest';
import type { Lightened } from '../../src/sheets/lighten';
import { newSchedule, scheduleSheets } from '../../src/sheets/new-schedule';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { columnOf, ROW } from '../../src/sheets/schedule/layout';
import { DEMO } from '../../src/sheets/station/demo';
import {
  compareSelected,
  NO_RUN_SELECTED,
  NOTHING_TO_COMPARE,
  takeSize,
  findLightest,
  takeLightest,
} from '../../src/taskpane/size-actions';
import { chartSentence, ticksTo } from '../../src/taskpane/drop-chart';
import { lightenedSentences, ruledOutLines } from '../../src/taskpane/lighten-words';
import { CHANGED_SINCE, NO_SCHEDULE_IN_VIEW } from '../../src/taskpane/open-sizes';
import { openGrids } from '../lists/open-grids';
import { StandInHost } from './stand-in-host';

const NOTHING = { sheets: new Set<string>(), names: new Set<string>() };
const SHEET = 'Run schedule';

/** A workbook open at its schedule. */
class OpenHost extends StandInHost {
  readonly grids;
  inView = SHEET;
  constructor(sheets: readonly SheetPlan[]) {
    super();
    this.grids = openGrids(sheets);
  }
  override allGrids = () => Promise.resolve(this.grids);
  override activeGrid = () =>
    Promise.resolve(this.grids.find(({ sheetName }) => sheetName === this.inView) ?? null);

  /** Types as a person does; nothing is calculated. */
  put(row: number, column: number, value: string | number) {
    const grid = this.grids.find(({ sheetName }) => sheetName === SHEET)!;
    grid.values[row]![column] = value;
    grid.computed[row]![column] = false;
  }
}

const rowOf = (name: string) => ROW.first + DEMO.runs.findIndex(({ run }) => run === name);

let host: OpenHost;
beforeEach(() => {
  host = new OpenHost(newSchedule('demo', 'cells', NOTHING));
});

describe('the lightest sizes', () => {
  it('are typed into “My wire” at once, in the rows of their runs', async () => {
    const rounds: number[] = [];
    const offer = await findLightest(host, true, (round) => rounds.push(round));
    expect(rounds[0]).toBe(1);
    expect(host.typed).toEqual([]);
    expect(await takeLightest(host, offer)).toBe(
      'Written into 1 cell of “My wire” on “Run schedule”. Undo takes them back.',
    );
    expect(host.typed).toEqual([
      {
        sheetName: SHEET,
        cells: [{ row: rowOf('Bench lamp'), column: columnOf('ownSize'), content: '18 AWG' }],
      },
    ]);
  });

  it('find their rows where empty ones stand between the runs', async () => {
    const { runs } = DEMO;
    const spaced = { ...DEMO, runs: [runs[0]!, {}, {}, ...runs.slice(1)] };
    host = new OpenHost(scheduleSheets(spaced, 'cells', NOTHING));
    await takeLightest(host, await findLightest(host, true));
    expect(host.typed[0]!.cells.map(({ row }) => row)).toEqual([rowOf('Bench lamp') + 2]);
  });

  it('are not written into a schedule that has changed since', async () => {
    const offer = await findLightest(host, true);
    host.put(rowOf('Bench lamp'), columnOf('length'), 90);
    await expect(takeLightest(host, offer)).rejects.toThrow(CHANGED_SINCE);
    expect(host.typed).toEqual([]);
  });

  it('are none where no schedule is in view', async () => {
    host.inView = 'Supply';
    await expect(findLightest(host, false)).rejects.toThrow(NO_SCHEDULE_IN_VIEW);
  });
});

describe('what is said of them', () => {
  const wire = (name: string, kg: number, cost?: number) => ({ name, wireOhms: 1, kg, cost });
  const found: Lightened = {
    aim: 'money',
    whyMetal: '',
    changes: [{ run: 1, called: 'Radio', now: wire('8 AWG', 2, 90), then: wire('6 AWG', 2.5, 40) }],
    served: [],
    typed: [
      { run: 0, size: '4 AWG' },
      { run: 1, size: '6 AWG' },
    ],
    now: { kg: 10, cost: 200, unpriced: 1 },
    then: { kg: 10.5, cost: 150, unpriced: 1 },
    mostAboveBest: 0.25,
    ruledOut: [{ called: 'Lamp', size: '18 AWG', words: 'too long without a fuse' }],
    left: [{ runs: [3, 4], why: 'Far: length missing' }],
    values: undefined as never,
  };

  it('names both totals, how sure it is, and what was left', () => {
    expect(lightenedSentences(found, 2)).toEqual([
      'Metal: 10 kg now, 10.5 kg then: 0.5 kg (5 %) more.',
      'Cost of the wire: 200.00 now, 150.00 then: 50.00 (25 %) less.',
      'Drop, volts, heat and fuses alone might allow up to 20 % less money; sizes that a verdict ruled out are listed below.',
      'The least money counts, by the prices of the Wire list.',
      'The cost leaves out 1 run without a price.',
      'Sizes that you chose were kept in 2 runs.',
      '“My wire” is written in 2 runs, since the sizes of a path hold together: in the others as suggested now.',
      'Left as they are: Far: length missing, with 1 more on its branch.',
    ]);
    expect(ruledOutLines(found)).toEqual(['Lamp in 18 AWG: too long without a fuse']);
  });

  it('says first which runs get a wire that had none, and what else is wrong with them', () => {
    const words = ['fuse may not interrupt this fault'];
    const served = [
      { called: 'Trunk', words },
      { called: 'Radio', words },
    ];
    const [first, second] = lightenedSentences({ ...found, served }, 0);
    expect(first).toBe(
      'Trunk and Radio have no wire now: shared out run by run, the volts do not reach. These sizes together serve them; their metal is not among that of now.',
    );
    expect(second).toBe('Then said of them: fuse may not interrupt this fault.');
  });

  it('says where nothing lighter exists', () => {
    const none = { ...found, aim: 'metal', changes: [], typed: [], left: [], mostAboveBest: 0 };
    expect(lightenedSentences(none as Lightened, 0)).toEqual([
      'The sizes in use stay: 10 kg of metal, and nothing lighter was found.',
      'No lighter sizes of the series keep drop, volts, heat and fuses.',
    ]);
    expect(lightenedSentences(none as Lightened, 3)).toContain(
      'No lighter sizes of the series keep drop, volts, heat and fuses beside those that you chose.',
    );
  });
});

describe('sizes of the selected run', () => {
  const select = (row: number) => {
    host.selectedCell = { sheetName: SHEET, row, column: 0 };
  };

  it('are compared, and one is typed by its click', async () => {
    select(rowOf('Van set A'));
    const compared = await compareSelected(host);
    expect(compared.found.called).toBe('Van set A');
    expect(await takeSize(host, compared, '8 AWG')).toBe(
      '“Van set A” has 8 AWG in “My wire” now. Undo takes it back.',
    );
    expect(host.typed).toEqual([
      {
        sheetName: SHEET,
        cells: [{ row: rowOf('Van set A'), column: columnOf('ownSize'), content: '8 AWG' }],
      },
    ]);
    host.put(rowOf('Van set A'), columnOf('peak'), 30);
    await expect(takeSize(host, compared, '6 AWG')).rejects.toThrow(CHANGED_SINCE);
  });

  it('are not where no run is selected, or it cannot be computed', async () => {
    await expect(compareSelected(host)).rejects.toThrow(NO_RUN_SELECTED);
    select(0);
    await expect(compareSelected(host)).rejects.toThrow(NO_RUN_SELECTED);
    select(rowOf('Van set A'));
    host.put(rowOf('Van set A'), columnOf('length'), 'far');
    await expect(compareSelected(host)).rejects.toThrow(NOTHING_TO_COMPARE);
  });
});

describe('the chart', () => {
  const chart = {
    oneWay: 10,
    unit: 'ft',
    at0: 0.01,
    target: 0.03,
    lines: [{ name: '10 AWG', perLength: 0.001 }],
  };

  it('is told in a sentence', () => {
    expect(chartSentence(chart, '10 AWG')).toBe(
      '10 AWG: 2 % at 10 ft; the target of 3 % is reached at 20 ft.',
    );
    expect(chartSentence({ ...chart, at0: 0.04 }, '10 AWG')).toBe(
      '10 AWG: 5 % at 10 ft; the target of 3 % is lost before it begins.',
    );
    const idle = { ...chart, lines: [{ name: '10 AWG', perLength: 0 }] };
    expect(chartSentence(idle, '10 AWG')).toBe('10 AWG: 1 % at 10 ft; it carries no current.');
  });

  it('has round figures at its axes', () => {
    expect(ticksTo(0.083)).toEqual([0, 0.02, 0.04, 0.06, 0.08]);
    expect(ticksTo(15)).toEqual([0, 5, 10, 15]);
    expect(ticksTo(6)).toEqual([0, 2, 4, 6]);
  });
});
