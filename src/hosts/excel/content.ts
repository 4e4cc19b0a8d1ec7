/**
 * What the cells of a plan hold, as steps in the order that Excel needs: number formats before values, since a text format
 * decides how a value is read; tables over their filled cells, since filling a table grows slow; formulas after every
 * sheet, name and table that they may refer to.
 */
import { area, type Area } from '../../sheets/plan/area';
import { filledDown } from '../../sheets/plan/fill-down';
import type { Formula, SheetPlan, TablePlan } from '../../sheets/plan/plan';
import { contentLayers, covers, notTextCells, TEXT_FORMAT, type ContentLayer } from './layers';
import { rangeOf } from './range-of';
import { CALL_BYTES, type Step } from './step';
import { writtenText } from './written-text';

/** What Office takes for a cell; null leaves the cell as it is. */
type Written = string | number | boolean | null;
type Rows = readonly (readonly Written[])[];

const GENERAL_FORMAT = 'General';
/** A long list of values is given in pieces of about this size, so that requests can be filled evenly. */
const PIECE_BYTES = 100_000;

export interface Content {
  /** Formats, values and the table. */
  readonly values: readonly Step[];
  /** Formulas, and what is typed over them. */
  readonly formulas: readonly Step[];
}

/** The steps that fill the cells of one sheet. */
export function contentSteps(plan: SheetPlan): Content {
  const layers = contentLayers(plan);
  const isComputed = computedCells(plan.table);
  return {
    values: [
      ...formatSteps(plan, layers, isComputed),
      ...layers.flatMap((layer) => constantSteps(layer, isComputed)),
      ...textAgainSteps(plan, layers, isComputed),
      ...tableSteps(plan),
    ],
    formulas: [
      ...columnSteps(plan.table),
      // After the columns: Excel takes a column with one formula in it for calculated, and then bears exceptions.
      ...layers.flatMap((layer) => overtypedSteps(layer, isComputed)),
      ...layers.flatMap((layer) => fillSteps(layer, isComputed)),
      ...layers.flatMap((layer) => formulaSteps(layer, isComputed)),
    ],
  };
}

type CellTest = (row: number, column: number) => boolean;

/** The cells of a table column under its heading. */
export function bodyColumn(table: Area, index: number): Area {
  return area(table.row + 1, table.column + index, table.rows - 1, 1);
}

function computedCells(table: TablePlan | undefined): CellTest {
  if (table === undefined) return () => false;
  const { row, rows, column } = table.area;
  return (at, across) =>
    at > row && at < row + rows && table.columns[across - column]?.formula !== undefined;
}

const isFormula = (content: unknown): content is Formula =>
  typeof content === 'object' && content !== null;

/** One value for all cells of a range: "applied to all cells" by the reference of values, formulas and numberFormat. */
const forAll = (value: string) => value as unknown as string[][];

function formatStep(of: Area, format: string): Step {
  return {
    bytes: CALL_BYTES + format.length,
    draw: (sheet) => {
      rangeOf(sheet, of).numberFormat = forAll(format);
    },
  };
}

function formatSteps(
  { blocks }: SheetPlan,
  layers: readonly ContentLayer[],
  isComputed: CellTest,
): readonly Step[] {
  return blocks.flatMap(({ area: of, style }) => {
    const format = style?.numberFormat;
    if (format === undefined) return [];
    const steps = [formatStep(of, format)];
    if (format !== TEXT_FORMAT) return steps;
    // A formula written into a cell formatted as text would stay on show as text.
    // A number would turn into text, with a warning at each cell.
    const isNoText = notTextCells(layers, of);
    for (let column = of.column; column < of.column + of.columns; column += 1) {
      const test: CellTest = (row, at) => isComputed(row, at) || isNoText(row, at);
      for (const run of runsDown(of, column, test)) steps.push(formatStep(run, GENERAL_FORMAT));
    }
    return steps;
  });
}

/** Numbers among text cells, once they are written: what is typed over them shall be kept as it is typed. */
function textAgainSteps(
  { blocks }: SheetPlan,
  layers: readonly ContentLayer[],
  isComputed: CellTest,
): readonly Step[] {
  const areas = blocks.flatMap(({ area: of, style }) =>
    style?.numberFormat === TEXT_FORMAT ? [of] : [],
  );
  return areas.flatMap((of) =>
    Array.from({ length: of.columns }, (_, across) => of.column + across).flatMap((column) => {
      const isNumber: CellTest = (row, at) =>
        !isComputed(row, at) &&
        layers.some(
          (layer) =>
            covers(layer.block.area, row, at) && typeof layer.contentAt(row, at) === 'number',
        );
      return runsDown(of, column, isNumber).map((run) => formatStep(run, TEXT_FORMAT));
    }),
  );
}

/** The stretches of a column within an area whose cells pass a test. */
function runsDown(of: Area, column: number, test: CellTest): readonly Area[] {
  const runs: Area[] = [];
  let from: number | undefined;
  for (let row = of.row; row <= of.row + of.rows; row += 1) {
    const passes = row < of.row + of.rows && test(row, column);
    if (passes) from ??= row;
    else if (from !== undefined) {
      runs.push(area(from, column, row - from, 1));
      from = undefined;
    }
  }
  return runs;
}

/** Rows of a rectangle in pieces, without the blank ones around them. */
function* pieces(of: Area, cellAt: (row: number, column: number) => Written) {
  let first = 0;
  let blanks = 0;
  let bytes = 0;
  let rows: Written[][] = [];
  const cut = (next: number) => {
    const kept = rows.slice(0, rows.length - blanks);
    const piece = {
      of: area(first, of.column, kept.length, of.columns),
      rows: kept as Rows,
      bytes,
    };
    rows = [];
    [first, blanks, bytes] = [next, 0, 0];
    return piece;
  };
  for (let row = of.row; row < of.row + of.rows; row += 1) {
    const cells = Array.from({ length: of.columns }, (_, across) =>
      cellAt(row, of.column + across),
    );
    const isBlank = cells.every((cell) => cell === null);
    if (rows.length === 0) {
      if (isBlank) continue;
      first = row;
    }
    rows.push(cells);
    blanks = isBlank ? blanks + 1 : 0;
    bytes += JSON.stringify(cells).length + 1;
    if (bytes > PIECE_BYTES) yield cut(row + 1);
  }
  if (rows.length > blanks) yield cut(0);
}

function writeSteps(
  property: 'values' | 'formulas',
  of: Area,
  cellAt: (row: number, column: number) => Written,
): readonly Step[] {
  return [...pieces(of, cellAt)]
    .filter(({ rows }) => rows.length > 0)
    .map(({ of: piece, rows, bytes }) => ({
      bytes: CALL_BYTES + bytes,
      draw: (sheet) => {
        rangeOf(sheet, piece)[property] = rows as Written[][];
      },
    }));
}

function typedCell(layer: ContentLayer, row: number, column: number): Written {
  const content = layer.contentAt(row, column) ?? null;
  if (content === null || isFormula(content)) return null;
  return typeof content === 'string' ? writtenText(content, layer.isText(row, column)) : content;
}

/** Everything but formulas; where a formula will stand the cell is left alone. */
function constantSteps(layer: ContentLayer, isComputed: CellTest): readonly Step[] {
  if (layer.block.cells === undefined) return [];
  return writeSteps('values', layer.block.area, (row, column) =>
    isComputed(row, column) ? null : typedCell(layer, row, column),
  );
}

function tableSteps({ table, blocks }: SheetPlan): readonly Step[] {
  if (table === undefined) return [];
  const headings = { ...table.area, rows: 1, columns: table.columns.length };
  const isText = (column: number) =>
    blocks.some(
      ({ area: of, style }) =>
        style?.numberFormat === TEXT_FORMAT && covers(of, headings.row, headings.column + column),
    );
  const written = table.columns.map(({ heading }, column) => writtenText(heading, isText(column)));
  return [
    ...writeSteps('values', headings, (_, column) => written[column - headings.column] ?? null),
    {
      bytes: 2 * CALL_BYTES,
      draw: (sheet) => {
        sheet.tables.add(rangeOf(sheet, table.area), true).name = table.name;
      },
    },
  ];
}

/** A formula in every cell of a column makes it a calculated column: Excel fills it down into new rows by itself. */
function columnSteps(table: TablePlan | undefined): readonly Step[] {
  if (table === undefined) return [];
  return table.columns.flatMap(({ formula }, index): Step[] => {
    if (formula === undefined) return [];
    const written = formula.startsWith('=') ? formula : `=${formula}`;
    return [
      {
        bytes: 2 * CALL_BYTES + written.length,
        draw: (sheet) => {
          const column = sheet.tables.getItem(table.name).columns.getItemAt(index);
          column.getDataBodyRange().formulas = forAll(written);
        },
      },
    ];
  });
}

/** What stands over a computed column's formula in single cells. */
function overtypedSteps(layer: ContentLayer, isComputed: CellTest): readonly Step[] {
  const { block } = layer;
  if (block.cells === undefined) return [];
  return writeSteps('formulas', block.area, (row, column) => {
    if (!isComputed(row, column)) return null;
    const content = layer.contentAt(row, column) ?? null;
    return isFormula(content) ? content.formula : typedCell(layer, row, column);
  });
}

/**
 * Filled formulas: the first of a stretch is written, the rest copied from it as a person copies down. No page says whether
 * one formula with relative addresses, given to a whole range, moves along; copying does.
 */
function fillSteps(layer: ContentLayer, isComputed: CellTest): readonly Step[] {
  const { block, contentAt } = layer;
  return (block.fill ?? []).flatMap((formula, across) => {
    if (formula === null) return [];
    const column = block.area.column + across;
    const isFilled: CellTest = (row, at) =>
      !isComputed(row, at) &&
      (block.cells?.[row - block.area.row]?.[across] ?? null) === null &&
      contentAt(row, at) !== undefined;
    return runsDown(block.area, column, isFilled).map((run): Step => {
      const written = filledDown(formula)(run.row - block.area.row);
      return {
        bytes: 3 * CALL_BYTES + written.length,
        draw: (sheet) => {
          const first = rangeOf(sheet, area(run.row, column));
          first.formulas = [[written]];
          if (run.rows === 1) return;
          rangeOf(sheet, area(run.row + 1, column, run.rows - 1, 1)).copyFrom(first, 'Formulas');
        },
      };
    });
  });
}

/** Formulas that a block gives cell by cell, outside computed table columns. */
function formulaSteps(layer: ContentLayer, isComputed: CellTest): readonly Step[] {
  const { block } = layer;
  if (block.cells === undefined) return [];
  return writeSteps('formulas', block.area, (row, column) => {
    const given = block.cells?.[row - block.area.row]?.[column - block.area.column] ?? null;
    if (!isFormula(given) || isComputed(row, column)) return null;
    return layer.contentAt(row, column) === undefined ? null : given.formula;
  });
}
