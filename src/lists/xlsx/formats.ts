/** Which cells show their number as a percentage or a date, by their style. */
import { readPart } from './part';
import type { Archive } from './zip';

export type Shown = 'number' | 'percent' | 'date';

/** Number formats that every spreadsheet knows by number: ECMA-376 part 1, 18.8.30; those of East Asia among them. */
const BUILT_IN: readonly (readonly [from: number, to: number, Shown])[] = [
  [9, 10, 'percent'],
  [14, 22, 'date'],
  [27, 36, 'date'],
  [45, 47, 'date'],
  [50, 58, 'date'],
];

/** What a number format makes of a number. Quoted and escaped text, colours and fillers are only shown. */
export function shownBy(format: string): Shown {
  const bare = format.replace(/"[^"]*"|\[[^\]]*\]|\\.|[_*]./g, '');
  if (bare.includes('%')) return 'percent';
  return /[ymdhs]/i.test(bare.replace(/general/gi, '')) ? 'date' : 'number';
}

/** How cells of each style show a number, in the order of the styles. */
export function readFormats(archive: Archive, part: string): readonly Shown[] {
  const own = new Map<number, Shown>();
  const styles: Shown[] = [];
  let isOfCells = false;
  readPart(archive, part, {
    opened(name, attributes) {
      if (name === 'numFmt') {
        own.set(Number(attributes['numFmtId']), shownBy(attributes['formatCode'] ?? ''));
      } else if (name === 'cellXfs') isOfCells = true;
      else if (name === 'xf' && isOfCells) {
        const id = Number(attributes['numFmtId'] ?? 0);
        const known = BUILT_IN.find(([from, to]) => id >= from && id <= to)?.[2];
        styles.push(own.get(id) ?? known ?? 'number');
      }
    },
    closed(name) {
      if (name === 'cellXfs') isOfCells = false;
    },
  });
  return styles;
}
