/** Which run feeds which: the list of runs as a tree that hangs from the source. */
import { invalid, isRefusal, type Outcome, type Refusal } from './outcome';
import { shortened } from './sentence';

/** What a run is fed from when no other run is named. */
export const SOURCE = '';

/** The list's runs by position: a feeder stands before what it feeds, and each branch off the source in one piece. */
export interface FeederTree {
  /** Row of the list at each position. Rows that do not hang from the source have none. */
  readonly rowAt: Int32Array;
  /** Position of the feeder at each position; -1 is the source. */
  readonly feederAt: Int32Array;
  /** Position where each branch off the source begins, and where the last one ends. */
  readonly branchStarts: readonly number[];
  /** Why a row may not answer, by row; its place in the tree, if it has one, still counts. */
  readonly refusals: ReadonlyMap<number, Refusal>;
  /** Rows whose name stands twice and that other runs name as feeder: what they carry is not known. */
  readonly ambiguous: ReadonlySet<number>;
  /** How a row is called in a sentence: its name in quotes, or its place in the list. */
  called(row: number): string;
}

/** Names are the same as a spreadsheet compares text, upper and lower case alike; outer spaces do not count either. */
export function nameKey(name: string): string {
  return name.trim().toLowerCase();
}

const FROM_SOURCE = -1;
const FROM_NOWHERE = -2;

/** First row of each name, and which rows share theirs. */
function indexNames(names: readonly (string | undefined)[]) {
  const rowOf = new Map<string, number>();
  const shared = new Map<string, number[]>();
  for (let row = 0; row < names.length; row += 1) {
    const name = names[row];
    if (name === undefined) continue;
    const key = nameKey(name);
    const first = rowOf.get(key);
    if (first === undefined) rowOf.set(key, row);
    else if (shared.has(key)) shared.get(key)!.push(row);
    else shared.set(key, [first, row]);
  }
  return { rowOf, shared };
}

/** Rows that each row feeds, as linked lists in two arrays: one pass, whatever the shape of the tree. */
function linkChildren(feederRow: Int32Array) {
  const first = new Int32Array(feederRow.length).fill(-1);
  const next = new Int32Array(feederRow.length).fill(-1);
  for (let row = feederRow.length - 1; row >= 0; row -= 1) {
    const feeder = feederRow[row]!;
    if (feeder < 0) continue;
    next[row] = first[feeder]!;
    first[feeder] = row;
  }
  return { first, next };
}

/**
 * Rows in a loop and rows that hang from one, found by walking towards the source from each row not yet reached:
 * by row, a row of the loop it ends in (itself where it is part of it).
 */
function findLoops(feederRow: Int32Array, reached: Uint8Array): Map<number, number> {
  const loopOf = new Map<number, number>();
  const walkOf = new Int32Array(feederRow.length).fill(-1);
  for (let start = 0; start < feederRow.length; start += 1) {
    if (reached[start] === 1 || loopOf.has(start)) continue;
    const path: number[] = [];
    let row = start;
    while (walkOf[row] === -1) {
      walkOf[row] = start;
      path.push(row);
      row = feederRow[row]!;
    }
    const closes = walkOf[row] === start ? path.indexOf(row) : path.length;
    const endsIn = closes < path.length ? row : loopOf.get(row)!;
    for (const [index, member] of path.entries()) {
      loopOf.set(member, index >= closes ? member : endsIn);
    }
  }
  return loopOf;
}

/**
 * Builds the tree. `feeders` holds, by row, the name of the feeding run, SOURCE, or the refusal of a cell that cannot be
 * read. Refused: a name that stands twice, a feeder that is not in the list or is named twice, every run of a loop, and
 * what hangs from any of these. Time and memory grow in proportion to the rows; nothing recurses.
 */
export function buildFeederTree(
  names: readonly (string | undefined)[],
  feeders: readonly Outcome<string>[],
): FeederTree {
  const count = names.length;
  const called = (row: number) => {
    const name = names[row];
    return name === undefined ? `the run in row ${row + 1} of the list` : `"${shortened(name)}"`;
  };
  const { rowOf, shared } = indexNames(names);
  const refusals = new Map<number, Refusal>();
  const namedTwice = new Set<string>();
  for (const rows of shared.values()) {
    for (const row of rows) {
      refusals.set(
        row,
        invalid(`${called(row)} names ${rows.length} runs of the list; give each run its own name`),
      );
    }
  }

  /** Why a row that hangs from no source is cut off, to be said of what it feeds. */
  const cutOff = new Map<number, string>();
  const feederRow = new Int32Array(count);
  for (let row = 0; row < feeders.length; row += 1) {
    const feeder = feeders[row]!;
    feederRow[row] = FROM_NOWHERE;
    if (isRefusal(feeder)) {
      cutOff.set(row, 'whose row has an error');
      continue;
    }
    const key = nameKey(feeder);
    const sameName = shared.size === 0 ? undefined : shared.get(key);
    const found = rowOf.get(key);
    if (key === SOURCE) {
      feederRow[row] = FROM_SOURCE;
    } else if (sameName !== undefined) {
      namedTwice.add(key);
      cutOff.set(row, `whose feeder "${shortened(feeder)}" names more than one run`);
      refusals.set(
        row,
        invalid(`fed from "${shortened(feeder)}", which names ${sameName.length} runs`),
      );
    } else if (found === undefined) {
      cutOff.set(row, `whose feeder "${shortened(feeder)}" is not in the list of runs`);
      refusals.set(
        row,
        invalid(
          `fed from "${shortened(feeder)}", which is not in the list of runs; name a run of the list, or leave it blank for the source`,
        ),
      );
    } else {
      feederRow[row] = found;
    }
  }

  const { first, next } = linkChildren(feederRow);
  const reached = new Uint8Array(count);
  const stack = new Int32Array(count);
  /** Visits a row and all that it feeds, feeders first. */
  const descend = (root: number, visit: (row: number) => void) => {
    let depth = 0;
    stack[depth++] = root;
    while (depth > 0) {
      const row = stack[--depth]!;
      reached[row] = 1;
      visit(row);
      for (let child = first[row]!; child >= 0; child = next[child]!) stack[depth++] = child;
    }
  };

  const rowAt = new Int32Array(count);
  const positionOf = new Int32Array(count).fill(-1);
  const branchStarts: number[] = [];
  let placed = 0;
  for (let row = 0; row < count; row += 1) {
    if (feederRow[row] !== FROM_SOURCE) continue;
    branchStarts.push(placed);
    descend(row, (fed) => {
      positionOf[fed] = placed;
      rowAt[placed++] = fed;
    });
  }
  branchStarts.push(placed);

  const refuse = (row: number, why: string) => {
    if (!refusals.has(row)) refusals.set(row, invalid(why));
  };
  for (const [root, why] of cutOff) {
    descend(root, (row) => {
      if (row !== root) refuse(row, `fed through ${called(root)}, ${why}`);
    });
  }
  for (const [row, member] of findLoops(feederRow, reached)) {
    refuse(
      row,
      row === member
        ? `${called(row)} stands in a loop of feeders: in the end it is fed from itself; feed one run of the loop from the source`
        : `fed through ${called(member)}, which stands in a loop of feeders`,
    );
  }

  const feederAt = new Int32Array(placed);
  for (let at = 0; at < placed; at += 1) {
    const feeder = feederRow[rowAt[at]!]!;
    feederAt[at] = feeder < 0 ? -1 : positionOf[feeder]!;
  }
  return {
    rowAt: rowAt.subarray(0, placed),
    feederAt,
    branchStarts,
    refusals,
    ambiguous: new Set([...namedTwice].flatMap((key) => shared.get(key)!)),
    called,
  };
}
