/** "All functions": a page of the catalogue, made from its entries alone. */
import { CATALOGUE, NAMESPACE } from '../../functions/catalogue';
import type { Topic, WorksheetFunction } from '../../functions/worksheet-function';
import { CAUTIONS } from '../../sheets/plan/cautions';
import { functionHelp } from '../../taskpane/function-help';
import { escaped, pageOf } from './page';

/** Where a function stands on the page. */
export const anchorOf = (id: string) => id.toLowerCase().replaceAll('_', '-');

const topics = [...new Set(CATALOGUE.map(({ topic }) => topic))];
const ofTopic = (topic: Topic) => CATALOGUE.filter((entry) => entry.topic === topic);

function entryPart(entry: WorksheetFunction): string {
  const { call, arguments: given, exampleCall, exampleResult } = functionHelp(entry);
  const rows = given.map(
    ({ name, mayBeLeftOut, text }) =>
      `<dt><code>${escaped(name)}</code>${mayBeLeftOut ? ' (may be left out)' : ''}</dt><dd>${escaped(text)}</dd>`,
  );
  return `<section aria-labelledby="${anchorOf(entry.id)}">
<h3 id="${anchorOf(entry.id)}">${entry.id}</h3>
<p>${escaped(entry.summary)}</p>
<pre><code>${escaped(call)}</code></pre>
<dl>${rows.join('\n')}</dl>
<p><strong>Returns</strong> ${escaped(entry.gives)}</p>
<p><strong>Example</strong> <code>${escaped(exampleCall)}</code> gives</p>
<pre><code>${escaped(exampleResult)}</code></pre>
<p><strong>Source</strong> ${escaped(entry.source)}</p>
</section>`;
}

const ERRORS = [
  [
    '#VALUE!',
    'an argument is of the wrong kind, an unknown word, or a number outside what physics or the table allows. The error of the cell names the argument, what came, and what to write instead. A required argument left out between others is named too.',
  ],
  [
    '#N/A',
    'the arguments are sound, and no answer exists: no size is thick enough, no table has the row. What a function has no answer for stands under "Returns".',
  ],
  [
    'Nothing',
    'a required argument is a blank cell, so that a formula filled down past the list stays quiet. An optional one that is blank takes its default.',
  ],
  ['Another error', 'it came in by an argument and is handed on.'],
] as const;

/** The page, whole. */
export function functionsPage(): string {
  const index = topics.map(
    (topic) =>
      `<li>${escaped(topic)}<ul>${ofTopic(topic)
        .map(
          ({ id, summary }) => `<li><a href="#${anchorOf(id)}">${id}</a> ${escaped(summary)}</li>`,
        )
        .join('\n')}</ul></li>`,
  );
  const errors = ERRORS.map(([code, why]) => `<dt>${code}</dt><dd>${escaped(why)}</dd>`);
  const parts = topics.map(
    (topic) => `<h2>${escaped(topic)}</h2>\n${ofTopic(topic).map(entryPart).join('\n')}`,
  );
  return pageOf(
    'reference.html',
    `<p>${CATALOGUE.length} worksheet functions, each written <code>=${NAMESPACE}.NAME(...)</code> in a cell. Most take a value or a range for every argument.</p>
<ul>${CAUTIONS.map((caution) => `<li>${escaped(caution)}</li>`).join('\n')}</ul>
<nav aria-label="Functions by topic"><ul>${index.join('\n')}</ul></nav>
<h2>What a cell shows instead of an answer</h2>
<dl>${errors.join('\n')}</dl>
${parts.join('\n')}`,
  );
}
