import { describe, expect, test } from 'vitest';
import { firstAnswers, openList } from '../../src/taskpane/answered-list';
import { reportSentence } from '../../src/taskpane/list-report';
import { UnreadableFile } from '../../src/lists/read-runs';
import { HURRIED_LISTS } from '../lists/hurried-lists';

const open = (text: string) => openList(new TextEncoder().encode(text), 'board.csv');
const ODD = 'Name,From where,Amps,Length (ft),Colour\nBoard,,24,7,red\nRadio,Board,14,5,\n';

describe('a list taken in with questions', () => {
  test('is asked for nothing where all of it is understood', async () => {
    const list = await open('Name,Fed from,Amps,Length (ft)\nBoard,,24,7\nRadio,Board,14,5\n');
    expect(list.questions).toEqual([]);
    expect(list.read([]).report?.lacksFeeders).toBe(false);
  });

  test('is read as it is suggested, and again as it is answered', async () => {
    const list = await open(ODD);
    const answers = firstAnswers(list.questions);
    expect(answers).toEqual([
      ['From where', 'Fed from'],
      ['Colour', ''],
    ]);
    expect(list.questions.map(({ mayFeed }) => mayFeed)).toEqual([true, false]);
    const { report } = list.read(answers);
    expect(report?.runs[1]).toMatchObject({ fedFrom: 'Board' });
    expect(report?.lacksFeeders).toBe(false);
    // What nobody answered keeps its reason.
    expect(report?.leftOver).toEqual([
      { heading: 'Colour', values: ['red'], why: 'not a heading this list is read by' },
    ]);
    const flat = list.read([]).report;
    expect(flat?.lacksFeeders).toBe(true);
    expect(reportSentence('board.csv', flat!)).toMatch(/lists 2 runs; 2 columns were left out/);
  });

  test('is refused in words while two columns are answered alike, and taken after', async () => {
    const list = await open(ODD);
    const { report, refusal } = list.read([
      ['From where', 'Fed from'],
      ['Colour', 'Fed from'],
    ]);
    expect(report).toBeUndefined();
    expect(refusal).toMatch(/^"From where" and "Colour" cannot both be "Fed from"/);
    expect(list.read([['Colour', 'Notes']]).report?.runs[0]?.notes).toBe('Colour: red');
  });

  test('may have no heading that is understood', async () => {
    const { bytes, fileName } = HURRIED_LISTS['no heading that is understood']!;
    const list = await openList(await bytes(), fileName);
    expect(list.read([]).refusal).toMatch(/no list of runs that could be found/);
    expect(list.read(firstAnswers(list.questions)).report?.runs).toHaveLength(2);
  });

  test('is none where nothing in the file looks like one', async () => {
    await expect(open('1,2\n3,4\n')).rejects.toThrow(UnreadableFile);
    await expect(open('')).rejects.toThrow(/is empty/);
  });
});
