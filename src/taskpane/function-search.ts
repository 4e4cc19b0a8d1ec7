/** Finding functions by name or by what they are about. */
import { NAMESPACE } from '../functions/catalogue';
import type { WorksheetFunction } from '../functions/worksheet-function';

/** All that is said of a function, in lower case; a name's parts are words of their own too. */
function textOf({ id, topic, summary, takes, gives, source }: WorksheetFunction): string {
  const words = takes.flatMap(({ name, meaning }) => [name, meaning]);
  const said = [`${NAMESPACE}.${id}`, id.replaceAll('_', ' '), topic, summary, ...words, gives];
  return [...said, source].join(' ').toLowerCase();
}

/** Those of which every typed word is said somewhere; the whole list where nothing is typed. */
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
  return catalogue.filter((entry) => {
    const text = textOf(entry);
    return sought.every((word) => text.includes(word));
  });
}
