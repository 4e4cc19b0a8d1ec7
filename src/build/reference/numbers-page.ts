/**
 * "How the numbers are made": the equations by the functions that use them, the published tables as they were read, how
 * limits are compared, what it was all checked against, and all that is from memory. Nothing is written here that the
 * catalogue, the tables or the checks do not say themselves.
 */
import path from 'node:path';
import { MOST_DROP_SHARE, RELATIVE_SLACK } from '../../core/limits';
import { CATALOGUE } from '../../functions/catalogue';
import { projectFolder } from '../build-folders';
import { anchorOf } from './functions-page';
import { headsIn, type Head } from './heads';
import { escaped, pageOf } from './page';
import { TABLES } from './tables';

const checkFolder = path.join(projectFolder, 'tests/published');

/** The table files' names and heads. */
export const tableHeads = () =>
  headsIn(path.join(projectFolder, 'src/core/tables'), '.ts').filter(({ name }) => name in TABLES);
const checkHeads = () => headsIn(checkFolder, '.test.ts');

const SAYS_SOURCE = /^(source|edition)$|_SOURCE$|_EDITIONS$/;

/** Texts that a module's values give as their sources, each once. */
function sourcesIn(value: unknown, isSource = false): readonly string[] {
  if (typeof value === 'string') return isSource ? [value] : [];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, part]) =>
    sourcesIn(part, isSource || SAYS_SOURCE.test(key)),
  );
}

const paragraphs = (texts: readonly string[]) =>
  texts.map((one) => `<p>${escaped(one)}</p>`).join('\n');
const list = (items: readonly string[]) =>
  `<ul>${items.map((item) => `<li>${escaped(item)}</li>`).join('\n')}</ul>`;

function headPart({ name, paragraphs: texts }: Head, sources: readonly string[] = []): string {
  return `<h3>${escaped(name)}</h3>\n${paragraphs(texts)}${sources.length === 0 ? '' : list(sources)}`;
}

const UNREAD = /from memory|common practice/i;
/** Sentences; an abbreviation of one letter ends none. */
const sentencesIn = (text: string) => text.split(/(?<=[^\s.][^\s.]\.)\s+(?=[A-Z0-9])/);

/** Sentences that tell of what was not read, each once with all that say it. */
function unread(said: readonly (readonly [who: string, sentence: string])[]): readonly string[] {
  const saying = new Map<string, string[]>();
  for (const [who, sentence] of said) {
    if (UNREAD.test(sentence)) saying.set(sentence, [...(saying.get(sentence) ?? []), who]);
  }
  return [...saying].map(([sentence, who]) => `${who.join(', ')}: ${sentence}`);
}

/** The page, whole. */
export function numbersPage(): string {
  const tables = tableHeads().map((head) => ({
    head,
    sources: [...new Set(sourcesIn(TABLES[head.name]))],
  }));
  const equations = CATALOGUE.map(
    ({ id, summary, source }) =>
      `<dt><a href="reference.html#${anchorOf(id)}">${id}</a> ${escaped(summary)}</dt><dd>${escaped(source)}</dd>`,
  );
  const said: readonly (readonly [string, string])[] = [
    ...tables.flatMap(({ head, sources }) =>
      [...head.paragraphs.flatMap(sentencesIn), ...sources].map(
        (sentence) => [head.name, sentence] as const,
      ),
    ),
    ...CATALOGUE.flatMap(({ id, source }) =>
      sentencesIn(source).map((sentence) => [id, sentence] as const),
    ),
  ];
  return pageOf(
    'numbers.html',
    `<p>Advice, not approval: local codes and licensed practice go first. Where a figure decides, look into the standard itself.</p>
<h2>Equations</h2>
<p>For each function the law, standard or rule that its answer comes from.</p>
<dl>${equations.join('\n')}</dl>
<h2>Tables</h2>
<p>Each published table as it was read: its standard and edition, how the figures were got, and what of it is from memory.</p>
${tables.map(({ head, sources }) => headPart(head, sources)).join('\n')}
<h2>Limits and tolerances</h2>
<p>A number that equals its limit keeps it. Numbers are compared with a slack of ${RELATIVE_SLACK} of the limit, which is rounding and far below what a meter can see. A drop target of ${100 * MOST_DROP_SHARE} % or more is refused.</p>
<p>The tolerance of each check below stands beside its figures in its file, with its reason: digits printed, or rounding.</p>
<h2>Checked against</h2>
${checkHeads()
  .map((head) => headPart(head))
  .join('\n')}
<h2>From memory, and common practice</h2>
<p>All of the above that nobody has laid beside a printed standard. Check it where it matters.</p>
${list(unread(said))}`,
  );
}
