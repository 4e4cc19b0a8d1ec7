/** The one-line diagram as data, by hand: what hangs on what, in which words, whatever the list says. */
import { describe, expect, it } from 'vitest';
import { calculate } from '../../../src/sheets/calculate/calculate';
import {
  DRAWING_ROW,
  drawingArea,
  drawingName,
  PICTURE_COLUMN,
} from '../../../src/sheets/drawing/layout';
import type { Diagram } from '../../../src/sheets/plan/diagram';
import { sharedCopy } from '../../../src/sheets/shared-copy';
import { stationDiagram } from '../../../src/sheets/station-diagram';
import type { StationContent } from '../../../src/sheets/station/content';
import { scheduleNames } from '../../../src/sheets/station/naming';
import { DEMO } from '../../../src/sheets/station/demo';

const named = ({ nodes }: Diagram, node: number) => {
  const { kind, name } = nodes[node]!;
  return name === '' ? kind : `${kind} ${name}`;
};
/** "Radio: joint Rack > load Radio set". */
const edges = (diagram: Diagram) =>
  diagram.runs.map(
    ({ from, to, name }) => `${name}: ${named(diagram, from)} > ${named(diagram, to)}`,
  );

const HUT = { name: 'Hut bank', kind: 'battery', chemistry: 'lead-acid', ampHours: 95 } as const;

const STATION: StationContent = {
  title: 'Hut',
  rules: { unit: 'm', volts: 12.6, tempC: 20 },
  sources: [
    HUT,
    {
      name: 'Roof',
      kind: 'panel',
      charges: 'Hut bank',
      panelVolts: 17,
      panelTarget: 0.02,
      shortCircuitAmps: 6,
      openCircuitVolts: 21,
    },
  ],
  runs: [
    { run: 'Trunk', load: 'Rack', length: 2, ownSize: '16 mm2', unfused: 0.1 },
    { run: 'Radio', fedFrom: 'Trunk', load: 'Radio set', peak: 10, length: 1.5, ownSize: '6 mm2' },
    { run: 'Lamp', fedFrom: 'Trunk', peak: 1, length: 2, ownSize: '4 mm2', fused: 'no' },
    {
      run: 'Sun',
      fedFrom: 'Roof',
      endsAt: 'Hut bank',
      endFused: 'yes',
      fused: 'no',
      peak: 6,
      length: 5,
    },
  ],
};

describe('the diagram of a station', () => {
  const diagram = stationDiagram(STATION);

  it('leads from sources by their runs to loads, and from one source to another', () => {
    expect(edges(diagram)).toEqual([
      'Trunk: battery Hut bank > joint Rack',
      'Radio: joint Rack > load Radio set',
      'Lamp: joint Rack > load its load',
      'Sun: panel Roof > battery Hut bank',
    ]);
  });

  it('says wire, length and loss of a run, volts at its end, and where its fuses are', () => {
    const [trunk, radio, lamp, sun] = diagram.runs;
    expect(trunk!.fuse).toBe('15 A after 0.1 m');
    expect(trunk!.details.slice(0, 2)).toEqual(['16 mm2', '2 m']);
    // 125 % of 10 A.
    expect(radio!.fuse).toBe('15 A');
    expect(diagram.nodes[radio!.to]!.details).toEqual([
      expect.stringMatching(/^\d\d\.\d\d to \d\d\.\d\d V$/),
      expect.stringMatching(/^\d\.\d\d % lost$/),
    ]);
    expect(lamp!.fuse).toBeUndefined();
    expect(lamp!.leansOn).toBe('15 A upstream');
    expect(sun!.leansOn).toBe('no fuse');
    expect(sun!.endFuse).toMatch(/^\d+(\.5)? A$/);
    // The loss of 2 m of 16 mm2 by IEC 60228 (1.21 mohm a metre), both ways, and 3 mohm of joints, at 11 A.
    const lostVolts = 11 * (2 * 2 * 0.00121 + 0.003);
    expect(trunk!.details[2]).toBe(`−${lostVolts.toFixed(2)} V`);
  });

  it('has the level of each run, and a note where it is not ok', () => {
    for (const { level, note } of diagram.runs) {
      expect(note === '').toBe(level === 'ok');
      if (level !== 'ok') expect(note.startsWith(`${level}: `)).toBe(true);
    }
  });

  it('draws runs whose place is not understood, each once, and has no loop', () => {
    const strange: StationContent = {
      title: 'Strange',
      rules: { unit: 'm', volts: 12.6 },
      sources: [HUT],
      runs: [
        { run: 'A', fedFrom: 'B', peak: 1, length: 1 },
        { run: 'B', fedFrom: 'A', peak: 1, length: 1 },
        { run: 'C', fedFrom: 'C', peak: 1, length: 1 },
        { run: 'D', fedFrom: 'Nowhere', peak: 1, length: 1 },
        { run: 'E', peak: 1, length: 1, endsAt: 'Nobody' },
        { run: 'F', peak: 300, length: 90 },
        { peak: 2, length: 1 },
        { run: 'G', peak: 'lots', length: 1 },
      ],
    };
    const drawn = stationDiagram(strange);
    expect(drawn.runs.map(({ name }) => name)).toEqual([
      'A',
      'B',
      'C',
      'D',
      'E',
      'F',
      'row 9',
      'G',
    ]);
    expect(edges(drawn).slice(0, 5)).toEqual([
      'A: unknown “B”: its feeders lead back to it > joint',
      'B: joint > load A',
      'C: unknown “C”: its feeders lead back to it > load C',
      'D: unknown “Nowhere”: not listed > load its load',
      'E: battery Hut bank > unknown',
    ]);
    expect(drawn.nodes[drawn.runs[4]!.to]!.details[0]).toBe('ends at “Nobody”: not listed');
    expect(drawn.runs[5]!.details[0]).toBe('no wire fits');
    expect(drawn.runs[5]!.level).toBe('fails');
    expect(drawn.runs[7]!.details[0]).toBe('no wire yet');
    expect(drawn.runs[7]!.level).toBe('unclear');
    for (const [start] of drawn.nodes.entries()) {
      const below = (node: number, steps: number): boolean =>
        steps > drawn.runs.length ||
        drawn.runs.some(({ from, to }) => from === node && below(to, steps + 1));
      expect(below(start, 0)).toBe(false);
    }
  });

  it('names an end anew where a run to it would close a ring of sources', () => {
    const ring: StationContent = {
      title: 'Ring',
      rules: { unit: 'm', volts: 12.6 },
      sources: [HUT, { ...HUT, name: 'Case' }],
      runs: [
        { run: 'There', peak: 5, length: 2, endsAt: 'Case', endFused: 'yes' },
        { run: 'Back', fedFrom: 'Case', peak: 5, length: 2, endsAt: 'Hut bank', endFused: 'yes' },
      ],
    };
    const drawn = stationDiagram(ring);
    expect(edges(drawn)).toEqual([
      'There: battery Hut bank > battery Case',
      'Back: battery Case > battery Hut bank',
    ]);
    expect(drawn.runs[1]!.to).not.toBe(drawn.runs[0]!.from);
    expect(drawn.nodes[drawn.runs[1]!.to]!.isReference).toBe(true);
  });

  it('counts the runs of the demonstration by level', () => {
    expect(stationDiagram(DEMO).summary).toBe('26 runs: 8 danger, 4 fails, 3 check, 11 ok');
    expect(stationDiagram({ title: 'None', runs: [] }).summary).toBe('no runs yet');
  });
});

describe('the Drawing sheet', () => {
  const names = scheduleNames();
  const warningOf = (plans: Parameters<typeof calculate>[0]) =>
    calculate(plans).at(drawingName(names), DRAWING_ROW.warning, PICTURE_COLUMN);
  const { plans, values } = sharedCopy({ ...STATION, extras: ['drawing'] }, { rows: 6 });

  it('says nothing while the schedule is as it was drawn, neither computed nor as written', () => {
    expect(warningOf(plans)).toBe('');
    expect(values.at(drawingName(names), DRAWING_ROW.warning, PICTURE_COLUMN)).toBe(null);
  });

  it.each([
    ['a length', { ...STATION.runs[1], length: 2.5 }],
    ['a wire', { ...STATION.runs[1], ownSize: '10 mm2' }],
    ['a load', { ...STATION.runs[1], load: 'Other radio' }],
    ['a name', { ...STATION.runs[1], run: 'Radio 2' }],
  ])('warns once %s has changed', (_, changed) => {
    const runs = STATION.runs.map((run, index) => (index === 1 ? changed : run));
    const now = sharedCopy({ ...STATION, runs, extras: ['drawing'] }, { rows: 6 }).plans;
    const { names: scheduled } = { names };
    // What was drawn stays as it was in the first copy.
    const drawn = drawingArea('drawn', { names: scheduled, references: 'cells', rows: 6 });
    const before = plans.find(({ name }) => name === drawingName(names))!;
    const mixed = now.map((plan) =>
      plan.name === drawingName(names)
        ? {
            ...plan,
            blocks: plan.blocks.map((block) =>
              block.area.column === drawn.column && block.area.row === drawn.row
                ? before.blocks.find(
                    ({ area }) => area.column === drawn.column && area.row === drawn.row,
                  )!
                : block,
            ),
          }
        : plan,
    );
    expect(warningOf(mixed)).toMatch(/^THE SCHEDULE HAS CHANGED/);
  });
});
