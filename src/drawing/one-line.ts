/** The one-line diagram of a station as a figure: laid out several ways, and the one taken that reads best on A4. */
import type { Diagram, DiagramNode, DiagramRun, RunLevel } from '../sheets/plan/diagram';
import type { Dash, Figure, Mark, Point, TextMark } from './figure';
import { LYING, pageCount, pageEnd, UPRIGHT, type Paper } from './paper';
import { placed, type Placed, type Placing, type Size, type Way } from './place';
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
const HEAD_PT = 40;
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

/** How much room texts get, and whether a run that ends at a source leads to it or only names it. */
interface Manner {
  readonly joined: boolean;
  readonly tight: boolean;
}
const MANNERS: readonly Manner[] = [
  { joined: true, tight: false },
  { joined: true, tight: true },
  { joined: false, tight: false },
  { joined: false, tight: true },
];
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
function nodeTexts(node: DiagramNode, isEnd: boolean, tight: boolean): NodeTexts {
  const most = MOST_PT[tight ? 'tight' : 'roomy'].node;
  const name = node.name === '' ? [] : wrapped(node.name, most, STRONG, tight || !isEnd ? 2 : 1);
  const strong = name.map((text) => ({ text, type: STRONG }));
  const said = node.isReference === true ? ['see there'] : node.details;
  const lines = tight || !isEnd ? said : [said.join(', ')];
  const details = lines
    .filter((text) => text !== '')
    .map((text) => ({ text: fitted(text, isEnd && !tight ? 2 * most : most, BODY), type: BODY }));
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

/** Pieces of text below one another, each whole on its page. */
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
  const paragraph = (text: string, type: Type, indentPt = 0, mark = ''): Footing => {
    const lines = wrapped(text, widthPt - indentPt, type);
    return {
      heightPt: lines.length * LINE_PT + 2,
      marks: (yPt) => [
        ...(mark === '' ? [] : [textAt(mark, [0, yPt + 9], STRONG)]),
        ...lines.map((line, index) => textAt(line, [indentPt, yPt + 9 + index * LINE_PT], type)),
      ],
    };
  };
  const notes = notesOf(diagram.runs).map((note, index) => {
    const lacking = diagram.runs.filter((run) => run.note === note).map(({ name }) => name);
    return paragraph(`${lacking.join(', ')}, ${note}`, BODY, 20, String(index + 1));
  });
  const gap: Footing = { heightPt: 6, marks: () => [] };
  return [
    gap,
    ...notes,
    ...(notes.length > 0 ? [gap] : []),
    ...samples,
    ...LEGEND.map((text) => paragraph(text, BODY)),
    paragraph(CAUTION, BODY),
  ];
}

// --- the whole -----------------------------------------------------------------------------------------------

interface Laid {
  readonly diagram: Diagram;
  readonly manner: Manner;
  readonly nodes: readonly NodeTexts[];
  readonly runs: readonly RunTexts[];
  place(paper: Paper): Placing;
}

function laidIn(given: Diagram, manner: Manner): Laid {
  const diagram = manner.joined ? given : withReferences(given);
  const starts = new Set(diagram.runs.map(({ from }) => from));
  const nodes = diagram.nodes.map((node, index) =>
    nodeTexts(node, !starts.has(index), manner.tight),
  );
  const notes = notesOf(diagram.runs);
  const runs = diagram.runs.map((run) => runTexts(run, notes.indexOf(run.note) + 1, manner.tight));
  return {
    diagram,
    manner,
    nodes,
    runs,
    place: (paper) =>
      placed(
        nodes.map((texts, index) => nodeSize(diagram.nodes[index]!, texts)),
        diagram.runs.map(({ from, to }, index) => ({ from, to, label: runSize(runs[index]!) })),
        (yPt) => pageEnd(paper)(yPt + HEAD_PT) - HEAD_PT,
      ),
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
  const lowered = marks.map((mark) => moved(mark, HEAD_PT));
  let yPt = HEAD_PT + placing.heightPt;
  const end = pageEnd(paper);
  for (const footing of footings(diagram, widthPt)) {
    if (yPt + footing.heightPt > end(yPt)) yPt = end(yPt);
    lowered.push(...footing.marks(yPt));
    yPt += footing.heightPt;
  }
  const title = fitted(diagram.title, widthPt, TITLE);
  const figure: Figure = {
    title: `${diagram.title}: one-line diagram`,
    description: described(diagram),
    widthPt,
    heightPt: Math.ceil(yPt),
    marks: [textAt(title, [0, 14], TITLE), textAt(diagram.summary, [0, 28], BODY), ...lowered],
  };
  return {
    figure,
    paper,
    pages: pageCount(paper, figure.heightPt),
    typePt: LEAST_TYPE_PT * Math.min(1, paper.widthPt / widthPt),
    isShrunk: widthPt > paper.widthPt,
  };
}

function moved(mark: Mark, downPt: number): Mark {
  return mark.kind === 'line'
    ? { ...mark, points: mark.points.map(([x, y]) => [x, y + downPt] as const) }
    : { ...mark, yPt: mark.yPt + downPt };
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
