/** The schedule without a browser: a list of runs in, a workbook that needs no add-in out, verdicts on the way. */
import { readFile } from 'node:fs/promises';
import { basename, extname, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { oneLine } from '../drawing/one-line';
import { svgOf } from '../drawing/svg';
import { stationDiagram } from '../sheets/station-diagram';
import { stationValues } from '../sheets/station-values';
import { extrasOf, type StationContent } from '../sheets/station/content';
import { EXTRA_KEYS, EXTRAS, type ExtraKey } from '../sheets/station/extras';
import { LEVELS } from '../sheets/station/verdicts';
import { GIVEN_HEADINGS, readColumnMap, UnusableMap, type ColumnMap } from '../lists/column-map';
import {
  readRuns,
  readSources,
  UnreadableFile,
  UnreadHeadings,
  type RunsReport,
} from '../lists/read-runs';
import type { SourceList } from '../lists/source-list';
import { SOURCE_KINDS } from '../sheets/station/source-kinds';
import { FIGURE_NAMES } from './figures';
import { jsonDocument, jsonText } from './json';
import { printable, questionLines, reportLines, verdictLines } from './printed';
import { readRules, ruleLines, UnknownRule } from './rules';
import { sharedFile } from '../hosts/xlsx/shared-file';
import { writeWhole } from './write-whole';

/** How a run of the command ends, for scripts. */
export const ENDED = { well: 0, unread: 1, misused: 2, unwritten: 3 } as const;

export interface Terminal {
  print(line: string): void;
  complain(line: string): void;
}

const HALF = Math.ceil(FIGURE_NAMES.length / 2);

const HELP_WIDTH = 110;

/** Words with commas between them, in lines. */
function wrapped(words: readonly string[]): readonly string[] {
  const lines: string[] = [];
  for (const [index, word] of words.entries()) {
    const text = index === words.length - 1 ? `${word}.` : `${word},`;
    const last = lines.at(-1);
    if (last === undefined || last.length + text.length > HELP_WIDTH) lines.push(`  ${text}`);
    else lines[lines.length - 1] = `${last} ${text}`;
  }
  return lines;
}

const HELP = [
  'Usage: npm run schedule -- LIST WORKBOOK [--map COLUMN=OURS ...] [--sources FILE] [--rules NAME=VALUE ...]',
  '                               [--title TEXT] [--json] [--with SHEET,SHEET...]',
  '                               [--svg FILE]',
  '',
  'Reads a list of runs (.csv, or a workbook .xlsx with one) and writes WORKBOOK, an .xlsx that computes in any',
  'spreadsheet without an add-in. Headings are matched generously, units in them are understood: "Current (A)",',
  '"Power (W)", "Length (ft)". What was not understood is printed, with line numbers. Bare drop targets of 0.5 to 20',
  'are percent; "Fed from" may say battery or panel; "Own fuse" yes or no.',
  '',
  '--map "From where=Fed from" says what a column of the list is that was not understood, once for each; with a unit,',
  '"How far=One-way length (ft)", "Draw=Peak load (W)"; "Colour=leave out" where nothing is wanted of it. Notes may come',
  'from several. The columns of ours are:',
  ...wrapped(GIVEN_HEADINGS),
  '',
  'Sources (batteries, panels, power supplies, chargers) come from --sources FILE, or from another sheet of the same',
  'workbook: a row a source under headings, "Name" and "Kind" among them, the others called as on the Supply sheet.',
  `Kinds: ${SOURCE_KINDS.join(', ')}.`,
  'A list says under "Fed from" or "Source" which source feeds a run.',
  '',
  `Runs are counted by the level of their verdicts: ${LEVELS.join(', ')}.`,
  'danger: fire, or a fault that nothing clears. fails: a load will not work, or a target is missed. unclear: an entry',
  'is missing or not understood. check: one named thing is left to confirm. ok: everything was judged and holds.',
  '',
  '--with adds sheets that follow the schedule, several with commas between them:',
  ...EXTRA_KEYS.map((key) => `  ${EXTRAS[key].word.padEnd(12)}${EXTRAS[key].purpose}`),
  '',
  '--svg FILE writes the one-line diagram of the station as a picture, .svg, of a width that prints on A4.',
  '',
  '--json prints one JSON document instead of the table, and nothing else:',
  `  runs    for each: run, level, why, ${FIGURE_NAMES.slice(0, HALF).join(', ')},`,
  `          ${FIGURE_NAMES.slice(HALF).join(', ')}`,
  '  supply  the figures of the Supply sheet for the first source and the first panel, why',
  '  sources the same of every source',
  '  notes   what was not understood, or has to be known: line, heading, text, taken, why',
  'Currents are in amps, shares of one (0.03 is 3 %). What could not be computed is null, and why says the reason.',
  '',
  'House rules, for every run that says nothing else:',
  ...ruleLines(),
  '',
  `Ends with ${ENDED.well} when the workbook is written, also when runs in it are not ok: read the verdicts.`,
  `Ends with ${ENDED.unread} when the list cannot be read, ${ENDED.misused} when the command or a rule is not understood,`,
  `${ENDED.unwritten} when the workbook or the picture cannot be written.`,
  '',
  'Advice, not approval: local codes and licensed practice come first.',
];

interface Wish {
  readonly list: string;
  readonly workbook: string;
  readonly rules: readonly string[];
  readonly columns: ColumnMap;
  readonly sources?: string;
  readonly title?: string;
  readonly json: boolean;
  readonly extras: readonly ExtraKey[];
  readonly svg?: string;
}

class Misuse extends Error {}

/** What is thrown where the command itself has to be written otherwise. */
const MISUSES = [Misuse, UnknownRule, UnusableMap] as const;

/** What the arguments ask for; undefined for help. Throws Misuse. */
function readWish(args: readonly string[]): Wish | undefined {
  const { values, tokens } = parse(args);
  if (values.help === true) return undefined;
  const rules: string[] = [];
  const places: string[] = [];
  let isAmongRules = false;
  for (const token of tokens) {
    if (token.kind === 'positional') {
      // One --rules may stand before several rules.
      (isAmongRules && token.value.includes('=') ? rules : places).push(token.value);
    } else {
      isAmongRules = token.kind === 'option' && token.name === 'rules';
      if (isAmongRules && token.kind === 'option') rules.push(token.value ?? '');
    }
  }
  const [list, workbook, ...more] = places;
  if (list === undefined || workbook === undefined || more.length > 0) {
    throw new Misuse('Give two names: the list to read and the workbook to write.');
  }
  if (extname(workbook).toLowerCase() !== '.xlsx') {
    throw new Misuse(`The workbook's name has to end in .xlsx; "${workbook}" does not.`);
  }
  if (resolve(list) === resolve(workbook)) {
    throw new Misuse('The workbook would overwrite the list. Give it another name.');
  }
  const { title, sources, svg, map = [], json = false } = values;
  const extras = wantedExtras(values.with ?? []);
  if (sources !== undefined && resolve(sources) === resolve(workbook)) {
    throw new Misuse('The workbook would overwrite the sources. Give it another name.');
  }
  if (svg !== undefined && extname(svg).toLowerCase() !== '.svg') {
    throw new Misuse(`The picture's name has to end in .svg; "${svg}" does not.`);
  }
  return {
    list,
    workbook,
    rules,
    columns: readColumnMap(map.map(mappedPair)),
    json,
    extras,
    ...(sources !== undefined && { sources }),
    ...(title !== undefined && { title }),
    ...(svg !== undefined && { svg }),
  };
}

/** Words with commas between them, each a sheet. */
function wantedExtras(given: readonly string[]): readonly ExtraKey[] {
  const words = given.flatMap((list) => list.split(',')).map((word) => word.trim().toLowerCase());
  for (const word of words) {
    if (EXTRA_KEYS.some((key) => EXTRAS[key].word === word)) continue;
    const known = EXTRA_KEYS.map((key) => EXTRAS[key].word).join(', ');
    throw new Misuse(`"${word}" is no sheet that --with knows. It knows: ${known}.`);
  }
  return EXTRA_KEYS.filter((key) => words.includes(EXTRAS[key].word));
}

/** A heading may have the sign in it, a column of ours has not. */
function mappedPair(pair: string): readonly [heading: string, text: string] {
  const at = pair.lastIndexOf('=');
  if (at < 1) {
    throw new Misuse(
      `"${pair}" maps nothing. Write --map "From where=Fed from": the heading in the list, then a column of ours.`,
    );
  }
  return [pair.slice(0, at), pair.slice(at + 1)];
}

function parse(args: readonly string[]) {
  try {
    return parseArgs({
      args: [...args],
      options: {
        rules: { type: 'string', multiple: true },
        map: { type: 'string', multiple: true },
        sources: { type: 'string' },
        title: { type: 'string' },
        json: { type: 'boolean' },
        with: { type: 'string', multiple: true },
        svg: { type: 'string' },
        help: { type: 'boolean', short: 'h' },
      },
      allowPositionals: true,
      tokens: true,
    });
  } catch (error) {
    throw new Misuse(messageOf(error));
  }
}

function messageOf(error: unknown): string {
  return error instanceof Error ? error.message : String(error);
}

/** Runs the command and answers how it ended. */
export async function runTerminal(args: readonly string[], terminal: Terminal): Promise<number> {
  try {
    const wish = readWish(args);
    if (wish === undefined) HELP.forEach((line) => terminal.print(line));
    return wish === undefined ? ENDED.well : await fulfil(wish, terminal);
  } catch (error) {
    if (!MISUSES.some((kind) => error instanceof kind)) throw error;
    terminal.complain(printable(messageOf(error)));
    terminal.complain('For help: npm run schedule -- --help');
    return ENDED.misused;
  }
}

async function fulfil(wish: Wish, terminal: Terminal): Promise<number> {
  const rules = readRules(wish.rules);
  let report: RunsReport;
  let described: SourceList | undefined;
  let reading = wish.sources ?? wish.list;
  try {
    if (wish.sources !== undefined) {
      described = await readSources(await readFile(wish.sources), basename(wish.sources));
    }
    reading = wish.list;
    const bytes = await readFile(wish.list);
    const lengthUnit = rules.unit as RunsReport['lengthUnit'] | undefined;
    report = await readRuns(bytes, basename(wish.list), {
      ...(lengthUnit && { lengthUnit }),
      ...(described && { sources: described.sources }),
      columns: wish.columns,
    });
  } catch (error) {
    if (error instanceof UnusableMap) throw error;
    terminal.complain(
      error instanceof UnreadableFile
        ? error.message
        : `"${reading}" could not be read: ${messageOf(error)}`,
    );
    if (error instanceof UnreadHeadings) {
      for (const line of questionLines(error.questions)) terminal.complain(printable(line));
    }
    return ENDED.unread;
  }
  for (const { line, why } of described?.problems ?? []) {
    terminal.complain(printable(`${basename(wish.sources ?? '')}, line ${line}: ${why}`));
  }
  for (const heading of described?.leftOver ?? []) {
    terminal.complain(
      printable(`${basename(wish.sources ?? '')}: "${heading}" is no heading of the Supply sheet`),
    );
  }
  const content: StationContent = {
    runs: report.runs,
    rules: { ...report.rules, ...rules },
    supply: report.supply,
    ...(report.sources && { sources: report.sources }),
    duty: report.duty,
    protection: report.protection,
    ...extrasOf(report),
    extras: wish.extras,
    title: wish.title ?? report.title ?? basename(wish.list, extname(wish.list)),
  };
  const station = stationValues(content);
  if (wish.json) {
    terminal.print(jsonText(jsonDocument(content, station, report)));
  } else {
    const lines = [...verdictLines(content, station), ...reportLines(report)];
    for (const line of lines) terminal.print(printable(line));
  }
  const { svg } = wish;
  const files: readonly (readonly [path: string, content: () => Promise<Uint8Array | string>])[] = [
    [wish.workbook, () => sharedFile(content, { station })],
    ...(svg === undefined
      ? []
      : [[svg, () => Promise.resolve(svgOf(oneLine(stationDiagram(content)).figure))] as const]),
  ];
  for (const [path, made] of files) {
    try {
      await writeWhole(path, await made());
    } catch (error) {
      terminal.complain(`"${path}" could not be written: ${messageOf(error)}`);
      return ENDED.unwritten;
    }
  }
  if (!wish.json) {
    terminal.print('');
    terminal.print(`Written: ${files.map(([path]) => path).join(', ')}`);
  }
  return ENDED.well;
}
