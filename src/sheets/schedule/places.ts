/** Where each run stands among the others. */
import { text } from '../plan/formula';
import { FEEDER_KEYS } from '../station/schedule-keys';
import { BATTERY, PANEL, WORD, type VerdictKey } from '../station/verdicts';
import { comesRound, hasFuse, NOT_LISTED, there, whenReady, type RowFormula } from './row';

/** The place of a feeder's own feeder. */
const placeAbove =
  (below: 'place1' | 'place2' | 'place3'): RowFormula =>
  ({ cell, column }) =>
    `IF(${cell[below]}>0,MAX(0,${there(column.place1, cell[below])}),0)`;

/**
 * The place of a run by its name. MATCH takes ~, * and ? in it for marks that stand for other letters, so that "Lamp ?" would
 * be found at "Lamp 1"; a name with one of them is compared as it stands.
 */
const placeOfRun = (name: string, { run, place }: Readonly<Record<'run' | 'place', string>>) => {
  const plain = ['~', '*', '?'].reduce((left, mark) => `SUBSTITUTE(${left},"${mark}","")`, name);
  const found = `SUMPRODUCT(MAX((${run}=${name})*${place}))`;
  return `IF(LEN(${plain})=LEN(${name}),MATCH(${name},${run},0),IF(${found}>0,${found},NA()))`;
};

/** More feeders stand above than are followed. */
const isTooDeep: RowFormula = ({ cell }) => `${cell.place5}<>0`;

/** A feeder above stands twice on the way up. */
const isFedFromLoop: RowFormula = ({ cell }) => {
  const places = [...FEEDER_KEYS.map((key) => cell[key]), cell.place5];
  const pairs = places.flatMap((place, index) =>
    places.slice(index + 1).map((further) => `AND(${place}>0,${place}=${further})`),
  );
  return `OR(${pairs.join(',')})`;
};

/** The run lies too deep, or another of its tree does. */
export const isInDeepTree: RowFormula = (row) =>
  `OR(${isTooDeep(row)},COUNTIF(${row.column.place5},${row.cell.root})>0)`;

export const PLACE_FORMULAS = {
  place: ({ place }) => place,
  place1: ({ cell, column }) =>
    `IF(${cell.feeder}="",0,IFERROR(${placeOfRun(cell.feeder, column)},${NOT_LISTED}))`,
  place2: placeAbove('place1'),
  place3: placeAbove('place2'),
  place4: placeAbove('place3'),
  // The place of the run that is not followed any more; 0 where none stands there.
  place5: ({ cell, column }) => `IF(${cell.place4}>0,${there(column.place1, cell.place4)},0)`,
  depth: (row) => {
    const { cell } = row;
    const count = FEEDER_KEYS.map((key) => `(${cell[key]}>0)`).join('+');
    return `IF(OR(${cell.place1}<0,${comesRound(row)},${isTooDeep(row)}),-1,${count})`;
  },
  root: ({ cell }) =>
    FEEDER_KEYS.reduce((nearer, key) => `IF(${cell[key]}>0,${cell[key]},${nearer})`, cell.place),
  // A source by its name; the usual names mean the first of their kind where none is called so.
  ownSource: ({ cell, sources }) => {
    const name = `TRIM(${cell.fedFrom})`;
    const panel = `IF(${name}=${text(PANEL)},IFERROR(MATCH("panel",${sources.kind},0),0),0)`;
    return `IF(LEN(${name})=0,1,IFERROR(MATCH(${name},${sources.name},0),IF(${name}=${text(BATTERY)},1,${panel})))`;
  },
  source: ({ cell, column, sources }) => {
    const own = there(column.ownSource, cell.root);
    return `IF(${own}=0,1,MAX(1,INDEX(${sources.governs},1,${own})))`;
  },
  sourceKind: ({ cell, column, sources, supply }) => {
    const own = there(column.ownSource, cell.root);
    return `IF(${own}=0,"",IF(INDEX(${sources.governs},1,${own})=0,"",${supply.kind}&""))`;
  },
  battery: ({ cell, column, supply }) => {
    const volts = there(column.volts, cell.root);
    return `IF(AND(${cell.sourceKind}="battery",${volts}=${supply.volts},${supply.volts}<>""),${cell.source},0)`;
  },
  endSource: ({ cell, sources }) =>
    `IF(LEN(TRIM(${cell.endsAt}))=0,0,IFERROR(MATCH(TRIM(${cell.endsAt}),${sources.name},0),IF(TRIM(${cell.endsAt})=${text(BATTERY)},IFERROR(MATCH(${text(BATTERY)},${sources.kind},0),${NOT_LISTED}),${NOT_LISTED})))`,
  // Back at the source that it comes from it is at no end.
  endBattery: ({ cell, column, sources }) =>
    `IF(AND(${cell.endSource}>0,${cell.endSource}<>${there(column.ownSource, cell.root)}),IF(INDEX(${sources.kind},1,${cell.endSource})="battery",${cell.endSource},0),0)`,
  feederFuse: ({ cell, column }) => {
    const nearest = FEEDER_KEYS.map((key) => cell[key]).reduceRight(
      (further, place) =>
        `IF(${place}<=0,NA(),IF(${hasFuse(there(column.fused, place))},${there(column.fuse, place)},${further}))`,
      'NA()',
    );
    return `IF(${cell.fused}="no",${nearest},"")`;
  },
  // What is wrong with the place; empty where nothing is.
  treeWord: (row) => {
    const { cell, column } = row;
    const word = (key: VerdictKey) => text(WORD[key]);
    return whenReady(
      row,
      `IF(${cell.run}="",IF(${cell.feeder}="","",${word('nameMissing')}),` +
        `IF(SUMPRODUCT(--(${column.run}=${cell.run}))>1,${word('nameTwice')},` +
        `IF(${cell.place1}=${NOT_LISTED},${word('feederNotListed')},` +
        `IF(${comesRound(row)},${word('inLoop')},IF(${isFedFromLoop(row)},${word('tiedToAnother')},IF(${isTooDeep(row)},${word('tooDeep')},` +
        `IF(AND(ISERROR(${cell.runAmps}),ISNUMBER(${cell.ownAmps})),${word('tiedToAnother')},"")))))))`,
    );
  },
} as const satisfies Record<string, RowFormula>;
