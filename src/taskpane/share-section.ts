/** "Share a copy": the schedule in view as a workbook that computes without the add-in. */
import type { SheetHost } from '../hosts/sheet-host';
import { commandButton } from './command-button';
import { download, fileNameOf, XLSX_TYPE } from './download';
import { make } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';
import type { StationContent } from '../sheets/station/content';

const NO_SCHEDULE = 'The sheet in view is no run schedule. Select the sheet of one, then share it.';

/** The schedule in view with what feeds it. Rejects with a sentence where there is none. */
async function stationInView(host: SheetHost): Promise<StationContent> {
  const { stationOf } = await import('../lists/grids');
  const inView = await host.activeGrid();
  const station = inView === null ? undefined : stationOf(await host.allGrids(), inView.sheetName);
  if (station === undefined) throw new Error(NO_SCHEDULE);
  return station;
}

async function copyOf(station: StationContent): Promise<Uint8Array> {
  const { sharedFile } = await import('../hosts/xlsx/shared-file');
  return sharedFile(station);
}

const counted = (runs: number) => (runs === 1 ? '1 run' : `${runs} runs`);

export function shareSection(host: SheetHost): Section {
  const notice = makeNotice();

  const share = (hand: (file: Uint8Array, name: string) => Promise<string> | string) => {
    setBusy(true);
    notice.tell('Writing the copy…');
    const shared = async () => {
      const station = await stationInView(host);
      const told = await hand(await copyOf(station), fileNameOf(station.title, 'xlsx'));
      return `${told}: ${counted(station.runs.length)}.`;
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
      make('div', { class: 'loom-commands' }, ...buttons.map(({ element }) => element)),
      notice.element,
    ),
    stop() {
      // Nothing is listened to.
    },
  };
}
