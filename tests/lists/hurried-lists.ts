/** Lists as a person in a hurry has them, none headed as a schedule of ours is, and what is to become of each. */
import ExcelJS from 'exceljs';
import type { ScheduleRun } from '../../src/sheets/station/run';

export interface HurriedList {
  readonly fileName: string;
  readonly bytes: () => Promise<Uint8Array>;
  /** By heading, what it is taken to be until somebody says otherwise; nothing where that cannot be told. */
  readonly asked: Readonly<Record<string, string>>;
  /** What a person says that was not suggested. */
  readonly said?: Readonly<Record<string, string>>;
  /** The runs with the suggestions and what was said. */
  readonly runs: readonly ScheduleRun[];
  /** Columns that are told as left out all the same. */
  readonly leftOut?: readonly string[];
  /** Lines that are told and not taken. */
  readonly notTaken?: readonly number[];
}

const text =
  (lines: string): HurriedList['bytes'] =>
  () =>
    Promise.resolve(new TextEncoder().encode(lines));

type Cell = string | number | null;

const book =
  (rows: readonly (readonly Cell[])[], merged: readonly string[] = []): HurriedList['bytes'] =>
  async () => {
    const workbook = new ExcelJS.Workbook();
    const sheet = workbook.addWorksheet('Wiring');
    sheet.addRows(rows.map((row) => [...row]));
    for (const range of merged) sheet.mergeCells(range);
    return new Uint8Array(await workbook.xlsx.writeBuffer());
  };

export const HURRIED_LISTS: Readonly<Record<string, HurriedList>> = {
  'numbers of items and no column of feeders': {
    fileName: 'hut.csv',
    bytes: text('Item #,What,Amps,Feet,Remarks\n1,Trunk,24,7,main line\n2,Camera,2.5,45,pole\n'),
    asked: {},
    runs: [
      { run: '1', load: 'Trunk', peak: 24, length: 7, notes: 'main line' },
      { run: '2', load: 'Camera', peak: 2.5, length: 45, notes: 'pole' },
    ],
  },
  'feeders under a name of its own': {
    fileName: 'board.csv',
    bytes: text('Name,From where,Amps,Length (ft)\nBoard,,24,7\nRadio,Board,14,5\n'),
    asked: { 'From where': 'Fed from' },
    runs: [
      { run: 'Board', peak: 24, length: 7 },
      { run: 'Radio', fedFrom: 'Board', peak: 14, length: 5 },
    ],
  },
  'feeders under a name that only its values give away': {
    fileName: 'case.csv',
    bytes: text(
      'Name;Coming off;Amps;How long?;Notes\nBus;;20;0,8;lid\nRadio;Bus;12;0,4;\nLamp;Bus;1,5;0,5;\n',
    ),
    asked: { 'Coming off': 'Fed from', 'How long?': '' },
    said: { 'How long?': 'One-way length (m)' },
    runs: [
      { run: 'Bus', peak: 20, length: 0.8, notes: 'lid' },
      { run: 'Radio', fedFrom: 'Bus', peak: 12, length: 0.4 },
      { run: 'Lamp', fedFrom: 'Bus', peak: 1.5, length: 0.5 },
    ],
  },
  'two columns of lengths that differ': {
    fileName: 'van.csv',
    bytes: text(
      'Name,Fed from,Current (A),Length planned (ft),Length as laid (ft)\nMain,,30,12,14\nHF,Main,22,10,11.5\n',
    ),
    asked: { 'Length planned (ft)': '', 'Length as laid (ft)': '' },
    said: { 'Length as laid (ft)': 'One-way length' },
    leftOut: ['Length planned (ft)'],
    runs: [
      { run: 'Main', peak: 30, length: 14 },
      { run: 'HF', fedFrom: 'Main', peak: 22, length: 11.5 },
    ],
  },
  'two columns of one length': {
    fileName: 'van.csv',
    bytes: text(
      'Name,Fed from,Current (A),Length (ft),Cable length (m)\nMain,,30,12,3.7\nHF,Main,22,10,3.0\n',
    ),
    asked: {},
    leftOut: ['Cable length (m)'],
    runs: [
      { run: 'Main', peak: 30, length: 12 },
      { run: 'HF', fedFrom: 'Main', peak: 22, length: 10 },
    ],
  },
  'units in a row of their own': {
    fileName: 'hut.csv',
    bytes: text(
      'Circuit,Fed by,Load,Current,Length,Wire\n,,,A,m,mm2\nTrunk,,Board,24,2.1,16\nRelay,Trunk,Set,14,1.5,6\n',
    ),
    asked: {},
    runs: [
      { run: 'Trunk', load: 'Board', peak: 24, length: 2.1, ownSize: '16 mm2' },
      { run: 'Relay', fedFrom: 'Trunk', load: 'Set', peak: 14, length: 1.5, ownSize: '6 mm2' },
    ],
  },
  'notes with line breaks, in three columns': {
    fileName: 'van.csv',
    bytes: text(
      'Name,Fed from,Amps,Length (ft),Notes,Remarks,Comment\r\nMain,,30,12,"behind seat\r\nfuse in front",dry,\r\nHF,Main,22,10,,,"see photo;\nask first"\r\n',
    ),
    asked: {},
    runs: [
      { run: 'Main', peak: 30, length: 12, notes: 'behind seat\nfuse in front; dry' },
      { run: 'HF', fedFrom: 'Main', peak: 22, length: 10, notes: 'see photo;\nask first' },
    ],
  },
  'feeders by the numbers of items': {
    fileName: 'case.csv',
    bytes: text(
      'Item #,Circuit,Hangs on,Watts,Dist,Fuse fitted,Colour\n1,Trunk,Battery,,2 m,60A,red\n2,Relay,1,170,1.5 m,15A,black\n3,Camera,1,30,14 m,5A,black\n',
    ),
    asked: {
      'Hangs on': 'Fed from',
      Dist: 'One-way length',
      'Fuse fitted': '',
      Colour: '',
    },
    said: { Colour: 'Notes', 'Fuse fitted': 'Notes', Dist: 'One-way length (m)' },
    runs: [
      { run: '1', load: 'Trunk', length: 2, notes: 'Fuse fitted: 60A; Colour: red' },
      {
        ...{ run: '2', fedFrom: '1', load: 'Relay', peak: 170, kind: 'W', length: 1.5 },
        notes: 'Fuse fitted: 15A; Colour: black',
      },
      {
        ...{ run: '3', fedFrom: '1', load: 'Camera', peak: 30, kind: 'W', length: 14 },
        notes: 'Fuse fitted: 5A; Colour: black',
      },
    ],
  },
  'groups, blank rows and a sum': {
    fileName: 'van.csv',
    bytes: text(
      'Flood watch,,,,\n,,,,\nRun,Parent run,A,ft,mins used\nVan,,,,\nMain,,30,12,\nHF,Main,22,10,5\n,,,,\nTotal,,52,22,5\n',
    ),
    asked: { 'mins used': '' },
    leftOut: ['mins used'],
    runs: [
      { run: 'Main', peak: 30, length: 12 },
      { run: 'HF', fedFrom: 'Main', peak: 22, length: 10 },
    ],
    notTaken: [4, 8],
  },
  'no heading that is understood': {
    fileName: 'shelf.csv',
    bytes: text('Thing,Where,How much,How far\nRadio,shelf,22 A,10 ft\nLamp,roof,24 W,15 ft\n'),
    asked: { Thing: '', Where: '', 'How much': 'Peak load', 'How far': 'One-way length' },
    said: { Thing: 'Run', Where: 'Notes' },
    runs: [
      { run: 'Radio', peak: 22, length: 10, notes: 'Where: shelf' },
      { run: 'Lamp', peak: 24, kind: 'W', length: 15, notes: 'Where: roof' },
    ],
  },
  'every heading misspelt': {
    fileName: 'typed.csv',
    bytes: text('Nmae,Fedd from,Curent (A),Lenght (ft),Nots\nMain,,24,7,a\nRadio,Main,14,5,b\n'),
    asked: {
      Nmae: 'Run',
      'Fedd from': 'Fed from',
      'Curent (A)': 'Peak load',
      'Lenght (ft)': 'One-way length',
      Nots: 'Notes',
    },
    runs: [
      { run: 'Main', peak: 24, length: 7, notes: 'Nots: a' },
      { run: 'Radio', fedFrom: 'Main', peak: 14, length: 5, notes: 'Nots: b' },
    ],
  },
  'where each run starts and ends': {
    fileName: 'panel.csv',
    bytes: text(
      'Start,End,Amps,Length m,Made by\nBattery,Board,40,1,team B\nBoard,Radio,22,3,team B\nBoard,Lamp,2,4,team A\n',
    ),
    asked: { Start: 'Fed from', End: 'Run', 'Made by': '' },
    leftOut: ['Made by'],
    runs: [
      { run: 'Board', peak: 40, length: 1 },
      { run: 'Radio', fedFrom: 'Board', peak: 22, length: 3 },
      { run: 'Lamp', fedFrom: 'Board', peak: 2, length: 4 },
    ],
  },
  'loads by which the feeders are called': {
    fileName: 'loads.csv',
    bytes: text('Device,Fed from,Amps,Length (ft)\nBus,,20,2\nRadio,Bus,12,1\n'),
    asked: {},
    runs: [
      { run: 'Bus', peak: 20, length: 2 },
      { run: 'Radio', fedFrom: 'Bus', peak: 12, length: 1 },
    ],
  },
  'headings merged over others': {
    fileName: 'van.xlsx',
    bytes: book(
      [
        ['Response van wiring'],
        ['Circuit', null, 'Load', null, 'Cable', null],
        ['No.', 'Comes from', 'What', 'Amps', 'Length (ft)', 'Size'],
        ['Main', null, 'board', 30, 12, '6 AWG'],
        ['HF', 'Main', 'radio', 22, 10, '10 AWG'],
      ],
      ['A1:F1', 'A2:B2', 'C2:D2', 'E2:F2'],
    ),
    asked: { 'Comes from': 'Fed from' },
    runs: [
      { run: 'Main', load: 'board', peak: 30, length: 12, ownSize: '6 AWG' },
      { run: 'HF', fedFrom: 'Main', load: 'radio', peak: 22, length: 10, ownSize: '10 AWG' },
    ],
  },
  'one heading over two columns, and none over a third': {
    fileName: 'hut.xlsx',
    bytes: book(
      [
        ['Run', 'Fed from', 'Amps', 'Length', null, null, 'Remark'],
        [null, null, null, 'one way (m)', 'round trip (m)', null, null],
        ['Trunk', null, 24, 2.1, 4.2, 'tinned', 'line one\nline two'],
        ['Relay', 'Trunk', 14, 1.5, 3, null, null],
      ],
      ['D1:E1'],
    ),
    asked: { 'column F': '' },
    said: { 'column F': 'Notes' },
    leftOut: ['Length round trip (m)'],
    runs: [
      { run: 'Trunk', peak: 24, length: 2.1, notes: 'column F: tinned; line one\nline two' },
      { run: 'Relay', fedFrom: 'Trunk', peak: 14, length: 1.5 },
    ],
  },
};
