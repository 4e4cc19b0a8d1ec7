/**
 * A workbook of the stand-in as it was at a time, to be held against what became of it: the same things as the texts of
 * stateOf and looksOf tell of it, compared without writing megabytes of text for every try.
 */
import type { Chart, Highlight, RecordingExcel, Sheet } from './recording-excel';

/** What two cells or looks hold is the same: most are one object or plain values. */
function isSame(one: unknown, other: unknown): boolean {
  return one === other || JSON.stringify(one) === JSON.stringify(other);
}

function areSame<Value>(
  kept: ReadonlyMap<unknown, Value>,
  now: ReadonlyMap<unknown, Value>,
  isSameValue: (one: Value, other: Value) => boolean,
): boolean {
  if (kept.size !== now.size) return false;
  for (const [key, value] of now) {
    const before = kept.get(key);
    if (before === undefined || !isSameValue(before, value)) return false;
  }
  return true;
}

const headOf = ({ id, name, isChart, isProtected, tables }: Sheet) =>
  JSON.stringify([
    ...[id, name, isChart, isProtected],
    tables.map(({ name: called, area: { row, column, rows, columns } }) => [
      called,
      [row, column, rows, columns],
    ]),
  ]);

/** All that a person would miss: sheets and their protection, tables, names, and what cells hold. */
export class RememberedContent {
  private readonly sheets;
  private readonly names;

  constructor(excel: RecordingExcel) {
    this.sheets = excel.sheets.map((sheet) => ({
      head: headOf(sheet),
      cells: new Map(sheet.cells),
    }));
    this.names = JSON.stringify(excel.definedNames);
  }

  isThat({ sheets, definedNames }: RecordingExcel): boolean {
    return (
      sheets.length === this.sheets.length &&
      JSON.stringify(definedNames) === this.names &&
      sheets.every((sheet, index) => {
        const { head, cells } = this.sheets[index]!;
        const isSameCell: Parameters<typeof areSame<NonNullable<ReturnType<Sheet['at']>>>>[2] = (
          one,
          other,
        ) => one === other || (one.formula === other.formula && isSame(one.value, other.value));
        return headOf(sheet) === head && areSame(cells, sheet.cells, isSameCell);
      })
    );
  }
}

/** Formats keep the order that they were set in. */
const formatOf = ({ format }: Highlight) => [...format];

/** Charts are few: told by their texts. */
export const chartsOf = (charts: readonly Chart[]) =>
  JSON.stringify(
    charts.map(({ name, type, set, series }) => [
      ...[name, type, [...set].sort()],
      series.map((one) => [one.name, one.values, one.categories, [...one.set].sort()]),
    ]),
  );

/** Everything of the looks, highlights among them in their order, charts, and the sheet in view. */
export class RememberedLooks {
  private readonly active;
  private readonly sheets;

  constructor(excel: RecordingExcel) {
    this.active = excel.active.name;
    this.sheets = excel.sheets.map(({ name, looks, highlights, charts }) => ({
      name,
      charts: chartsOf(charts),
      looks: new Map(looks),
      highlights: highlights.map((one) => ({ ...one, format: formatOf(one) })),
    }));
  }

  isThat({ active, sheets }: RecordingExcel): boolean {
    return (
      active.name === this.active &&
      sheets.length === this.sheets.length &&
      sheets.every(({ name, looks, highlights, charts }, index) => {
        const kept = this.sheets[index]!;
        return (
          name === kept.name &&
          chartsOf(charts) === kept.charts &&
          areSame(kept.looks, looks, isSame) &&
          highlights.length === kept.highlights.length &&
          highlights.every((one, place) => {
            const other = kept.highlights[place]!;
            return (
              one.formula === other.formula &&
              isSame(one.area, other.area) &&
              isSame(formatOf(one), other.format)
            );
          })
        );
      })
    );
  }
}
