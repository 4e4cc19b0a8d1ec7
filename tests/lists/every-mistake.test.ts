/** A list of 300 runs with every kind of mistake at once: each is named with its line, and the other runs are taken. */
import { describe, expect, it } from 'vitest';
import { readRuns } from '../../src/lists/read-runs';

const HEADINGS =
  'Name,Fed from,Peak,A or W,Length (m),Max drop,Joints,Wire,Own fuse,Min V,Feeds,Fuse';

/** A row's cells after its name, and what is said of it. */
const MISTAKES: readonly (readonly [cells: string, why: RegExp, taken: boolean])[] = [
  [',abc,,5,3%,1,,,,,', /^Peak: "abc" is not a number$/, true],
  [',-4,,5,3%,1,,,,,', /^Peak: -4 is less than 0$/, true],
  [',3%,,5,3%,1,,,,,', /^Peak: "3%" is not a number/, true],
  [',4,VA,5,3%,1,,,,,', /^A or W: "VA" is neither/, true],
  [',60 W,A,5,3%,1,,,,,', /^the load is in W, and its row says A$/, true],
  [',4,,-5,3%,1,,,,,', /^Length \(m\): -5 is less than 0$/, true],
  [',4,,"1,250",3%,1,,,,,', /^Length \(m\): "1,250" may be 1\.25 or 1250/, true],
  [',4,,near,3%,1,,,,,', /^Length \(m\): "near" is not a number$/, true],
  [',4,,5,3,1,,,,,', /^Max drop: 3 is not below 0\.5; .* write 3%/, true],
  [',4,,5,0.3,1,,,,,', /^Max drop: 0\.3 may be 30 % or 0\.3 %/, true],
  [',4,,5,300%,1,,,,,', /^Max drop: 3 is not below 0\.5/, true],
  [',4,,5,3%,-1,,,,,', /^Joints: -1 is less than 0$/, true],
  [',4,,5,3%,1,0,,,,', /^Wire: the number 0 may be a blank cell; for 1\/0 AWG write/, true],
  [',4,,5,3%,1,thick,,,,', /^Wire: "thick" is not a size/, true],
  [',4,,5,3%,1,99,,,,', /^Wire: .*99.* is not an AWG number/, true],
  [',4,,5,3%,1,,perhaps,,,', /^Own fuse: "perhaps" is neither yes nor no$/, true],
  [',4,,5,3%,1,,,0,,', /^Min V: 0 is not above 0$/, true],
  [
    'Van mian,4,,5,3%,1,,,,,',
    /^Fed from: no run or source of the list is called "Van mian"; did you mean Van main\?$/,
    true,
  ],
  ['Nowhere,4,,5,3%,1,,,,,', /^Fed from: no run or source of the list is called "Nowhere"$/, true],
  [',4,,5,3%,1,,,,,,one cell too many', /more cells than there are headings/, false],
  [',,,,,,,,,,', /neither a load nor a length/, false],
  [`,4,,5,3%,1,,,,${'x'.repeat(33_000)},`, /more than 32767 characters/, false],
  [',"4,,5', /a quote is opened and never closed/, false],
];
const GOOD = 'Van main,4,,5,3%,1,10 AWG,,10.5,,';
const ROWS = 300;

const lines = [HEADINGS, 'Van main,battery,,,4,0.03,1,,yes,,,'];
const wanted: { readonly line: number; readonly why: RegExp; readonly taken: boolean }[] = [];
while (lines.length <= ROWS) {
  const number = lines.length;
  const mistake = number % 2 === 0 ? undefined : MISTAKES[((number - 1) / 2) % MISTAKES.length]!;
  lines.push(`Set ${number},${mistake?.[0] ?? GOOD}`);
  if (mistake !== undefined)
    wanted.push({ line: lines.length, why: mistake[1], taken: mistake[2] });
}

describe('a list with every kind of mistake at once', () => {
  it('is read, each mistake named in its line, and the others taken', async () => {
    expect(wanted.length).toBeGreaterThan(5 * MISTAKES.length);
    const report = await readRuns(new TextEncoder().encode(lines.join('\n')), 'runs.csv');
    expect(report.problems.map(({ line, taken }) => [line, taken])).toEqual(
      wanted.map(({ line, taken }) => [line, taken]),
    );
    for (const [index, { why }] of wanted.entries()) {
      expect(report.problems[index]!.why).toMatch(why);
    }
    expect(report.leftOver.map(({ heading }) => heading)).toEqual(['Feeds', 'Fuse']);
    const lost = wanted.filter(({ taken }) => !taken).length;
    expect(report.runs).toHaveLength(ROWS - lost);

    // Runs that nothing is said of are read as they are.
    const doubtful = new Set(wanted.map(({ line }) => line));
    const names = lines.flatMap((line, index) =>
      doubtful.has(index + 1) || index === 0 ? [] : [line.split(',')[0]],
    );
    const sound = report.runs.filter(({ run }) => names.includes(run));
    expect(sound).toHaveLength(ROWS - wanted.length);
    for (const run of sound.slice(1)) {
      expect(run).toEqual({
        run: run.run,
        fedFrom: 'Van main',
        peak: 4,
        length: 5,
        target: 0.03,
        joints: 1,
        ownSize: '10 AWG',
        leastVolts: 10.5,
      });
    }
  });
});
