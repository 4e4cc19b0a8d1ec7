import { describe, expect, it } from 'vitest';
import { fileNameOf } from '../../src/taskpane/download';

describe('a title as a file name', () => {
  it.each([
    ['River flood watch: runs', 'River flood watch runs.xlsx'],
    ['a/b\\c<d>e|f?g*h"i', 'a b c d e f g h i.xlsx'],
    ['  ..hidden..  ', 'hidden.xlsx'],
    ['tab\tand\u0000nothing', 'tab and nothing.xlsx'],
    ['', 'Run schedule.xlsx'],
    ['???', 'Run schedule.xlsx'],
    ['Hütte – Nº 1', 'Hütte – Nº 1.xlsx'],
    ['x'.repeat(200), `${'x'.repeat(80)}.xlsx`],
  ])('%j becomes %j', (title, name) => {
    expect(fileNameOf(title, 'xlsx')).toBe(name);
  });
});
