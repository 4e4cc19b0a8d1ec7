/**
 * What the Crew sheet says, as formulas. Runs are put in order by counting down the schedule once for each level, so that
 * the work grows with the number of runs and not with its square; what is wrong with a run is broken into lines at its
 * blanks, because a formula's text does not run on over its neighbours.
 */
import { area, areaAddress, cellAddress, quotedSheetName } from '../plan/area';
import { text } from '../plan/formula';
import { columnReferences, ROW } from '../schedule/layout';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import { LEVELS } from '../station/verdicts';
import { saidOfRun, shortened } from './said';
import {
  crewReferences,
  GAP_COLUMN,
  lineCount,
  TEXT_LINES,
  type CrewKey,
  type CrewReferences,
  type CrewWorkingKey,
} from './layout';

const UNCLEAR = LEVELS.indexOf('unclear') + 1;
const OK = LEVELS.indexOf('ok') + 1;

/** Characters of a line of text, and of a run's name: what the columns hold at their type size. */
export const LINE_CHARS = 60;
const NAME_CHARS = 16;

/** The box that a pen ticks. */
export const BOX = '☐';
export const ARROW = ' → ';

/** A run whose row has lost its formulas: it must not be missing from the page. */
export const NOT_COMPUTED =
  'not computed: its row lacks its formulas. Fix: copy the row above down over it';

interface Pointers {
  readonly layout: Layout;
  readonly crew: CrewReferences;
  readonly schedule: Readonly<Record<ColumnKey, string>>;
}

function pointers(layout: Layout): Pointers {
  return {
    layout,
    crew: crewReferences(layout),
    schedule: columnReferences(layout, true),
  };
}

/** The column of the schedule at the place that a working names. */
const at =
  ({ schedule }: Pointers, place: string) =>
  (key: ColumnKey) =>
    `INDEX(${schedule[key]},${place})`;

function byPlace(points: Pointers): Record<string, string> {
  const { crew, schedule } = points;
  const there = at(points, crew.number);
  const counts = LEVELS.map((_, index) => `count${index + 1}` as CrewWorkingKey);
  const [first, last] = [crew.cell[counts[0]!], crew.cell[counts.at(-1)!]];
  const level = there('level');
  return {
    levelThere: `IF(${crew.number}>ROWS(${schedule.level}),0,IF(ISERROR(${level}),${UNCLEAR},IF(LEN(${level})=0,IF(AND(LEN(TRIM(${there('run')}))>0,LEN(${there('place')})=0),${UNCLEAR},0),${level})))`,
    ...Object.fromEntries(
      counts.map((key, index) => [
        key,
        `${crew.above[key]}+IF(${crew.cell.levelThere}=${index + 1},1,0)`,
      ]),
    ),
    order: `IF(${crew.cell.levelThere}=0,0,INDEX(${first}:${last},1,${crew.cell.levelThere})+INDEX(${crew.head.ahead},1,${crew.cell.levelThere}))`,
  };
}

/** What is wrong with a run, and the fix. */
function textOf(points: Pointers): string {
  const { crew } = points;
  const there = at(points, crew.cell.place);
  const fix = `IFERROR(IF(LEN(${there('mend')})=0,"",". Fix: "&${there('mend')}),"")`;
  const wrong = `IF(${crew.cell.level}=${OK},"",IF(ISERROR(${there('finding')}),"not understood, see the schedule",IF(LEN(${there('finding')})=0,${text(NOT_COMPUTED)},${there('finding')}&${fix})))`;
  return `IF(${crew.cell.place}=0,"",${wrong})`;
}

/** Where a line ends: at the last blank that it reaches, or where it is full. */
function endOf(crew: CrewReferences, line: number): string {
  const before = line === 1 ? '0' : crew.cell[`end${line - 1}` as CrewWorkingKey];
  const said = crew.cell.text;
  // Of the empty column: to some spreadsheets a cell hangs on what it only asks the row of, and the lines hang on this.
  const steps = `ROW(${areaAddress(area(0, GAP_COLUMN, LINE_CHARS + 1, 1), 'both')})`;
  const blank = `SUMPRODUCT(MAX((MID(${said},${before}+${steps},1)=" ")*${steps}))`;
  return `IF(LEN(${said})-${before}<=${LINE_CHARS},LEN(${said}),${before}+IF(${blank}=0,${LINE_CHARS},${blank}))`;
}

function byOrder(points: Pointers): Record<string, string> {
  const { crew, layout } = points;
  const { head, cell } = crew;
  const ends = TEXT_LINES.map((line) => `end${line}` as CrewWorkingKey);
  const used = ends.map((end, index) =>
    index === 0 ? `(${cell[end]}>0)` : `(${cell[end]}>${cell[ends[index - 1]!]})`,
  );
  const left = `${lineCount(layout)}-${cell.begins}-(${head.all}-${crew.number})`;
  return {
    place: `IF(${crew.number}>${head.all},0,MATCH(${crew.number},${crew.column.order},0))`,
    level: `IF(${cell.place}=0,0,INDEX(${crew.column.levelThere},${cell.place}))`,
    text: textOf(points),
    ...Object.fromEntries(TEXT_LINES.map((line) => [`end${line}`, endOf(crew, line)])),
    begins: `${crew.above.begins}+${crew.above.lines}`,
    wants: `IF(${cell.place}=0,0,1+${used.join('+')})`,
    lines: `IF(${cell.place}=0,0,1+MAX(0,MIN(${cell.wants}-1,${left})))`,
  };
}

function byLine({ crew }: Pointers): Record<string, string> {
  const { head, cell, above, column } = crew;
  const next = `IF(${above.of}<${head.all},IF(INDEX(${column.begins},${above.of}+1)=${crew.number},${above.of}+1,${above.of}),${above.of})`;
  return {
    of: `IF(${crew.number}>${head.used},0,${next})`,
    line: `IF(${cell.of}=0,-1,${crew.number}-INDEX(${column.begins},${cell.of}))`,
    ofPlace: `IF(${cell.of}=0,0,INDEX(${column.place},${cell.of}))`,
    ofLevel: `IF(${cell.of}=0,0,INDEX(${column.level},${cell.of}))`,
  };
}

/** The workings in their first row, to be filled down. */
export function workingFormulas(layout: Layout): Readonly<Record<CrewWorkingKey, string>> {
  const points = pointers(layout);
  return { ...byPlace(points), ...byOrder(points), ...byLine(points) } as Record<
    CrewWorkingKey,
    string
  >;
}

/** A line of what is said of a run; dots where the page has no room for the rest. */
function textLine({ crew }: Pointers): string {
  const { cell, column } = crew;
  const of = (key: CrewWorkingKey) => `INDEX(${column[key]},${cell.of})`;
  const ends = TEXT_LINES.map((line) => `end${line}` as CrewWorkingKey);
  const end = `INDEX(${areaOf(ends[0]!)}:${lastOf(ends.at(-1)!)},${cell.of},${cell.line})`;
  const start = `IF(${cell.line}=1,0,INDEX(${areaOf(ends[0]!)}:${lastOf(ends.at(-1)!)},${cell.of},${cell.line}-1))`;
  const isCut = `IF(${cell.line}=${of('lines')}-1,${end}<LEN(${of('text')}),FALSE)`;
  return `TRIM(MID(${of('text')},${start}+1,${end}-${start}))&IF(${isCut},"…","")`;

  function areaOf(key: CrewWorkingKey): string {
    return column[key].split(':')[0]!;
  }
  function lastOf(key: CrewWorkingKey): string {
    return column[key].split(':').at(-1)!;
  }
}

/** What is printed, in the first line, to be filled down. */
export function printedFormulas(layout: Layout): Readonly<Record<CrewKey, string>> {
  const points = pointers(layout);
  const { crew } = points;
  const { cell, head } = crew;
  const there = at(points, cell.ofPlace);
  const said = saidOfRun(layout, cell.ofPlace);
  const onFigures = (formula: string, otherwise = '""') =>
    `IF(${cell.line}=0,${formula},${otherwise})`;
  const word = `INDEX(${head.words},1,${cell.ofLevel})`;
  const route = `${said.near}&${text(ARROW)}&${said.far}`;
  // Where its text found no room, its own line still says how grave it is.
  const unsaid = `IF(${cell.ofLevel}=${OK},"",IF(INDEX(${crew.column.lines},${cell.of})=1,${word}&": ",""))`;
  return {
    done: onFigures(text(BOX)),
    run: onFigures(shortened(said.name, NAME_CHARS), `IF(${cell.line}=1,${word},"")`),
    route: onFigures(
      `${unsaid}&${shortened(route, LINE_CHARS)}`,
      `IF(${cell.line}<0,"",${textLine(points)})`,
    ),
    length: onFigures(said.length),
    wire: onFigures(said.wire),
    fuse: onFigures(said.fuse),
    volts: onFigures(`IF(ISNUMBER(${there('loadVolts')}),${there('loadVolts')},"?")`),
  };
}

/** The head of the page. */
export function headFormulas(layout: Layout) {
  const { crew, schedule } = pointers(layout);
  const { head, column } = crew;
  const title = `${quotedSheetName(layout.names.sheet)}!${cellAddress(ROW.title, 0, 'both')}`;
  const counted = LEVELS.map(
    (level, index) => `INDEX(${head.counts},1,${index + 1})&${text(` ${level}`)}`,
  ).join('&", "&');
  const followed = `COUNT(${schedule.level})>${head.all}`;
  return {
    title: `"Crew sheet: "&${title}`,
    summary: `${head.all}&IF(${head.all}=1," run: "," runs: ")&${counted}&${text('. A fuse "after 4 ft" has so much wire without a fuse before it.')}`,
    warning: `IF(${followed},"Runs are missing here: the schedule has more than this sheet follows. Take a new copy. ","")&IF(${head.used}>${head.printed},"Widen the print area: "&(${head.used}-${head.printed})&" lines stand below it.","")`,
    counts: LEVELS.map((_, index) => `COUNTIF(${column.levelThere},${index + 1})`),
    all: `SUM(${head.counts})`,
    used: `SUM(${column.lines})`,
    wanted: `SUM(${column.wants})`,
  };
}
