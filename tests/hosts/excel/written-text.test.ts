import { describe, expect, it } from 'vitest';
import { writtenText } from '../../../src/hosts/excel/written-text';

describe('text written into cells that are not formatted as text', () => {
  it.each([
    '1/0',
    '10',
    '3%',
    '=A1',
    '+5',
    '-2',
    '@x',
    "'quoted",
    'TRUE',
    'Mar 5',
    'May-26',
    '#12',
  ])('marks %s, which Excel would read as something else', (text) => {
    expect(writtenText(text, false)).toBe(`'${text}`);
  });

  it.each(['', 'Hilltop relay', 'Amps', 'ok', 'drop over target'])('leaves "%s" alone', (text) => {
    expect(writtenText(text, false)).toBe(text);
  });
});

it('leaves text alone where the cell is formatted as text', () => {
  expect(writtenText('1/0', true)).toBe('1/0');
});
