/**
 * Places for the nodes and labels of a diagram: columns by a general library for layered graphs, heights by the same where
 * runs meet, and closer together in trees; and square-cornered ways.
 */
import { Graph, layout } from '@dagrejs/dagre';
import type { Point } from './figure';

export interface Size {
  readonly widthPt: number;
  readonly heightPt: number;
}

export interface Link {
  readonly from: number;
  readonly to: number;
  readonly label: Size;
}

/** Something placed: where its column begins and ends, and the height of the line through it. */
export interface Placed {
  readonly leftPt: number;
  readonly rightPt: number;
  yPt: number;
  readonly halfPt: number;
}

/** The way of a link: corners up to its label, and on from there. */
export interface Way {
  readonly toLabel: readonly Point[];
  readonly onwards: readonly Point[];
  /** Where it leaves a line that other links share. */
  readonly branch?: Point;
}

/** A piece of a way that goes on over the end of a page, and the node that it comes from. */
export interface Crossing {
  readonly node: number;
  readonly xPt: number;
  readonly endPt: number;
}

export interface Placing {
  readonly nodes: readonly Placed[];
  readonly labels: readonly Placed[];
  readonly ways: readonly Way[];
  readonly crossings: readonly Crossing[];
  readonly widthPt: number;
  readonly heightPt: number;
}

/** On either side of a page's end, for words on what goes on there. */
export const BAND_PT = 12;

/** Between a node and the labels beside it: half of what the library is asked for. */
const GAP_PT = 18;
const ROW_GAP_PT = 5;

interface Column {
  readonly leftPt: number;
  readonly rightPt: number;
}

interface Stop {
  readonly column: number;
  yPt: number;
}

interface Laid {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  readonly points?: readonly { readonly x: number; readonly y: number }[];
}

/** The library's columns, as wide as the widest in each; they are told by their middle. */
function columnsOf(laid: readonly Laid[]): { columns: Column[]; columnAt: (x: number) => number } {
  const extents = new Map<number, Column>();
  for (const { x, width } of laid) {
    const key = Math.round(x);
    const { leftPt, rightPt } = extents.get(key) ?? { leftPt: x, rightPt: x };
    extents.set(key, {
      leftPt: Math.min(leftPt, x - width / 2),
      rightPt: Math.max(rightPt, x + width / 2),
    });
  }
  const middles = [...extents.keys()].sort((a, b) => a - b);
  return {
    columns: middles.map((middle) => extents.get(middle)!),
    columnAt: (x) => middles.indexOf(Math.round(x)),
  };
}

/** Vertical pieces side by side where they would lie over one another: how many lanes a gap has, and which is whose. */
function lanesOf(stretches: ReadonlyMap<string, readonly [number, number]>) {
  const ends: number[] = [];
  const laneOf = new Map<string, number>();
  const inOrder = [...stretches].sort(([, a], [, b]) => a[0] - b[0]);
  for (const [key, [top, bottom]] of inOrder) {
    const free = ends.findIndex((end) => end < top);
    const lane = free < 0 ? ends.length : free;
    ends[lane] = bottom;
    laneOf.set(key, lane);
  }
  return { laneOf, lanes: ends.length };
}

/**
 * Lays nodes out from left to right. `pages`: nothing is cut where a page ends; whatever would be stands on the next one,
 * and all below with it.
 */
export function placed(
  nodes: readonly Size[],
  links: readonly Link[],
  pages: (yPt: number) => number,
): Placing {
  const graph = new Graph({ multigraph: true });
  graph.setGraph({ rankdir: 'LR', nodesep: ROW_GAP_PT, edgesep: ROW_GAP_PT, ranksep: 2 * GAP_PT });
  graph.setDefaultEdgeLabel(() => ({}));
  for (const [index, { widthPt, heightPt }] of nodes.entries()) {
    graph.setNode(String(index), { width: widthPt, height: heightPt });
  }
  for (const [index, { from, to, label }] of links.entries()) {
    graph.setEdge(
      String(from),
      String(to),
      { width: label.widthPt, height: label.heightPt, labelpos: 'c', weight: 2 },
      String(index),
    );
  }
  // In a tree the order given has no crossings, and is the one that people know from their list.
  const enters = new Set(links.map(({ to }) => to));
  const isForest = enters.size === links.length;
  if (nodes.length > 0) layout(graph, { disableOptimalOrderHeuristic: isForest });

  const laidNodes = nodes.map((_, index) => graph.node(String(index)) as unknown as Laid);
  const laidLinks = links.map(
    ({ from, to }, index) => graph.edge(String(from), String(to), String(index)) as unknown as Laid,
  );
  const { columns, columnAt } = columnsOf([...laidNodes, ...laidLinks]);
  const inColumn = ({ x, y, height }: Laid): Placed => ({
    ...columns[columnAt(x)]!,
    yPt: y,
    halfPt: height / 2,
  });
  const placedNodes = laidNodes.map(inColumn);
  const placedLabels = laidLinks.map(inColumn);
  // The first and the last point only touch the nodes.
  const stops = laidLinks.map(({ points = [] }): Stop[] =>
    points
      .slice(1, -1)
      .map(({ x, y }) => ({ column: columnAt(x), yPt: y }))
      .filter(({ column }) => column >= 0),
  );
  if (isForest) closeUp(links, placedNodes, placedLabels, stops, columns);
  keepWhole([...placedNodes, ...placedLabels], stops.flat(), pages);

  const ways = waysOf(links, placedNodes, placedLabels, stops, columns);
  return {
    nodes: placedNodes,
    labels: placedLabels,
    ways,
    crossings: crossingsOf(links, ways, pages),
    widthPt: Math.max(0, ...columns.map(({ rightPt }) => rightPt)),
    heightPt: Math.max(0, ...placedNodes.concat(placedLabels).map((one) => one.yPt + one.halfPt)),
  };
}

/**
 * Trees from the top down, each as high as what stands there allows: what is fed first goes straight on, and a trunk begins
 * below all that the one before it feeds, so that no two lines cross.
 */
function closeUp(
  links: readonly Link[],
  nodes: readonly Placed[],
  labels: readonly Placed[],
  stops: readonly (readonly Stop[])[],
  columns: readonly Column[],
): void {
  const columnOf = ({ leftPt }: Placed) => columns.findIndex((one) => one.leftPt === leftPt);
  const [nodeColumns, labelColumns] = [nodes.map(columnOf), labels.map(columnOf)];
  const fed = nodes.map((): number[] => []);
  for (const [link, { from }] of links.entries()) fed[from]!.push(link);
  const free = columns.map(() => 0);
  const put = (box: Placed, column: number, yPt: number) => {
    box.yPt = yPt;
    free[column] = yPt + box.halfPt + ROW_GAP_PT;
  };

  /** The least height of a node with all that goes straight on from it. */
  const nodeFrom = (node: number): number => {
    const own = free[nodeColumns[node]!]! + nodes[node]!.halfPt;
    const [first] = fed[node]!;
    return first === undefined ? own : Math.max(own, linkFrom(first));
  };
  const linkFrom = (link: number): number =>
    Math.max(free[labelColumns[link]!]! + labels[link]!.halfPt, nodeFrom(links[link]!.to));
  const putTree = (node: number, yPt: number): void => {
    put(nodes[node]!, nodeColumns[node]!, yPt);
    for (const [index, link] of fed[node]!.entries()) {
      const linkPt = index === 0 ? yPt : linkFrom(link);
      put(labels[link]!, labelColumns[link]!, linkPt);
      for (const stop of stops[link]!) stop.yPt = linkPt;
      putTree(links[link]!.to, linkPt);
    }
  };
  const enters = new Set(links.map(({ to }) => to));
  for (const node of nodes.keys()) if (!enters.has(node)) putTree(node, nodeFrom(node));
}

/** Where ways cross the ends of pages; those of one node that share a line, once. */
function crossingsOf(
  links: readonly Link[],
  ways: readonly Way[],
  pages: (yPt: number) => number,
): readonly Crossing[] {
  const found = new Map<string, Crossing>();
  for (const [link, { toLabel, onwards }] of ways.entries()) {
    const node = links[link]!.from;
    for (const corners of [toLabel, onwards]) {
      for (const [index, [xPt, yPt]] of corners.slice(1).entries()) {
        const [top, bottom] = [corners[index]![1], yPt].sort((a, b) => a - b) as [number, number];
        for (let endPt = pages(top); endPt < bottom; endPt = pages(endPt)) {
          found.set(`${node} ${xPt} ${endPt}`, { node, xPt, endPt });
        }
      }
    }
  }
  return [...found.values()];
}

/** Moves down whatever a page's end, with the bands beside it, would cut, and all below it. */
function keepWhole(
  boxes: readonly Placed[],
  stops: readonly Stop[],
  pages: (yPt: number) => number,
): void {
  const top = ({ yPt, halfPt }: Placed) => yPt - halfPt;
  const lowest = () => Math.max(0, ...boxes.map(({ yPt, halfPt }) => yPt + halfPt));
  for (let end = pages(0); end < lowest(); end = pages(end)) {
    const isCut = (box: Placed) => top(box) < end + BAND_PT && box.yPt + box.halfPt > end - BAND_PT;
    const cut = boxes.filter(isCut);
    if (cut.length === 0) continue;
    const from = Math.min(...cut.map(top));
    const downPt = end + BAND_PT - from;
    for (const stop of stops) if (stop.yPt >= from) stop.yPt += downPt;
    for (const box of boxes) if (top(box) >= from) box.yPt += downPt;
  }
}

function waysOf(
  links: readonly Link[],
  nodes: readonly Placed[],
  labels: readonly Placed[],
  stops: readonly (readonly Stop[])[],
  columns: readonly Column[],
): readonly Way[] {
  const columnOf = ({ leftPt }: Placed) => columns.findIndex((one) => one.leftPt === leftPt);
  const all = links.map(({ from, to }, link) => {
    const [near, far] = [nodes[from]!, nodes[to]!];
    return [
      { column: columnOf(near), yPt: near.yPt },
      ...stops[link]!,
      { column: columnOf(far), yPt: far.yPt },
    ];
  });
  // All that leaves one node shares a line.
  const keyOf = (link: number, step: number) =>
    step === 0 ? `node ${links[link]!.from}` : `link ${link}`;
  const stretches = columns.map(() => new Map<string, [number, number]>());
  const shared = new Map<string, number>();
  for (const [link, way] of all.entries()) {
    shared.set(keyOf(link, 0), (shared.get(keyOf(link, 0)) ?? 0) + 1);
    for (let step = 0; step + 1 < way.length; step += 1) {
      const [a, b] = [way[step]!, way[step + 1]!];
      if (a.yPt === b.yPt && step > 0) continue;
      const gap = stretches[a.column]!;
      const [top, bottom] = gap.get(keyOf(link, step)) ?? [a.yPt, a.yPt];
      gap.set(keyOf(link, step), [Math.min(top, a.yPt, b.yPt), Math.max(bottom, a.yPt, b.yPt)]);
    }
  }
  const lanes = stretches.map(lanesOf);
  const xOf = (column: number, key: string) => {
    const from = columns[column]!.rightPt;
    const to = columns[column + 1]?.leftPt ?? from + GAP_PT;
    const { laneOf, lanes: count } = lanes[column]!;
    return from + ((to - from) * ((laneOf.get(key) ?? 0) + 1)) / (count + 1);
  };
  return all.map((way, link): Way => {
    const labelColumn = columnOf(labels[link]!);
    const corners: Point[][] = [[], []];
    let part = 0;
    const near = nodes[links[link]!.from]!;
    corners[0]!.push([near.rightPt, near.yPt]);
    for (let step = 0; step + 1 < way.length; step += 1) {
      const [a, b] = [way[step]!, way[step + 1]!];
      const x = xOf(a.column, keyOf(link, step));
      corners[part]!.push([x, a.yPt], [x, b.yPt]);
      if (b.column === labelColumn) {
        const left = columns[labelColumn]!.leftPt;
        corners[0]!.push([left, b.yPt]);
        corners[1]!.push([left, b.yPt]);
        part = 1;
      }
    }
    const far = nodes[links[link]!.to]!;
    corners[1]!.push([far.leftPt, far.yPt]);
    const isShared = (shared.get(keyOf(link, 0)) ?? 0) > 1;
    return {
      toLabel: withoutRepeats(corners[0]!),
      onwards: withoutRepeats(corners[1]!),
      ...(isShared && { branch: [xOf(way[0]!.column, keyOf(link, 0)), way[1]!.yPt] as Point }),
    };
  });
}

/** Corners without those that lie on a straight piece. */
function withoutRepeats(corners: readonly Point[]): readonly Point[] {
  const kept: Point[] = [];
  for (const corner of corners) {
    const [before, last] = [kept.at(-2), kept.at(-1)];
    if (last?.[0] === corner[0] && last[1] === corner[1]) continue;
    const isStraight =
      before !== undefined &&
      last !== undefined &&
      ((before[0] === last[0] && last[0] === corner[0]) ||
        (before[1] === last[1] && last[1] === corner[1]));
    if (isStraight) kept.pop();
    kept.push(corner);
  }
  return kept;
}
