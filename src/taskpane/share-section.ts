/** "Share a copy": the schedule in view as a workbook that computes without the add-in. */
import type { SheetHost } from '../hosts/sheet-host';
import { EXTRA_KEYS } from '../sheets/station/extras';
import { commandButton } from './command-button';
import { copyInView } from './copy-in-view';
import { extraTicks } from './extra-ticks';
import { download, XLSX_TYPE } from './download';
import { make } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';

export function shareSection(host: SheetHost): Section {
  const notice = makeNotice();
  const ticks = extraTicks('share', 'With these sheets', EXTRA_KEYS);

  const share = (hand: (file: Uint8Array, name: string) => Promise<string> | string) => {
    setBusy(true);
    notice.tell('Writing the copy…');
    const shared = async () => {
      const { file, name, counted } = await copyInView(host, ticks.wanted());
      return `${await hand(file, name)}: ${counted}.`;
    };
    shared()
      .then(notice.tell, (fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        setBusy(false);
        notice.reveal();
      });
  };

  const toDownload = commandButton('Download a copy (.xlsx)', 'outline', () => {
    share((file, name) => {
      download(file, name, XLSX_TYPE);
      return `Downloaded “${name}”`;
    });
  });
  const open = host.openWorkbook;
  const toOpen =
    open === undefined
      ? []
      : [
          commandButton('Open a copy as a new workbook', 'outline', () => {
            share(async (file) => {
              await open(file);
              return 'Opened as a new workbook';
            });
          }),
        ];
  const buttons = [...toOpen, toDownload];
  const setBusy = (busy: boolean) => {
    for (const button of buttons) button.setBusy(busy);
  };

  return {
    element: sectionElement(
      'share',
      'Share a copy',
      make(
        'p',
        {},
        'A workbook of the schedule in view for people without this add-in. It computes in any spreadsheet: sizes, fuses and verdicts follow what is typed into it.',
      ),
      ticks.element,
      make('div', { class: 'loom-commands' }, ...buttons.map(({ element }) => element)),
      notice.element,
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
