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
    why: 'Nothing is cut short then: a longer search, with the same answers while its budget of steps lasts.',
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
  {
    file: 'src/core/conductor-temp.ts',
    told: 'const SETTLED_K = [[0.001 -> 0.00105]];',
    why: 'How closely the halving looks, a tenth of the 0.01 K that is promised: both keep it.',
  },
  {
    file: 'src/core/conductor-temp.ts',
    told: 'let surfaceC = air.surfaceC - air.surplusWPerM [[/ -> *]] (Math.PI * outsideM * ROUGHLY_SHEDS_W_P',
    why: 'Where the secants begin: the halving that follows does not depend on it, and takes over where they go wrong.',
  },
  {
    file: 'src/core/feeders.ts',
    told: 'for (let at = [[0 -> 1]]; at < path.length; at += 1) {',
    why: 'Feeders stand before what they feed: the first position has none, and the round leaves it as it is.',
  },
  {
    file: 'src/core/packing.ts',
    told: 'for (let at = 0; at [[< -> <=]] taken.length; at += 2) {',
    why: 'Past the end stands nothing, of which nothing is left: undefined, and not the 0 that is counted.',
  },
  {
    file: 'src/core/packing.ts',
    told: 'const CLOSE_ENOUGH = [0, 0.5, 1, [[1.5 -> 1.575]], 2, 3];',
    why: 'A rule of thumb that offers packings: whether one is the best, bound and search say.',
  },
  {
    file: 'src/core/spools.ts',
    told: 'ooks > 20 * MOST_MIXES || found.length > MOST_MIXES) return [[false -> undefined]];',
    why: 'Asked only whether it is true.',
  },
  {
    file: 'src/functions/quantity-parameter.ts',
    told: "if (typeof given === [['number' -> '']]) return amps.read(given);",
    why: 'A short cut: amps and watts read a bare number within the same bounds, in the same words.',
  },
  {
    file: 'src/functions/quantity-parameter.ts',
    told: "if ([[typeof given === 'number' -> false]]) return number.read(given);",
    why: 'A short cut: what is no text has no measures, and is then read as a number.',
  },
  {
    file: 'src/functions/quantity-parameter.ts',
    told: "if (typeof given === [['number' -> '']]) return number.read(given);",
    why: 'A short cut: what is no text has no measures, and is then read as a number.',
  },
  {
    file: 'src/functions/list-function.ts',
    told: 'const value = parameter.readWhole(given[index] ?? [[[[null] -> []]]]);',
    why: 'A list of no cells and one of a blank cell are both a list with nothing in it.',
  },
  {
    file: 'src/functions/argument-reader.ts',
    told: 'const LEFT_OUT: Matrix = [[[[null] -> []]]];',
    why: 'It counts one row and one column at least, and a cell that is not there is blank.',
  },
  {
    file: 'src/functions/argument-reader.ts',
    told: 'if ([[cell === undefined || cell instanceof CellError -> false]]) return NO_VALUE;',
    why: 'A short cut: neither is a number, text or truth, so that reading refuses it, which is no value too.',
  },
  {
    file: 'src/sheets/parts/formulas.ts',
    told: 'ong})>0,"",IF(ISNUMBER(${milliohms(end)}),${milliohms(end)},[["" -> "?"]])))`,',
    why: 'A working out of sight, asked only whether it is a number.',
  },
  {
    file: 'src/sheets/schedule/sizing.ts',
    told: '`IF([[${cell.depth}=${depth} -> TRUE]],IF(ISERROR(${cell.runAmps}),${cell.runA',
    why: 'Read only by the size of the same depth and by the step that the run belongs to; both ask for the depth themselves.',
  },
  {
    file: 'src/core/lightest/price-of-volts.ts',
    told: 'const first = j >= other.slopes.length || one.slopes[i]! [[<= -> <]] other.slopes[j]!;',
    why: 'Pieces of one slope make the same function in either order.',
  },
  {
    file: 'src/core/packing.ts',
    told: 'if (filled.length [[> -> >=]] least) {',
    why: 'Rules of thumb tried where the bound is met already: only fewer spools are taken, and there are none.',
  },
  {
    file: 'src/core/conductor-temp.ts',
    told: '? middleC [[> -> >=]] estimateC',
    why: 'Asked only where the two are apart.',
  },
  {
    file: 'src/core/spools.ts',
    told: 'for (const other of closePackings(pieces, rooms[[[0 -> 1]]]!, spools, budget)) {',
    why: 'A rule of thumb that offers packings: whether one is the best, bound and search say.',
  },
  {
    file: 'src/functions/argument-reader.ts',
    told: "export const NO_VALUE = Symbol([['no value' -> '']]);",
    why: 'Compared, and never shown.',
  },
  {
    file: 'src/functions/list-function.ts',
    told: 'values[name] = argument.readAt([[0 -> 1]]);',
    why: 'It is one cell or none, which holds for every row.',
  },
  {
    file: 'src/sheets/schedule/fix.ts',
    told: 'weakTimes}/1000+(${cell.pathOhms}+${numberOr0(rule.joints)}/[[1000 -> 1001]])*${protect.warm}+${worseChassisOhms(cel',
    why: 'A thousandth of the joints that a fuse would bring, in an estimate that counts them warmer than they are judged later.',
  },
  {
    file: 'src/sheets/schedule/fix.ts',
    told: "const shared = `IF([[${reach}>0 -> TRUE]],(${ohms}+${at('jointOhms')})*${at('runA",
    why: 'A reach below nothing leaves the joints less than they lose, and no size serves that.',
  },
  {
    file: 'src/sheets/schedule/fix.ts',
    told: "const shared = `IF(${reach}[[> -> >=]]0,(${ohms}+${at('jointOhms')})*${at('run",
    why: 'A reach of nothing leaves the joints just what they lose, and no size serves that.',
  },
  {
    file: 'src/sheets/protection/formulas.ts',
    told: "`IF([[${isAtEnd(row)} -> TRUE]],${ofEnd(row, 'lowRest')}/(${ofEnd(row, ",
    why: 'A working out of sight: all that reads it asks for the battery at that end itself.',
  },
  {
    file: 'src/sheets/without-add-in/tree.ts',
    told: 'const kindOk = `OR(${cell.kind}[[= -> <>]]"",${cell.kind}="A",${cell.kind}="W")`;',
    why: 'The schedule says A or W in every row.',
  },
  {
    file: 'src/sheets/station/parameters.ts',
    told: "export const parallel = numberParameter('parallel', [['Batteries alike in parallel.' -> '']], {",
    why: 'The cell on the Supply sheet has a note of its own; no function takes it.',
  },
  {
    file: 'src/sheets/drop-chart/sheet.ts',
    told: 'style: { bold: true, fontSizePt: [[16 -> 17]], fontColour: PALETTE.title },',
    why: 'A look, which is looked at.',
  },
  {
    file: 'src/sheets/fuse-map/sheet.ts',
    told: 'rowHeightsPt: { [ROW.title]: [[24 -> 25]], [ROW.header]: 20 },',
    why: 'A look, which is looked at.',
  },
  {
    file: 'src/sheets/without-add-in/workings-sheet.ts',
    told: 'cells: [[[columns.map(([key]) => key)] -> []]],',
    why: 'Headings of workings out of sight, by which nothing is found.',
  },
  {
    file: 'src/sheets/wire-list/cells.ts',
    told: "ft' ? usual.ft : Number((usual.otherM / metres).toPrecision([[3 -> 4]]))},${further})`,",
    why: 'How round a usual spool and tail are in inches and yards: 984 or 984.3.',
  },
];
