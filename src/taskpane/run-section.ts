/** "Runs": add one in a line, hear what the selected one comes to, carry a new name on, put them in order. */
import type { SheetHost } from '../hosts/sheet-host';
import { calmly } from './calm';
import { ORDERS, type OrderKey } from '../lists/row-order';
import { entriesFor } from '../lists/run-entries';
import { columnTicks } from './column-ticks';
import { commandButton } from './command-button';
import { make, say } from './make';
import { makeNotice, sentenceOf } from './notice';
import {
  addRun,
  isJudgedAsAdded,
  namesInView,
  putInOrder,
  renamedSince,
  renameThere,
  stillSays,
  repairSchedule,
  selectedSentence,
  type AddedRun,
  type Renamed,
  type RunNames,
} from './run-actions';
import { runWhyPart } from './run-why';
import { sectionElement, type Section } from './section';

const DELAY_MS = 300;
const EXAMPLE = 'Van HF, 22 A, 10 ft, from Van main, at least 11.7 V';

export function runSection(host: SheetHost): Section {
  const notice = makeNotice();
  const line = make('input', {
    type: 'text',
    id: 'loom-run-line',
    class: 'loom-line',
    placeholder: EXAMPLE,
    autocomplete: 'off',
  });
  const selected = make('p', { class: 'loom-selected', role: 'status' });
  const why = runWhyPart(host);
  let isBusy = false;
  /** The run that the notice tells of. */
  let added: AddedRun | undefined;

  const work = (start: string, does: () => Promise<string>) => {
    if (isBusy) return;
    isBusy = true;
    added = undefined;
    for (const button of [add, repair, rename, sort]) button.setBusy(true);
    notice.tell(start);
    does()
      .then(notice.tell, (fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        isBusy = false;
        for (const button of [add, repair, rename, sort]) button.setBusy(false);
        notice.reveal();
        follow.poke();
      });
  };

  const addTyped = () => {
    work('Adding the run…', async () => {
      added = await addRun(host, line.value);
      line.value = '';
      return `${added.understood} ${added.answer}`;
    });
  };
  const add = commandButton('Add the run', 'primary', addTyped);
  line.addEventListener('keydown', (event) => {
    if (event.key === 'Enter' && !event.isComposing) addTyped();
  });
  const repair = commandButton('Put missing formulas back', 'outline', () => {
    work('Putting formulas back…', () => repairSchedule(host));
  });

  const order = make(
    'select',
    { id: 'loom-order', class: 'loom-line' },
    ...Object.entries(ORDERS).map(([key, words]) => make('option', { value: key }, words)),
  );
  const sort = commandButton('Put the runs in order', 'outline', () => {
    work('Putting the runs in order…', () => putInOrder(host, order.value as OrderKey));
  });
  const ticks = columnTicks(host, (fault) => {
    notice.warn(sentenceOf(fault));
  });
  const more = make(
    'details',
    { class: 'loom-more' },
    make('summary', {}, 'Order, columns, repair'),
    make('label', { for: order.id }, 'Order of the runs'),
    order,
    make('div', { class: 'loom-commands' }, sort.element),
    ticks.element,
    make('div', { class: 'loom-commands' }, repair.element),
  );
  more.addEventListener('toggle', () => {
    follow.poke();
  });

  let offered: Renamed | undefined;
  const offer = make('p', { class: 'loom-status', role: 'status' });
  const rename = commandButton('Rename it there too', 'outline', () => {
    const renamed = offered;
    if (renamed === undefined) return;
    work('Renaming…', async () => {
      await renameThere(host, renamed);
      offerRename(undefined);
      return `“${renamed.before}” is “${renamed.after}” in ${renamed.cells.length + renamed.entries.length} more rows.`;
    });
  });
  const offerRename = (renamed: Renamed | undefined) => {
    offered = renamed;
    rename.element.hidden = renamed === undefined;
    say(
      offer,
      renamed === undefined
        ? ''
        : `“${renamed.before}” is now “${renamed.after}”; ${stillSays(renamed)}.`,
    );
  };

  let names: RunNames | undefined;
  let stopped = false;
  const follow = calmly(async () => {
    try {
      const now = await namesInView(host);
      const renamed = await renamedSince(host, names, now);
      const told = await selectedSentence(host);
      // What was said of a run when it was added is not to be read as what holds now.
      if (added !== undefined && !isBusy && !(await isJudgedAsAdded(host, added))) {
        notice.tell(added.understood);
        added = undefined;
      }
      if (stopped) return;
      names = now;
      // An offer stands until it is taken, or the old name or its rows are gone.
      const isStale = offered !== undefined && !(await stillNamed(host, offered));
      if (renamed !== undefined || isStale) offerRename(renamed);
      say(selected, told);
      await why.follow(told);
      if (more.open) await ticks.refresh();
    } catch {
      // What cannot be read is told by the section on the schedule in view; reasons of before must not stay.
      await why.follow('');
    }
  }, DELAY_MS);
  const stopListening = [host.onChange(follow.poke), host.edits.onSelection(follow.poke)];
  offerRename(undefined);
  follow.poke();

  return {
    element: sectionElement(
      'run',
      'Runs',
      make('label', { for: 'loom-run-line' }, 'Add a run in one line'),
      line,
      make('div', { class: 'loom-commands' }, add.element),
      notice.element,
      offer,
      rename.element,
      selected,
      why.element,
      more,
    ),
    stop() {
      stopped = true;
      for (const stop of stopListening) stop();
      follow.stop();
    },
  };
}

/** Whether rows are still fed from the old name. */
async function stillNamed(
  host: SheetHost,
  { before, cells, entries, sheetName }: Renamed,
): Promise<boolean> {
  const { grid } = await host.view();
  return (
    grid?.sheetName === sheetName &&
    (cells.some(({ row, column }) => String(grid.values[row]?.[column] ?? '').trim() === before) ||
      (entries.length > 0 && entriesFor(await host.allGrids(), sheetName, before).length > 0))
  );
}
