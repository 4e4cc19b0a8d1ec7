/** The one-line diagram of a station as a figure: laid out several ways, and the one taken that reads best on A4. */
import type { Diagram, DiagramNode, DiagramRun, RunLevel } from '../sheets/plan/diagram';
import type { Dash, Figure, Mark, Point, TextMark } from './figure';
import { LYING, pageCount, pageEnd, UPRIGHT, type Paper } from './paper';
import { BAND_PT, placed, type Placed, type Placing, type Size, type Way } from './place';
import { FUSE_PT, fuseAt, SYMBOL_HALF_PT, SYMBOL_PT, symbolAt } from './symbols';
import { fitted, NO_BREAK, textWidthPt, wrapped, type Type } from './text-width';

/** Nothing is written smaller. */
export const LEAST_TYPE_PT = 9;
const BODY: Type = { sizePt: LEAST_TYPE_PT };
const STRONG: Type = { sizePt: LEAST_TYPE_PT, bold: true };
const TITLE: Type = { sizePt: 14, bold: true };
const LINE_PT = 11;
/** From the line of a run to the base of the texts above and below it. */
const ABOVE_PT = 8;
const BELOW_PT = 15.5;
const SPACE_PT = 6;
/** Of the head, with the summary beside the title where there is room for it, or else below. */
const HEAD_PT = { beside: 28, below: 40 } as const;
const TITLE_BASE_PT = 14;
const HEAD_GAP_PT = 14;
const TAG_PT = 11;
/** Of the line itself that a tag leaves in sight. */
const SEEN_PT = 40;

/** How a line is drawn says how grave its run is, on a grey print as well; the tag on it says it in a word. */
export const RUN_LINES: Readonly<
  Record<RunLevel, { readonly widthPt: number; readonly dash: Dash }>
> = {
  danger: { widthPt: 3.5, dash: 'dashDot' },
  fails: { widthPt: 2.5, dash: 'dash' },
  unclear: { widthPt: 1.5, dash: 'dot' },
  check: { widthPt: 1.5, dash: 'longDash' },
  ok: { widthPt: 1.5, dash: 'solid' },
};
const LEADS: { readonly widthPt: number; readonly dash: Dash } = { widthPt: 1.2, dash: 'solid' };

/**
 * How much room texts get, whether what is said of a source or a block stands in one line, which takes the least height,
 * and whether a run that ends at a source leads to it or only names it.
 */
interface Manner {
  readonly joined: boolean;
  readonly tight: boolean;
  readonly flat: boolean;
}
const MANNERS: readonly Manner[] = [true, false].flatMap((joined) => [
  { joined, tight: false, flat: true },
  { joined, tight: false, flat: false },
  { joined, tight: true, flat: false },
]);
const MOST_PT = {
  roomy: { name: 110, fuse: 90, details: 150, node: 130 },
  tight: { name: 74, fuse: 70, details: 96, node: 96 },
} as const;

export interface OneLine {
  readonly figure: Figure;
  readonly paper: Paper;
  readonly pages: number;
  /** How large its smallest type is on that paper, one page wide. */
  readonly typePt: number;
  /** Smaller than meant, since the diagram is wider than the paper. */
  readonly isShrunk: boolean;
}

function textAt(
  text: string,
  [xPt, yPt]: Point,
  type: Type,
  ink: TextMark['ink'] = 'line',
): TextMark {
  return { kind: 'text', text, xPt, yPt, sizePt: type.sizePt, bold: type.bold ?? false, ink };
}

/** The diagram with a node of its own wherever a run ends at a source. */
function withReferences(diagram: Diagram): Diagram {
  const starts = new Set(diagram.runs.map(({ from }) => from));
  const isSource = (node: number) =>
    !['joint', 'load', 'unknown'].includes(diagram.nodes[node]!.kind) && starts.has(node);
  const nodes = [...diagram.nodes];
  const runs = diagram.runs.map((run) =>
    isSource(run.to)
      ? { ...run, to: nodes.push({ ...nodes[run.to]!, isReference: true }) - 1 }
      : run,
  );
  return { ...diagram, nodes, runs };
}

// --- nodes ---------------------------------------------------------------------------------------------------

interface NodeTexts {
  readonly place: 'around' | 'right';
  readonly above: readonly TextLine[];
  readonly below: readonly TextLine[];
}
interface TextLine {
  readonly text: string;
  readonly type: Type;
}

/** A node whose texts stand above and below its symbol where lines go on, right of it where they end. */
function nodeTexts(node: DiagramNode, isEnd: boolean, { tight, flat }: Manner): NodeTexts {
  const most = MOST_PT[tight ? 'tight' : 'roomy'].node;
  const name = node.name === '' ? [] : wrapped(node.name, most, STRONG, tight || !isEnd ? 2 : 1);
  const strong = name.map((text) => ({ text, type: STRONG }));
  const said = node.isReference === true ? ['see there'] : node.details;
  const isOneLine = isEnd ? !tight : flat;
  const lines = isOneLine ? [said.join(', ')] : said;
  const details = lines
    .filter((text) => text !== '')
    .map((text) => ({ text: fitted(text, isOneLine ? 2 * most : most, BODY), type: BODY }));
  return isEnd
    ? { place: 'right', above: [], below: [...strong, ...details] }
    : { place: 'around', above: strong, below: details };
}

const widest = (lines: readonly TextLine[]) =>
  Math.max(0, ...lines.map(({ text, type }) => textWidthPt(text, type)));

function nodeSize({ kind }: DiagramNode, { place, above, below }: NodeTexts): Size {
  if (place === 'right') {
    return {
      widthPt: SYMBOL_PT + SPACE_PT + widest(below),
      heightPt: Math.max(SYMBOL_PT, below.length * LINE_PT),
    };
  }
  const most = Math.max(above.length, below.length);
  return {
    widthPt: Math.max(SYMBOL_PT, widest([...above, ...below])),
    heightPt: 2 * (SYMBOL_HALF_PT[kind] + most * LINE_PT + 2),
  };
}

function nodeMarks(
  node: DiagramNode,
  { place, above, below }: NodeTexts,
  { leftPt, rightPt, yPt }: Placed,
): { readonly marks: readonly Mark[]; readonly entryPt: number; readonly exitPt: number } {
  if (place === 'right') {
    const x = leftPt + SYMBOL_PT / 2;
    const top = yPt - (below.length * LINE_PT) / 2;
    return {
      marks: [
        ...symbolAt(node.kind, [x, yPt]),
        ...below.map(({ text, type }, line) =>
          textAt(text, [leftPt + SYMBOL_PT + SPACE_PT, top + LINE_PT * line + 9], type),
        ),
      ],
      entryPt: leftPt,
      exitPt: leftPt + SYMBOL_PT,
    };
  }
  const x = (leftPt + rightPt) / 2;
  const [half, high] = [SYMBOL_PT / 2, SYMBOL_HALF_PT[node.kind]];
  const centred = (text: string, type: Type, y: number) =>
    textAt(text, [x - textWidthPt(text, type) / 2, y], type);
  return {
    marks: [
      ...symbolAt(node.kind, [x, yPt]),
      ...above.map(({ text, type }, line) =>
        centred(text, type, yPt - high - 3 - LINE_PT * (above.length - 1 - line)),
      ),
      ...below.map(({ text, type }, line) => centred(text, type, yPt + high + 9 + LINE_PT * line)),
    ],
    entryPt: x - half,
    exitPt: x + half,
  };
}

// --- runs ----------------------------------------------------------------------------------------------------

interface RunTexts {
  readonly fuse: string;
  readonly name: string;
  readonly endFuse: string;
  readonly details: readonly string[];
  readonly tag: string;
}

/** The notes in the order in which they come up: runs that lack the same share one. */
function notesOf(runs: readonly DiagramRun[]): readonly string[] {
  return [...new Set(runs.flatMap(({ note }) => (note === '' ? [] : [note])))];
}

/** Breaks between what is said, not within. */
const unbroken = (text: string) => text.replaceAll(' ', NO_BREAK);

function runTexts(run: DiagramRun, note: number, tight: boolean): RunTexts {
  const most = MOST_PT[tight ? 'tight' : 'roomy'];
  return {
    fuse: fitted(run.fuse ?? run.leansOn ?? '', most.fuse, BODY),
    name: fitted(run.name, most.name, STRONG),
    endFuse: run.endFuse ?? '',
    details: tight
      ? wrapped(run.details.map(unbroken).join(', '), most.details, BODY, 2)
      : [fitted(run.details.join(', '), most.details, BODY)],
    tag: note === 0 ? '' : `${run.level.toUpperCase()} ${note}`,
  };
}

const TAG_PADDING_PT = 3;
const tagWidth = (tag: string) => (tag === '' ? 0 : textWidthPt(tag, STRONG) + 2 * TAG_PADDING_PT);

function runSize({ fuse, name, endFuse, details, tag }: RunTexts): Size {
  const above =
    textWidthPt(name, STRONG) +
    [fuse, endFuse].reduce(
      (sum, text) => sum + (text === '' ? 0 : textWidthPt(text, BODY) + SPACE_PT),
      0,
    );
  const fuses = [fuse, endFuse].filter((text) => text !== '').length;
  const onLine = fuses * FUSE_PT.width + SEEN_PT + tagWidth(tag);
  return {
    widthPt: Math.max(above, onLine, ...details.map((text) => textWidthPt(text, BODY))),
    heightPt: 2 * (details.length * LINE_PT + BELOW_PT - LINE_PT + 1.5),
  };
}

function tagMarks(tag: string, level: RunLevel, rightPt: number, yPt: number): Mark[] {
  if (tag === '') return [];
  const widthPt = tagWidth(tag);
  return [
    {
      kind: 'box',
      xPt: rightPt - widthPt,
      yPt: yPt - TAG_PT / 2,
      widthPt,
      heightPt: TAG_PT,
      fill: level,
      edgePt: 1,
    },
    textAt(tag, [rightPt - widthPt + TAG_PADDING_PT, yPt + 3.3], STRONG, { on: level }),
  ];
}

function runMarks(
  run: DiagramRun,
  { fuse, name, endFuse, details, tag }: RunTexts,
  { leftPt, rightPt, yPt }: Placed,
): readonly Mark[] {
  const nameX = leftPt + (fuse === '' ? 0 : textWidthPt(fuse, BODY) + SPACE_PT);
  const endSpace = run.endFuse === undefined ? 0 : FUSE_PT.width + SPACE_PT;
  return [
    ...(run.fuse === undefined ? [] : fuseAt(leftPt, yPt)),
    ...(run.endFuse === undefined ? [] : fuseAt(rightPt - FUSE_PT.width, yPt)),
    ...tagMarks(tag, run.level, rightPt - endSpace, yPt),
    ...(fuse === '' ? [] : [textAt(fuse, [leftPt, yPt - ABOVE_PT], BODY)]),
    textAt(name, [nameX, yPt - ABOVE_PT], STRONG),
    ...(endFuse === ''
      ? []
      : [textAt(endFuse, [rightPt - textWidthPt(endFuse, BODY), yPt - ABOVE_PT], BODY)]),
    ...details.map((text, line) => textAt(text, [leftPt, yPt + BELOW_PT + LINE_PT * line], BODY)),
  ];
}

/** A way with its ends at the symbols. */
function wayMarks(
  { toLabel, onwards, branch }: Way,
  level: RunLevel,
  exitPt: number,
  entryPt: number,
): readonly Mark[] {
  const [, ...afterStart] = toLabel;
  const start: Point = [exitPt, toLabel[0]![1]];
  const end: Point = [entryPt, onwards.at(-1)![1]];
  return [
    { kind: 'line', points: [start, ...afterStart], ...LEADS, ink: 'line' },
    { kind: 'line', points: [...onwards.slice(0, -1), end], ...RUN_LINES[level], ink: 'line' },
    ...(branch === undefined
      ? []
      : [
          {
            kind: 'round',
            xPt: branch[0] - 1.75,
            yPt: branch[1] - 1.75,
            widthPt: 3.5,
            heightPt: 3.5,
            fill: 'line',
          } as const,
        ]),
  ];
}

// --- below the diagram ---------------------------------------------------------------------------------------

const LEVEL_WORDS: Readonly<Record<RunLevel, string>> = {
  danger: 'danger: fire, or a fault that nothing clears',
  fails: 'fails: a load will not work, or a target is missed',
  unclear: 'unclear: an entry is missing or not understood',
  check: 'check: one thing is left to confirm',
  ok: 'ok',
};
const LEGEND = [
  'Above a run its fuse and name, below it wire, one-way length and the volts that are lost in it.',
  'At its end volts with the battery low to full, every load drawing what counts at once, and the share lost from the source on.',
];
const CAUTION =
  'Advice, not approval: local codes and licensed practice come first. Symbols after IEC 60617.';

interface Footing {
  readonly heightPt: number;
  marks(yPt: number): readonly Mark[];
}

/** Of a longer paragraph the rest is a piece of its own, lest one be taller than any page. */
const MOST_LINES = 20;

/** Pieces of text, each whole in its column. */
function footings(diagram: Diagram, widthPt: number): readonly Footing[] {
  const levels = (Object.keys(LEVEL_WORDS) as RunLevel[]).filter((level) =>
    diagram.runs.some((run) => run.level === level),
  );
  const samples = levels.map((level): Footing => ({
    heightPt: LINE_PT + 2,
    marks: (yPt) => [
      {
        kind: 'line',
        points: [
          [0, yPt + 6],
          [48, yPt + 6],
        ],
        ...RUN_LINES[level],
        ink: 'line',
      },
      textAt(LEVEL_WORDS[level], [56, yPt + 9], BODY),
    ],
  }));
  const paragraph = (text: string, type: Type, indentPt = 0, mark = ''): readonly Footing[] => {
    const lines = wrapped(text, widthPt - indentPt, type);
    const piece = (from: number): Footing => {
      const own = lines.slice(from, from + MOST_LINES);
      return {
        heightPt: own.length * LINE_PT + (from + MOST_LINES < lines.length ? 0 : 2),
        marks: (yPt) => [
          ...(mark === '' || from > 0 ? [] : [textAt(mark, [0, yPt + 9], STRONG)]),
          ...own.map((line, index) => textAt(line, [indentPt, yPt + 9 + index * LINE_PT], type)),
        ],
      };
    };
    const others = Math.max(0, Math.ceil(lines.length / MOST_LINES) - 1);
    return [
      piece(0),
      ...Array.from({ length: others }, (_, place) => piece((place + 1) * MOST_LINES)),
    ];
  };
  const notes = notesOf(diagram.runs).flatMap((note, index) => {
    const lacking = diagram.runs.filter((run) => run.note === note).map(({ name }) => name);
    return paragraph(`${lacking.join(', ')}, ${note}`, BODY, 20, String(index + 1));
  });
  const gap: Footing = { heightPt: 6, marks: () => [] };
  return [
    ...notes,
    ...(notes.length > 0 ? [gap] : []),
    ...samples,
    ...LEGEND.flatMap((text) => paragraph(text, BODY)),
    ...paragraph(CAUTION, BODY),
  ];
}

/** Narrower columns would break most notes. */
const LEAST_COLUMN_PT = 360;
const COLUMN_GAP_PT = 18;
const FOOT_GAP_PT = 6;

/** Pieces one after another in columns of a height; as many as there is room for. */
function inColumns(pieces: readonly Footing[], columns: number, heightPt: number) {
  const filled: Footing[][] = [];
  let room = 0;
  for (const piece of pieces) {
    if (filled.length === 0 || piece.heightPt > room) {
      if (filled.length === columns) break;
      filled.push([]);
      room = heightPt;
    }
    filled.at(-1)!.push(piece);
    room -= piece.heightPt;
  }
  return filled;
}

/** What stands below the diagram, in columns that are as even as can be, page by page. */
function footMarks(
  diagram: Diagram,
  widthPt: number,
  fromPt: number,
  end: (yPt: number) => number,
): { readonly marks: readonly Mark[]; readonly bottomPt: number } {
  const columns = Math.max(
    1,
    Math.floor((widthPt + COLUMN_GAP_PT) / (LEAST_COLUMN_PT + COLUMN_GAP_PT)),
  );
  const columnPt = (widthPt + COLUMN_GAP_PT) / columns - COLUMN_GAP_PT;
  let pieces = footings(diagram, columnPt);
  const tallest = Math.max(...pieces.map(({ heightPt }) => heightPt));
  const marks: Mark[] = [];
  let topPt = fromPt + FOOT_GAP_PT;
  let bottomPt = topPt;
  while (pieces.length > 0) {
    const roomPt = end(topPt) - topPt;
    const isLastPage = () => inColumns(pieces, columns, roomPt).flat().length === pieces.length;
    if (tallest <= roomPt) {
      let heightPt = roomPt;
      if (isLastPage()) {
        const all = pieces.reduce((sum, piece) => sum + piece.heightPt, 0);
        heightPt = Math.max(tallest, all / columns);
        while (inColumns(pieces, columns, heightPt).flat().length < pieces.length) heightPt += 1;
      }
      const filled = inColumns(pieces, columns, Math.min(heightPt, roomPt));
      for (const [column, stacked] of filled.entries()) {
        let yPt = topPt;
        for (const piece of stacked) {
          marks.push(
            ...piece
              .marks(yPt)
              .map((mark) => movedRight(mark, column * (columnPt + COLUMN_GAP_PT))),
          );
          yPt += piece.heightPt;
        }
        bottomPt = Math.max(bottomPt, yPt);
      }
      pieces = pieces.slice(filled.flat().length);
    }
    if (pieces.length > 0) topPt = end(topPt) + BAND_PT;
  }
  return { marks, bottomPt };
}

// --- over the ends of pages ----------------------------------------------------------------------------------

const ASIDE_PT = 4;
/** Less says nothing. */
const LEAST_WORDS_PT = 40;

/** What a node is called where its lines go on: a block by the run that leads to it, as in the list. */
function calledAt({ nodes, runs }: Diagram, node: number): string {
  const { kind, name } = nodes[node]!;
  const trunk = kind === 'joint' ? runs.find(({ to }) => to === node)?.name : undefined;
  return trunk !== undefined && trunk !== '' ? trunk : name;
}

/** Says beside each line that goes on over the end of a page where it comes from, and where it goes. */
function crossingMarks(
  diagram: Diagram,
  { crossings, nodes }: Placing,
  widthPt: number,
  pageOf: (yPt: number) => number,
): readonly Mark[] {
  return crossings.flatMap(({ node, xPt, endPt }): Mark[] => {
    const home = pageOf(nodes[node]!.yPt);
    const before = pageOf(endPt - 1);
    const from = `from ${calledAt(diagram, node)}, page ${home}`;
    const beyond = crossings.filter((one) => one.endPt === endPt && one.xPt > xPt);
    const rightPt = Math.min(widthPt - PAGE_MARK_PT, ...beyond.map((one) => one.xPt));
    const roomPt = rightPt - xPt - 2 * ASIDE_PT;
    if (roomPt < LEAST_WORDS_PT) return [];
    const words = (text: string, yPt: number) =>
      textAt(fitted(text, roomPt, BODY), [xPt + ASIDE_PT, yPt], BODY, 'quiet');
    const [above, below] = [endPt - 3, endPt + 9];
    return home <= before
      ? [words(`to page ${before + 1}`, above), words(from, below)]
      : [words(from, above), words(`to page ${before}`, below)];
  });
}

/** At the right end of each page's top, since pages part. */
const PAGE_MARK_PT = 70;

function pageMarks(pages: number, widthPt: number, end: (yPt: number) => number): readonly Mark[] {
  if (pages < 2) return [];
  const tops: number[] = [0];
  while (tops.length < pages) tops.push(end(tops.at(-1)!));
  return tops.map((topPt, index) => {
    const text = `page ${index + 1} of ${pages}`;
    const baseOf = index === 0 ? TITLE_BASE_PT : topPt + 9;
    return textAt(text, [widthPt - textWidthPt(text, BODY), baseOf], BODY, 'quiet');
  });
}

// --- the whole -----------------------------------------------------------------------------------------------

interface Laid {
  readonly diagram: Diagram;
  readonly manner: Manner;
  readonly nodes: readonly NodeTexts[];
  readonly runs: readonly RunTexts[];
  place(paper: Paper): Placing;
}

const besideTitle = ({ title }: Diagram) => textWidthPt(title, TITLE) + HEAD_GAP_PT;

function headOf(diagram: Diagram, { widthPt }: Paper): number {
  const widest = besideTitle(diagram) + textWidthPt(diagram.summary, BODY) + PAGE_MARK_PT;
  return widest <= widthPt ? HEAD_PT.beside : HEAD_PT.below;
}

function headMarks(diagram: Diagram, widthPt: number, headPt: number): readonly Mark[] {
  const title = fitted(diagram.title, widthPt - PAGE_MARK_PT, TITLE);
  const summary: Point =
    headPt === HEAD_PT.beside ? [besideTitle(diagram), TITLE_BASE_PT] : [0, 2 * TITLE_BASE_PT];
  return [textAt(title, [0, TITLE_BASE_PT], TITLE), textAt(diagram.summary, summary, BODY)];
}

function laidIn(given: Diagram, manner: Manner): Laid {
  const diagram = manner.joined ? given : withReferences(given);
  const starts = new Set(diagram.runs.map(({ from }) => from));
  const nodes = diagram.nodes.map((node, index) => nodeTexts(node, !starts.has(index), manner));
  const notes = notesOf(diagram.runs);
  const runs = diagram.runs.map((run) => runTexts(run, notes.indexOf(run.note) + 1, manner.tight));
  return {
    diagram,
    manner,
    nodes,
    runs,
    place: (paper) => {
      const headPt = headOf(diagram, paper);
      return placed(
        nodes.map((texts, index) => nodeSize(diagram.nodes[index]!, texts)),
        diagram.runs.map(({ from, to }, index) => ({ from, to, label: runSize(runs[index]!) })),
        (yPt) => pageEnd(paper)(yPt + headPt) - headPt,
      );
    },
  };
}

/** Its description for whoever cannot see it: run by run what is drawn. */
function described({ summary, nodes, runs }: Diagram): string {
  const told = runs.map(({ from, to, name, level, fuse, leansOn, details }) => {
    const [near, far] = [nodes[from]!, nodes[to]!];
    const fused = fuse === undefined ? (leansOn ?? '') : `fuse ${fuse}`;
    const facts = [fused, ...details, ...(level === 'ok' ? [] : [level])];
    const ends = far.name === '' ? '' : ` to ${far.name}`;
    return `${name}${near.name === '' ? '' : ` from ${near.name}`}${ends}: ${facts.filter((fact) => fact !== '').join(', ')}.`;
  });
  return [`One-line diagram, ${summary}.`, ...told].join(' ');
}

function drawn(laid: Laid, paper: Paper): OneLine {
  const { diagram, nodes, runs } = laid;
  const placing = laid.place(paper);
  const headPt = headOf(diagram, paper);
  const widthPt = Math.max(paper.widthPt, Math.ceil(placing.widthPt));
  const marks: Mark[] = [];
  const ports = diagram.nodes.map((node, index) =>
    nodeMarks(node, nodes[index]!, placing.nodes[index]!),
  );
  for (const [index, { from, to, level }] of diagram.runs.entries()) {
    marks.push(...wayMarks(placing.ways[index]!, level, ports[from]!.exitPt, ports[to]!.entryPt));
  }
  for (const port of ports) marks.push(...port.marks);
  for (const [index, run] of diagram.runs.entries()) {
    marks.push(...runMarks(run, runs[index]!, placing.labels[index]!));
  }
  const end = pageEnd(paper);
  marks.push(...crossingMarks(diagram, placing, widthPt, (yPt) => pageCount(paper, yPt + headPt)));
  const foot = footMarks(diagram, widthPt, headPt + placing.heightPt, end);
  const heightPt = Math.ceil(foot.bottomPt);
  const pages = pageCount(paper, heightPt);
  const figure: Figure = {
    title: `${diagram.title}: one-line diagram`,
    description: described(diagram),
    widthPt,
    heightPt,
    marks: [
      ...headMarks(diagram, widthPt, headPt),
      ...marks.map((mark) => moved(mark, headPt)),
      ...foot.marks,
      ...pageMarks(pages, widthPt, end),
    ],
  };
  return {
    figure,
    paper,
    pages,
    typePt: LEAST_TYPE_PT * Math.min(1, paper.widthPt / widthPt),
    isShrunk: widthPt > paper.widthPt,
  };
}

function moved(mark: Mark, downPt: number): Mark {
  return mark.kind === 'line'
    ? { ...mark, points: mark.points.map(([x, y]) => [x, y + downPt] as const) }
    : { ...mark, yPt: mark.yPt + downPt };
}

function movedRight(mark: Mark, rightPt: number): Mark {
  return mark.kind === 'line'
    ? { ...mark, points: mark.points.map(([x, y]) => [x + rightPt, y] as const) }
    : { ...mark, xPt: mark.xPt + rightPt };
}

/** Better first: type as large as it is meant, then fewer pages, then upright, then the plainer manner. */
function isBetter(one: OneLine, than: OneLine): boolean {
  if (one.typePt !== than.typePt) return one.typePt > than.typePt;
  return one.pages < than.pages;
}

/** The figure of a diagram. */
export function oneLine(diagram: Diagram): OneLine {
  const joins = diagram.runs.some(({ to }, index) =>
    diagram.runs.some(({ from }, other) => other !== index && from === to),
  );
  let best: OneLine | undefined;
  for (const manner of MANNERS) {
    if (!manner.joined && !joins) continue;
    const laid = laidIn(diagram, manner);
    for (const paper of [UPRIGHT, LYING]) {
      const one = drawn(laid, paper);
      if (best === undefined || isBetter(one, best)) best = one;
      // Nothing is better than one page at full size.
      if (best.pages === 1 && !best.isShrunk) return best;
    }
  }
  return best!;
}
