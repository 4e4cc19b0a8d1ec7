/** What pages for the workshop say of a run, as formulas of its place in the schedule: ends, length, wire, fuse. */
import { ownFuseKind } from '../protection/layout';
import { columnReferences, ROW } from '../schedule/layout';
import { kindInForce } from '../station/fuse-kind';
import type { Layout } from '../station/layout';
import type { ColumnKey } from '../station/schedule-keys';

/** A text that ends in dots where it is too long for its column. */
export const shortened = (said: string, most: number) =>
  `IF(LEN(${said})>${most},MID(${said},1,${most - 1})&"…",${said})`;

/** A length as typed: a bare number is in the house unit. */
const lengthOf = (cell: string, unit: string) =>
  `IF(ISNUMBER(${cell}),ROUND(${cell},2)&" "&${unit},TRIM(${cell}))`;

export interface SaidOfRun {
  readonly name: string;
  /** What stands where the run starts: its feeder, or its source. */
  readonly near: string;
  /** What stands at the far end: the load, the source that it ends at, what it feeds. */
  readonly far: string;
  readonly length: string;
  readonly wire: string;
  readonly fuse: string;
}

export function saidOfRun(layout: Layout, place: string): SaidOfRun {
  const { rule, protect, supply } = layout.names;
  const schedule = columnReferences(layout, true);
  const there = (key: ColumnKey) => `INDEX(${schedule[key]},${place})`;

  const { run, place1 } = schedule;
  const fed = `COUNTIF(${place1},${place})`;
  const firstFed = `INDEX(${run},MATCH(${place},${place1},0))`;
  const feeds = `IF(${fed}=0,"its load",${firstFed}&IF(${fed}=1,""," and "&(${fed}-1)&" more"))`;
  const first = `INDEX(${supply.name},1,1)`;

  const fuse = there('fuse');
  // A number in a text cell, without a unit of its own: in the house unit, as a number is.
  const isBare = `AND(ISTEXT(${there('length')}),LEN(${there('feetSaid')})=0,LEN(${there('restUnit')})=0)`;
  const rated = (amps: string) =>
    `${amps}&" A "&${kindInForce(ownFuseKind(place, layout), protect.fuseKind, amps)}`;
  const isAtEnd = `${there('endFused')}="yes"`;
  const before = `IF(LEN(${there('unfused')})=0,""," after "&${lengthOf(there('unfused'), rule.unit)})`;
  const atEnd = `IF(${isAtEnd},", both ends","")`;
  // Without a fuse where it starts: it may have one where it ends, or lean on one upstream.
  const upstream = `IF(ISNUMBER(${there('feederFuse')}),${there('feederFuse')}&" A upstream","none")`;
  const none = `IF(AND(${isAtEnd},ISNUMBER(${there('fitting')})),${rated(there('fitting'))}&", far end",${upstream})`;
  return {
    name: `IF(LEN(TRIM(${there('run')}))=0,"row "&(${place}+${ROW.first}),TRIM(${there('run')}))`,
    near: `IF(LEN(TRIM(${there('fedFrom')}))>0,TRIM(${there('fedFrom')}),IF(LEN(${first})=0,"battery",${first}))`,
    far: `IF(LEN(TRIM(${there('load')}))>0,TRIM(${there('load')}),IF(LEN(TRIM(${there('endsAt')}))>0,TRIM(${there('endsAt')}),${feeds}))`,
    length: `IF(LEN(${there('length')})=0,"?",IF(${isBare},TRIM(${there('length')})&" "&${rule.unit},${lengthOf(there('length'), rule.unit)}))`,
    wire: `IFERROR(IF(LEN(${there('size')})=0,"?",${there('size')}&""),"none fits")`,
    fuse: `IF(${there('fused')}="no",${none},IF(ISNUMBER(${fuse}),${rated(fuse)}&${before}&${atEnd},IF(ISERROR(${fuse}),"none fits","?")))`,
  };
}
