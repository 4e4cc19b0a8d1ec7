/** Saved workbooks go on working: names and places of arguments are as they were promised. */
import { expect, test } from 'vitest';
import { CATALOGUE, NAMESPACE } from '../../src/functions/catalogue';
import { functionsMetadata } from '../../src/functions/metadata';
import { FROZEN_CALLS } from './frozen-calls';

interface Described {
  readonly id: string;
  readonly name: string;
  readonly parameters: readonly { readonly name: string; readonly optional?: boolean }[];
}

/** As Excel is told: what a saved formula is read by. */
const described = functionsMetadata(CATALOGUE).functions as readonly Described[];

const callOf = ({ id, parameters }: Described) =>
  `${id}(${parameters.map(({ name, optional }) => (optional === true ? `[${name}]` : name)).join(', ')})`;

test('every function is called as it was promised, and every one is promised', () => {
  expect(described.map(callOf).sort()).toEqual([...FROZEN_CALLS].sort());
});

test('a function is called by its id, in the one namespace', () => {
  expect(described.map(({ id, name }) => [id, name])).toEqual(described.map(({ id }) => [id, id]));
  expect(NAMESPACE).toBe('LOOM');
});

test('no argument that has to be given follows one that may be left out', () => {
  for (const call of FROZEN_CALLS) expect(call).not.toMatch(/\], [a-z]/);
});
