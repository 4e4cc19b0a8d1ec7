/** What stands at the head of a source file: its first comment, as paragraphs. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';

export interface Head {
  /** The file's name without folder and ending. */
  readonly name: string;
  readonly paragraphs: readonly string[];
}

/** The first comment of a text; none where it has none. */
export function headOf(text: string): readonly string[] {
  const comment = /\/\*\*([\s\S]*?)\*\//.exec(text)?.[1] ?? '';
  const lines = comment.split('\n').map((line) => line.replace(/^\s*\*?\s?/, '').trim());
  return lines
    .join('\n')
    .split(/\n\s*\n/)
    .map((paragraph) => paragraph.replace(/\s+/g, ' ').trim())
    .filter((paragraph) => paragraph !== '');
}

/** The heads of a folder's files, by name. */
export function headsIn(folder: string, ending: string): readonly Head[] {
  return readdirSync(folder)
    .filter((file) => file.endsWith(ending))
    .sort()
    .map((file) => ({
      name: file.slice(0, -ending.length),
      paragraphs: headOf(readFileSync(path.join(folder, file), 'utf8')),
    }));
}
