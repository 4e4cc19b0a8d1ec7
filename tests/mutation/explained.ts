/**
 * Mutants that no test can or need catch, read one by one. They still count as survivors; the report says why. Each is named
 * by its file and by the line as `npm run mutate` tells it.
 */
export interface Explained {
  readonly file: string;
  readonly told: string;
  readonly why: string;
}

export const EXPLAINED: readonly Explained[] = [
  {
    file: 'src/sheets/schedule/fix.ts',
    told: 'cell.lowDrop}+${cell.alone}*${cell.ohms},${cell.dropVolts}),[[0 -> 1]])`;',
    why: 'Read only where the load misses its volts or its drop, and both are numbers then.',
  },
  {
    file: 'src/sheets/without-add-in/tree.ts',
    told: '`IF([[${cell.run}="" -> FALSE]],"",${settled}IF(OR(${source}="",${cell.',
    why: 'The schedule looks volts up for named runs alone.',
  },
  {
    file: 'src/sheets/fuse-map/formulas.ts',
    told: "st isTwice = `SUMPRODUCT((${column.blockOf}=${cell.blockAt})[[* -> /]](LEN(${of('typed')})>0)*(${column.typed}",
    why: 'Asked only where something is typed, so that it divides by 1 for all that counts.',
  },
  {
    file: 'src/sheets/schedule/judgement.ts',
    told: "`IFERROR(IF(${cell.words}=\"\",IF([[${cell.judged}=1 -> TRUE]],${word('ok')},${word('checkEntries')}),",
    why: 'The last of several defences: every known row without figures has a word of its own before.',
  },
  {
    file: 'src/core/lightest/choose.ts',
    told: 'const isProved = cost <= round.droppedFrom * (1 [[+ -> -]] ROUNDING_SHARE);',
    why: 'A slack for rounding, far below what any price differs by.',
  },
  {
    file: 'src/core/lightest/lightest-sizes.ts',
    told: 'const SLACK = RELATIVE_SLACK / [[2 -> 3]];',
    why: 'A share of the slack for rounding: any below 1 keeps what is found inside the limit.',
  },
  {
    file: 'src/core/fillings.ts',
    told: 'le (fromShortest.length <= kinds - index && fromShortest.at([[-1 -> 1]])! < space) {',
    why: 'Only how early a sum stops that is more than enough: longer, with the same answers.',
  },
  {
    file: 'src/functions/argument-reader.ts',
    told: 'this.isWorthRemembering = this.remembered [[> -> <=]] MOST_REMEMBERED;',
    why: 'Only whether readings are remembered: the answers are the same.',
  },
  {
    file: 'src/sheets/supply/cells.ts',
    told: '${cell.breakAmps})),${cell.eachBreaks}*(1+${RELATIVE_SLACK})[[>= -> >]]${others},FALSE)`;',
    why: 'Only a figure that equals the limit and its slack for rounding to the last digit tells them apart.',
  },
];
