/** A table for a terminal: columns as wide as their widest text, figures on the right. */

/** The rows as lines, headings first; a column whose texts are all figures stands right. */
export function textTable(
  headings: readonly string[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const all = [headings, ...rows];
  const widths = headings.map((_, column) =>
    Math.max(...all.map((row) => visibleWidth(row[column] ?? ''))),
  );
  const isFigures = headings.map((_, column) =>
    rows.every((row) => /^[-\d.]*$/.test(row[column] ?? '')),
  );
  const line = (row: readonly string[]) =>
    row
      .map((text, column) => {
        const space = ' '.repeat(widths[column]! - visibleWidth(text));
        return isFigures[column] === true ? space + text : text + space;
      })
      .join('  ')
      .trimEnd();
  return [line(headings), widths.map((width) => '-'.repeat(width)).join('  '), ...rows.map(line)];
}

/** Characters as a terminal counts them, near enough for names. */
function visibleWidth(text: string): number {
  return [...text].length;
}
