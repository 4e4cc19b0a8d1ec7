/** functions.json: the platform's own generator is the judge of its shape, its naming rules of the names. */
import { generateCustomFunctionsMetadata } from 'custom-functions-metadata';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { CATALOGUE } from '../../src/functions/catalogue';
import { functionsMetadata } from '../../src/functions/metadata';

const metadata = functionsMetadata(CATALOGUE);

/** The catalogue as source text for the platform's generator. */
function equivalentSource(): string {
  return metadata.functions
    .map(({ id, description, parameters }, index) => {
      const tags = parameters.map(({ name, description: text, optional }) =>
        optional === true ? ` * @param {any[][]} [${name}] ${text}` : ` * @param ${name} ${text}`,
      );
      const list = parameters.map(({ name, optional }) => `${name}${optional ? '?' : ''}: any[][]`);
      return [
        '/**',
        ` * ${description}`,
        ` * @customfunction ${id}`,
        ...tags,
        ' */',
        `export function f${index}(${list.join(', ')}): any[][] { return [[0]]; }`,
      ].join('\n');
    })
    .join('\n');
}

interface Generated {
  readonly functions: readonly object[];
}

async function generated(): Promise<Generated> {
  const folder = mkdtempSync(join(tmpdir(), 'functions-'));
  try {
    const source = join(folder, 'functions.ts');
    writeFileSync(source, equivalentSource());
    const { metadataJson, errors } = await generateCustomFunctionsMetadata(source);
    expect(errors).toEqual([]);
    return JSON.parse(metadataJson) as Generated;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

describe('functions.json', () => {
  it('has the shape that the generator of the platform writes for the same functions', async () => {
    expect(metadata.functions).toEqual((await generated()).functions);
  });

  it('asks for error values, which the generator cannot', () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
  });

  it('stays far under the size at which a desktop Excel refused it', () => {
    expect(JSON.stringify(metadata).length).toBeLessThan(250_000);
  });

  it('has every id once', () => {
    const ids = metadata.functions.map(({ id }) => id.toUpperCase());
    expect(new Set(ids).size).toBe(ids.length);
  });
});

/** Names that Excel reads as a cell: up to three letters and a row number, or the R1C1 way. */
const CELL_ADDRESS = /^([A-Z]{1,3}[0-9]+|R[0-9]*(C[0-9]*)?|C[0-9]*)$/i;

describe.each(metadata.functions)('$id', ({ id, name, description, parameters }) => {
  it('keeps the naming rules', () => {
    expect(id).toMatch(/^[A-Za-z][A-Za-z0-9._]{2,127}$/);
    expect(name).toBe(id);
    expect(name).not.toMatch(CELL_ADDRESS);
    // Names of macros that Excel keeps from its past.
    expect(['RUN', 'ECHO']).not.toContain(name);
  });

  it('describes itself and every parameter', () => {
    expect(description).toMatch(/\S.* Result: \S/);
    expect(parameters.length).toBeGreaterThan(0);
    expect(new Set(parameters.map((parameter) => parameter.name)).size).toBe(parameters.length);
    for (const parameter of parameters) {
      expect(parameter.description.length).toBeGreaterThan(10);
      expect(parameter.name).toMatch(/^[a-z][a-z0-9_]*$/);
    }
  });

  it('has its required parameters before the optional ones', () => {
    const optional = parameters.map((parameter) => parameter.optional === true);
    expect(optional).toEqual([...optional].sort((one, other) => Number(one) - Number(other)));
  });
});
