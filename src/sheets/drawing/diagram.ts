/** The one-line diagram of a station, read from what its sheets come to. It has no loops, whatever the list says. */
import { VERDICT_JOINT } from '../../core/verdict';
import type { Cell, ResultCell } from '../../functions/cell';
import type { Calculated } from '../calculate/calculate';
import type { Diagram, DiagramNode, DiagramRun } from '../plan/diagram';
import type { StationContent } from '../station/content';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import { SOURCE_KINDS } from '../station/source-kinds';
import { LEVELS, type Level } from '../station/verdicts';
import { drawingArea, drawingName, type DrawingKey } from './layout';

/** Columns of the schedule that the diagram reads, as they come to. */
export type DrawnColumn = Extract<
  ColumnKey,
  | 'level'
  | 'verdict'
  | 'exactly'
  | 'place1'
  | 'ownSource'
  | 'endSource'
  | 'fuse'
  | 'fitting'
  | 'feederFuse'
  | 'dropVolts'
  | 'pathDrop'
  | 'loadVolts'
  | 'lowVolts'
>;

/** What a station's sheets come to, as far as it is drawn; its Drawing sheet is among them. */
export interface DrawnValues {
  readonly rules: { readonly unit: Cell };
  readonly runs: readonly Readonly<Record<DrawnColumn, ResultCell>>[];
  readonly supply: {
    readonly sources: readonly Readonly<
      Record<'name' | 'kind' | 'fullTerminal' | 'volts', ResultCell>
    >[];
  };
  readonly sheets: Calculated;
}

const said = (value: Cell | undefined) =>
  typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
const numberOr = <Other>(value: Cell | undefined, other: Other) =>
  typeof value === 'number' ? value : other;

/** What the sheet says where no wire is thick enough. */
const NONE_FITS = 'none fits';
const VOLTS_DIGITS = 2;
const SHARE_DIGITS = 2;

/** Volts at the far end, battery low and full, and what is lost on the way there. */
function atFarEnd({
  loadVolts,
  lowVolts,
  pathDrop,
}: Readonly<Record<DrawnColumn, ResultCell>>): readonly string[] {
  const [low, full] = [lowVolts, loadVolts].map((volts) =>
    typeof volts === 'number' ? volts.toFixed(VOLTS_DIGITS) : undefined,
  );
  const volts =
    full === undefined
      ? 'volts not known'
      : low === undefined || low === full
        ? `${full} V`
        : `${low} to ${full} V`;
  return typeof pathDrop === 'number'
    ? [volts, `${(pathDrop * 100).toFixed(SHARE_DIGITS)} % lost`]
    : [volts];
}

const lengthSaid = (length: string | number | undefined, unit: string) =>
  typeof length === 'number' ? `${Number(length.toFixed(2))} ${unit}` : said(length);

interface Row {
  readonly values: Readonly<Record<DrawnColumn, ResultCell>>;
  readonly run: StationContent['runs'][number];
  readonly is: (key: DrawingKey) => string;
}

/** Fuses of a run, and what it leans on without one. */
function fusesOf({ values, run }: Row, level: Level, unit: string): Partial<DiagramRun> {
  const hasOwn = said(run.fused).toLowerCase() !== 'no';
  const rating = hasOwn ? values.fuse : values.fitting;
  const rated =
    typeof rating === 'number'
      ? `${rating} A`
      : typeof rating === 'string' || level === 'unclear'
        ? '?'
        : NONE_FITS;
  const away = lengthSaid(run.unfused, unit);
  const upstream = values.feederFuse;
  const hasEnd = said(run.endFused).toLowerCase() === 'yes';
  return {
    ...(hasOwn && {
      fuse: away === '' || away.startsWith('0 ') ? rated : `${rated} after ${away}`,
    }),
    ...(hasEnd && { endFuse: rated }),
    ...(!hasOwn && {
      leansOn: typeof upstream === 'number' ? `${upstream} A upstream` : 'no fuse',
    }),
  };
}

/** What is wrong with a run, in full: without its name, so that those that lack the same share a note. */
function noteOf(level: Level, { verdict, exactly }: Row['values']): string {
  if (level === 'ok') return '';
  const wrong = said(verdict).split(VERDICT_JOINT).join('; ');
  const fix = said(exactly);
  return `${level}: ${wrong === '' ? 'not computed' : wrong}.${fix === '' ? '' : ` Fix: ${fix}.`}`;
}

/** Runs that stand first in a loop of feeders: they are drawn from nowhere, so that all of it is drawn once. */
function loopStarts(feeders: readonly number[]): ReadonlySet<number> {
  const cut = new Set<number>();
  for (const [start] of feeders.entries()) {
    const passed = new Set<number>();
    let at = start;
    while (at >= 0 && !cut.has(at) && !passed.has(at)) {
      passed.add(at);
      at = feeders[at] ?? -1;
    }
    if (at === start) cut.add(start);
  }
  return cut;
}

const COUNTED = (runs: number) => (runs === 1 ? '1 run' : `${runs} runs`);

/** The diagram of a station whose Drawing sheet was calculated with the others. */
export function diagramOf(content: StationContent, station: DrawnValues, layout: Layout): Diagram {
  const sheet = drawingName(layout.names);
  const unit = said(station.rules.unit);
  const isThere = (place: number) => {
    const { row, column } = drawingArea('there', layout);
    return station.sheets.at(sheet, row + place, column) === 1;
  };
  const rows = content.runs.map((run, place): Row | undefined => {
    const values = station.runs[place];
    if (values === undefined || !isThere(place)) return undefined;
    return {
      values,
      run,
      is: (key) => {
        const { row, column } = drawingArea(key, layout);
        return said(station.sheets.at(sheet, row + place, column));
      },
    };
  });

  const nodes: DiagramNode[] = [];
  const add = (node: DiagramNode) => nodes.push(node) - 1;

  const sourceNodes = new Map<number, number>();
  /** The node of a source by its column, from 1. */
  const sourceNode = (place: number): number => {
    let node = sourceNodes.get(place);
    if (node === undefined) {
      const source = station.supply.sources[place - 1];
      const kind = SOURCE_KINDS.find((one) => one === said(source?.kind));
      const name = said(source?.name);
      const volts = numberOr(source?.volts, undefined);
      const what = [kind ?? 'kind not known', ...(volts === undefined ? [] : [`${volts} V`])];
      node = add({
        kind: kind ?? 'unknown',
        name: name === '' ? (kind ?? `source ${place}`) : name,
        details: name === kind || name === '' ? what.slice(1) : what,
      });
      sourceNodes.set(place, node);
    }
    return node;
  };

  // Sources first and in their order: what is drawn from nowhere stands below them.
  const feeders = rows.map((row) => numberOr(row?.values.place1, -1) - 1);
  const starts = loopStarts(feeders.map((feeder) => (rows[feeder] === undefined ? -1 : feeder)));
  const isFed = (place: number) => feeders[place]! >= 0 && !starts.has(place);
  const sourcesOfRuns = rows.map((row, place) =>
    row === undefined || isFed(place) ? 0 : numberOr(row.values.ownSource, 0),
  );
  const ends = rows.map((row) => numberOr(row?.values.endSource, 0));
  const used = new Set([...sourcesOfRuns, ...ends].filter((place) => place > 0));
  for (const place of [...used].sort((a, b) => a - b)) sourceNode(place);

  /** Which sources can be reached from one, so that a run that would close a ring only names its end. */
  const reaches = new Map<number, Set<number>>();
  const rootOf = (place: number): number => {
    let at = place;
    while (isFed(at)) at = feeders[at]!;
    return sourcesOfRuns[at] ?? 0;
  };
  const isReached = (from: number, to: number, passed = new Set<number>()): boolean =>
    from === to ||
    [...(reaches.get(from) ?? [])].some(
      (next) => !passed.has(next) && isReached(next, to, passed.add(next)),
    );

  const feeds = new Set(feeders.filter((_, place) => rows[place] !== undefined && isFed(place)));
  const farNodes = rows.map((row, place): number => {
    if (row === undefined) return -1;
    const end = ends[place]!;
    const name = said(row.run.load);
    const details = atFarEnd(row.values);
    if (end > 0) {
      const root = rootOf(place);
      if (!isReached(end, root)) {
        reaches.set(root, (reaches.get(root) ?? new Set()).add(end));
        return sourceNode(end);
      }
      const of = nodes[sourceNode(end)]!;
      return add({ ...of, isReference: true });
    }
    if (end < 0) {
      const told = `ends at “${said(row.run.endsAt)}”: not listed`;
      return add({ kind: 'unknown', name, details: [told, ...details] });
    }
    return feeds.has(place)
      ? add({ kind: 'joint', name, details })
      : add({ kind: 'load', name: row.is('far'), details });
  });

  /** Where a run starts that has no place in the tree. */
  const lost = new Map<string, number>();
  const lostNode = (told: string) => {
    let node = lost.get(told);
    if (node === undefined) {
      lost.set(told, (node = add({ kind: 'unknown', name: told, details: [] })));
    }
    return node;
  };
  const nearNode = ({ run }: Row, place: number): number => {
    if (isFed(place)) return farNodes[feeders[place]!]!;
    const source = sourcesOfRuns[place]!;
    if (source > 0) return sourceNode(source);
    const from = said(run.fedFrom);
    return lostNode(
      starts.has(place)
        ? `“${from}”: its feeders lead back to it`
        : from === ''
          ? 'source not described'
          : `“${from}”: not listed`,
    );
  };

  const runs = rows.flatMap((row, place): DiagramRun[] => {
    if (row === undefined) return [];
    const level = LEVELS[numberOr(row.values.level, 0) - 1] ?? 'unclear';
    const name = row.is('name');
    const { dropVolts } = row.values;
    const drop =
      typeof dropVolts === 'number' ? [`\u2212${dropVolts.toFixed(VOLTS_DIGITS)} V`] : [];
    const wire = row.is('wire');
    const length = row.is('length');
    return [
      {
        from: nearNode(row, place),
        to: farNodes[place]!,
        name,
        level,
        ...fusesOf(row, level, unit),
        details: [
          wire !== '?' && wire !== NONE_FITS
            ? wire
            : wire === '?' || level === 'unclear'
              ? 'no wire yet'
              : 'no wire fits',
          length === '?' ? 'length missing' : length,
          ...drop,
        ],
        note: noteOf(level, row.values),
      },
    ];
  });

  const counts = LEVELS.flatMap((level) => {
    const count = runs.filter((run) => run.level === level).length;
    return count === 0 ? [] : [`${count} ${level}`];
  });
  return {
    title: content.title,
    summary: runs.length === 0 ? 'no runs yet' : `${COUNTED(runs.length)}: ${counts.join(', ')}`,
    nodes,
    runs,
  };
}
