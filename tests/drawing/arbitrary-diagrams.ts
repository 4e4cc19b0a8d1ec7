/** Diagrams as stations give them: trees on several sources, runs between sources, names of every length. */
import fc from 'fast-check';
import type { Diagram, DiagramNode, DiagramRun, RunLevel } from '../../src/sheets/plan/diagram';

const LEVELS: readonly RunLevel[] = ['danger', 'fails', 'unclear', 'check', 'ok'];
const SOURCES = ['battery', 'panel', 'power supply', 'charger', 'alternator', 'unknown'] as const;
/** As deep as the sheets follow. */
const MOST_ABOVE = 4;

const name = fc.oneof(
  { weight: 6, arbitrary: fc.constantFrom('Van set A', 'Lamp', 'Bench inverter', 'Hut trunk') },
  { weight: 2, arbitrary: fc.string({ minLength: 1, maxLength: 40, unit: 'grapheme' }) },
  {
    weight: 1,
    arbitrary: fc.constantFrom('', 'WWWWWWWWWWWWWWWWWWWWWWWW', 'a b c d e f g h i j k l m n o p'),
  },
);

interface Drawn {
  readonly name: string;
  readonly load: string;
  readonly above: number;
  readonly level: RunLevel;
  readonly fuse: string | undefined;
  readonly endsAt: number | undefined;
}

const drawn: fc.Arbitrary<Drawn> = fc.record({
  name,
  load: name,
  above: fc.nat(),
  level: fc.constantFrom(...LEVELS),
  fuse: fc.constantFrom('2 A', '7.5 A', '150 A after 12.5 ft', 'none fits', '?', undefined),
  endsAt: fc.oneof({ weight: 12, arbitrary: fc.constant(undefined) }, fc.nat(7)),
});

function diagramFrom(
  sources: readonly (readonly [kind: number, name: string])[],
  list: readonly Drawn[],
): Diagram {
  const nodes: DiagramNode[] = sources.map(([kind, called]) => ({
    kind: SOURCES[kind % SOURCES.length]!,
    name: called,
    details: ['battery', '12.6 V'],
  }));
  const depth = sources.map(() => 0);
  const runs = list.map((run): DiagramRun => {
    // Places that a run may start at: the sources, and ends that do not lie too deep.
    const starts = nodes.flatMap((node, index) =>
      index < sources.length || (depth[index]! <= MOST_ABOVE && node.kind === 'load')
        ? [index]
        : [],
    );
    const from = starts[run.above % starts.length]!;
    const below = depth[from]! + 1;
    // From a source to a later one, so that no ring comes about.
    const later = run.endsAt !== undefined && from < sources.length ? from + 1 + run.endsAt : -1;
    const to =
      later > 0 && later < sources.length
        ? later
        : nodes.push({
            kind: 'load',
            name: run.load,
            details: ['11.37 to 11.99 V', '2.64 % lost'],
          }) - 1;
    if (to >= sources.length) depth[to] = below;
    return {
      from,
      to,
      name: run.name,
      level: run.level,
      ...(run.fuse === undefined ? { leansOn: '30 A upstream' } : { fuse: run.fuse }),
      ...(to < sources.length && { endFuse: '15 A' }),
      details: ['12 AWG', '12.5 ft', '−0.25 V'],
      note: run.level === 'ok' ? '' : `${run.level}: over ampacity; no fuse fits. Fix: use 8 AWG.`,
    };
  });
  const starts = new Set(runs.map(({ from }) => from));
  return {
    title: 'A station',
    summary: `${runs.length} runs`,
    runs,
    nodes: nodes.map((node, index) =>
      node.kind === 'load' && starts.has(index) ? { ...node, kind: 'joint' } : node,
    ),
  };
}

/** Of so many runs. */
export const diagramOf = (least: number, most: number): fc.Arbitrary<Diagram> =>
  fc
    .tuple(
      fc.array(fc.tuple(fc.nat(5), name), { minLength: 1, maxLength: 8 }),
      fc.array(drawn, { minLength: least, maxLength: most, size: 'max' }),
    )
    .map(([sources, list]) => diagramFrom(sources, list));
