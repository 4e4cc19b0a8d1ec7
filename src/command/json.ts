/** What the terminal prints, as one JSON document for scripts. */
import { CellError, type ResultCell } from '../functions/cell';
import type { RunsReport } from '../lists/read-runs';
import type { StationValues } from '../sheets/station-values';
import type { StationContent } from '../sheets/station/content';
import { SUPPLY_KEYS, type SupplyKey } from '../sheets/station/supply-keys';
import type { Level } from '../sheets/station/verdicts';
import { FIGURE_NAMES, figureOf, runLevel, type Figure } from './figures';

type JsonCell = string | number | boolean | null;

interface Whys {
  /** Why fields are null whose cells show an error, in a sentence for each cause; null where none does. */
  readonly why: string | null;
}

export type JsonRun = Readonly<Record<Figure, JsonCell>> &
  Whys & { readonly run: string | null; readonly level: Level };

/** Something that was not understood, or understood in a way that a person should know of. */
export interface JsonNote {
  /** Line of the file or row of the sheet; null where it is not about a row. */
  readonly line: number | null;
  /** The column's heading; null where it is not about a column that was left out. */
  readonly heading: string | null;
  /** The row as it stands in the file; of a column that was left out, some of its values. */
  readonly text: string | null;
  /** Whether the row is among the runs all the same. */
  readonly taken: boolean | null;
  readonly why: string;
}

export interface JsonDocument {
  readonly runs: readonly JsonRun[];
  readonly supply: Readonly<Record<SupplyKey, JsonCell>> & Whys;
  /** Every source that has a name or a kind, by column. */
  readonly sources: readonly (Readonly<Record<SupplyKey, JsonCell>> & Whys)[];
  readonly notes: readonly JsonNote[];
}

/** Cells as JSON has them: blanks and errors are null, and the errors' sentences stand under `why`. */
function fields<Name extends string>(names: readonly Name[], cell: (name: Name) => ResultCell) {
  const sentences = new Set<string>();
  const values = names.map((name): [Name, JsonCell] => {
    const given = cell(name);
    if (!(given instanceof CellError)) return [name, given === '' ? null : given];
    sentences.add(given.sentence === '' ? given.code : given.sentence);
    return [name, null];
  });
  return {
    values: Object.fromEntries(values) as Record<Name, JsonCell>,
    why: sentences.size === 0 ? null : [...sentences].join('; '),
  };
}

const NOTHING = { line: null, heading: null, text: null, taken: null };

function notesOf({ problems, leftOver, remarks }: RunsReport): readonly JsonNote[] {
  return [
    ...problems.map((problem) => ({ ...NOTHING, ...problem })),
    ...leftOver.map(({ heading, values, why }) => ({
      ...NOTHING,
      heading,
      why,
      text: values.length === 0 ? null : values.join(' | '),
    })),
    ...remarks.map((why) => ({ ...NOTHING, why })),
  ];
}

/** The document: every run with its figures and verdict, the Supply sheet's named cells, and what to look at. */
export function jsonDocument(
  content: StationContent,
  { runs, supply }: StationValues,
  report: RunsReport,
): JsonDocument {
  const named = fields(SUPPLY_KEYS, (key) => supply.cells[key]);
  return {
    runs: content.runs.map(({ run }, index): JsonRun => {
      const figures = fields(FIGURE_NAMES, (name) => figureOf(runs[index]!, name));
      const { verdict, fix, ...amounts } = figures.values;
      const level = runLevel(runs[index]!);
      return { run: run ?? null, ...amounts, level, verdict, fix, why: figures.why };
    }),
    supply: { ...named.values, why: named.why },
    sources: supply.sources
      .filter(({ name, kind }) => name !== '' || kind !== '')
      .map((cells) => {
        const { values, why } = fields(SUPPLY_KEYS, (key) => cells[key]);
        return { ...values, why };
      }),
    notes: notesOf(report),
  };
}

/** The document as text. Text from a file must not steer a terminal, in JSON either. */
export function jsonText(document: JsonDocument): string {
  return JSON.stringify(document, null, 2).replace(
    /[\u007F-\u009F]/g,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );
}
