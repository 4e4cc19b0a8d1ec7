/** The faults that mutation testing makes are those that it says, and its samples are what they claim to be. */
import ts from 'typescript';
import { describe, expect, test } from 'vitest';
import { AREAS, mutantsOfArea, sourceOf, type AreaName } from './areas';
import { codeMutants } from './code-mutants';
import { EXPLAINED } from './explained';
import { formulaMutants } from './formula-mutants';
import { told, withMutant, type Mutant } from './mutant';
import { functionAt, withProbes } from './probes';
import { interval, sampleOf } from './sample';

const results = (source: string, mutants: readonly Mutant[]) =>
  mutants.map((mutant) => withMutant(source, mutant)).sort();

describe('mutants of code', () => {
  test('limits, operators, conditions and figures are changed', () => {
    const source = 'if (a < 2) b();';
    expect(results(source, codeMutants('a.ts', source))).toEqual(
      [
        'if (true) b();',
        'if (false) b();',
        'if (a <= 2) b();',
        'if (a >= 2) b();',
        'if (a < 3) b();',
        'if (a < 2) ;',
      ].sort(),
    );
  });

  test('types, names of files and names of members stay', () => {
    const source =
      "import { a } from 'b';\ntype C = 'c' | 1;\nexport const d = { 'e f': a as 'g' };\n";
    expect(codeMutants('a.ts', source)).toEqual([]);
  });

  test('sums of texts stay sums', () => {
    const source = "const a = 'b' + c + `${d}`;";
    expect(codeMutants('a.ts', source).map(({ kind }) => kind)).not.toContain('operator');
  });
});

describe('mutants of formulas', () => {
  test('branches, conditions, limits, names, figures and words are changed, and nothing that is put in', () => {
    const source = 'const f = `IF(AND(${a > 1}>=0.5,${b}<>"x"),${c}*2,MAX(${d},1E-9))`;';
    expect(results(source, formulaMutants('a.ts', source))).toEqual(
      [
        'IF(TRUE,${c}*2,MAX(${d},1E-9))',
        'IF(FALSE,${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>"x"),MAX(${d},1E-9),${c}*2)',
        'IF(OR(${a > 1}>=0.5,${b}<>"x"),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>0.5,${b}<>"x"),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}<0.5,${b}<>"x"),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.525,${b}<>"x"),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}="x"),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>""),${c}*2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>"x"),${c}/2,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>"x"),${c}*3,MAX(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>"x"),${c}*2,MIN(${d},1E-9))',
        'IF(AND(${a > 1}>=0.5,${b}<>"x"),${c}*2,MAX(${d},1E-8))',
      ]
        .map((formula) => `const f = \`${formula}\`;`)
        .sort(),
    );
  });

  test('sentences and keys are no formulas', () => {
    const source = 'const f = [`IF(${a},1,2)`, `${a} - ${b} of them`, `wire${depth - 1}`, "A-B"];';
    const changed = formulaMutants('a.ts', source).map((mutant) => withMutant(source, mutant));
    expect(changed.length).toBeGreaterThan(0);
    for (const text of changed) {
      expect(text).toContain(', `${a} - ${b} of them`, `wire${depth - 1}`, "A-B"]');
    }
  });
});

describe.each(Object.keys(AREAS) as AreaName[])('all mutants of %s', (name) => {
  const drawn = sampleOf(mutantsOfArea(name), 60, 5);

  test('change the source, and leave it one that can be read', () => {
    expect(drawn).toHaveLength(60);
    for (const mutant of drawn) {
      const source = sourceOf(mutant.file);
      const changed = withMutant(source, mutant);
      expect(changed).not.toBe(source);
      const { diagnostics } = ts.transpileModule(changed, {
        reportDiagnostics: true,
        compilerOptions: { target: ts.ScriptTarget.ES2022 },
      });
      expect(diagnostics, `${mutant.file}: ${told(source, mutant)}`).toEqual([]);
    }
  });
});

test('a mark in each function tells that it ran, and changes nothing', () => {
  const source =
    'const a = (b) => (c) => ({ d: b + c });\nfunction e() { return a(1)(2).d; }\ne();';
  const names: string[] = [];
  const marked = withProbes('a.ts', source, (name) => names.push(name) - 1);
  globalThis.loomReached = new Uint8Array(names.length);
  expect((0, eval)(marked)).toBe(3);
  expect([...globalThis.loomReached]).toEqual([1, 1, 1]);
  expect(names).toContain(functionAt('a.ts', source, source.indexOf('b + c')));
  expect(names).toContain(functionAt('a.ts', source, source.indexOf('(1)')));
  expect(functionAt('a.ts', source, source.lastIndexOf('e();'))).toBeUndefined();
});

test('a sample is the same for its seed, has nothing twice, and grows at its end', () => {
  const all = Array.from({ length: 500 }, (_, number) => number);
  const drawn = sampleOf(all, 100, 1);
  expect(new Set(drawn).size).toBe(100);
  expect(sampleOf(all, 40, 1)).toEqual(drawn.slice(0, 40));
  expect(sampleOf(all, 100, 2)).not.toEqual(drawn);
  expect([...sampleOf(all, 1000, 3)].sort((a, b) => a - b)).toEqual(all);
});

test("the interval is Wilson's", () => {
  // From memory: 8 of 10 gives 49.0 % to 94.3 %, rounded.
  const [low, high] = interval(8, 10, 1000);
  expect(low).toBeCloseTo(0.49, 2);
  expect(high).toBeCloseTo(0.943, 2);
  expect(interval(8, 10, 10)).toEqual([0.8, 0.8]);
});

test('what is explained is still a mutant of the source', () => {
  const lines = new Set(
    (Object.keys(AREAS) as AreaName[])
      .flatMap((name) =>
        [...new Set(EXPLAINED.map(({ file }) => file))].flatMap((file) =>
          mutantsOfArea(name, file),
        ),
      )
      .map((mutant) => `${mutant.file}: ${told(sourceOf(mutant.file), mutant)}`),
  );
  const named = EXPLAINED.map(({ file, told: line }) => `${file}: ${line}`);
  expect(named.filter((one) => !lines.has(one))).toEqual([]);
});
