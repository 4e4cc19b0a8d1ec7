import { describe, expect, test } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import type { WorksheetFunction } from '../../src/functions/worksheet-function';
import { describeParameter } from '../../src/functions/parameter';
import type { Matrix } from '../../src/functions/cell';

/** Digits to which an example's printed number is good. */
const PRINTED_DIGITS = 4;

function evaluateExample(entry: WorksheetFunction): Matrix {
  return entry.evaluate(
    entry.example.given.map((given): Matrix | undefined =>
      given === null ? undefined : Array.isArray(given) ? (given as Matrix) : [[given as string]],
    ),
  );
}

describe.each(CATALOGUE.map((entry) => [entry.id, entry] as const))('%s', (_id, entry) => {
  test('its example gives the printed result', () => {
    const printed = Array.isArray(entry.example.result)
      ? (entry.example.result as Matrix)
      : [[entry.example.result as string]];
    const rounded = (matrix: Matrix) =>
      matrix.map((row) =>
        row.map((cell) =>
          typeof cell === 'number' ? Number(cell.toPrecision(PRINTED_DIGITS)) : cell,
        ),
      );
    expect(rounded(evaluateExample(entry))).toEqual(printed);
  });

  test('it is described, sourced, and every argument says what it is and its default', () => {
    for (const text of [entry.summary, entry.gives, entry.source]) {
      expect(text.length).toBeGreaterThan(3);
    }
    for (const parameter of entry.takes) {
      expect(parameter.meaning).toMatch(/\.$/);
      expect(describeParameter(parameter).length).toBeLessThanOrEqual(255);
      const described = describeParameter(parameter);
      expect(described).not.toContain('undefined');
      if ('fallback' in parameter) expect(described).toMatch(/ Default: \S.*\.$/);
      else expect(described).not.toContain('Default');
    }
  });

  test('a default is told as it would be typed', () => {
    for (const parameter of entry.takes) {
      const { name, fallback, fallbackText } = parameter;
      const typed = /^"([^"]*)"$|^([^", ]+)$/.exec(fallbackText ?? '');
      if (fallback === undefined || typed === null || fallbackText === 'none') continue;
      const read = parameter.read(typed[1] ?? typed[2]!);
      expect(read, `${name}: ${fallbackText}`).toEqual(fallback);
    }
  });

  test('optional arguments come last, and no parameter twice', () => {
    const optional = entry.takes.map((parameter) => parameter.fallbackText !== undefined);
    expect(optional).toEqual([...optional].sort((a, b) => Number(a) - Number(b)));
    const names = entry.takes.map((parameter) => parameter.name);
    expect(new Set(names).size).toBe(names.length);
  });
});

test('topics are those of the contract, each in one place', () => {
  const topics = CATALOGUE.map(({ topic }) => topic);
  const changes = topics.filter((topic, at) => topic !== topics[at - 1]);
  expect(changes.sort()).toEqual([
    'Building and proving',
    'Conductor',
    'Feeders and supply',
    'Protection',
    'Run',
    'Teaching',
  ]);
});

test('no two functions share an id', () => {
  expect(new Set(CATALOGUE.map((entry) => entry.id)).size).toBe(CATALOGUE.length);
});
