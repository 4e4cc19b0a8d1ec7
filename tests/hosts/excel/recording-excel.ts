/**
 * A stand-in for Excel that keeps its discipline: everything asked of it is queued and carried out at the next sync, in
 * order; nothing can be read that was not loaded and synced; and a queue that fails half-way stays half done.
 * It records every step, and knows of the workbook no more than its sheets, tables and names.
 */

/** One queued step: a call with its arguments, or an assignment with its value. */
export interface Step {
  readonly path: string;
  readonly given: readonly unknown[];
  readonly kind: 'call' | 'assignment';
}

/** What a sheet holds, as Excel's used range tells it. */
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

const PATH = Symbol('path');

/** How a step stands in lists: its path and what was given, without the noise of long arrays. */
function shown(value: unknown): string {
  if (typeof value === 'function') return (value as unknown as { [PATH]: string })[PATH];
  return JSON.stringify(value);
}

export class RecordingExcel {
  readonly sheets = new Map<string, Used | null>();
  readonly tables = new Map<string, string>();
  readonly names = new Set<string>();
  /** Steps that were carried out, over all batches. */
  readonly done: Step[] = [];
  readonly listeners = new Map<string, Set<() => Promise<void>>>();
  syncs = 0;
  active = '';
  /** Decides at the moment a step is carried out whether Excel refuses it; gives the code of the error. */
  refuse: (step: Step) => string | undefined = () => undefined;

  constructor(sheets: Readonly<Record<string, Used | null>>) {
    for (const [name, used] of Object.entries(sheets)) this.sheets.set(name, used);
    this.active = Object.keys(sheets)[0] ?? '';
  }

  /** Excel.run, with and without options. */
  readonly run = async (...given: unknown[]): Promise<unknown> => {
    const batch = given.at(-1) as (context: unknown) => Promise<unknown>;
    const before = given.length > 1 ? given[0] : undefined;
    return batch(typeof before === 'function' ? before : this.newContext());
  };

  private newContext(): unknown {
    const queue: Step[] = [];
    const carriedOut = new Set<string>();
    const sync = async () => {
      await Promise.resolve();
      this.syncs += 1;
      for (const step of queue.splice(0)) {
        const code = this.refuse(step);
        if (code !== undefined) throw new OfficeError(code);
        this.carryOut(step);
        carriedOut.add(step.path);
      }
    };
    const mustBeThere = (needed: string, what: string) => {
      if (!carriedOut.has(needed)) throw new Error(`${what} was read before ${needed} was synced`);
    };

    const at = (path: string): unknown =>
      new Proxy(() => undefined, {
        get: (_, property) => {
          if (property === PATH) return path;
          if (property === 'then') return undefined;
          if (typeof property === 'symbol') throw new Error(`${path} has no symbols`);
          if (path === '' && property === 'sync') return sync;
          const next = path === '' ? property : `${path}.${property}`;
          if (property === 'isNullObject') {
            mustBeThere(path, next);
            return this.isMissing(path);
          }
          if (
            property === 'items' ||
            ['values', 'formulas', 'rowIndex', 'columnIndex'].includes(property)
          ) {
            mustBeThere(`${path}.load`, next);
            return property === 'items'
              ? this.itemNames(path).map((name) =>
                  named(`${path}.getItem(${JSON.stringify(name)})`, name),
                )
              : this.usedOf(path)[property as keyof Used];
          }
          if (next === 'workbook.worksheets.getActiveWorksheet().name') {
            mustBeThere(`${path}.load`, next);
            return this.active;
          }
          return at(next);
        },
        set: (_, property, value: unknown) => {
          queue.push({ path: `${path}.${String(property)}`, given: [value], kind: 'assignment' });
          return true;
        },
        apply: (_, __, given: unknown[]) => {
          const called = `${path}(${given.map(shown).join(',')})`;
          // Navigation counts as carried out under its whole path, anything else under its name.
          queue.push({ path: isNavigation(path) ? called : path, given, kind: 'call' });
          return at(called);
        },
      });
    /** An item of a loaded collection, whose name came along. */
    const named = (path: string, name: string) =>
      new Proxy(at(path) as object, {
        get: (target, property) =>
          property === 'name' ? name : (Reflect.get(target, property) as unknown),
      });
    return at('');
  }

  private carryOut({ path, given, kind }: Step): void {
    this.done.push({ path, given, kind });
    if (path === 'workbook.worksheets.add') this.addSheet(given[0] as string);
    if (path === 'workbook.names.add') {
      this.refuseTaken(given[0] as string);
      this.names.add(given[0] as string);
    }
    const renamedTable = /^workbook\.worksheets\.add\("(.+?)"\)\.tables\.add\(.*\)\.name$/.exec(
      path,
    );
    if (renamedTable) {
      this.refuseTaken(given[0] as string);
      this.tables.set(given[0] as string, renamedTable[1]!);
    }
    const deleted = /\.(worksheets|names)\.getItemOrNullObject\("(.+?)"\)\.delete$/.exec(path);
    if (deleted?.[1] === 'worksheets') this.removeSheet(deleted[2]!);
    if (deleted?.[1] === 'names') this.names.delete(deleted[2]!);
    const event = /worksheets\.(on\w+)\.add$/.exec(path)?.[1];
    if (event !== undefined) this.listenersOf(event).add(given[0] as () => Promise<void>);
    const ended = /worksheets\.(on\w+)\.add\(.*\)\.remove$/.exec(path)?.[1];
    if (ended !== undefined) this.listenersOf(ended).clear();
  }

  private listenersOf(event: string): Set<() => Promise<void>> {
    const listeners = this.listeners.get(event) ?? new Set();
    this.listeners.set(event, listeners);
    return listeners;
  }

  private addSheet(name: string): void {
    if (this.sheets.has(name)) throw new OfficeError('ItemAlreadyExists');
    this.sheets.set(name, null);
  }

  private refuseTaken(name: string): void {
    if (this.names.has(name) || this.tables.has(name)) throw new OfficeError('ItemAlreadyExists');
  }

  private removeSheet(name: string): void {
    this.sheets.delete(name);
    for (const [table, sheet] of this.tables) if (sheet === name) this.tables.delete(table);
  }

  private isMissing(path: string): boolean {
    const asked = /(worksheets|names)\.getItemOrNullObject\("(.+?)"\)$/.exec(path);
    if (asked !== null) {
      return !(asked[1] === 'worksheets' ? this.sheets : this.names).has(asked[2]!);
    }
    return this.sheetOf(path) === null;
  }

  private itemNames(path: string): readonly string[] {
    if (path === 'workbook.worksheets') return [...this.sheets.keys()];
    if (path === 'workbook.tables') return [...this.tables.keys()];
    if (path === 'workbook.names') return [...this.names];
    throw new Error(`${path} has no items here`);
  }

  private sheetOf(path: string): Used | null {
    const name = /worksheets\.getItem\("(.+?)"\)/.exec(path)?.[1] ?? this.active;
    return this.sheets.get(name) ?? null;
  }

  private usedOf(path: string): Used {
    const used = this.sheetOf(path);
    if (used === null) throw new Error(`${path} is a null object`);
    return used;
  }
}

function isNavigation(path: string): boolean {
  return /\.(get\w*|add)$/.test(path) && !/(worksheets|names|on\w+)\.add$/.test(path);
}
