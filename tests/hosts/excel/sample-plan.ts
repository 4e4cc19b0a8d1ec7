/** A small plan that uses every part a plan can have, of any number of rows; its second row overtypes a formula. */
import { area } from '../../../src/sheets/plan/area';
import type { SheetPlan } from '../../../src/sheets/plan/plan';

export function samplePlan(name = 'Runs', rows = 3): SheetPlan {
  const first = 2;
  const last = first + rows;
  return {
    name,
    columnWidths: [20, 8.43, 10, 12],
    hiddenColumns: [2, 3],
    blocks: [
      { area: area(0, 0), cells: [['River watch']], style: { bold: true, fontSizePt: 14 } },
      {
        area: area(first, 0, rows + 1, 4),
        style: { border: 'all' },
      },
      {
        area: area(first + 1, 0, rows, 2),
        cells: Array.from({ length: rows }, (_, row) => [`Run ${row + 1}`, row + 1]),
      },
      {
        area: area(first + 1, 2, rows, 2),
        cells: Array.from({ length: rows }, (_, row) => ['1/0', row === 1 ? '2 AWG' : null]),
        style: { numberFormat: '@', align: 'centre', wrap: true },
      },
      {
        area: area(last + 1, 0, 1, 2),
        cells: [['Total', { formula: `=SUM(${name}Table[Amps])` }]],
        style: { numberFormat: '0.0 "A"', border: 'below', fill: '#eeeeee' },
      },
    ],
    table: {
      name: `${name}Table`,
      area: area(first, 0, rows + 1, 4),
      columns: [
        { heading: 'Run' },
        { heading: 'Amps' },
        { heading: 'Size' },
        { heading: 'Suggested', formula: '=IF([@Amps]="","","10 AWG")' },
      ],
    },
    names: [{ name: `${name}_volts`, area: area(1, 1) }],
    entries: [
      {
        area: area(first + 1, 1, rows, 1),
        number: { least: 0, most: 1000 },
        promptTitle: 'Amps',
        prompt: 'The most the load ever draws.',
      },
      {
        area: area(first + 1, 2, rows, 1),
        choices: ['1/0 AWG', '10 AWG'],
        othersAllowed: true,
        promptTitle: 'Size',
        prompt: 'Leave blank to use the suggestion.',
      },
    ],
    highlights: [
      {
        area: area(first + 1, 0, rows, 4),
        formula: '$B4>10',
        style: { fill: '#ffd0c0', bold: true },
        meaning: 'over target',
      },
      {
        area: area(first + 1, 0, rows, 4),
        formula: '$B4>9',
        style: { fontColour: '#604000', italic: true, numberFormat: '0.00' },
        meaning: 'close to target',
      },
    ],
    notes: [{ area: area(first, 1), text: 'Amps at the load.' }],
    frozenRows: first + 1,
    frozenColumns: 1,
    rowHeightsPt: { 2: 30 },
    chart: {
      first: area(first, 5),
      title: 'Amps of each run',
      description: 'Bars for each run: its amps, and the most that it may have.',
      widthPt: 300,
      heightPt: 200,
      categories: area(first + 1, 0, rows, 1),
      categoryTitle: 'Run',
      valueTitle: 'Amps at the load',
      series: [
        {
          name: area(first, 1),
          nameText: 'Amps',
          values: area(first + 1, 1, rows, 1),
          look: 'plain',
        },
        {
          name: area(first, 3),
          nameText: 'Suggested',
          values: area(first + 1, 3, rows, 1),
          look: 'outlined',
        },
      ],
      numberFormat: '0',
    },
    print: {
      landscape: true,
      area: area(0, 0, last + 2, 4),
      repeatRows: { first, last: first },
      footer: 'Advice & cautions',
    },
  };
}
