/** What the Fuse map says, as formulas; they are the same with and without the add-in. */
import { saidOfRun } from '../crew/said';
import { text } from '../plan/formula';
import { ownFuseKind } from '../protection/layout';
import { columnReferences, runsFollowed } from '../schedule/layout';
import { hasFuse } from '../schedule/row';
import { kindInForce } from '../station/fuse-kind';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import { LEVELS } from '../station/verdicts';
import type { MapKey, MapReferences, MapWorkingKey, PlaceKey } from './layout';

/** What is said of positions. */
export const MAP_WORDS = {
  none: 'no position typed',
  twice: 'position twice in block',
  notOk: 'NOT OK: ',
  /** Behind the name of a run whose fuse at its other end it is. */
  farEnd: ', far end',
} as const;

/** What must not be mapped as if it were well: the gravest levels. */
const DOUBTED = ['danger', 'fails', 'unclear'] as const;

/** Behind everything that a person numbers. */
const LATER = 1_000_000;
const NO_POSITION = '?';

/** Whether a fuse, by its number, is one at the far end of its run: every second one. */
const isOfFarEnd = (fuse: string) => `${fuse}=2*INT(${fuse}/2)`;

export function mapWorkingFormulas(
  layout: Layout,
  { cell, above, column, number }: MapReferences,
): Readonly<Record<MapWorkingKey, string>> {
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${cell.runAt})`;
  const said = saidOfRun(layout, cell.runAt);
  const isFar = isOfFarEnd(number);
  const endsAt = `TRIM(${there('endsAt')})`;
  const isFused = `IF(${isFar},${there('endFused')}="yes",${hasFuse(there('fused'))})`;
  const typed = (key: 'own' | 'ownFar') => `TRIM(INDEX(${column[key]},${cell.runAt}))`;
  const isThere = `IF(ISERROR(${there('level')}),TRUE,OR(LEN(${there('level')})>0,LEN(TRIM(${there('run')}))>0))`;
  const isAhead = `(${column.blockOf}<${cell.blockOf})+(${column.blockOf}=${cell.blockOf})*((${column.sortBy}<${cell.sortBy})+(${column.sortBy}=${cell.sortBy})*(ROW(${column.has})<ROW()))`;
  const ofLine = (key: MapWorkingKey) => `INDEX(${column[key]},${cell.place})`;
  return {
    runAt: `INT((${number}+1)/2)`,
    has: `IF(${cell.runAt}>ROWS(${schedule.level}),0,IF(${isThere},IF(${isFused},1,0),0))`,
    near: `IF(${cell.has}=0,"",IF(${isFar},IF(LEN(${endsAt})>0,${endsAt},${said.far}),${said.near}))`,
    // The row of the first run whose fuse sits there: blocks come in the order of the schedule.
    blockOf: `IF(${cell.has}=0,0,MATCH(${cell.near},${column.near},0))`,
    typed: `IF(${cell.has}=0,"",IF(${isFar},${typed('ownFar')},${typed('own')}))`,
    typedIn: `IF(${cell.has}=0,0,SUMPRODUCT((${column.blockOf}=${cell.blockOf})*(LEN(${column.typed})>0)))`,
    sortBy: `IF(LEN(${cell.typed})=0,${LATER}+${number},IFERROR(VALUE(${cell.typed}),${LATER}))`,
    order: `IF(${cell.has}=0,0,1+SUMPRODUCT((${column.has}=1)*(${isAhead})))`,
    place: `IF(${number}>SUM(${column.has}),0,MATCH(${number},${column.order},0))`,
    runOf: `IF(${cell.place}=0,0,${ofLine('runAt')})`,
    blockAt: `IF(${cell.place}=0,0,${ofLine('blockOf')})`,
    rank: `IF(${cell.place}=0,0,IF(${cell.blockAt}=${above.blockAt},N(${above.rank})+1,1))`,
    blockNumber: `IF(${cell.place}=0,0,N(${above.blockNumber})+IF(${cell.rank}=1,1,0))`,
  };
}

export function mapFormulas(
  layout: Layout,
  { cell, column, number }: MapReferences,
): Readonly<Record<MapKey | Exclude<PlaceKey, 'own' | 'ownFar'>, string>> {
  const { protect } = layout.names;
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${cell.runOf})`;
  const isFar = isOfFarEnd(cell.place);
  const of = (key: MapWorkingKey) => `INDEX(${column[key]},${cell.place})`;
  const said = saidOfRun(layout, cell.runOf);
  const whereLine = (formula: string) => `IF(${cell.place}=0,"",${formula})`;
  // Where it has one at its far end alone, it is the one that fits the run.
  const fuse = `IF(${hasFuse(there('fused'))},${there('fuse')},${there('fitting')})`;
  const level = there('level');
  const doubt = DOUBTED.reduceRight(
    (further, word) =>
      `IF(${level}=${LEVELS.indexOf(word) + 1},${text(MAP_WORDS.notOk + word)},${further})`,
    '""',
  );
  const isTwice = `SUMPRODUCT((${column.blockOf}=${cell.blockAt})*(LEN(${of('typed')})>0)*(${column.typed}=${of('typed')}))>1`;
  const misplaced = `IF(${of('typedIn')}=0,"",IF(LEN(${of('typed')})=0,${text(MAP_WORDS.none)},IF(${isTwice},${text(MAP_WORDS.twice)},"")))`;
  return {
    block: whereLine(of('near')),
    position: whereLine(
      `IF(${of('typedIn')}=0,${cell.rank},IF(LEN(${of('typed')})=0,${text(NO_POSITION)},${of('typed')}))`,
    ),
    rating: whereLine(`IF(ISNUMBER(${fuse}),${fuse},IF(ISERROR(${fuse}),"none fits","?"))`),
    kind: whereLine(
      `IF(ISNUMBER(${fuse}),${kindInForce(ownFuseKind(cell.runOf, layout), protect.fuseKind, fuse)},"")`,
    ),
    run: whereLine(`${said.name}&IF(${isFar},${text(MAP_WORDS.farEnd)},"")`),
    load: whereLine(`IF(${isFar},${said.near},${said.far})`),
    says: whereLine(
      `IF(ISERROR(${level}),${text(`${MAP_WORDS.notOk}unclear`)},${doubt})&IF(LEN(${misplaced})=0,"",IF(IFERROR(${level}<=${DOUBTED.length},TRUE),"; ","")&${misplaced})`,
    ),
    ofRun: `IF(INDEX(${column.has},2*${number}-1)+INDEX(${column.has},2*${number})=0,"",${saidOfRun(layout, number).name})`,
  };
}

/** What is missing from the map; empty where nothing is. */
export function mapWarning(layout: Layout): string {
  const { level } = columnReferences(layout, true);
  return `IF(ROWS(${level})>${runsFollowed(layout)},${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`;
}
