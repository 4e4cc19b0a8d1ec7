/**
 * A loader of the build: the library that writes workbooks, and what it brings, read two names that Node has and browsers do
 * not. A script that reads one gets it at its head; other packages go on finding that there is none.
 */
const NAMES: Readonly<Record<string, string>> = {
  Buffer: 'require("buffer").Buffer',
  // Small pieces of work that come after what runs now, as microtasks do.
  process:
    '{ browser: true, env: {}, nextTick: (work, ...given) => queueMicrotask(() => work(...given)) }',
};

/** Whether a script makes the name itself. */
const makes = (script: string, name: string) =>
  new RegExp(`\\b(?:var|let|const|function)\\s+(?:\\{[^}]*\\b)?${name}\\b`).test(script);

/** The script with the names that it reads. */
export default function nodeNames(script: string): string {
  const heads = Object.entries(NAMES)
    .filter(([name]) => new RegExp(`\\b${name}\\b`).test(script) && !makes(script, name))
    .map(([name, value]) => `var ${name} = ${value};\n`);
  return heads.join('') + script;
}
