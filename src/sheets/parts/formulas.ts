/** What the Parts sheet says, as formulas; they are the same with and without the add-in. */
import { RELATIVE_SLACK } from '../../core/limits';
import { BY_RATING, FUSE_KINDS, OWN_FUSE } from '../../core/tables/fuse-kinds';
import { saidOfRun } from '../crew/said';
import { text } from '../plan/formula';
import { ownFuseKind } from '../protection/layout';
import { doubtOf } from '../schedule/doubt';
import { columnReferences, runsFollowed } from '../schedule/layout';
import { conductorsOf, hasFuse } from '../schedule/row';
import { kindInForce } from '../station/fuse-kind';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';
import {
  ENDS,
  LINES,
  type EndKeys,
  type ContactColumnKey,
  type FuseKey,
  type PartRunKey,
  type PartsReferences,
  type PartsWorkingKey,
} from './layout';

/** Why a run has no contact, or its contact may not be used. */
export const PARTS_WRONG = {
  noSize: 'no size; fix its row of the schedule',
  noArea: 'the metal of its size is not known here: take a new copy',
  noAmps: 'its amps are not known; fix its row of the schedule',
  badHead: 'a figure of the head cannot be used',
  notListed: 'no contact of this name in the table above',
  notWhole: 'this contact lacks figures in the table above',
  smaller: 'contact smaller than its wire',
  underrated: 'contact rated under its amps',
  larger: 'contact too large for its wire: it will not hold',
  noneYet: 'no contacts in the table above yet',
  noneTakes: 'no contact of the table takes this size',
  noneBears: 'no contact for this size bears its amps',
} as const;

/** At which end of a run it is wrong; nothing is said of ends where none was chosen for either. */
export const AT_END = {
  source: 'at its source end: ',
  far: 'at its far end: ',
  both: 'at both ends: ',
} as const;

/** Words for what may start a fire. */
export const HOT_WORDS = [PARTS_WRONG.smaller, PARTS_WRONG.underrated] as const;

/** Why a contact of the table is not taken. */
export const CONTACT_WRONG = {
  noName: 'give it a name',
  twice: 'this name stands twice',
  noThinnest: 'its thinnest wire is no size that is known: write 16 AWG or 1.5 mm2',
  noThickest: 'its thickest wire is no size that is known: write 10 AWG or 6 mm2',
  crossed: 'its thinnest wire is thicker than its thickest',
  noAmps: 'the amps that it bears are missing',
  badMilliohms: 'its milliohms cannot be used',
} as const;
/** Said of a sheet on which nobody has listed any yet. */
export const LIST_THEM = 'List your contacts and lugs in the green cells. ';
export const NO_MILLIOHMS = 'no milliohms: its runs have no sum';

const KINDS = [...Object.keys(FUSE_KINDS), OWN_FUSE] as const;
export const UNKNOWN_KIND = 'kind not known';
/** Between kinds, more than any rating. */
const A_KIND = 1e6;
/** Past every key and every number. */
const NONE = '9000000000';
/** Joints of the schedule that differ by no more are the same, milliohms. */
const SAME_MILLIOHMS = 0.05;

/** Where a typed size stands among the known ones; 0 where it does not. */
const sizePlace = (given: string, { column }: PartsReferences) =>
  `IF(LEN(TRIM(${given}))=0,0,IFERROR(MATCH(TRIM(${given}),${column.sizeName},0),IFERROR(MATCH(TRIM(${given})&" AWG",${column.sizeName},0),0)))`;

const areaOf = (given: string, references: PartsReferences) => {
  const place = sizePlace(given, references);
  return `IFERROR(IF(${place}=0,0,INDEX(${references.column.sizeMm2},${place})),0)`;
};

const isPositive = (cell: string) => `IF(ISNUMBER(${cell}),${cell}>0,FALSE)`;
const chosen = (tests: readonly (readonly [test: string, why: string])[]) =>
  tests.reduceRight((further, [test, why]) => `IF(${test},${text(why)},${further})`, '""');

function ofContacts(references: PartsReferences) {
  const { contact, contactColumn, cell } = references;
  const { name, thinnest, thickest, amps, milliohms } = contact;
  const isSaid = `LEN(TRIM(${name}))+LEN(TRIM(${thinnest}))+LEN(TRIM(${thickest}))+LEN(TRIM(${amps}))+LEN(TRIM(${milliohms}))>0`;
  const isBadMilliohms = `IF(LEN(TRIM(${milliohms}))=0,FALSE,IF(ISNUMBER(${milliohms}),${milliohms}<0,TRUE))`;
  const wrong = chosen([
    [`LEN(TRIM(${name}))=0`, CONTACT_WRONG.noName],
    [`SUMPRODUCT(--(${contactColumn.name}=TRIM(${name})))>1`, CONTACT_WRONG.twice],
    [`${cell.thinMm2}=0`, CONTACT_WRONG.noThinnest],
    [`${cell.thickMm2}=0`, CONTACT_WRONG.noThickest],
    [`${cell.thinMm2}>${cell.thickMm2}`, CONTACT_WRONG.crossed],
    [`NOT(${isPositive(amps)})`, CONTACT_WRONG.noAmps],
    [isBadMilliohms, CONTACT_WRONG.badMilliohms],
  ]);
  return {
    says: `IF(${isSaid},IF(LEN(${wrong})>0,${wrong},IF(LEN(TRIM(${milliohms}))=0,${text(NO_MILLIOHMS)},"")),"")`,
    good: `IF(${isSaid},IF(LEN(${wrong})=0,1,0),0)`,
    thinMm2: areaOf(thinnest, references),
    thickMm2: areaOf(thickest, references),
  };
}

function ofRuns(layout: Layout, references: PartsReferences) {
  const { cell, column, contactColumn, contactNumbers, number, typed, run } = references;
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const size = there('size');
  const most = (figure: string) => `${figure}*(1+${RELATIVE_SLACK})`;
  const takes = `${column.good}*(${column.thinMm2}<=${most(cell.areaMm2)})*(${most(column.thickMm2)}>=${cell.areaMm2})`;
  const bears = `(${contactColumn.amps}>=${there('runAmps')}*(1-${RELATIVE_SLACK}))`;
  const fits = `${takes}*${bears}`;
  const first = `SUMPRODUCT(MIN(${fits}*${contactNumbers}+(1-${fits})*${NONE}))`;
  const isKnown = `IF(${cell.there}=0,FALSE,IF(${cell.areaMm2}=0,FALSE,ISNUMBER(${there('runAmps')})))`;
  const isBadHead = (['holder', 'perEnd', 'spares'] as const)
    .map((key) => `IF(ISNUMBER(${typed[key]}),${typed[key]}<0,TRUE)`)
    .join(',');
  const ofTable = `IF(${cell.first}>0,"",IF(SUM(${column.good})=0,${text(PARTS_WRONG.noneYet)},IF(SUMPRODUCT(${takes})=0,${text(PARTS_WRONG.noneTakes)},${text(PARTS_WRONG.noneBears)})))`;
  const isMine = ({ mine }: EndKeys) => `LEN(TRIM(${run[mine]}))>0`;
  const isEitherMine = `OR(${isMine(ENDS.source)},${isMine(ENDS.far)})`;
  /** What is wrong with the contact that a person gave an end. */
  const wrongOfMine = (end: EndKeys) => {
    const of = (figures: string) => `INDEX(${figures},${cell[end.mineAt]})`;
    const isUnderrated = `${of(contactColumn.amps)}<${there('runAmps')}*(1-${RELATIVE_SLACK})`;
    const isSmaller = `${most(of(column.thickMm2))}<${cell.areaMm2}`;
    const isLarger = `${of(column.thinMm2)}>${most(cell.areaMm2)}`;
    const hot = `IF(${isSmaller},${text(PARTS_WRONG.smaller)},"")&IF(AND(${isSmaller},${isUnderrated}),"; ","")&IF(${isUnderrated},${text(PARTS_WRONG.underrated)},"")`;
    return `IF(${cell[end.mineAt]}=0,${text(PARTS_WRONG.notListed)},IF(${of(column.good)}=0,${text(PARTS_WRONG.notWhole)},IF(OR(${isSmaller},${isUnderrated}),${hot},IF(${isLarger},${text(PARTS_WRONG.larger)},""))))`;
  };
  const milliohms = (end: EndKeys) => `INDEX(${contactColumn.milliohms},${cell[end.contact]})`;
  const ofEnd = (end: EndKeys) => ({
    mineAt: `IF(${isMine(end)},IFERROR(MATCH(TRIM(${run[end.mine]}),${contactColumn.name},0),0),0)`,
    contact: `IF(${isKnown},IF(${isMine(end)},${cell[end.mineAt]},${cell.first}),0)`,
    wrong: `IF(${isKnown},IF(${isMine(end)},${wrongOfMine(end)},${ofTable}),"")`,
    each: `IF(${cell[end.contact]}=0,"",IF(LEN(${cell.wrong})>0,"",IF(ISNUMBER(${milliohms(end)}),${milliohms(end)},"")))`,
  });
  const [source, far] = [ofEnd(ENDS.source), ofEnd(ENDS.far)];
  const [atSource, atFar] = [cell[ENDS.source.wrong], cell[ENDS.far.wrong]];
  const ofEnds = `IF(${atSource}=${atFar},IF(AND(LEN(${atSource})>0,${isEitherMine}),${text(AT_END.both)},"")&${atSource},IF(LEN(${atSource})>0,${text(AT_END.source)}&${atSource},"")&IF(AND(LEN(${atSource})>0,LEN(${atFar})>0),"; ","")&IF(LEN(${atFar})>0,${text(AT_END.far)}&${atFar},""))`;
  const before: readonly (readonly [string, string])[] = [
    [`IFERROR(LEN(${size})=0,TRUE)`, PARTS_WRONG.noSize],
    [`${cell.areaMm2}=0`, PARTS_WRONG.noArea],
    [`NOT(ISNUMBER(${there('runAmps')}))`, PARTS_WRONG.noAmps],
    [`OR(${isBadHead})`, PARTS_WRONG.badHead],
  ];
  return {
    there: `IF(${number}>ROWS(${schedule.level}),0,IF(ISERROR(${there('level')}),1,IF(OR(LEN(${there('level')})>0,LEN(TRIM(${there('run')}))>0),1,0)))`,
    areaMm2: `IF(${cell.there}=0,0,${areaOf(size, references)})`,
    first: `IF(${isKnown},IF(${first}>=${NONE},0,${first}),0)`,
    mineAt: source.mineAt,
    contact: source.contact,
    endWrong: source.wrong,
    each: source.each,
    farMineAt: far.mineAt,
    farContact: far.contact,
    farWrong: far.wrong,
    farEach: far.each,
    // Fuses of the run: at its start, and at its end where it has one there.
    fuses: `IF(${cell.there}=0,0,IF(${hasFuse(there('fused'))},1,0)+IF(${there('endFused')}="yes",1,0))`,
    wrong: `IF(${cell.there}=0,"",${before.reduceRight(
      (further, [test, why]) => `IF(${test},${text(why)},${further})`,
      ofEnds,
    )})`,
  };
}

/** The kind of a fuse as a number from 1; the last for a kind that is none. */
const kindNumber = (kind: string) =>
  KINDS.reduceRight(
    (further, name, index) => `IF(${kind}=${text(name)},${index + 1},${further})`,
    String(KINDS.length + 1),
  );

function ofFuses(
  layout: Layout,
  { cell, number, column, above, lineNumber, run }: PartsReferences,
) {
  const { supply } = layout.names;
  const schedule = columnReferences(layout, true);
  const keyOf = (kindIs: string, amps: string) => `${A_KIND}*${kindNumber(kindIs)}+${amps}`;
  const ofSource = (key: 'mainFuse' | 'mainFuseKind') => `INDEX(${supply[key]},1,${lineNumber})`;
  const mainKey = `IF(${isPositive(ofSource('mainFuse'))},${keyOf(kindInForce(ofSource('mainFuseKind'), text(BY_RATING), ofSource('mainFuse')), ofSource('mainFuse'))},0)`;
  const runKey = `IF(${number}>ROWS(${schedule.level}),0,IF(AND(${cell.fuses}>0,ISNUMBER(${run.fuse})),${keyOf(run.kind, run.fuse)},0))`;
  const prior = `IF(${lineNumber}=1,0,N(${above.lineKey}))`;
  const least = (keys: string) =>
    `SUMPRODUCT(MIN((${keys}>${prior})*${keys}+(${keys}<=${prior})*${NONE}))`;
  const next = `MIN(${least(column.fuseKey)},${least(column.mainKey)})`;
  return {
    fuseKey: runKey,
    fuseCount: `IF(${cell.fuseKey}=0,0,${cell.fuses})`,
    mainKey: `IFERROR(${mainKey},0)`,
    lineKey: `IF(${lineNumber}=1,${next},IF(${above.lineKey}>=${NONE},${NONE},${next}))`,
  };
}

export function partsWorkingFormulas(
  layout: Layout,
  references: PartsReferences,
): Readonly<Record<Exclude<PartsWorkingKey, 'sizeName' | 'sizeMm2'>, string>> {
  const { good, thinMm2, thickMm2 } = ofContacts(references);
  return {
    ...ofRuns(layout, references),
    ...ofFuses(layout, references),
    good,
    thinMm2,
    thickMm2,
  };
}

/** A line of fuses, in its first row; empty where there is none. */
export function fuseFormulas({
  cell,
  column,
  fuse,
  typed,
}: PartsReferences): Readonly<Record<FuseKey, string>> {
  const whereLine = (formula: string) => `IF(${cell.lineKey}>=${NONE},"",${formula})`;
  const kind = `INT(${cell.lineKey}/${A_KIND})`;
  const name = KINDS.reduceRight(
    (further, word, index) => `IF(${kind}=${index + 1},${text(word)},${further})`,
    text(UNKNOWN_KIND),
  );
  return {
    kind: whereLine(name),
    rating: whereLine(`${cell.lineKey}-${A_KIND}*${kind}`),
    fitted: whereLine(
      `SUMIF(${column.fuseKey},${cell.lineKey},${column.fuseCount})+COUNTIF(${column.mainKey},${cell.lineKey})`,
    ),
    spare: whereLine(`IF(ISNUMBER(${typed.spares}),${typed.spares},"?")`),
    toBuy: whereLine(`${fuse.fitted}+N(${fuse.spare})`),
    holders: whereLine(fuse.fitted),
  };
}

/** What is found of a contact, in its first row. */
export function contactFormulas(
  references: PartsReferences,
): Readonly<
  Record<Exclude<ContactColumnKey, 'name' | 'thinnest' | 'thickest' | 'amps' | 'milliohms'>, string>
> {
  const { cell, column, runColumn, lineNumber } = references;
  return {
    // Half of a run's contacts are at either end.
    used: `IF(${cell.good}=0,"",(SUMIF(${column.contact},${lineNumber},${runColumn.pieces})+SUMIF(${column.farContact},${lineNumber},${runColumn.pieces}))/2)`,
    says: ofContacts(references).says,
  };
}

/** The row of a run, in its first row; its own contact is typed. */
export function partRunFormulas(
  layout: Layout,
  references: PartsReferences,
): Readonly<Record<Exclude<PartRunKey, 'mine' | 'farMine'>, string>> {
  const { cell, contactColumn, number, typed, run } = references;
  const { protect } = layout.names;
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${number})`;
  const whereThere = (formula: string) => `IF(${cell.there}=0,"",${formula})`;
  const said = saidOfRun(layout, number);
  const rating = `IF(${hasFuse(there('fused'))},${there('fuse')},${there('fitting')})`;
  const kind = kindInForce(ownFuseKind(number, layout), protect.fuseKind, rating);
  const taken = ({ contact }: EndKeys) =>
    `IF(${cell[contact]}=0,"",IFERROR(INDEX(${contactColumn.name},${cell[contact]})&"",""))`;
  const joints = there('joints');
  const differs = `IF(AND(ISNUMBER(${run.sum}),ISNUMBER(${joints})),IF(ABS(${run.sum}-${joints})>${SAME_MILLIOHMS},"the schedule counts "&ROUND(${joints},1)&${text(' mΩ: write ')}&ROUND(${run.sum},1)&${text(' under "Joints mΩ" there')},""),"")`;
  const doubt = doubtOf(there('level'));
  return {
    run: whereThere(said.name),
    wire: whereThere(said.wire),
    amps: whereThere(`IF(ISNUMBER(${there('runAmps')}),${there('runAmps')},"?")`),
    fuse: whereThere(
      `IF(${cell.fuses}=0,"none",IFERROR(IF(ISNUMBER(${rating}),${rating},"?"),"none fits"))`,
    ),
    kind: whereThere(`IF(${cell.fuses}=0,"",IFERROR(IF(ISNUMBER(${rating}),${kind},""),""))`),
    pieces: whereThere(
      `IF(ISNUMBER(${typed.perEnd}),2*${conductorsOf(there('back'))}*${typed.perEnd},"?")`,
    ),
    taken: taken(ENDS.source),
    farTaken: taken(ENDS.far),
    sum: `IF(AND(ISNUMBER(${cell.each}),ISNUMBER(${cell.farEach})),${run.pieces}/2*(${cell.each}+${cell.farEach})+${cell.fuses}*${typed.holder},"")`,
    planned: whereThere(`IF(ISNUMBER(${joints}),${joints},"")`),
    heat: `IF(ISNUMBER(${run.sum}),${there('runAmps')}^2*${run.sum}/1000,"")`,
    says: whereThere(
      `IF(LEN(${cell.wrong})>0,${cell.wrong},IF(LEN(${doubt})>0,${doubt},${differs}))`,
    ),
  };
}

/** What is wrong with the sheet as a whole; empty where nothing is. */
export function partsMissingFormula(layout: Layout, references: PartsReferences): string {
  const { column, contactColumn } = references;
  const schedule = columnReferences(layout, true);
  const told = (count: string, one: string, many: string) =>
    `IF(${count}=0,"",${count}&IF(${count}=1,${text(one)},${text(many)}))`;
  const hot = `SUMPRODUCT(--(${HOT_WORDS.map((word) => `ISNUMBER(SEARCH(${text(word)},${column.wrong}))`).join('+')}>0))`;
  const without = `(SUMPRODUCT(--(LEN(${column.wrong})>0))-${hot})`;
  const last = column.lineKey;
  return [
    told(
      hot,
      ' run has a contact that may grow hot: see its row below. ',
      ' runs have contacts that may grow hot: see their rows below. ',
    ),
    `IF(SUMPRODUCT(--(LEN(${contactColumn.name})>0))=0,${text(LIST_THEM)},${told(
      without,
      ' run has no contact that may be used: see its row below. ',
      ' runs have no contact that may be used: see their rows below. ',
    )})`,
    `IF(SUMPRODUCT(--(${column.fuseKey}>INDEX(${last},${LINES})))+SUMPRODUCT(--(${column.mainKey}>INDEX(${last},${LINES})))>0,${text('Some fuses find no room here and are missing. ')},"")`,
    `IF(ROWS(${schedule.level})>${runsFollowed(layout)},${text('The schedule has more runs than this sheet follows: take a new copy. ')},"")`,
    `IF(SUMPRODUCT(--ISERROR(${column.wrong}))+SUMPRODUCT(--ISERROR(${column.fuseKey}))>0,${text('Some rows could not be computed. ')},"")`,
  ].join('&');
}
