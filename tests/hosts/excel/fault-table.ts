/** What came of the faults, counted: a row an action, and false sentences with what was false about them. */
import { CAME, type Came } from './writing-actions';

const MOST_TOLD = 3;
const RIGHT = 6;

export class FaultRow {
  /** The first few that were found. */
  readonly falsehoods: string[] = [];
  private falseOnes = 0;
  private readonly counts = new Map<Came, number>();
  private readonly began = Date.now();
  private ended = this.began;
  tries = 0;

  constructor(
    readonly what: string,
    readonly steps: number,
    readonly requests: number,
  ) {}

  /** Tries once; what a judge throws is counted as a false sentence. */
  async count(way: string, attempt: () => Promise<Came>): Promise<void> {
    this.tries += 1;
    try {
      const came = await attempt();
      this.counts.set(came, (this.counts.get(came) ?? 0) + 1);
    } catch (fault) {
      const told = fault instanceof Error ? fault.message : String(fault);
      this.falseOnes += 1;
      if (this.falseOnes <= MOST_TOLD) this.falsehoods.push(`${way}: ${told}`);
    }
    this.ended = Date.now();
  }

  get cells(): readonly (string | number)[] {
    const counted = CAME.map((came) => this.counts.get(came) ?? 0);
    const seconds = Math.round((this.ended - this.began) / 1000);
    return [this.what, this.steps, this.requests, this.tries, ...counted, this.falseOnes, seconds];
  }
}

export class FaultTable {
  private readonly rows: FaultRow[] = [];

  row(what: string, steps: number, requests: number): FaultRow {
    const row = new FaultRow(what, steps, requests);
    this.rows.push(row);
    return row;
  }

  text(): string {
    const head = ['action', 'steps', 'requests', 'tries', ...CAME, 'false', 'seconds'];
    const lines = [head, ...this.rows.map(({ cells }) => cells)];
    const [first = 0] = [Math.max(...lines.map(([what]) => String(what).length))];
    return lines
      .map(([what, ...figures]) =>
        [
          String(what).padEnd(first),
          ...figures.map((figure, at) =>
            String(figure).padStart(Math.max(RIGHT, head[at + 1]!.length)),
          ),
        ].join('  '),
      )
      .join('\n');
  }
}
