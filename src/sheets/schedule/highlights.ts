/** Conditional formats of the schedule. They compare cells, since they cannot call functions of ours. */
import { RELATIVE_SLACK } from '../../core/limits';
import { cellAddress } from '../plan/area';
import { HIGHLIGHT_STYLES, type HighlightKey } from '../plan/highlight-styles';
import type { HighlightPlan } from '../plan/plan';
import type { ColumnKey } from '../station/schedule-keys';
import { columnArea, columnOf, ROW } from './layout';
import { text } from '../plan/formula';
import { COUNTS } from '../station/parameters';
import { CLOSE_TO_TARGET, LEVELS, WORD, type Level } from '../station/verdicts';

/** What is ok looks like any other cell. */
export const COLOURED_LEVELS = LEVELS.filter((level) => level !== 'ok');

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
  const isEach = `${at('heldTo')}=${text(COUNTS[1])}`;
  const overAmpacity = `IF(ISNUMBER(${at('ampacity')}),${at('runAmps')}>${at('ampacity')}*${whole},FALSE)`;
  const isLevel = (level: Level) => `${at('level')}=${LEVELS.indexOf(level) + 1}`;
  // An error of a row that cannot be read yet is no danger.
  const noFuse = `IF(ISERROR(${at('fuse')}),${isLevel('danger')},FALSE)`;
  const short = `IF(ISNUMBER(${at('shortLow')}),${at('shortLow')}=1,FALSE)`;
  const missed = `IF(ISNUMBER(${at('overDrop')}),${at('overDrop')}>0,FALSE)`;
  const ratioOf = (key: ColumnKey) => `IF(ISNUMBER(${at(key)}),${at(key)}/${at('target')},0)`;
  const isClose = (key: ColumnKey) =>
    `AND(${ratioOf(key)}>${CLOSE_TO_TARGET},${ratioOf(key)}<=${whole})`;
  // The columns that the target is held against, by the house rule.
  const each = ['dropVolts', 'dropShare'] as const;
  const toLoad = ['pathDrop'] as const;
  const drops = (
    formulaOf: (key: 'dropShare' | 'pathDrop') => string,
    look: Pick<Highlight, 'style' | 'meaning'>,
  ): Highlight[] => [
    { keys: each, formula: `IF(${isEach},${formulaOf('dropShare')},FALSE)`, ...look },
    { keys: toLoad, formula: `IF(${isEach},FALSE,${formulaOf('pathDrop')})`, ...look },
  ];
  const highlights: readonly Highlight[] = [
    {
      keys: ['runAmps', 'ampacity'],
      formula: overAmpacity,
      style: 'danger',
      meaning: WORD.heat,
    },
    { keys: ['fuse'], formula: noFuse, style: 'danger', meaning: WORD.fuse },
    ...drops(() => missed, { style: 'fails', meaning: WORD.drop }),
    ...drops(isClose, { style: 'close', meaning: 'close to the drop target' }),
    { keys: ['lowVolts'], formula: short, style: 'fails', meaning: WORD.tooFewVolts },
    ...COLOURED_LEVELS.map((level) => ({
      keys: ['verdict'] as const,
      formula: isLevel(level),
      style: level,
      meaning: level,
    })),
  ];
  return highlights.flatMap(({ keys, formula, style, meaning }) =>
    keys.map((key): HighlightPlan => ({
      area: columnArea(key, rows),
      formula,
      style: HIGHLIGHT_STYLES[style],
      meaning,
    })),
  );
}
