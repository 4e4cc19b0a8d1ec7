/**
 * The cutting of the Wire list, as formulas: pieces in the order of their lines, longest first, each from the first spool
 * of its line that still has enough for it (first fit decreasing). Lengths are counted in whole hundredths, so that sums
 * are exact; the rooms left on the spools that a line has opened stand in one text, so many digits each.
 */
import { area, areaAddress } from '../plan/area';
import { text } from '../plan/formula';
import { GAP_COLUMN, type WireReferences, type WireWorkingKey } from './layout';

/** Hundredths of the length unit. */
export const GRAINS = 100;
/** Digits of a spool's room: a spool has less than ten million units of length. */
const DIGITS = 9;
export const MOST_ON_SPOOL = 10 ** (DIGITS - 2) - 1;
/** Opened spools that are tried for a piece; past them a new one is opened. */
const SPOOLS_TRIED = 200;
/** Past every number of a spool, a piece or a line. */
const NONE = '9000000000';

/** Between wire and colour; in no size, and in no colour that anyone would write. */
const JOINT = ' | ';
/** Room for pieces below one step of the sizes. */
const A_SIZE = 1e6;

const padded = (room: string) => `RIGHT(${text('0'.repeat(DIGITS))}&(${room}),${DIGITS})`;
const roomAt = (rooms: string, spool: string) => `MID(${rooms},${DIGITS}*(${spool}-1)+1,${DIGITS})`;

function ofPieces({ cell, column, head, number }: WireReferences) {
  const ofRun = (key: WireWorkingKey) => `INDEX(${column[key]},${cell.ofRun})`;
  const isMinus = `${number}=2*${cell.ofRun}`;
  return {
    number,
    ofRun: `INT((${number}+1)/2)`,
    piece: `IF(${ofRun('good')}=0,0,IF(AND(${isMinus},${ofRun('good')}=1),0,${ofRun('grains')}))`,
    key: `IF(${cell.piece}=0,"",${ofRun('place')}&${text(JOINT)}&IF(${isMinus},${ofRun('minusIs')},${ofRun('plusIs')}))`,
    // The first piece of each line, in the order of sizes and then of the schedule.
    first: `IF(${cell.piece}=0,${NONE},IF(MATCH(${cell.key},${column.key},0)=${cell.number},${ofRun('place')}*${A_SIZE}+${cell.number},${NONE}))`,
    nth: `IF(${cell.first}=${NONE},0,1+SUMPRODUCT(--(${column.first}<${cell.first})))`,
    line: `IF(${cell.piece}=0,0,INDEX(${column.nth},MATCH(${cell.key},${column.key},0)))`,
    rank: `IF(${cell.line}=0,0,1+SUMPRODUCT((${column.line}>0)*(${column.line}<${cell.line})+(${column.line}=${cell.line})*((${column.piece}>${cell.piece})+(${column.piece}=${cell.piece})*(${column.number}<${cell.number}))))`,
    cutPiece: `IF(${number}>${head.pieces},0,MATCH(${number},${column.rank},0))`,
  };
}

function ofCuts({ cell, above, column }: WireReferences) {
  const ofPiece = (key: WireWorkingKey) => `INDEX(${column[key]},${cell.cutPiece})`;
  const steps = `ROW(${areaAddress(area(0, GAP_COLUMN, SPOOLS_TRIED, 1), 'both')})`;
  const room = `VALUE(${text('0')}&${roomAt(above.rooms, steps)})`;
  const isNew = `${cell.fits}>${cell.opened}`;
  const left = `VALUE(${roomAt(above.rooms, cell.fits)})-${cell.cutGrains}`;
  const opened = `IF(${cell.opened}=0,"",${above.rooms})&${padded(`${cell.cutSpool}-${cell.cutGrains}`)}`;
  const filled = `LEFT(${above.rooms},${DIGITS}*(${cell.fits}-1))&${padded(left)}&MID(${above.rooms},${DIGITS}*${cell.fits}+1,32000)`;
  return {
    cutLine: `IF(${cell.cutPiece}=0,0,${ofPiece('line')})`,
    cutGrains: `IF(${cell.cutPiece}=0,0,${ofPiece('piece')})`,
    cutSpool: `IF(${cell.cutPiece}=0,0,INDEX(${column.spoolGrains},${ofPiece('ofRun')}))`,
    opened: `IF(AND(${cell.cutPiece}>0,${cell.cutLine}=${above.cutLine}),LEN(${above.rooms})/${DIGITS},0)`,
    fits: `IF(${cell.opened}=0,1,SUMPRODUCT(MIN(${steps}+${NONE}*(${room}<${cell.cutGrains}))))`,
    from: `IF(${cell.cutPiece}=0,0,IF(${isNew},${cell.opened}+1,${cell.fits}))`,
    rooms: `IF(${cell.cutPiece}=0,"",IF(${isNew},${opened},${filled}))`,
  };
}

export function cuttingFormulas(references: WireReferences) {
  return { ...ofPieces(references), ...ofCuts(references) };
}

/** Fewest spools that any plan of a line could have: by all of its length, and by the pieces over half a spool. */
export function leastSpools({ column, lineNumber }: WireReferences, spoolGrains: string): string {
  const onLine = `(${column.line}=${lineNumber})`;
  const byLength = `-INT(-SUMIF(${column.line},${lineNumber},${column.piece})/${spoolGrains})`;
  const long = `SUMPRODUCT(${onLine}*(2*${column.piece}>${spoolGrains}))`;
  return `MAX(${byLength},${long})`;
}
