import { describe, expect, test } from 'vitest';
import { InsertionFault } from '../../src/hosts/sheet-host';
import { insertSchedule, missingSentence } from '../../src/taskpane/insertion';
import { sentenceOf } from '../../src/taskpane/notice';
import { StandInHost } from './stand-in-host';

describe('inserting a schedule', () => {
  test('hands the plans to the host and names the sheet', async () => {
    const host = new StandInHost();
    const { sentence: told } = await insertSchedule(host, 'demo');
    expect(host.plans[0]?.name).toBe('Run schedule');
    for (const { name } of host.plans) expect(told).toContain(`“${name}”`);
    expect(told).toContain('demonstration');
  });

  test('a second one gets names of its own', async () => {
    const host = new StandInHost();
    await insertSchedule(host, 'empty');
    expect((await insertSchedule(host, 'empty')).sentence).toContain('“Run schedule 2”');
    const sheets = host.plans.map(({ name }) => name);
    expect(new Set(sheets).size).toBe(sheets.length);
  });

  test('the host’s sentence comes through', async () => {
    const host = new StandInHost();
    host.fault = new Error('Nothing was inserted: the workbook is protected.');
    await expect(insertSchedule(host, 'empty')).rejects.toThrow('the workbook is protected');
    expect(host.plans).toEqual([]);
  });

  test('other names are tried where a name turns out to be taken, as by a chart sheet', async () => {
    const host = new StandInHost();
    host.insertionFaults.push(new InsertionFault('Taken.', { namesTaken: true }));
    expect((await insertSchedule(host, 'empty')).sentence).toContain('“Run schedule 2”');
  });

  test('names that stay taken are told after some tries', async () => {
    const host = new StandInHost();
    const taken = new InsertionFault('Taken.', { namesTaken: true });
    host.insertionFaults.push(taken, taken, taken);
    await expect(insertSchedule(host, 'empty')).rejects.toThrow('Taken.');
  });

  test('what is missing is told, and how to have it', async () => {
    const host = new StandInHost();
    host.missing = ['the print set-up of “Supply” (Excel broke off)'];
    const { inserted } = await insertSchedule(host, 'empty');
    expect(missingSentence(inserted)).toMatch(/print set-up of “Supply”.*“Repair the sheet”/);
    expect(missingSentence(await inserted.repair())).toBe('');
  });

  test('what is no sentence becomes one', () => {
    expect(sentenceOf(new Error('  '))).toMatch(/^It did not work.*\.$/);
    expect(sentenceOf(undefined)).toMatch(/^It did not work.*\.$/);
  });
});
