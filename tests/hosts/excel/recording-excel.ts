/**
 * A stand-in for Excel that keeps its discipline. Everything asked of it is queued and carried out at the next sync, in
 * order; a queue that fails half-way stays half done; nothing can be read that was not loaded and synced. It refuses what
 * Excel refuses, as far as that is documented, counts what a request would weigh, and records every step. It computes
 * nothing. The file stands alone, so that a page can be given it in place of Office.js.
 */

/** One queued step: a call with its arguments, a load, or an assignment with its value. */
export interface Step {
  /** How it was reached, sheets by their names: Runs!getRangeByIndexes(0,0,1,1).values */
  readonly path: string;
  readonly given: readonly unknown[];
  readonly kind: 'call' | 'load' | 'assignment';
}

/** What a sheet holds at first, as Excel's used range tells it; values that are withheld are null. */
export interface Used {
  readonly rowIndex: number;
  readonly columnIndex: number;
  readonly values: readonly (readonly unknown[])[] | null;
  readonly formulas?: readonly (readonly unknown[])[];
}

/** As OfficeExtension.Error: a message, and a code to tell errors apart by. */
export class OfficeError extends Error {
  constructor(readonly code: string) {
    super(`Excel's own words for ${code}.`);
  }
}

const MOST_REQUEST_BYTES = 5_000_000;
const MOST_FORMULA = 8192;
const ROWS = 1_048_576;
const COLUMNS = 16_384;

interface Cell {
  readonly value: unknown;
  readonly formula?: string;
}

export class Sheet {
  readonly cells = new Map<number, Cell>();
  readonly formats = new Map<number, string>();
  readonly tables: Table[] = [];
  /** Everything set that is not content, by what it was set on. */
  readonly looks = new Map<string, unknown>();
  /** Conditional formats, the newest first, as Excel keeps them. */
  readonly highlights: Highlight[] = [];
  /** In the order in which they were put there. */
  readonly shapes: Shape[] = [];
  readonly charts: Chart[] = [];
  isProtected = false;
  isGone = false;
  isWithheld = false;
  constructor(
    readonly id: string,
    public name: string,
    readonly isChart = false,
  ) {}

  at(row: number, column: number): Cell | undefined {
    return this.cells.get(row * COLUMNS + column);
  }

  formatAt(row: number, column: number): string {
    return this.formats.get(row * COLUMNS + column) ?? 'General';
  }
}

/** A picture over the cells, with all that was set on it. */
export interface Shape {
  readonly sheet: Sheet;
  readonly base64: string;
  readonly set: Map<string, unknown>;
}

/** A series of a chart: where its figures and the names beside them stand, and all that was set on it. */
export class Series {
  values: Rectangle | undefined;
  categories: Rectangle | undefined;
  readonly set = new Map<string, unknown>();
  constructor(
    readonly sheet: Sheet,
    public name: string,
  ) {}
}

/** A chart over the cells, with all that was set on it and on its parts. */
export class Chart {
  readonly series: Series[] = [];
  readonly set = new Map<string, unknown>();
  constructor(
    readonly sheet: Sheet,
    readonly type: string,
    public name: string,
  ) {}
}

const SHAPE_MEMBERS = [
  ...['name', 'left', 'top', 'width', 'height', 'lockAspectRatio'],
  ...['altTextTitle', 'altTextDescription'],
];

/** A conditional format; its formula is empty until it is set. */
export interface Highlight {
  readonly sheet: Sheet;
  readonly area: Rectangle;
  formula: string;
  readonly format: Map<string, unknown>;
}

export interface Table {
  name: string;
  readonly sheet: Sheet;
  area: Rectangle;
}

interface Rectangle {
  readonly row: number;
  readonly column: number;
  readonly rows: number;
  readonly columns: number;
}

interface Row {
  readonly table: Table;
  /** Its place in the table's body. */
  readonly index: number;
}

interface Place extends Rectangle {
  readonly sheet: Sheet;
}

interface DefinedName {
  readonly name: string;
  readonly place: Place;
}

interface Rule {
  readonly list?: { readonly source: string };
}
interface Texts {
  readonly title: string;
  readonly message: string;
}

/** What a data validation may say: titles, prompts and refusals have limits of their own. */
const VALIDATION_LIMITS: Readonly<Record<string, (value: never) => boolean>> = {
  rule: ({ list }: Rule) => (list?.source.length ?? 0) <= 255,
  prompt: ({ title, message }: Texts) => title.length <= 32 && message.length <= 255,
  errorAlert: ({ title, message }: Texts) => title.length <= 32 && message.length <= 225,
};

type Kind =
  | 'context'
  | 'application'
  | 'workbook'
  | 'worksheets'
  | 'names'
  | 'tables'
  | 'sheet'
  | 'name'
  | 'table'
  | 'rows'
  | 'row'
  | 'columns'
  | 'column'
  | 'range'
  | 'protection'
  | 'event'
  | 'handler'
  | 'highlights'
  | 'highlight'
  | 'highlightCustom'
  | 'highlightRule'
  | 'shapes'
  | 'shape'
  | 'charts'
  | 'chart'
  | 'seriesList'
  | 'series'
  | 'looks';

/** What stands for an object that is not there. */
const NOTHING = Symbol('null object');

interface Call {
  readonly gives?: Kind;
  does(self: never, given: never): unknown;
}

interface Members {
  readonly goes?: Readonly<Record<string, readonly [Kind, (self: never) => unknown]>>;
  readonly calls?: Readonly<Record<string, Call>>;
  readonly sets?: Readonly<Record<string, (self: never, value: never) => void>>;
  readonly reads?: Readonly<Record<string, (self: never) => unknown>>;
  readonly items?: readonly [Kind, (self: never) => readonly unknown[]];
}

class Node {
  value: unknown;
  isDone = false;
  private ownLoaded: Map<string, unknown> | undefined;
  private ownChildren: Map<string, unknown> | undefined;
  constructor(
    readonly kind: Kind,
    readonly parent: Node | undefined,
    readonly via: string,
    readonly given?: readonly unknown[],
  ) {}

  /** Made when they are first asked for: most of the many objects need neither. */
  get loaded(): Map<string, unknown> {
    return (this.ownLoaded ??= new Map());
  }

  /** What hangs on it is one object, however often it is asked for. */
  get children(): Map<string, unknown> {
    return (this.ownChildren ??= new Map());
  }

  get path(): string {
    const { parent, via, given } = this;
    if (this.kind === 'sheet' && this.value instanceof Sheet) return `${this.value.name}!`;
    const before = parent?.path ?? '';
    const called = given === undefined ? via : `${via}(${given.map(shown).join(',')})`;
    return before === '' || before.endsWith('!') ? before + called : `${before}.${called}`;
  }
}

/** Asks one of the stand-in's objects for its node; a weak map of them all would keep the memory's keeper busy. */
const NODE = Symbol('node');

function nodeOf(value: unknown): Node | undefined {
  return typeof value === 'function' ? (value as { readonly [NODE]?: Node })[NODE] : undefined;
}

function shown(value: unknown): string {
  if (typeof value === 'function') return nodeOf(value)?.path ?? 'function';
  return JSON.stringify(value) ?? 'undefined';
}

class Done implements Step {
  constructor(
    readonly node: Node,
    readonly member: string,
    readonly given: readonly unknown[],
    readonly kind: Step['kind'],
    readonly carryOut: () => void,
  ) {}

  get path(): string {
    const before = this.node.path;
    return before === '' || before.endsWith('!')
      ? before + this.member
      : `${before}.${this.member}`;
  }

  /** About what Office.js makes of it. */
  get bytes(): number {
    const given = this.given.filter((value) => typeof value !== 'function');
    return CALL_BYTES[this.kind] + JSON.stringify(given).length;
  }
}

/** An action and the path of its object, bytes: an estimate on the high side, not measured in Excel. */
const CALL_BYTES = { call: 330, load: 250, assignment: 250 } as const;

const looksLikeACell = (name: string) =>
  /^[a-z]{1,3}\d+$/i.test(name) || /^(r|c|r\d*c\d*)$/i.test(name);

function sizeOf(rows: unknown): readonly [number, number] | undefined {
  if (!Array.isArray(rows)) return undefined;
  return [rows.length, (rows as unknown[][])[0]?.length ?? 0];
}

interface ReadFormula {
  readonly isBalanced: boolean;
  readonly sheets: readonly string[];
  /** In lower case. */
  readonly tables: readonly string[];
  /** Whether it names cells of its own table row. */
  readonly isOfRow: boolean;
}

/** Thousands of insertions write the same formulas. */
function kept<Key, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const known = new Map<Key, Value>();
  return (key) => {
    const value = known.get(key) ?? make(key);
    known.set(key, value);
    return value;
  };
}

const readFormula = kept((formula: string): ReadFormula => {
  const plain = formula.replace(/"(?:[^"]|"")*"/g, '""');
  let depth = 0;
  let least = 0;
  for (const [mark] of plain.replace(/'(?:[^']|'')*'/g, '').matchAll(/[()]/g)) {
    depth += mark === '(' ? 1 : -1;
    least = Math.min(least, depth);
  }
  return {
    isBalanced: depth === 0 && least === 0,
    sheets: [...plain.matchAll(/'((?:[^']|'')+)'!|\b([A-Za-z_]\w*)!/g)].map(
      ([, quoted, bare]) => quoted?.replaceAll("''", "'") ?? bare!,
    ),
    tables: [...plain.matchAll(/\b([A-Za-z_]\w*)\[/g)].map(([, name]) => name!.toLowerCase()),
    isOfRow: /(^|[^\w\]])\[@/.test(plain),
  };
});

export class RecordingExcel {
  readonly sheets: Sheet[] = [];
  readonly names = new Map<string, DefinedName>();
  /** Steps that were carried out, over all batches. */
  readonly done: Step[] = [];
  /** What each request weighed. */
  readonly requests: number[] = [];
  readonly listeners = new Map<string, Set<(event: object) => Promise<void>>>();
  readonly application = { calculationMode: 'Automatic', calculationState: 'Done', calculated: 0 };
  syncs = 0;
  /** Cells whose values were handed over. */
  cellsRead = 0;
  active: Sheet;
  /** What was selected last. */
  selected: (Rectangle & { readonly sheetName: string }) | undefined;
  isProtected = false;
  /** While a cell is being edited: resolves when the person leaves it. */
  editing: Promise<void> | undefined;
  /** Decides at the moment a step is carried out whether Excel refuses it; gives the code of the error. */
  refuse: (step: Step, index: number) => string | undefined = () => undefined;
  /** Decides after a request was carried out whether its answer is lost; gives the code of the error. */
  loseAnswer: (sync: number) => string | undefined = () => undefined;
  steps = 0;
  private nextId = 1;

  constructor(sheets: Readonly<Record<string, Used | null>>) {
    for (const [name, used] of Object.entries(sheets)) this.fill(this.newSheet(name), used);
    this.active = this.sheets[0]!;
  }

  /** Adds a sheet as another person does. */
  newSheet(name: string, isChart = false): Sheet {
    const sheet = new Sheet(`{${this.nextId++}}`, name, isChart);
    this.sheets.push(sheet);
    return sheet;
  }

  fill(sheet: Sheet, used: Used | null): void {
    if (used === null) return;
    sheet.isWithheld = used.values === null;
    for (const [down, line] of (used.values ?? [[0]]).entries()) {
      for (const [across, value] of line.entries()) {
        if (value === '' || value === null) continue;
        const formula = used.formulas?.[down]?.[across];
        const key = (used.rowIndex + down) * COLUMNS + used.columnIndex + across;
        const isFormula =
          typeof formula === 'string' && formula.startsWith('=') && formula !== value;
        sheet.cells.set(key, isFormula ? { value, formula } : { value });
      }
    }
  }

  sheetNamed(name: string): Sheet | undefined {
    return this.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  }

  /** Whether a new row of a table gets the formulas of its columns: an autocorrection that people switch off. */
  fillsColumns = true;

  /** Skipped where thousands of insertions are only to be interrupted. */
  weighs = true;

  get sheetNames(): readonly string[] {
    return this.sheets.map(({ name }) => name);
  }

  get tableNames(): readonly string[] {
    return this.sheets.flatMap(({ tables }) => tables.map(({ name }) => name));
  }

  get definedNames(): readonly string[] {
    return [...this.names.values()].map(({ name }) => name);
  }

  /** Names cells as another person does. */
  define(name: string, sheet: Sheet, of: Rectangle): void {
    this.names.set(name.toLowerCase(), { name, place: { ...of, sheet } });
  }

  /** Tells an event to those who listen. */
  async tell(event: string, about: object): Promise<void> {
    for (const listener of this.listeners.get(event) ?? []) await listener(about);
  }

  /** Excel.run, with and without options. */
  readonly run = async (...given: unknown[]): Promise<unknown> => {
    const batch = given.at(-1) as (context: unknown) => Promise<unknown>;
    const before = given.length > 1 ? given[0] : undefined;
    if (typeof before === 'function') return batch(before);
    const waits = (before as { delayForCellEdit?: boolean } | undefined)?.delayForCellEdit === true;
    return batch(this.newContext(waits));
  };

  private newContext(waits: boolean): unknown {
    const queue: Done[] = [];
    const sync = async () => {
      await Promise.resolve();
      if (this.editing !== undefined) {
        if (!waits) throw new OfficeError('InvalidOperationInCellEditMode');
        await this.editing;
      }
      const number = this.syncs;
      this.syncs += 1;
      const steps = queue.splice(0);
      const bytes = this.weighs ? steps.reduce((sum, step) => sum + step.bytes, 0) : 0;
      this.requests.push(bytes);
      if (bytes > MOST_REQUEST_BYTES) throw new OfficeError('RequestPayloadSizeLimitExceeded');
      for (const step of steps) {
        const code = this.refuse(step, this.steps);
        this.steps += 1;
        if (code !== undefined) throw new OfficeError(code);
        step.carryOut();
        this.done.push(step);
      }
      const lost = this.loseAnswer(number);
      if (lost !== undefined) throw new OfficeError(lost);
    };
    const root = new Node('context', undefined, '');
    root.value = this;
    root.isDone = true;
    return this.objectOf(root, queue, sync);
  }

  private objectOf(node: Node, queue: Done[], sync?: () => Promise<void>): unknown {
    const members = this.members[node.kind];
    const isLooks = node.kind === 'looks';
    const child = (kind: Kind, via: string, given?: readonly unknown[]) =>
      this.objectOf(new Node(kind, node, via, given), queue);
    const object: object = new Proxy(() => undefined, {
      get: (_, property) => {
        if (property === NODE) return node;
        if (property === 'then' || property === 'toJSON' || typeof property === 'symbol') {
          return undefined;
        }
        if (sync !== undefined && property === 'sync') return sync;
        if (property === 'load') {
          return (wanted: string) => {
            queue.push(
              new Done(node, 'load', [wanted], 'load', () => {
                this.load(node, wanted);
              }),
            );
            return object;
          };
        }
        if (property === 'isNullObject' || property === 'items' || own(members.reads, property)) {
          return this.readLoaded(node, property, queue);
        }
        const goes = own(members.goes, property);
        if (goes !== undefined) {
          const known = node.children.get(property) ?? child(goes[0], property);
          node.children.set(property, known);
          return known;
        }
        const call = own(members.calls, property);
        if (call !== undefined) return this.caller(node, property, call, queue);
        if (isLooks) return this.freely(node, property, queue);
        throw new Error(`this stand-in knows no ${node.kind}.${property}`);
      },
      set: (_, property, value: unknown) => {
        const name = String(property);
        const set = own(members.sets, name);
        if (set === undefined && !isLooks) {
          throw new Error(`this stand-in knows no ${node.kind}.${name} to set`);
        }
        queue.push(
          new Done(node, name, [value], 'assignment', () => {
            const self = this.valueOf(node);
            if (set !== undefined) set(self as never, value as never);
            else this.setLook(node, name, value);
          }),
        );
        return true;
      },
    });
    return object;
  }

  /** A member of the looks may be gone through and called alike. */
  private freely(node: Node, property: string, queue: Done[]): unknown {
    const through = new Node('looks', node, property);
    const object = this.objectOf(through, queue) as object;
    return new Proxy(object, {
      apply: (_, __, given: unknown[]) => {
        const called = new Node('looks', node, property, given);
        queue.push(
          new Done(node, property, given, 'call', () => {
            const place = this.valueOf(node) as Place | Chart | Series;
            this.mustBeWritable(place.sheet);
            if (place instanceof Chart || place instanceof Series) {
              place.set.set(`${partOf(node)}${property}`, given[0]);
              return;
            }
            const [edge] = given;
            const isInner = edge === 'InsideHorizontal' || edge === 'InsideVertical';
            const along = edge === 'InsideHorizontal' ? place.rows : place.columns;
            if (property === 'getItem' && isInner && along < 2) {
              throw new OfficeError('InvalidArgument');
            }
          }),
        );
        return this.objectOf(called, queue);
      },
    });
  }

  private setLook(node: Node, name: string, value: unknown): void {
    const on = this.valueOf(node) as Place | Highlight | Chart | Series;
    this.mustBeWritable(on.sheet);
    if (on instanceof Chart || on instanceof Series) {
      on.set.set(`${partOf(node)}${name}`, value);
      return;
    }
    const path = `${node.path}.${name}`;
    const limit = node.path.endsWith('.dataValidation') ? VALIDATION_LIMITS[name] : undefined;
    if (limit?.(value as never) === false) throw new OfficeError('InvalidArgument');
    if ('format' in on) on.format.set(path.slice(path.indexOf('.custom.')), value);
    else on.sheet.looks.set(path.slice(path.indexOf('!') + 1), value);
  }

  private caller(node: Node, name: string, call: Call, queue: Done[]) {
    return (...given: unknown[]) => {
      const result = new Node(call.gives ?? 'looks', node, name, given);
      queue.push(
        new Done(node, name, given, 'call', () => {
          const self = this.valueOf(node);
          const values = given.map((one) => {
            const named = nodeOf(one);
            return named === undefined ? one : this.valueOf(named);
          });
          result.value = self === NOTHING ? NOTHING : call.does(self as never, values as never);
          result.isDone = true;
        }),
      );
      return call.gives === undefined ? undefined : this.objectOf(result, queue);
    };
  }

  private valueOf(node: Node): unknown {
    const { parent, via, kind } = node;
    if (node.given !== undefined || parent === undefined) {
      if (kind === 'looks' && parent !== undefined) return this.valueOf(parent);
      if (!node.isDone) throw new Error(`${node.path} is of another batch`);
    } else {
      const self = this.valueOf(parent);
      const goes = this.members[parent.kind].goes?.[via];
      node.value = self === NOTHING ? NOTHING : goes === undefined ? self : goes[1](self as never);
    }
    const { value } = node;
    if (value instanceof Sheet && value.isGone) throw new OfficeError('ItemNotFound');
    const place = value as Partial<Place> | undefined;
    if (place?.sheet instanceof Sheet && place.sheet.isGone) throw new OfficeError('ItemNotFound');
    return value;
  }

  private load(node: Node, wanted: string): void {
    const self = this.valueOf(node);
    node.loaded.set('isNullObject', self === NOTHING);
    if (self === NOTHING) return;
    const members = this.members[node.kind];
    const properties = wanted.split(',').map((property) => property.trim());
    const ofItems = properties.filter((property) => property.startsWith('items/'));
    if (ofItems.length > 0) {
      const [kind, list] = members.items!;
      const items = list(self as never).map((value, index) => {
        const item = new Node(kind, node, 'items', [index]);
        item.value = value;
        item.isDone = true;
        this.load(item, ofItems.map((property) => property.slice('items/'.length)).join(','));
        return item;
      });
      node.loaded.set('items', items);
    }
    for (const property of properties) {
      if (property.startsWith('items/')) continue;
      const read = members.reads?.[property];
      if (read === undefined) throw new Error(`this stand-in cannot load ${node.kind}.${property}`);
      node.loaded.set(property, read(self as never));
    }
  }

  private readLoaded(node: Node, property: string, queue: Done[]): unknown {
    if (property === 'isNullObject') {
      // Known after a sync, with or without a load.
      if (!node.isDone) throw new Error(`${node.path}.isNullObject was read before it was synced`);
      return node.value === NOTHING;
    }
    if (!node.loaded.has(property)) {
      throw new Error(`${node.path}.${property} was read before it was loaded and synced`);
    }
    const value = node.loaded.get(property);
    if (property !== 'items') return value;
    return (value as Node[]).map((item) => this.objectOf(item, queue));
  }

  private mustBeWritable(sheet: Sheet): void {
    if (sheet.isProtected) throw new OfficeError('AccessDenied');
  }

  private mustBeFreeSheetName(name: string, own?: Sheet): void {
    if (this.isProtected) throw new OfficeError('AccessDenied');
    if (name === '' || name.length > 31 || /[[\]:*?/\\]|^'|'$/.test(name)) {
      throw new OfficeError('InvalidArgument');
    }
    const other = this.sheetNamed(name);
    if (other !== undefined && other !== own) throw new OfficeError('ItemAlreadyExists');
  }

  private mustBeFreeName(name: string, own?: Table): void {
    if (looksLikeACell(name) || !/^[\p{L}_\\][\p{L}\p{N}_.\\]*$/u.test(name) || name.length > 255) {
      throw new OfficeError('InvalidArgument');
    }
    const isTaken =
      this.names.has(name.toLowerCase()) ||
      this.sheets.some(({ tables }) =>
        tables.some((table) => table !== own && table.name.toLowerCase() === name.toLowerCase()),
      );
    if (isTaken) throw new OfficeError('ItemAlreadyExists');
  }

  /** A formula may only point at sheets and tables that are there. */
  private mustBeReadable(formula: string, at: Place): void {
    if (formula.length > MOST_FORMULA) throw new OfficeError('FormulaLengthExceedsLimit');
    const { isBalanced, sheets, tables, isOfRow } = readFormula(formula);
    if (!isBalanced) throw new OfficeError('InvalidArgument');
    if (sheets.some((name) => this.sheetNamed(name) === undefined)) {
      throw new OfficeError('InvalidReference');
    }
    const isThere = (name: string) =>
      this.sheets.some((sheet) => sheet.tables.some((table) => table.name.toLowerCase() === name));
    const isInTable = () => at.sheet.tables.some(({ area }) => overlap(area, at));
    if (!tables.every(isThere) || (isOfRow && !isInTable())) {
      throw new OfficeError('InvalidArgument');
    }
  }

  private write(place: Place, property: 'values' | 'formulas', given: unknown): void {
    this.mustBeWritable(place.sheet);
    const size = sizeOf(given);
    if (size !== undefined && (size[0] !== place.rows || size[1] !== place.columns)) {
      throw new OfficeError('InvalidArgument');
    }
    const rows = given as readonly (readonly unknown[])[];
    for (let down = 0; down < place.rows; down += 1) {
      for (let across = 0; across < place.columns; across += 1) {
        const content = size === undefined ? given : rows[down]?.[across];
        this.writeCell(place, place.row + down, place.column + across, content, property);
      }
    }
  }

  private writeCell(place: Place, row: number, column: number, content: unknown, as: string): void {
    // Null leaves a cell as it is.
    if (content === null || content === undefined) return;
    const { sheet } = place;
    const key = row * COLUMNS + column;
    const isText = sheet.formatAt(row, column) === '@';
    if (typeof content !== 'string') sheet.cells.set(key, { value: content });
    else if (content === '') sheet.cells.delete(key);
    else if (content.startsWith('=') && !isText) {
      // Excel reads a formula in either property; only `formulas` is asked to here.
      if (as === 'values') throw new Error(`a formula was given as a value: ${content}`);
      this.mustBeReadable(content, place);
      sheet.cells.set(key, { value: '', formula: content });
    } else
      sheet.cells.set(key, {
        value: !isText && content.startsWith("'") ? content.slice(1) : content,
      });
  }

  private copy(to: Place, from: Place): void {
    this.mustBeWritable(to.sheet);
    for (let down = 0; down < to.rows; down += 1) {
      for (let across = 0; across < to.columns; across += 1) {
        const source = from.sheet.at(
          from.row + (down % from.rows),
          from.column + (across % from.columns),
        );
        const key = (to.row + down) * COLUMNS + to.column + across;
        if (source === undefined) to.sheet.cells.delete(key);
        else {
          const by = to.row + down - (from.row + (down % from.rows));
          const formula = source.formula === undefined ? undefined : moved(source.formula, by);
          to.sheet.cells.set(key, formula === undefined ? source : { value: '', formula });
        }
      }
    }
  }

  private valuesOf(place: Place, part: 'values' | 'formulas'): unknown[][] | null {
    if (place.sheet.isWithheld) return null;
    if (part === 'values') this.cellsRead += place.rows * place.columns;
    return Array.from({ length: place.rows }, (_, down) =>
      Array.from({ length: place.columns }, (__, across) => {
        const cell = place.sheet.at(place.row + down, place.column + across);
        return (part === 'formulas' ? (cell?.formula ?? cell?.value) : cell?.value) ?? '';
      }),
    );
  }

  private usedOf(sheet: Sheet): Place | typeof NOTHING {
    if (sheet.isChart) throw new OfficeError('UnsupportedSheet');
    const keys = [...sheet.cells.keys()];
    if (keys.length === 0) return NOTHING;
    let [top, left, bottom, right] = [ROWS, COLUMNS, 0, 0];
    for (const key of keys) {
      const [row, column] = [Math.floor(key / COLUMNS), key % COLUMNS];
      [top, bottom] = [Math.min(top, row), Math.max(bottom, row)];
      [left, right] = [Math.min(left, column), Math.max(right, column)];
    }
    return { sheet, row: top, column: left, rows: bottom - top + 1, columns: right - left + 1 };
  }

  /** Adds a row at a table's end: what stands below makes room, and computed columns go on where Excel fills them. */
  private addRow(table: Table): Row {
    const { sheet, area } = table;
    const end = area.row + area.rows;
    shiftDown(sheet, { ...area, row: end }, 1);
    table.area = { ...area, rows: area.rows + 1 };
    for (let column = area.column; column < area.column + area.columns; column += 1) {
      let row = end - 1;
      while (row > area.row && sheet.at(row, column)?.formula === undefined) row -= 1;
      const formula = sheet.at(row, column)?.formula;
      if (row === area.row || formula === undefined || !this.fillsColumns) continue;
      sheet.cells.set(end * COLUMNS + column, { value: '', formula: moved(formula, end - row) });
    }
    return { table, index: area.rows - 1 };
  }

  private removeSheet(sheet: Sheet): void {
    if (this.isProtected) throw new OfficeError('AccessDenied');
    if (this.sheets.length === 1) throw new OfficeError('InvalidOperation');
    const place = this.sheets.indexOf(sheet);
    this.sheets.splice(place, 1);
    sheet.isGone = true;
    if (this.active === sheet) this.active = this.sheets[Math.max(0, place - 1)]!;
  }

  private listenersOf(event: string): Set<(event: object) => Promise<void>> {
    const listeners = this.listeners.get(event) ?? new Set();
    this.listeners.set(event, listeners);
    return listeners;
  }

  private findSheet(key: string): Sheet | undefined {
    return this.sheets.find(
      ({ id, name, isChart }) =>
        !isChart && (id === key || name.toLowerCase() === key.toLowerCase()),
    );
  }

  private readonly members: Readonly<Record<Kind, Members>> = {
    context: {
      goes: {
        application: ['application', () => this.application],
        workbook: ['workbook', () => this],
      },
    },
    application: {
      calls: {
        suspendScreenUpdatingUntilNextSync: { does: () => undefined },
        suspendApiCalculationUntilNextSync: { does: () => undefined },
        calculate: { does: () => (this.application.calculated += 1) },
      },
      reads: {
        calculationMode: () => this.application.calculationMode,
        calculationState: () => this.application.calculationState,
      },
    },
    workbook: {
      goes: {
        worksheets: ['worksheets', () => this],
        names: ['names', () => this],
        tables: ['tables', () => undefined],
      },
    },
    worksheets: {
      goes: Object.fromEntries(
        ['onChanged', 'onCalculated', 'onActivated'].map((event) => [
          event,
          ['event', () => event] as const,
        ]),
      ),
      // A chart sheet is no worksheet: its name is taken, yet it is not among these.
      items: ['sheet', () => this.sheets.filter(({ isChart }) => !isChart)],
      calls: {
        add: {
          gives: 'sheet',
          does: (_: never, [name]: readonly string[]) => {
            this.mustBeFreeSheetName(name!);
            return this.newSheet(name!);
          },
        },
        getItem: {
          gives: 'sheet',
          does: (_: never, [key]: readonly string[]) => {
            const sheet = this.findSheet(key!);
            if (sheet === undefined) throw new OfficeError('ItemNotFound');
            return sheet;
          },
        },
        getItemOrNullObject: {
          gives: 'sheet',
          does: (_: never, [key]: readonly string[]) => this.findSheet(key!) ?? NOTHING,
        },
        getActiveWorksheet: { gives: 'sheet', does: () => this.active },
      },
    },
    names: {
      items: ['name', () => [...this.names.values()]],
      calls: {
        add: {
          gives: 'name',
          does: (_: never, [name, place]: readonly [string, Place]) => {
            this.mustBeFreeName(name);
            const defined = { name, place };
            this.names.set(name.toLowerCase(), defined);
            return defined;
          },
        },
        getItemOrNullObject: {
          gives: 'name',
          does: (_: never, [name]: readonly string[]) =>
            this.names.get(name!.toLowerCase()) ?? NOTHING,
        },
      },
    },
    name: {
      calls: {
        delete: {
          does: ({ name }: DefinedName) => {
            this.names.delete(name.toLowerCase());
          },
        },
      },
      reads: {
        name: ({ name }: DefinedName) => name,
        formula: ({ place }: DefinedName) => {
          const address = `$${letters(place.column)}$${place.row + 1}`;
          const { name, isGone } = place.sheet;
          return isGone ? `=#REF!${address}` : `='${name.replaceAll("'", "''")}'!${address}`;
        },
      },
    },
    tables: {
      items: [
        'table',
        (sheet: Sheet | undefined) => sheet?.tables ?? this.sheets.flatMap(({ tables }) => tables),
      ],
      calls: {
        add: {
          gives: 'table',
          does: (sheet: Sheet, [place]: readonly [Place]) => {
            this.mustBeWritable(sheet);
            if (sheet.tables.some(({ area }) => overlap(area, place))) {
              throw new OfficeError('InvalidArgument');
            }
            let number = 1;
            while (this.tableNames.includes(`Table${number}`)) number += 1;
            const table: Table = { name: `Table${number}`, sheet, area: place };
            sheet.tables.push(table);
            return table;
          },
        },
        getItem: {
          gives: 'table',
          does: (sheet: Sheet, [name]: readonly string[]) => {
            const table = sheet.tables.find(
              (one) => one.name.toLowerCase() === name!.toLowerCase(),
            );
            if (table === undefined) throw new OfficeError('ItemNotFound');
            return table;
          },
        },
      },
    },
    table: {
      goes: {
        columns: ['columns', (table: Table) => table],
        rows: ['rows', (table: Table) => table],
      },
      calls: {
        getHeaderRowRange: {
          gives: 'range',
          does: ({ sheet, area }: Table) => ({ ...area, rows: 1, sheet }),
        },
        getRange: { gives: 'range', does: ({ sheet, area }: Table) => ({ ...area, sheet }) },
      },
      reads: { name: ({ name }: Table) => name, showHeaders: () => true },
      sets: {
        name: (table: Table, name: string) => {
          this.mustBeFreeName(name, table);
          table.name = name;
        },
        style: ({ sheet }: Table, style: string) => {
          this.mustBeWritable(sheet);
          sheet.looks.set('table.style', style);
        },
        showBandedRows: ({ sheet }: Table, isShown: boolean) => {
          sheet.looks.set('table.showBandedRows', isShown);
        },
      },
    },
    rows: {
      reads: { count: ({ area }: Table) => area.rows - 1 },
      calls: {
        add: {
          gives: 'row',
          does: (table: Table): Row => {
            this.mustBeWritable(table.sheet);
            return this.addRow(table);
          },
        },
        getItemAt: {
          gives: 'row',
          does: (table: Table, [index]: readonly number[]): Row => {
            if (index! < 0 || index! >= table.area.rows - 1) throw new OfficeError('ItemNotFound');
            return { table, index: index! };
          },
        },
      },
    },
    row: {
      calls: {
        getRange: {
          gives: 'range',
          does: ({ table: { sheet, area }, index }: Row): Place => ({
            ...area,
            sheet,
            row: area.row + 1 + index,
            rows: 1,
          }),
        },
        delete: {
          does: ({ table, index }: Row) => {
            this.mustBeWritable(table.sheet);
            const { area } = table;
            shiftDown(table.sheet, { ...area, row: area.row + 1 + index }, -1);
            table.area = { ...area, rows: area.rows - 1 };
          },
        },
      },
    },
    columns: {
      calls: {
        getItemAt: {
          gives: 'column',
          does: ({ sheet, area }: Table, [index]: readonly number[]) => {
            if (index! >= area.columns) throw new OfficeError('ItemNotFound');
            return { ...area, sheet, column: area.column + index!, columns: 1 };
          },
        },
      },
    },
    column: {
      calls: {
        getDataBodyRange: {
          gives: 'range',
          does: (column: Place) => ({ ...column, row: column.row + 1, rows: column.rows - 1 }),
        },
      },
    },
    sheet: {
      goes: {
        tables: ['tables', (sheet: Sheet) => sheet],
        protection: ['protection', (sheet: Sheet) => sheet],
        freezePanes: ['looks', whole],
        pageLayout: ['looks', whole],
        horizontalPageBreaks: ['looks', whole],
        shapes: ['shapes', (sheet: Sheet) => sheet],
        charts: ['charts', (sheet: Sheet) => sheet],
      },
      calls: {
        activate: {
          does: (sheet: Sheet) => {
            this.active = sheet;
          },
        },
        delete: {
          does: (sheet: Sheet) => {
            this.removeSheet(sheet);
          },
        },
        getRange: { gives: 'range', does: whole },
        getRangeByIndexes: {
          gives: 'range',
          does: (sheet: Sheet, [row, column, rows, columns]: readonly number[]) => {
            const place = { sheet, row: row!, column: column!, rows: rows!, columns: columns! };
            const isOn = row! >= 0 && column! >= 0 && rows! > 0 && columns! > 0;
            if (!isOn || row! + rows! > ROWS || column! + columns! > COLUMNS) {
              throw new OfficeError('InvalidArgument');
            }
            return place;
          },
        },
        getUsedRangeOrNullObject: { gives: 'range', does: (sheet: Sheet) => this.usedOf(sheet) },
      },
      reads: { id: ({ id }: Sheet) => id, name: ({ name }: Sheet) => name },
      sets: {
        name: (sheet: Sheet, name: string) => {
          this.mustBeFreeSheetName(name, sheet);
          sheet.name = name;
        },
      },
    },
    shapes: {
      items: ['shape', (sheet: Sheet) => [...sheet.shapes]],
      calls: {
        addImage: {
          gives: 'shape',
          does: (sheet: Sheet, [base64]: readonly string[]) => {
            this.mustBeWritable(sheet);
            const shape: Shape = { sheet, base64: base64!, set: new Map() };
            sheet.shapes.push(shape);
            return shape;
          },
        },
      },
    },
    shape: {
      calls: {
        delete: {
          does: (shape: Shape) => {
            shape.sheet.shapes.splice(shape.sheet.shapes.indexOf(shape), 1);
          },
        },
      },
      reads: { name: ({ set }: Shape) => set.get('name') },
      sets: Object.fromEntries(
        SHAPE_MEMBERS.map((member) => [
          member,
          ({ set }: Shape, value: unknown) => set.set(member, value),
        ]),
      ),
    },
    charts: {
      items: ['chart', (sheet: Sheet) => [...sheet.charts]],
      calls: {
        add: {
          gives: 'chart',
          does: (sheet: Sheet, [type, place]: readonly [string, Place]) => {
            this.mustBeWritable(sheet);
            const chart = new Chart(sheet, type, `Chart ${sheet.charts.length + 1}`);
            // One series a column, called as the cell on its top.
            for (let column = place.column; column < place.column + place.columns; column += 1) {
              const heading = place.sheet.at(place.row, column)?.value;
              chart.series.push(
                new Series(sheet, typeof heading === 'string' ? heading : 'Series1'),
              );
            }
            sheet.charts.push(chart);
            return chart;
          },
        },
      },
    },
    chart: {
      goes: {
        series: ['seriesList', (chart: Chart) => chart],
        title: ['looks', (chart: Chart) => chart],
        axes: ['looks', (chart: Chart) => chart],
        legend: ['looks', (chart: Chart) => chart],
      },
      calls: {
        setPosition: {
          does: ({ sheet, set }: Chart, [{ row, column }]: readonly [Place]) => {
            this.mustBeWritable(sheet);
            set.set('position', [row, column]);
          },
        },
        delete: {
          does: (chart: Chart) => {
            this.mustBeWritable(chart.sheet);
            chart.sheet.charts.splice(chart.sheet.charts.indexOf(chart), 1);
          },
        },
      },
      reads: { name: ({ name }: Chart) => name },
      sets: {
        name: (chart: Chart, name: string) => {
          this.mustBeWritable(chart.sheet);
          chart.name = name;
        },
        width: ({ set }: Chart, width: number) => set.set('width', width),
        height: ({ set }: Chart, height: number) => set.set('height', height),
      },
    },
    seriesList: {
      items: ['series', ({ series }: Chart) => [...series]],
      calls: {
        add: {
          gives: 'series',
          does: ({ sheet, series }: Chart, [name]: readonly string[]) => {
            this.mustBeWritable(sheet);
            const added = new Series(sheet, name ?? `Series${series.length + 1}`);
            series.push(added);
            return added;
          },
        },
        getItemAt: {
          gives: 'series',
          does: ({ series }: Chart, [index]: readonly number[]) => {
            const found = series[index!];
            if (found === undefined) throw new OfficeError('InvalidArgument');
            return found;
          },
        },
      },
    },
    series: {
      goes: { format: ['looks', (series: Series) => series] },
      calls: {
        setValues: {
          does: (series: Series, [{ row, column, rows, columns }]: readonly [Place]) => {
            this.mustBeWritable(series.sheet);
            series.values = { row, column, rows, columns };
          },
        },
        setXAxisValues: {
          does: (series: Series, [{ row, column, rows, columns }]: readonly [Place]) => {
            this.mustBeWritable(series.sheet);
            series.categories = { row, column, rows, columns };
          },
        },
      },
      reads: { name: ({ name }: Series) => name },
      sets: {
        name: (series: Series, name: string) => {
          this.mustBeWritable(series.sheet);
          series.name = name;
        },
        gapWidth: ({ set }: Series, percent: number) => set.set('gapWidth', percent),
      },
    },
    range: {
      goes: {
        format: ['looks', (place: Place) => place],
        dataValidation: ['looks', (place: Place) => place],
        conditionalFormats: ['highlights', (place: Place) => place],
      },
      calls: {
        select: {
          does: ({ sheet, row, column, rows, columns }: Place) => {
            this.selected = { sheetName: sheet.name, row, column, rows, columns };
          },
        },
        copyFrom: {
          does: (place: Place, [from, what]: readonly [Place, string?]) => {
            this.mustBeWritable(place.sheet);
            if (what !== 'Formats') this.copy(place, from);
          },
        },
      },
      reads: {
        values: (place: Place) => this.valuesOf(place, 'values'),
        numberFormat: ({ sheet, row, column, rows, columns }: Place) =>
          Array.from({ length: rows }, (_, down) =>
            Array.from(
              { length: columns },
              (__, across) =>
                sheet.formats.get((row + down) * COLUMNS + column + across) ?? 'General',
            ),
          ),
        columnHidden: ({ sheet, column, columns }: Place) =>
          sheet.looks.get(`columns ${column} to ${column + columns - 1} hidden`) === true,
        formulas: (place: Place) => this.valuesOf(place, 'formulas'),
        rowIndex: ({ row }: Place) => row,
        columnIndex: ({ column }: Place) => column,
        rowCount: ({ rows }: Place) => rows,
        columnCount: ({ columns }: Place) => columns,
      },
      sets: {
        values: (place: Place, rows: unknown) => {
          this.write(place, 'values', rows);
        },
        formulas: (place: Place, rows: unknown) => {
          this.write(place, 'formulas', rows);
        },
        columnHidden: ({ sheet, column, columns }: Place, isHidden: boolean) => {
          this.mustBeWritable(sheet);
          sheet.looks.set(`columns ${column} to ${column + columns - 1} hidden`, isHidden);
        },
        numberFormat: (place: Place, format: string) => {
          this.mustBeWritable(place.sheet);
          if (typeof format !== 'string')
            throw new Error('number formats are given for a whole range');
          for (let row = place.row; row < place.row + place.rows; row += 1) {
            for (let column = place.column; column < place.column + place.columns; column += 1) {
              place.sheet.formats.set(row * COLUMNS + column, format);
            }
          }
        },
      },
    },
    highlights: {
      items: ['highlight', ({ sheet }: Place) => [...sheet.highlights]],
      calls: {
        add: {
          gives: 'highlight',
          does: ({ sheet, ...area }: Place) => {
            this.mustBeWritable(sheet);
            const highlight: Highlight = { sheet, area, formula: '', format: new Map() };
            sheet.highlights.unshift(highlight);
            return highlight;
          },
        },
      },
    },
    highlight: {
      goes: {
        custom: ['highlightCustom', (highlight: Highlight) => highlight],
        customOrNullObject: ['highlightCustom', (highlight: Highlight) => highlight],
      },
      calls: {
        delete: {
          does: (highlight: Highlight) => {
            const { sheet } = highlight;
            this.mustBeWritable(sheet);
            sheet.highlights.splice(sheet.highlights.indexOf(highlight), 1);
          },
        },
      },
      reads: { type: () => 'Custom' },
    },
    highlightCustom: {
      goes: {
        rule: ['highlightRule', (highlight: Highlight) => highlight],
        format: ['looks', (highlight: Highlight) => highlight],
      },
    },
    highlightRule: {
      reads: { formula: ({ formula }: Highlight) => formula },
      sets: {
        formula: (highlight: Highlight, formula: string) => {
          this.mustBeWritable(highlight.sheet);
          highlight.formula = formula;
        },
      },
    },
    protection: {
      calls: {
        protect: {
          does: (sheet: Sheet) => {
            sheet.isProtected = true;
          },
        },
        unprotect: {
          does: (sheet: Sheet) => {
            sheet.isProtected = false;
          },
        },
      },
    },
    event: {
      calls: {
        add: {
          gives: 'handler',
          does: (event: string, [listener]: readonly [(event: object) => Promise<void>]) => {
            this.listenersOf(event).add(listener);
            return [event, listener];
          },
        },
      },
    },
    handler: {
      calls: {
        remove: {
          does: ([event, listener]: readonly [string, (event: object) => Promise<void>]) => {
            this.listenersOf(event).delete(listener);
          },
        },
      },
    },
    looks: {},
  };
}

/** A member by its name, and none that every object has. */
function own<T>(of: Readonly<Record<string, T>> | undefined, name: string): T | undefined {
  return of !== undefined && Object.hasOwn(of, name) ? of[name] : undefined;
}

/** The way from a chart, or a series, to a part of it. */
function partOf(node: Node): string {
  return node.kind === 'looks' ? `${partOf(node.parent!)}${node.via}.` : '';
}

function whole(sheet: Sheet): Place {
  return { sheet, row: 0, column: 0, rows: 1, columns: 1 };
}

/** Moves cells of some columns, from a row on, down by a row, or up over the first of them. */
function shiftDown(sheet: Sheet, { row: from, column, columns }: Rectangle, by: 1 | -1): void {
  for (const cells of [sheet.cells, sheet.formats] as Map<number, unknown>[]) {
    const below = [...cells].filter(([key]) => {
      const across = key % COLUMNS;
      return Math.floor(key / COLUMNS) >= from && across >= column && across < column + columns;
    });
    for (const [key] of below) cells.delete(key);
    for (const [key, cell] of below) {
      if (by > 0 || Math.floor(key / COLUMNS) > from) cells.set(key + by * COLUMNS, cell);
    }
  }
}

function overlap(one: Rectangle, other: Rectangle): boolean {
  return (
    one.row < other.row + other.rows &&
    other.row < one.row + one.rows &&
    one.column < other.column + other.columns &&
    other.column < one.column + one.columns
  );
}

function letters(column: number): string {
  let text = '';
  for (let rest = column; rest >= 0; rest = Math.floor(rest / 26) - 1) {
    text = String.fromCharCode(65 + (rest % 26)) + text;
  }
  return text;
}

/** A formula as copying moves it down: rows without a "$" move along. */
const movedFrom = kept((formula: string) =>
  kept((by: number) =>
    formula.replace(
      /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^[\]]*\]|(\$?[A-Z]{1,3})(\$?)(\d+)(?![\w.(])|[A-Za-z_][\w.]*/g,
      (part, column: string | undefined, pin: string, row: string) =>
        column === undefined || pin !== '' ? part : `${column}${Number(row) + by}`,
    ),
  ),
);

function moved(formula: string, by: number): string {
  return by === 0 ? formula : movedFrom(formula)(by);
}
