/** What a package says of its own licence: the name of it, and the text that has to go with every copy. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface PackageNotice {
  readonly name: string;
  /** Undefined for what came inside another package's script, which tells no versions. */
  readonly version?: string;
  /** An SPDX expression. */
  readonly licence: string;
  readonly text: string;
}

interface Description {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name?: string };
  readonly contributors?: readonly (string | { readonly name?: string })[];
}

/** Packages whose description names no licence, with the one that their licence file is the text of. */
const BY_ITS_FILE: Readonly<Record<string, string>> = {
  '@univerjs/telemetry': 'Apache-2.0',
};

const NOTICE_FILE = /^(licen[cs]e|copying|notice|copyrightnotice|thirdpartynotice)/i;
const README_PART = /^#+ *licen[cs]e[^\n]*\n([\s\S]*?)(?=^#|(?![\s\S]))/im;

/** The standard texts (opensource.org), for packages that name the licence and carry no text of it. */
const STANDARD: Readonly<Record<string, string>> = {
  MIT: `Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated documentation files (the "Software"), to deal in the Software without restriction, including without limitation the rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`,
  ISC: `Permission to use, copy, modify, and/or distribute this software for any purpose with or without fee is hereby granted, provided that the above copyright notice and this permission notice appear in all copies.

THE SOFTWARE IS PROVIDED "AS IS" AND THE AUTHOR DISCLAIMS ALL WARRANTIES WITH REGARD TO THIS SOFTWARE INCLUDING ALL IMPLIED WARRANTIES OF MERCHANTABILITY AND FITNESS. IN NO EVENT SHALL THE AUTHOR BE LIABLE FOR ANY SPECIAL, DIRECT, INDIRECT, OR CONSEQUENTIAL DAMAGES OR ANY DAMAGES WHATSOEVER RESULTING FROM LOSS OF USE, DATA OR PROFITS, WHETHER IN AN ACTION OF CONTRACT, NEGLIGENCE OR OTHER TORTIOUS ACTION, ARISING OUT OF OR IN CONNECTION WITH THE USE OR PERFORMANCE OF THIS SOFTWARE.`,
  'Apache-2.0':
    'Licensed under the Apache License, Version 2.0, whose text stands on this page under the packages that carry it.',
};

function holdersOf({ name, author, contributors = [] }: Description): string {
  const people = [author, ...contributors].flatMap((one) =>
    one === undefined ? [] : [typeof one === 'string' ? one : (one.name ?? '')],
  );
  const named = people.map((one) => one.replace(/ *[<(].*$/, '')).filter((one) => one !== '');
  return named.length === 0 ? `the authors of ${name}` : [...new Set(named)].join(', ');
}

/** The licence files of a package; else what its readme says of its licence; else the standard text with its holders. */
function textIn(folder: string, description: Description, licence: string): string {
  const names = readdirSync(folder).sort();
  const read = (name: string) => readFileSync(path.join(folder, name), 'utf8').trim();
  const files = names.filter((name) => NOTICE_FILE.test(name));
  if (files.length > 0) return files.map(read).join('\n\n');
  const readme = names.find((name) => /^readme/i.test(name));
  const part = readme === undefined ? undefined : README_PART.exec(read(readme))?.[1]?.trim();
  // "MIT" alone is no notice.
  if (part !== undefined && part.length > 300) return part;
  const standard = STANDARD[licence];
  if (standard === undefined) {
    throw new Error(`${description.name} carries no text of its licence, ${licence}.`);
  }
  return `Copyright (c) ${holdersOf(description)}\n\n${standard}`;
}

/** The notice of the package in a folder. Throws where it names no licence, or carries no text that could be shown. */
export function noticeOf(folder: string): PackageNotice {
  const description = JSON.parse(
    readFileSync(path.join(folder, 'package.json'), 'utf8'),
  ) as Description;
  const { name, version } = description;
  const licence = description.license ?? BY_ITS_FILE[name];
  if (typeof licence !== 'string') throw new Error(`${name} names no licence.`);
  return { name, version, licence, text: textIn(folder, description, licence) };
}
