/**
 * What a part of a formula asks for, where that is little enough for its value to be kept: whole columns, which are the same
 * for every row that the formula is filled down to, and cells of the row itself.
 */
import type { Node } from './syntax';

export interface Asked {
  readonly hasAreas: boolean;
  /** Cells of the row, each once. */
  readonly cells: readonly Extract<Node, { kind: 'area' }>[];
}

/** Functions of nothing but what their arguments come to. */
const PLAIN = new Set([
  'ISERROR',
  'ISNA',
  'ISNUMBER',
  'ISTEXT',
  'LEN',
  'MAX',
  'MIN',
  'N',
  'NOT',
  'SUM',
  'SUMPRODUCT',
]);

/** An area of more than a cell that stays where it is when the formula is filled down. */
export function isWholeArea(node: Node): boolean {
  return (
    node.kind === 'area' && node.first !== node.last && node.first.rowPinned && node.last.rowPinned
  );
}

const NOTHING: Asked = { hasAreas: false, cells: [] };

function together(parts: readonly (Asked | undefined)[]): Asked | undefined {
  const cells = new Map<string, Asked['cells'][number]>();
  let hasAreas = false;
  for (const part of parts) {
    if (part === undefined) return undefined;
    hasAreas ||= part.hasAreas;
    for (const cell of part.cells) cells.set(JSON.stringify(cell), cell);
  }
  return { hasAreas, cells: [...cells.values()] };
}

/** Of the formula that is being compiled; kept no longer, since there are many thousands of parts. */
const found = new Map<Node, Asked | undefined>();

/** What a part asks for; undefined where it asks for more than that. */
export function askedOf(node: Node): Asked | undefined {
  let asked = found.get(node);
  if (asked === undefined && !found.has(node)) found.set(node, (asked = lookedUp(node)));
  return asked;
}

/** Lets go of the parts of a formula that is compiled. */
export function forgetParts(): void {
  found.clear();
}

function lookedUp(node: Node): Asked | undefined {
  switch (node.kind) {
    case 'literal':
      return NOTHING;
    case 'area':
      if (isWholeArea(node)) return { hasAreas: true, cells: [] };
      return node.first === node.last ? { hasAreas: false, cells: [node] } : undefined;
    case 'name':
      return undefined;
    case 'negative':
    case 'percent':
      return askedOf(node.of);
    case 'operation':
      return together([askedOf(node.left), askedOf(node.right)]);
    case 'call':
      return PLAIN.has(node.name) ? together(node.args.map(askedOf)) : undefined;
  }
}
