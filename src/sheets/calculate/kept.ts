/**
 * Values that are kept from one revision of the cells to the next, with what they hang on. A value is looked at again where
 * it is asked for: while nothing that it hangs on has changed since, it stands. So an edit costs what it changes and a look
 * at the rest, and nobody has to know what hangs on a cell.
 */
import type { Compiled, Keeping, Place, Source } from './place';
import { isUnchanged, type Value } from './values';

/** Whether one of the sources became something else after a revision. */
export function hasChangedSince(
  keeping: Keeping,
  sources: readonly Source[],
  revision: number,
): boolean {
  const before = keeping.noted;
  keeping.noted = undefined;
  try {
    // In the order they were read: where one has changed, the ones after it may not even be read any more.
    return sources.some((source) => source.refresh() > revision);
  } finally {
    keeping.noted = before;
  }
}

/** A part of a formula that has one value for all rows that ask, or for all that ask with the same cell. */
export class KeptPart implements Source {
  private value: Value | undefined = undefined;
  private sources: readonly Source[] = [];
  private place: Place | undefined = undefined;
  private isStale = true;
  private changedAt = 0;
  private verifiedAt = 0;

  /** `given` says which cell of its row the part is asked with; it is the same for all who ask. */
  constructor(
    private readonly keeping: Keeping,
    private readonly compute: Compiled,
    private readonly given?: (place: Place) => Source | undefined,
  ) {}

  at(place: Place): Value {
    this.keeping.noted?.push(this);
    if (this.verifiedAt !== this.keeping.revision) this.verify();
    if (this.isStale) this.work(place);
    return this.value!;
  }

  refresh(): number {
    if (this.verifiedAt !== this.keeping.revision) this.verify();
    if (this.isStale) {
      if (this.given === undefined) this.work(this.place!);
      // Without the cell that it is asked with it cannot be worked out, and counts as changed.
      else this.changedAt = this.keeping.revision;
    }
    return this.changedAt;
  }

  private verify(): void {
    this.isStale ||= hasChangedSince(this.keeping, this.sources, this.verifiedAt);
    this.verifiedAt = this.keeping.revision;
  }

  private work(place: Place): void {
    const { keeping } = this;
    const before = keeping.noted;
    const sources: Source[] = [];
    keeping.noted = keeping.keeps ? sources : undefined;
    try {
      const value = this.compute(place);
      const given = keeping.keeps ? this.given?.(place) : undefined;
      this.sources = sources.filter((source) => source !== given);
      if (!isUnchanged(this.value, value)) this.changedAt = keeping.revision;
      this.place = place;
      this.value = value;
      this.isStale = false;
    } finally {
      keeping.noted = before;
    }
  }
}
