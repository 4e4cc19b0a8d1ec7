/** The drawing on its way into a sheet: on a sheet of its own, once, and with what was drawn written beside it. */
import { describe, expect, it } from 'vitest';
import type { Picture } from '../../src/hosts/sheet-host';
import { DRAWING_ROW, drawingArea, drawingName } from '../../src/sheets/drawing/layout';
import { newSchedule } from '../../src/sheets/new-schedule';
import type { SheetPlan } from '../../src/sheets/plan/plan';
import { scheduleNames } from '../../src/sheets/station/naming';
import { drawInView, printSentence, putInSheet } from '../../src/taskpane/draw-in-view';
import { openGrids } from '../lists/open-grids';
import { StandInHost } from './stand-in-host';

const NOTHING = { sheets: new Set<string>(), names: new Set<string>() };

/** A host whose workbook is what was there and what was inserted, a sheet of it in view. */
class OpenHost extends StandInHost {
  constructor(
    private readonly sheets: readonly SheetPlan[],
    private readonly inView = 'Run schedule',
  ) {
    super();
  }
  private get all() {
    return openGrids([...this.sheets, ...this.plans]);
  }
  override allGrids = () => Promise.resolve(this.all);
  override activeGrid = () =>
    Promise.resolve(this.all.find(({ sheetName }) => sheetName === this.inView)!);
  override taken = () =>
    Promise.resolve({
      sheets: new Set(this.sheets.map(({ name }) => name.toLowerCase())),
      names: new Set(
        this.sheets.flatMap(({ names }) => names.map(({ name }) => name.toLowerCase())),
      ),
    });
}

async function put(host: StandInHost) {
  const given: [SheetPlan, Picture][] = [];
  const sentence = await putInSheet(
    host,
    {
      put: (plan, picture) => {
        given.push([plan, picture]);
        return Promise.resolve();
      },
    },
    (svg) => Promise.resolve(`png of ${svg.length}`),
  );
  return { sentence, given };
}

describe('the picture for the sheet', () => {
  it('goes on a Drawing sheet that is added for it, below its head', async () => {
    const host = new OpenHost(newSchedule('demo', 'cells', NOTHING));
    const { sentence, given } = await put(host);
    expect(host.plans.map(({ name }) => name)).toEqual(['Drawing']);
    expect(sentence).toBe('The picture is on “Drawing”. It prints on 2 A4 pages, lying.');
    const [[plan, picture]] = given as [[SheetPlan, Picture]];
    expect(plan.name).toBe('Drawing');
    expect(plan.picture!.first.row).toBe(DRAWING_ROW.picture);
    expect(picture.title).toBe('River flood watch: runs: one-line diagram');
    expect(picture.description).toMatch(/^One-line diagram, 26 runs: 8 danger/);
    expect(picture.description.length).toBeLessThanOrEqual(2000);
    expect(picture.pngBase64).toMatch(/^png of \d{5}/);
    expect(host.typed).toEqual([]);
  });

  it('is drawn anew on the sheet that is there, which then says what was drawn', async () => {
    const names = scheduleNames();
    const sheets = newSchedule('demo', 'cells', NOTHING, ['drawing']);
    const host = new OpenHost(sheets);
    const { sentence, given } = await put(host);
    expect(host.plans).toEqual([]);
    expect(sentence).toMatch(/^The picture on “Drawing” was drawn anew\./);
    expect(given).toHaveLength(1);
    const [typed] = host.typed;
    expect(typed!.sheetName).toBe(drawingName(names));
    const drawn = drawingArea('drawn', { names, references: 'cells', rows: 26 });
    expect(typed!.cells[0]).toMatchObject({ row: drawn.row, column: drawn.column });
    expect(typed!.cells[0]!.content).toMatch(/^Hut trunk\|Distribution block\|/);
    expect(typed!.cells.filter(({ content }) => content !== '')).toHaveLength(26);
  });

  it('is none where no schedule is in view', async () => {
    const host = new OpenHost(newSchedule('demo', 'cells', NOTHING), 'House rules');
    await expect(put(host)).rejects.toThrow('no run schedule');
  });
});

describe('how the drawing prints', () => {
  it('is said in a sentence, with what to do where its type would be small', async () => {
    const { oneLine } = await drawInView(new OpenHost(newSchedule('demo', 'cells', NOTHING)));
    expect(printSentence({ ...oneLine, pages: 1 })).toBe('It prints on one A4 page, lying.');
    expect(printSentence({ ...oneLine, isShrunk: true, typePt: 6.123 })).toBe(
      'On A4 its type would be 6.1 pt: print it on A3, or join runs that have no branch between them.',
    );
  });
});
