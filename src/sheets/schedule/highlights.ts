/** Conditional formats of the schedule. They compare cells, since they cannot call functions of ours. */
import { RELATIVE_SLACK } from '../../core/limits';
import { cellAddress } from '../plan/area';
import { HIGHLIGHT_STYLES, type HighlightKey } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import type { ColumnKey } from '../station/schedule-keys';
import { columnArea, columnOf, ROW } from './layout';
import { CLOSE_TO_TARGET, LEVELS, type Level } from '../station/verdicts';

interface Highlight {
  readonly keys: readonly ColumnKey[];
  readonly formula: string;
  readonly style: HighlightKey;
  readonly meaning: string;
}

/** Warnings over a schedule of so many rows; the first that holds for a cell is the gravest. */
export function scheduleHighlights(rows: number): HighlightPlan[] {
  const at = (key: ColumnKey) => cellAddress(ROW.first, columnOf(key), 'column');
  const whole = 1 + RELATIVE_SLACK;
  const ratio = `IF(ISNUMBER(${at('dropShare')}),${at('dropShare')}/${at('target')},0)`;
  const overAmpacity = `IF(ISNUMBER(${at('ampacity')}),${at('runAmps')}>${at('ampacity')}*${whole},FALSE)`;
  const noFuse = `ISERROR(${at('fuse')})`;
  const isLevel = (level: Level) => `${at('level')}=${LEVELS.indexOf(level) + 1}`;
  const short = `IF(ISNUMBER(${at('shortLow')}),${at('shortLow')}=1,FALSE)`;
  const highlights: readonly Highlight[] = [
    {
      keys: ['runAmps', 'ampacity'],
      formula: overAmpacity,
      style: 'danger',
      meaning: 'over ampacity',
    },
    { keys: ['fuse'], formula: noFuse, style: 'danger', meaning: 'no fuse fits' },
    {
      keys: ['dropVolts', 'dropShare'],
      formula: `${ratio}>${whole}`,
      style: 'fails',
      meaning: 'drop over target',
    },
    {
      keys: ['dropVolts', 'dropShare'],
      formula: `AND(${ratio}>${CLOSE_TO_TARGET},${ratio}<=${whole})`,
      style: 'close',
      meaning: 'close to the drop target',
    },
    { keys: ['lowVolts'], formula: short, style: 'fails', meaning: 'too few volts at low charge' },
    ...(['danger', 'fails', 'unclear'] as const).map((level) => ({
      keys: ['verdict'] as const,
      formula: isLevel(level),
      style: level,
      meaning: level,
    })),
  ];
  return highlights.flatMap(({ keys, formula, style, meaning }) =>
    keys.map((key) => ({
      area: columnArea(key, rows),
      formula,
      style: HIGHLIGHT_STYLES[style],
      meaning,
    })),
  );
}
