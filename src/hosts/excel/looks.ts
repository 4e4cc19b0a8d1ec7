/**
 * Everything that is not content: looks, entries, highlights, notes, page. Each topic stands alone and may be made twice,
 * so that what Excel refuses can be told by its name and tried again without the rest. Only highlights and charts add up:
 * what was made of them has to go before they are made again.
 */
import { area, type Area } from '../../sheets/plan/area';
import { columnWidthPt } from '../../sheets/plan/column-width';
import type { Block, CellStyle, SheetPlan } from '../../sheets/plan/plan';
import type { ChartPlan } from '../../sheets/plan/chart';
import { chartStep } from './charts';
import { applyEntry, applyNote } from './entries';
import { applyHighlight } from './highlights';
import { placesTogether, stretches } from '../../sheets/plan/stretches';
import { freeze, pageCalls, setUpPage } from './page';
import { rangeOf } from './range-of';
import { CALL_BYTES, type Placed, type Step } from './step';
import { applyStyle, edgesOf } from './styles';

/** A quiet table style; the plan's own fills and lines lie over it. */
const TABLE_STYLE = 'TableStyleLight1';

/** A part of the looks of one sheet. */
export interface Look extends Placed {
  /** The formula of a highlight: made twice, it would be there twice. */
  readonly highlight?: string;
  /** The same of a chart. */
  readonly chart?: ChartPlan;
  /** What is missing where it fails, such as "the print set-up of “Supply”". */
  readonly what: string;
}

interface LookStep extends Step {
  readonly highlight?: string;
  readonly chart?: ChartPlan;
}

interface Topic {
  readonly what: string;
  readonly steps: readonly LookStep[];
}

/** The parts of a style that are looks; a number format is content. */
const PARTS = [
  'bold',
  'italic',
  'fontColour',
  'fontSizePt',
  'fill',
  'align',
  'wrap',
  'border',
] as const satisfies readonly (keyof CellStyle)[];

/** Blocks side by side of the same rows and with the same part of a style become one: a table has dozens of such columns. */
function joined(
  blocks: readonly Block[],
  part: (typeof PARTS)[number],
): readonly { readonly area: Area; readonly style: CellStyle }[] {
  const looks: { area: Area; style: CellStyle }[] = [];
  for (const { area: of, style } of blocks) {
    const look = style?.[part];
    if (look === undefined) continue;
    const last = looks.at(-1);
    const isBeside =
      last?.style[part] === look &&
      last.area.row === of.row &&
      last.area.rows === of.rows &&
      last.area.column + last.area.columns === of.column;
    if (isBeside) last.area = { ...last.area, columns: last.area.columns + of.columns };
    else looks.push({ area: of, style: { [part]: look } });
  }
  return looks;
}

function styleSteps({ blocks }: SheetPlan): readonly Step[] {
  return PARTS.flatMap((part) =>
    joined(blocks, part).map(({ area: of, style }): Step => {
      const lines = style.border === undefined ? 0 : edgesOf(style.border, of).length;
      return {
        bytes: (2 + 3 * lines) * CALL_BYTES,
        draw: (sheet) => {
          applyStyle(rangeOf(sheet, of).format, of, style);
        },
      };
    }),
  );
}

function tableLookSteps({ table }: SheetPlan): readonly Step[] {
  if (table === undefined) return [];
  return [
    {
      bytes: 3 * CALL_BYTES,
      draw: (sheet) => {
        const drawn = sheet.tables.getItem(table.name);
        drawn.style = TABLE_STYLE;
        // Grey bands would look like highlights on a grey print.
        drawn.showBandedRows = false;
      },
    },
  ];
}

function entrySteps({ entries }: SheetPlan): readonly Step[] {
  return entries.map((entry) => ({
    bytes: 6 * CALL_BYTES + 2 * entry.prompt.length,
    draw: (sheet) => {
      applyEntry(rangeOf(sheet, entry.area), entry);
    },
  }));
}

/** A cell has one rule with one prompt, so a note on a cell of an entry would take the entry's rule away. */
function noteSteps({ entries, notes }: SheetPlan): readonly Step[] {
  const key = ({ row, column }: { row: number; column: number }) => `${row},${column}`;
  const taken = new Set(entries.map((entry) => key(entry.area)));
  return notes
    .filter((note) => !taken.has(key(note.area)))
    .map((note) => ({
      bytes: 3 * CALL_BYTES + note.text.length,
      draw: (sheet) => {
        applyNote(rangeOf(sheet, note.area), note);
      },
    }));
}

/** Excel puts each new rule on top, and the plan's first is to win. */
function highlightSteps({ highlights }: SheetPlan): readonly LookStep[] {
  return [...highlights].reverse().map((highlight) => ({
    bytes: 7 * CALL_BYTES + highlight.formula.length,
    highlight: highlight.formula,
    draw: (sheet) => {
      applyHighlight(rangeOf(sheet, highlight.area), highlight);
    },
  }));
}

function sizeSteps(plan: SheetPlan): readonly Step[] {
  const { columnWidths, rowHeightsPt = {}, hiddenColumns = [] } = plan;
  const rows = Object.entries(rowHeightsPt).map(([row, height]) => [Number(row), height] as const);
  return [
    ...[...stretches(columnWidths.entries())].map(({ first, count, measure }) => ({
      bytes: 2 * CALL_BYTES,
      draw: (sheet: Excel.Worksheet) => {
        rangeOf(sheet, area(0, first, 1, count)).format.columnWidth = columnWidthPt(measure);
      },
    })),
    ...placesTogether(hiddenColumns).map(({ first, count }) => ({
      bytes: 2 * CALL_BYTES,
      draw: (sheet: Excel.Worksheet) => {
        rangeOf(sheet, area(0, first, 1, count)).columnHidden = true;
      },
    })),
    ...[...stretches(rows.sort(([one], [other]) => one - other))].map(
      ({ first, count, measure }) => ({
        bytes: 2 * CALL_BYTES,
        draw: (sheet: Excel.Worksheet) => {
          rangeOf(sheet, area(first, 0, count, 1)).format.rowHeight = measure;
        },
      }),
    ),
  ];
}

function chartSteps({ chart }: SheetPlan): readonly LookStep[] {
  return chart === undefined ? [] : [{ ...chartStep(chart), chart }];
}

function topics(plan: SheetPlan): readonly Topic[] {
  return [
    { what: 'colours, fonts and lines', steps: styleSteps(plan) },
    { what: 'style of the table', steps: tableLookSteps(plan) },
    { what: 'rules of what may be typed', steps: entrySteps(plan) },
    { what: 'notes at the headings', steps: noteSteps(plan) },
    { what: 'highlights', steps: highlightSteps(plan) },
    { what: 'widths and heights', steps: sizeSteps(plan) },
    {
      what: 'rows and columns that stay in view',
      steps: [
        {
          bytes: 3 * CALL_BYTES,
          draw: (sheet) => {
            freeze(sheet, plan);
          },
        },
      ],
    },
    {
      what: 'print set-up',
      steps: [
        {
          bytes: pageCalls(plan) * CALL_BYTES + plan.print.footer.length,
          draw: (sheet) => {
            setUpPage(sheet, plan);
          },
        },
      ],
    },
    { what: 'chart', steps: chartSteps(plan) },
  ];
}

/** The looks of all sheets in their order, and at the end the way to the first. */
export function looksOf(plans: readonly SheetPlan[]): readonly Look[] {
  const looks = plans.flatMap((plan, sheet) =>
    topics(plan).flatMap(({ what, steps }) =>
      steps.map(({ highlight, chart, ...step }): Look => ({
        sheet,
        step,
        what: `the ${what} of “${plan.name}”`,
        ...(highlight !== undefined && { highlight }),
        ...(chart !== undefined && { chart }),
      })),
    ),
  );
  const first = plans[0];
  if (first === undefined) return looks;
  const show: Step = {
    bytes: 3 * CALL_BYTES,
    draw: (sheet) => {
      sheet.activate();
      sheet.getRange('A1').select();
    },
  };
  return [...looks, { sheet: 0, step: show, what: `bringing “${first.name}” into view` }];
}
