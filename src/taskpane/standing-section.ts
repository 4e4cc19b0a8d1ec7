/** "Schedule in view": the runs of the active sheet by level and verdict, and the way to the worst. */
import type { Calculation, SheetHost } from '../hosts/sheet-host';
import type { SheetGrid } from '../sheets/plan/grid';
import { calmly } from './calm';
import { commandButton } from './command-button';
import { make, say } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';
import {
  calculationSentence,
  isAllOk,
  standingOf,
  standingSentence,
  unfilledSentence,
  type Standing,
} from './standing';
import { worstRunOf } from './worst-run';

/** Long enough to let a calculation of many cells settle, short enough to seem at once. */
const DELAY_MS = 250;

function countRows({ verdicts }: Extract<Standing, { kind: 'schedule' }>): HTMLElement[] {
  return verdicts.map(({ verdict, runs, level }) =>
    make(
      'li',
      { 'data-level': level },
      make('span', { class: 'loom-count' }, String(runs)),
      make('span', { class: 'loom-verdict' }, verdict),
    ),
  );
}

export function standingSection(host: SheetHost): Section {
  const summary = make('p', { role: 'status', class: 'loom-summary' });
  const counts = make('ul', { class: 'loom-counts', 'aria-label': 'Runs by verdict' });
  const reading = makeNotice();
  const unfilled = make('p', { role: 'status', class: 'loom-status' });
  const calculation = make('p', { role: 'status', class: 'loom-status' });
  const calculate = commandButton('Calculate now', 'outline', () => {
    calculate.setBusy(true);
    host
      .calculate()
      .then(follow.poke, (fault: unknown) => {
        reading.warn(sentenceOf(fault));
      })
      .finally(() => {
        calculate.setBusy(false);
      });
  });
  const found = makeNotice();
  const toWorst = commandButton('Go to the worst run', 'outline', () => {
    toWorst.setBusy(true);
    goToWorst()
      .then(found.tell, (fault: unknown) => {
        found.warn(sentenceOf(fault));
      })
      .finally(() => {
        toWorst.setBusy(false);
        found.reveal();
      });
  });

  /** The sheet is read anew, since it may have changed since it was counted. */
  async function goToWorst(): Promise<string> {
    const grid = await host.activeGrid();
    const worst = grid === null ? undefined : worstRunOf(grid);
    if (grid === null || worst === undefined) return 'Every run that has a verdict is ok.';
    await host.select(grid.sheetName, worst.area);
    return worst.sentence;
  }

  function showCalculation(grid: SheetGrid | null, state: Calculation): void {
    const told = grid === null ? '' : calculationSentence(state);
    say(calculation, told);
    calculate.element.hidden = told === '' || state !== 'manual';
  }

  let shown = '';
  function show(standing: Standing, calculating: Calculation): void {
    reading.clear();
    const sentence = standingSentence(standing, calculating);
    const state = JSON.stringify([standing, sentence]);
    if (state === shown) return;
    shown = state;
    say(summary, sentence);
    const isSchedule = standing.kind === 'schedule';
    counts.replaceChildren(...(isSchedule ? countRows(standing) : []));
    counts.hidden = counts.childElementCount === 0;
    say(unfilled, unfilledSentence(standing));
    toWorst.element.hidden = !isSchedule || isAllOk(standing);
    // What was found belongs to the figures as they were.
    found.clear();
  }

  let stopped = false;
  const follow = calmly(async () => {
    try {
      const { grid, calculation: state } = await host.view();
      if (stopped) return;
      show(standingOf(grid, state), state);
      showCalculation(grid, state);
    } catch (fault) {
      if (!stopped) reading.warn(sentenceOf(fault));
    }
  }, DELAY_MS);
  const stopListening = host.onChange(follow.poke);

  counts.hidden = true;
  toWorst.element.hidden = true;
  calculate.element.hidden = true;
  follow.poke();
  return {
    element: sectionElement(
      'standing',
      'Schedule in view',
      summary,
      counts,
      unfilled,
      calculation,
      calculate.element,
      reading.element,
      toWorst.element,
      found.element,
    ),
    stop() {
      stopped = true;
      stopListening();
      follow.stop();
    },
  };
}
