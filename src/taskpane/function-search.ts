/** Finding functions by name or by what they are about. */
import { NAMESPACE } from '../functions/catalogue';
import type { WorksheetFunction } from '../functions/worksheet-function';

/** What a function is for; a name's parts are words of their own too. */
function purposeOf({ id, topic, summary, gives }: WorksheetFunction): string {
  return [`${NAMESPACE}.${id}`, id.replaceAll('_', ' '), topic, summary, gives].join(' ');
}

/** All that is said of a function. */
function textOf(entry: WorksheetFunction): string {
  const words = entry.takes.flatMap(({ name, meaning }) => [name, meaning]);
  return [purposeOf(entry), ...words, entry.source].join(' ');
}

/**
 * The one of that name, or those whose purpose has every typed word, or else those of which every word is said
 * somewhere: among their arguments, say. The whole list where nothing is typed.
 */
export function searchFunctions(
  catalogue: readonly WorksheetFunction[],
  typed: string,
): readonly WorksheetFunction[] {
  // A formula as it stands in a cell is searched for by its name.
  const sought = typed
    .toLowerCase()
    .replace(/^\s*=/, '')
    .replace(/\(.*$/s, '')
    .split(/\s+/)
    .filter((word) => word !== '');
  const exact = catalogue.filter(({ id }) =>
    [id, `${NAMESPACE}.${id}`].some((name) => name.toLowerCase() === sought.join(' ')),
  );
  if (exact.length > 0) return exact;
  const saying = (text: (entry: WorksheetFunction) => string) =>
    catalogue.filter((entry) => {
      const said = text(entry).toLowerCase();
      return sought.every((word) => said.includes(word));
    });
  const meant = saying(purposeOf);
  return meant.length > 0 ? meant : saying(textOf);
}
