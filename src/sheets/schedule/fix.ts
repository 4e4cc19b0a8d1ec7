/** What would put a run right. */
import { VERDICT_JOINT } from '../../core/verdict';
import { text } from '../plan/formula';
import { fuseLimitInForce } from '../station/house-rules';
import type { RowReferences } from '../station/references';
import { DEPTHS, FEEDER_KEYS, type ColumnKey, type Depth } from '../station/schedule-keys';
import { FIX_WORDS, WORD, type VerdictKey } from '../station/verdicts';
import {
  conductorsOf,
  countsEach,
  heatArguments,
  isContinuous,
  numberOr0,
  there,
  whenReady,
  wireArguments,
  worseChassisOhms,
  type RowFormula,
} from './row';

/** At so many times its rating a blade opens before its wire is hurt: ISO 8820-3 (from memory). */
const OPENS_SOON = 2;

/** A load that misses its volts or its drop. */
const isWanting = ({ cell }: RowReferences) =>
  `OR(${cell.shortLow}=1,${cell.fewer}=1,IF(ISNUMBER(${cell.overDrop}),${cell.overDrop}>0,FALSE))`;

/**
 * Volts that a run of the path loses of those that the load misses, its own first and then the feeders upwards. A thicker
 * wire above leaves more for the suggested ones below it, which then turn out thinner: a run counts only where all below
 * it on the path are typed, or each is sized by itself.
 */
function lost(level: Depth): RowFormula {
  return (row) => {
    const { cell, column } = row;
    const isLow = `OR(${cell.shortLow}=1,${cell.fewer}=1)`;
    if (level === 0) {
      return `IFERROR(IF(${isLow},${cell.lowDrop}+${cell.alone}*${cell.ohms},${cell.dropVolts}),0)`;
    }
    const place = cell[FEEDER_KEYS[level - 1]!];
    const below = FEEDER_KEYS.slice(0, level - 1).map((key) => there(column.ownSize, cell[key]));
    const stays = `OR(${countsEach(row)},AND(${[cell.ownSize, ...below].map((wire) => `${wire}<>""`).join(',')}))`;
    // A drop that every run keeps by itself is cured by no other.
    const isOwnDrop = `AND(${countsEach(row)},IF(ISNUMBER(${cell.overDrop}),${cell.overDrop}>0,FALSE))`;
    const volts = `IF(${isLow},${there(column.lowDrop, place)},${there(column.ohms, place)}*${there(column.once, place)})+${cell.alone}*${there(column.ohms, place)}`;
    return `IF(${place}>0,IF(AND(${stays},NOT(${isOwnDrop})),IFERROR(${volts},0),0),0)`;
  };
}

const LOST = Object.fromEntries(
  DEPTHS.map((level) => [`lost${level}`, lost(level)]),
) as unknown as Record<`lost${Depth}`, RowFormula>;

/** Place of the run on the path that loses most, where the load misses its volts or its drop. */
const mendPlace: RowFormula = (row) => {
  const { cell } = row;
  const most = `MAX(${DEPTHS.map((level) => cell[`lost${level}`]).join(',')})`;
  const which = DEPTHS.reduceRight((further, level) => {
    const place = level === 0 ? cell.place : cell[FEEDER_KEYS[level - 1]!];
    return `IF(${cell[`lost${level}`]}=${most},${place},${further})`;
  }, 'NA()');
  return `IF(AND(${isWanting(row)},ISNUMBER(${cell.lowVolts}),ISNUMBER(${cell.pathVolts})),${which},"")`;
};

/** The share of its drop that this run must lose less. */
const mendShare: RowFormula = (row) => {
  const { cell, column } = row;
  const at = (key: ColumnKey) => there(column[key], cell.mendPlace);
  const missing = `IF(${cell.shortLow}=1,${cell.leastVolts}-${cell.lowVolts},IF(${cell.fewer}=1,${cell.assumedVolts}-${cell.lowVolts},0))`;
  const alone = `${cell.alone}*${at('ohms')}`;
  const low = `IF(${missing}>0,(${missing})/(${at('lowDrop')}+${alone}),0)`;
  const lost = `IF(${countsEach(row)},${cell.dropVolts},${at('ohms')}*${at('once')}+${alone})`;
  const over = `IF(${cell.overDrop}>0,${cell.overDrop}/${lost},0)`;
  return `IF(${cell.mendPlace}="","",MAX(${low},${over}))`;
};

/** What the source gives the load: a battery sags more by amps that do not count for the others. */
const given = ({ cell, supply }: RowReferences) =>
  `(${cell.lowSource}-IF(${cell.alone}=0,0,IF(${cell.battery}>0,${cell.alone}*${supply.bankMilliohms}/1000,0)))`;

/** Tenths of a percent of the source volts that may be lost on the way to a load that works. */
const tenthsOfTarget = (row: RowReferences) =>
  `INT(1000*(${given(row)}-${row.cell.leastVolts})/${row.cell.volts})`;

/**
 * The drop target that leaves a load its minimum volts, to a tenth of a percent, where every wire on its path follows its
 * targets: what arrives is then at least the volts at the source less the target. It counts for the path only where it
 * counts to the load.
 */
const noThicker: RowFormula = (row) => {
  const { cell, column } = row;
  const follows = [
    `NOT(${countsEach(row)})`,
    // By itself the run would need a wire that the series has not got.
    `${cell.place1}>0`,
    `${cell.ownSize}=""`,
    ...FEEDER_KEYS.map((key) => `IF(${cell[key]}>0,${there(column.ownSize, cell[key])}="",TRUE)`),
  ].join(',');
  const tenths = tenthsOfTarget(row);
  return `IF(${cell.mendPlace}="","",IF(AND(${cell.shortLow}=1,${cell.fewer}=0,${follows}),IF(${tenths}>0,${text(FIX_WORDS.target)}&${tenths}/10&" %",${text(FIX_WORDS.none)}),${text(FIX_WORDS.none)}))`;
};

/**
 * The share of its source volts that the run may lose once it is thicker. Where the target is to be set instead, one that
 * is lost only in a wire as thick per length as any of the path then needs: if the series has that, it has them all.
 */
const mendNeeds: RowFormula = (row) => {
  const { cell, column } = row;
  const at = (key: ColumnKey) => there(column[key], cell.mendPlace);
  const reach = `(${cell.reach}+${cell.volts}*(${tenthsOfTarget(row)}/1000-${cell.target}))`;
  const most = `(${there(column.once, cell.root)}+${cell.alone})`;
  const ohms = `${at('oneWay')}*${conductorsOf(at('back'))}/2*SQRT(${cell.runAmps})*${reach}/${cell.pathWeight}/${most}`;
  const shared = `IF(${reach}>0,(${ohms}+${at('jointOhms')})*${at('runAmps')}/${at('volts')},NA())`;
  return `IF(${cell.mendPlace}="","",IF(${cell.mendShare}<1,${at('dropShare')}*(1-${cell.mendShare}),IF(${isGivenUp(row)},NA(),${shared})))`;
};

/** Neither a run nor a target is named. */
const isGivenUp = ({ cell }: RowReferences) => `${cell.noThicker}=${text(FIX_WORDS.none)}`;

/** What is said instead of a thicker run: what the source itself does not give no wire brings. */
const instead: RowFormula = (row) => {
  const { cell, column, supply } = row;
  const isSource = `AND(${cell.shortLow}=1,ISNUMBER(${cell.lowSource}),ISNUMBER(${cell.leastVolts}),${given(row)}<=${cell.leastVolts})`;
  const whose = `IF(${cell.battery}>0,"battery","source")`;
  const charge = `IF(AND(${cell.battery}>0,ISNUMBER(${supply.lowCharge}))," at "&ROUND(100*${supply.lowCharge},0)&" %","")`;
  const source = `${text(FIX_WORDS.source)}&${whose}&${text(FIX_WORDS.gives)}&ROUND(${given(row)},1)&${text(FIX_WORDS.volts)}&${charge}`;
  // One that cannot be served is left out of the others' volts, and comes back into them once it is.
  const unserved = `SUMPRODUCT(MAX((${column.root}=${cell.root})*ISNA(${column.lowVolts})*${column.place}))`;
  const waits = `${text(FIX_WORDS.first)}&${there(column.run, unserved)}`;
  return `IF(${cell.mendPlace}="","",IF(${isSource},${source},IF(OR(${cell.shortLow}=1,${cell.fewer}=1),IF(${unserved}>0,${waits},""),"")))`;
};

/** The wire that this run would need: `size` of a share of its source volts. */
export function thickerWith(row: RowReferences, size: (share: string) => string): string {
  const { cell, column } = row;
  const at = (key: ColumnKey) => there(column[key], cell.mendPlace);
  const isThicker = `${cell.mendShare}<1`;
  const said = `IF(${isThicker},${text(FIX_WORDS.thicker)}&${at('run')}&${text(FIX_WORDS.inSize)},${cell.noThicker})`;
  // A target is named where there is such a size, which itself is not.
  const thicker = `IFERROR(${said}&MID(${size(cell.mendNeeds)},1,IF(${isThicker},20,0)),${text(FIX_WORDS.none)})`;
  return `IF(${cell.mendPlace}="","",${text(VERDICT_JOINT)}&IF(LEN(${cell.instead})>0,${cell.instead},${thicker}))`;
}

const says = ({ cell }: RowReferences, ...keys: VerdictKey[]) =>
  `OR(${keys.map((key) => `ISNUMBER(SEARCH(${text(WORD[key])},${cell.finding}))`).join(',')})`;

/** The run that has to be put right first, for a row that depends on it. */
const first: RowFormula = (row) => {
  const { cell, column } = row;
  const below = FEEDER_KEYS.map((key) => `(${column[key]}=${cell.place})`).join('+');
  const unread = `SUMPRODUCT(MAX((${below})*((ISERROR(${column.ownAmps})+(LEN(${column.entries})>0))>0)*${column.place}))`;
  const above = FEEDER_KEYS.reduceRight(
    (further, key) =>
      `IF(${cell[key]}<=0,"",IF(OR(ISERROR(${there(column.ohms, cell[key])}),${there(column.depth, cell[key])}<0),${there(column.run, cell[key])}&"",${further}))`,
    '""',
  );
  // One that lies too deep is known by the run nearest the source, which is the last that its feeders are followed to.
  const tooDeep = `SUMPRODUCT(MAX((${column.place5}=${cell.root})*${column.place}))`;
  const name = `IF(${tooDeep}>0,${there(column.run, tooDeep)}&"",IF(${unread}>0,${there(column.run, unread)}&"",${above}))`;
  // A load of the same branch leaves the volts unknown where it, or its wire, cannot be read.
  const beside = `SUMPRODUCT(MAX((${column.root}=${cell.root})*((ISERROR(${column.ownAmps})+ISERROR(${column.ohms})+(LEN(${column.entries})>0))>0)*${column.place}))`;
  const waits = `IF(${says(row, 'tiedToAnother')},${name},IF(${says(row, 'voltsUnknown')},IF(${beside}>0,${there(column.run, beside)}&"",""),""))`;
  return `IF(LEN(${waits})=0,"",${text(VERDICT_JOINT + FIX_WORDS.first)}&${waits})`;
};

/** What no wire of the run itself cures: the run above that loses most. */
const above: RowFormula = (row) => {
  const { cell, column } = row;
  const lost = FEEDER_KEYS.map(
    (key) => `IF(${cell[key]}>0,IFERROR(${there(column.dropVolts, cell[key])},0),0)`,
  );
  const most = `MAX(${lost.join(',')})`;
  const which = FEEDER_KEYS.reduceRight(
    (further, key, index) =>
      `IF(${lost[index]!}=${most},${there(column.run, cell[key])}&"",${further})`,
    '""',
  );
  return `IF(AND(ISNUMBER(SEARCH(${text(WORD.noRoom)},${cell.finding})),${cell.place1}>0),${text(VERDICT_JOINT + FIX_WORDS.thicker)}&${which},"")`;
};

/** A load in watts that gets no current through its path: the run of most ohms, of which less are needed at least. */
const unserved: RowFormula = (row) => {
  const { cell, column } = row;
  const ohms = [
    numberOr0(cell.ohms),
    ...FEEDER_KEYS.map((key) => `IF(${cell[key]}>0,${numberOr0(there(column.ohms, cell[key]))},0)`),
  ];
  const most = `MAX(${ohms.join(',')})`;
  const names = [cell.run, ...FEEDER_KEYS.map((key) => there(column.run, cell[key]))];
  const which = names.reduceRight(
    (further, name, index) => `IF(${ohms[index]!}=${most},${name}&"",${further})`,
    '""',
  );
  return `IF(${says(row, 'cannotBeServed')},${text(VERDICT_JOINT + FIX_WORDS.lessOhms)}&IF(LEN(${which})=0,"it",${which}),"")`;
};

const look: RowFormula = ({ cell }) =>
  `IF(LEN(${cell.entries})>0,${text(VERDICT_JOINT + FIX_WORDS.look)}&MID(${cell.entries},3,200),"")`;

const putBack: RowFormula = ({ cell }) =>
  `IF(LEN(${cell.typedOver})>0,${text(VERDICT_JOINT + FIX_WORDS.putBack)}&MID(${cell.typedOver},3,200),"")`;

/** A wire of one's own that is too thin by itself, and for which there is a suggestion. */
const isOwnTooThin = (row: RowReferences) =>
  `AND(${row.cell.ownSize}<>"",NOT(ISERROR(${row.cell.suggested})),${says(row, 'heat', 'fuse', 'noAmpacity')})`;

/** The suggested wire serves heat, fuse and drop alike. */
const ownWire = (row: RowReferences) =>
  `IF(${isOwnTooThin(row)},${text(VERDICT_JOINT + FIX_WORDS.take)}&${row.cell.suggested}&${text(FIX_WORDS.orThicker)},"")`;

/** A short at the far end opens a fuse of its own that carries the load: it draws twice the rating. */
const opensOwnFuse = (row: RowReferences) => {
  const { cell, column, supply, protect, rule } = row;
  const volts = `IF(${cell.battery}>0,${supply.lowRest},${there(column.volts, cell.root)})`;
  const ohms = `(${supply.bankMilliohms}*${protect.weakTimes}/1000+(${cell.pathOhms}+${numberOr0(rule.joints)}/1000)*${protect.warm}+${worseChassisOhms(cell.back)})`;
  return `IFERROR(${volts}>=${OPENS_SOON}*${cell.fitting}*${ohms},FALSE)`;
};

/** A branch that leans on a fuse upstream is put right by one of its own, which takes no thicker wire. */
const protectedBy = (row: RowReferences) => {
  const { cell } = row;
  const isLeaning = `AND(${cell.fused}="no",ISNUMBER(${cell.fitting}),OR(${says(row, 'needsFuse')},AND(LEN(${cell.guardedFrom})>0,NOT(${says(row, 'entriesAstray')}),${opensOwnFuse(row)})))`;
  return `IF(${isLeaning},${text(VERDICT_JOINT + FIX_WORDS.ownFuse)}&${cell.fitting}&${text(FIX_WORDS.amps)},${cell.guardedFrom})`;
};

/** Whose start takes the volts. */
const starting: RowFormula = ({ cell, column }) =>
  `IF(${cell.startsBy}>0,${text(VERDICT_JOINT + FIX_WORDS.starts)}&${there(column.run, cell.startsBy)},"")`;

const tellBattery: RowFormula = (row) =>
  `IF(${says(row, 'batteryAssumed')},${text(VERDICT_JOINT + FIX_WORDS.tellBattery)},"")`;

/** All of it, the part of the thicker run given. */
export function fixWith(row: RowReferences, thicker: string): string {
  const { cell } = row;
  const isSaid = `AND(${cell.mendPlace}=${cell.place},${isOwnTooThin(row)})`;
  const parts = [
    putBack(row),
    look(row),
    first(row),
    above(row),
    cell.unserved,
    ownWire(row),
    protectedBy(row),
    `IF(${isSaid},"",${thicker})`,
    starting(row),
    tellBattery(row),
  ]
    .map((part) => `IFERROR(${part},"")`)
    .join('&');
  return `IF(LEN(${cell.finding})=0,"",MID(${parts},${VERDICT_JOINT.length + 1},250))`;
}

const exactly: RowFormula = (row) => {
  const at = (key: ColumnKey) => there(row.column[key], row.cell.mendPlace);
  return fixWith(
    row,
    thickerWith(row, (share) =>
      row.call(
        'MINGAUGE',
        at('runAmps'),
        at('oneWay'),
        row.rule.unit,
        at('volts'),
        share,
        ...wireArguments(row),
        at('joints'),
        ...heatArguments(row),
        isContinuous(row),
        row.rule.series,
        fuseLimitInForce(row.rule),
        at('back'),
      ),
    ),
  );
};

/** What nothing can be named for: what helps with the gravest of its words in general. */
const mend: RowFormula = ({ cell, verdicts }) => {
  const gravest = `LEFT(${cell.finding},SEARCH(${text(VERDICT_JOINT)},${cell.finding}&${text(VERDICT_JOINT)})-1)`;
  const remedy = `INDEX(${verdicts.fixes},MATCH(${gravest},${verdicts.words},0))`;
  return `IF(LEN(${cell.exactly})>0,${cell.exactly},IF(LEN(${cell.finding})=0,"",IFERROR(${remedy},"")))`;
};

export const FIX_FORMULAS = {
  ...LOST,
  mendPlace,
  mendShare,
  instead,
  noThicker,
  mendNeeds,
  unserved,
  exactly,
  // Of the Protection sheet; a blank cell counts as 0, which is shorter than any word.
  guardedFrom: (row) => {
    const found = there(row.protect.guardedFrom, row.cell.place);
    return whenReady(row, `IFERROR(IF(LEN(${found})<2,"",${text(VERDICT_JOINT)}&${found}),"")`);
  },
  mend,
} as const satisfies Record<string, RowFormula>;
