/** "New schedule": adds a schedule sheet to the workbook. */
import type { SheetHost } from '../hosts/sheet-host';
import { addExtras } from './add-extras';
import { commandButton } from './command-button';
import { extraTicks } from './extra-ticks';
import { inserting } from './inserting';
import { insertSchedule } from './insertion';
import { make } from './make';
import { makeNotice } from './notice';
import { sectionElement, type Section } from './section';
import { followingKeys } from '../sheets/station/extras';
import type { ScheduleFilling } from '../sheets/new-schedule';

export function newScheduleSection(host: SheetHost): Section {
  const notice = makeNotice();
  const insert = (filling: ScheduleFilling) => {
    insertion.run('Inserting a schedule…', (watch) =>
      insertSchedule(host, filling, ticks.wanted(), watch),
    );
  };
  const buttons = [
    commandButton('Insert the demonstration', 'primary', () => {
      insert('demo');
    }),
    commandButton('Insert an empty schedule', 'outline', () => {
      insert('empty');
    }),
  ];
  const toAdd = commandButton('Add these sheets to the schedule in view', 'outline', () => {
    insertion.run('Adding the sheets…', (watch) => addExtras(host, ticks.wanted(), watch));
  });
  const ticks = extraTicks(
    'new',
    'With these sheets',
    followingKeys({ hasCharts: host.hasCharts === true }),
    make('div', { class: 'loom-commands' }, toAdd.element),
  );
  const setBusy = (busy: boolean) => {
    for (const button of [...buttons, toAdd]) button.setBusy(busy);
  };
  const insertion = inserting(notice, setBusy);

  return {
    element: sectionElement(
      'new-schedule',
      'New schedule',
      make(
        'p',
        {},
        'A sheet with one row per cable run: wire, drop, fuse and a verdict. It goes on a sheet of its own; nothing in the workbook is overwritten.',
      ),
      make('div', { class: 'loom-commands' }, ...buttons.map(({ element }) => element)),
      ticks.element,
      notice.element,
      insertion.element,
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
