/** Prompts and messages of every plan are within Excel's limits, without having to be cut. */
import { describe, expect, it } from 'vitest';
import { NOTE_TITLE, shortened, TEXT_LIMITS } from '../../../src/hosts/excel/entries';
import { newSchedule } from '../../../src/sheets/new-schedule';
import { workbook, patientHost } from './stand-in';

const FREE = { sheets: new Set<string>(), names: new Set<string>() };
const PLANS = (['demo', 'empty'] as const).flatMap((filling) =>
  (['table', 'cells'] as const).flatMap((style) =>
    newSchedule(filling, style, FREE).map((plan) => [filling, style, plan.name, plan] as const),
  ),
);

describe.each(PLANS)('%s, %s, %s', (_, __, ___, { entries, notes }) => {
  it('has prompts that need no cutting', () => {
    for (const { promptTitle, prompt, choices = [] } of entries) {
      expect(promptTitle.length, promptTitle).toBeLessThanOrEqual(TEXT_LIMITS.promptTitle);
      expect(prompt.length, prompt).toBeLessThanOrEqual(TEXT_LIMITS.prompt);
      expect(choices.join(',').length, promptTitle).toBeLessThanOrEqual(TEXT_LIMITS.choices);
      expect(prompt.trim(), 'a whole sentence').toMatch(/[.!?)"”]$/);
    }
    for (const { text } of notes) {
      expect(text.length, text).toBeLessThanOrEqual(TEXT_LIMITS.prompt);
    }
    expect(NOTE_TITLE.length).toBeLessThanOrEqual(TEXT_LIMITS.promptTitle);
  });

  it('has refusals that end with a sentence', () => {
    for (const { prompt } of entries) {
      const said = shortened(prompt, TEXT_LIMITS.error);
      expect(said.length).toBeLessThanOrEqual(TEXT_LIMITS.error);
      expect(said.trim()).toMatch(/[.!?)"”]$/);
    }
  });
});

it('are taken by the stand-in, which refuses longer ones', async () => {
  workbook();
  const host = patientHost();
  const plans = newSchedule('demo', 'table', await host.taken());
  expect((await host.insert(plans)).missing).toEqual([]);
});

describe('a text that is too long', () => {
  it.each([
    ['One. Two three.', 9, 'One.'],
    ['One. Two.', 8, 'One.'],
    ['One two three', 9, 'One two…'],
    ['Onetwothree', 5, 'Onet…'],
    ['Fits.', 5, 'Fits.'],
  ])('%s within %i is %s', (text, limit, expected) => {
    expect(shortened(text, limit)).toBe(expected);
    expect(expected.length).toBeLessThanOrEqual(limit);
  });
});
