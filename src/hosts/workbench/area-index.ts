/**
 * Which formulas hang on which cells, kept so that finding, adding and removing stay quick where thousands of formulas hang
 * on the same columns. The engine's own index (0.25.1) holds an area once for each formula that names it, and looks through
 * all of them to remove one: a row put into a schedule took a minute and a half.
 */
import { RTree, type IRTreeItem, type IRange, type IUnitRange } from '@univerjs/core';

type Id = IRTreeItem['id'];
type Ids = Set<Id>;

/** What hangs on the cells of one sheet. */
class SheetIndex {
  /** By row, then by column: what hangs on single cells. */
  private readonly cells = new Map<number, Map<number, Ids>>();
  /** Each larger area once, found by its corners. */
  private readonly byCorners = new Map<string, Ids>();
  private readonly areas = new RTree();
  private readonly idsOfArea: Ids[] = [];
  /** Where an id stands, to take it out again. */
  private readonly placesOf = new Map<Id, Ids[]>();

  add({ startRow, startColumn, endRow, endColumn }: IRange, id: Id): void {
    const isCell = startRow === endRow && startColumn === endColumn;
    const ids = isCell
      ? this.idsAtCell(startRow, startColumn)
      : this.idsOf({ startRow, startColumn, endRow, endColumn });
    if (ids.has(id)) return;
    ids.add(id);
    const places = this.placesOf.get(id);
    if (places === undefined) this.placesOf.set(id, [ids]);
    else places.push(ids);
  }

  remove(id: Id): void {
    for (const ids of this.placesOf.get(id) ?? []) ids.delete(id);
    this.placesOf.delete(id);
  }

  *find(searched: IRange): Generator<Id> {
    const range = closed(searched);
    yield* this.findAtCells(range);
    for (const index of this.areas.bulkSearch([{ unitId: AREAS, sheetId: AREAS, range }])) {
      yield* this.idsOfArea[Number(index)]!;
    }
  }

  private *findAtCells({ startRow, startColumn, endRow, endColumn }: IRange): Generator<Id> {
    for (const columns of within(this.cells, startRow, endRow)) {
      for (const ids of within(columns, startColumn, endColumn)) yield* ids;
    }
  }

  private idsAtCell(row: number, column: number): Ids {
    return kept(
      kept(this.cells, row, () => new Map<number, Ids>()),
      column,
      () => new Set<Id>(),
    );
  }

  private idsOf(range: IRange): Ids {
    const { startRow, startColumn, endRow, endColumn } = range;
    return kept(this.byCorners, [startRow, startColumn, endRow, endColumn].join(), () => {
      const ids: Ids = new Set();
      const index = this.idsOfArea.push(ids) - 1;
      this.areas.insert({ unitId: AREAS, sheetId: AREAS, range, id: index });
      return ids;
    });
  }
}

/** The tree of areas asks for a workbook and a sheet; there is one tree a sheet here. */
const AREAS = 'areas';

function kept<K, V>(map: Map<K, V>, key: K, make: () => V): V {
  let value = map.get(key);
  if (value === undefined) {
    value = make();
    map.set(key, value);
  }
  return value;
}

/** A whole row or column has no number for its open ends. */
function closed({ startRow, startColumn, endRow, endColumn }: IRange): IRange {
  const or = (end: number, otherwise: number) => (Number.isNaN(end) ? otherwise : end);
  return {
    startRow: or(startRow, 0),
    startColumn: or(startColumn, 0),
    endRow: or(endRow, Infinity),
    endColumn: or(endColumn, Infinity),
  };
}

/** Whether a cell lies in an area, which may be a whole row or column. */
export function holds(area: IRange, row: number, column: number): boolean {
  const { startRow, startColumn, endRow, endColumn } = closed(area);
  return row >= startRow && row <= endRow && column >= startColumn && column <= endColumn;
}

/** Values from one number to another, by whichever are fewer: the numbers or the values. */
function* within<V>(map: ReadonlyMap<number, V>, from: number, to: number): Generator<V> {
  if (to - from < map.size) {
    for (let at = from; at <= to; at += 1) {
      const value = map.get(at);
      if (value !== undefined) yield value;
    }
    return;
  }
  for (const [at, value] of map) if (at >= from && at <= to) yield value;
}

const isSame = (one: IUnitRange, other: IUnitRange) =>
  one.unitId === other.unitId &&
  one.sheetId === other.sheetId &&
  Object.is(one.range.startRow, other.range.startRow) &&
  Object.is(one.range.startColumn, other.range.startColumn) &&
  Object.is(one.range.endRow, other.range.endRow) &&
  Object.is(one.range.endColumn, other.range.endColumn);

export class AreaIndex extends RTree {
  private readonly sheets = new Map<string, Map<string, SheetIndex>>();
  /** What was told of a formula since its areas were last taken out. */
  private readonly told = new Map<Id, readonly IUnitRange[]>();

  /** The areas that a formula hangs on, where they were all told by `tell`. */
  areasOf(id: Id): readonly IUnitRange[] | undefined {
    return this.told.get(id);
  }

  /** Notes all areas that a formula hangs on; false where these are what it hung on before. */
  tell(id: Id, areas: readonly IUnitRange[]): boolean {
    const before = this.told.get(id);
    const isKnown =
      before?.length === areas.length && before.every((area, at) => isSame(area, areas[at]!));
    if (isKnown) return false;
    // The list itself is the engine's, which empties it.
    this.told.set(id, [...areas]);
    return true;
  }

  override insert({ unitId, sheetId, range, id }: IRTreeItem): void {
    if (unitId.length === 0) return;
    const sheets = kept(this.sheets, unitId, () => new Map<string, SheetIndex>());
    kept(sheets, sheetId, () => new SheetIndex()).add(range, id);
  }

  override bulkInsert(items: IRTreeItem[]): void {
    for (const item of items) this.insert(item);
  }

  override *searchGenerator({ unitId, sheetId, range }: IUnitRange): Generator<Id> {
    const sheet = this.sheets.get(unitId)?.get(sheetId);
    if (sheet !== undefined) yield* sheet.find(range);
  }

  override bulkSearch(searchList: IUnitRange[], exceptTreeIds?: Set<number>): Set<Id> {
    const found = new Set<Id>();
    for (const search of searchList) {
      for (const id of this.searchGenerator(search)) {
        if (exceptTreeIds?.has(id as number) !== true) found.add(id);
      }
    }
    return found;
  }

  /** Takes an id out of its sheet, whatever the range: the engine only knows the box around all its areas there. */
  override remove({ unitId, sheetId, id }: IRTreeItem): void {
    this.told.delete(id);
    this.sheets.get(unitId)?.get(sheetId)?.remove(id);
  }

  override bulkRemove(searchList: IRTreeItem[]): void {
    for (const search of searchList) this.remove(search);
  }

  override removeById(unitId: string, sheetId?: string): void {
    this.told.clear();
    if (sheetId === undefined || sheetId === '') this.sheets.delete(unitId);
    else this.sheets.get(unitId)?.delete(sheetId);
  }

  override clear(): void {
    this.told.clear();
    this.sheets.clear();
  }
}
