/** "Drawing": the one-line diagram of the schedule in view, seen, saved, and put into the sheet. */
import type { SheetHost } from '../hosts/sheet-host';
import { calmly } from './calm';
import { commandButton } from './command-button';
import { download } from './download';
import { drawInView, printSentence, putInSheet, type DrawnInView } from './draw-in-view';
import { make, say } from './make';
import { makeNotice, sentenceOf } from './notice';
import { sectionElement, type Section } from './section';

const SVG_TYPE = 'image/svg+xml';
const DELAY_MS = 400;
const CHANGED = 'The schedule has changed since: draw it again.';

/** Elements from SVG of ours: parsed as a document, so that no text of a workbook turns into markup. */
function svgElement(svg: string): Node {
  const parsed = new DOMParser().parseFromString(svg, SVG_TYPE);
  return document.importNode(parsed.documentElement, true);
}

export function drawingSection(host: SheetHost): Section {
  const notice = makeNotice();
  const changed = make('p', { role: 'status', class: 'loom-status' });
  const sheet = make('div', {
    class: 'loom-drawing',
    tabindex: '0',
    role: 'group',
    'aria-label': 'One-line diagram; scroll to see all of it',
  });
  const dark = window.matchMedia('(prefers-color-scheme: dark)');

  let shown: { readonly drawn: DrawnInView; readonly grid: string } | undefined;
  const show = () => {
    sheet.hidden = shown === undefined;
    save.element.hidden = shown === undefined;
    sheet.replaceChildren(
      ...(shown === undefined ? [] : [svgElement(shown.drawn.svg(dark.matches))]),
    );
  };

  const work = (start: string, does: () => Promise<string>) => {
    for (const button of buttons) button.setBusy(true);
    notice.tell(start);
    does()
      .then(notice.tell, (fault: unknown) => {
        notice.warn(sentenceOf(fault));
      })
      .finally(() => {
        for (const button of buttons) button.setBusy(false);
        notice.reveal();
      });
  };

  const inView = async () => JSON.stringify((await host.view()).grid);
  const draw = commandButton('Draw the schedule in view', 'outline', () => {
    work('Drawing…', async () => {
      const grid = await inView();
      shown = { drawn: await drawInView(host), grid };
      say(changed, '');
      show();
      return printSentence(shown.drawn.oneLine);
    });
  });
  const save = commandButton('Save as SVG', 'outline', () => {
    const now = shown?.drawn;
    if (now === undefined) return;
    download(new TextEncoder().encode(now.svg(false)), now.fileName, SVG_TYPE);
    notice.tell(`Saved “${now.fileName}”.`);
  });
  const { pictures } = host;
  const put =
    pictures === undefined
      ? []
      : [
          commandButton('Put the picture in the sheet', 'outline', () => {
            work('Drawing…', () => putInSheet(host, pictures));
          }),
        ];
  const buttons = [draw, save, ...put];

  // A picture that is out of date must not look as if it were not.
  let stopped = false;
  const follow = calmly(async () => {
    if (shown === undefined) return;
    try {
      const grid = await inView();
      // Another sheet in view changes nothing of what was drawn.
      const isOther = grid === 'null' || nameIn(grid) !== nameIn(shown.grid);
      if (!stopped && !isOther) say(changed, grid === shown.grid ? '' : CHANGED);
    } catch {
      // What cannot be read is told by the section on the schedule in view.
    }
  }, DELAY_MS);
  const stopListening = host.onChange(follow.poke);
  dark.addEventListener('change', show);
  show();

  return {
    element: sectionElement(
      'drawing',
      'Drawing',
      make(
        'p',
        {},
        'A one-line diagram of the schedule in view: sources, fuses, runs and loads, for the lid of the box. Runs that are not ok stand out on a grey print as well.',
      ),
      make('div', { class: 'loom-commands' }, draw.element),
      changed,
      sheet,
      make('div', { class: 'loom-commands' }, save.element, ...put.map(({ element }) => element)),
      notice.element,
    ),
    stop() {
      stopped = true;
      stopListening();
      follow.stop();
      dark.removeEventListener('change', show);
    },
  };
}

const nameIn = (grid: string) => (JSON.parse(grid) as { sheetName?: string } | null)?.sheetName;
