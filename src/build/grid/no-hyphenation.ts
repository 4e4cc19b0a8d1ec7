/**
 * A loader of the build: the grid can break words at line ends in seventy languages, each by a table that it would load
 * when a text asks for it. No text of a sheet does, and the tables are larger than all of our pages: they stay behind.
 */
const TABLE = /(\["[\w-]+"\]: )\(\) => import\("\.\/[\w-]+\.js"\)/g;

/** The script with no table to load: a language without one leaves its words whole. */
export default function noHyphenation(script: string): string {
  return script.replace(TABLE, '$1() => Promise.resolve(null)');
}
