/** Contacts and lugs as they are typed in a hurry: good ones, and one for each thing that can be wrong. */
import type { PartsTyped } from '../../../src/sheets/station/parts';

export const PARTS_IN_A_HURRY: PartsTyped = {
  cells: { holder: 2.5, perEnd: 2, spares: 1 },
  contacts: [
    { name: 'Pin', thinnest: '20 AWG', thickest: '16 AWG', amps: 8, milliohms: 0.8 },
    { name: 'Plug', thinnest: '16', thickest: '12', amps: 30, milliohms: 0.6 },
    {},
    { name: 'Lug', thinnest: '10 AWG', thickest: '6 AWG', amps: 70 },
    { name: 'Great lug', thinnest: '16 mm2', thickest: '120 mm2', amps: 300, milliohms: 0.1 },
    { thinnest: '10 AWG', thickest: '6 AWG', amps: 70 },
    { name: 'Same', thinnest: '10 AWG', thickest: '6 AWG', amps: 70 },
    { name: 'same', thinnest: '10 AWG', thickest: '6 AWG', amps: 70 },
    { name: 'Thin?', thinnest: 'thin', thickest: '6 AWG', amps: 70 },
    { name: 'Thick?', thinnest: '10 AWG', amps: 70 },
    { name: 'Crossed', thinnest: '6 AWG', thickest: '10 AWG', amps: 70 },
    { name: 'No amps', thinnest: '10 AWG', thickest: '6 AWG', amps: 'many' },
    { name: 'Bad', thinnest: '10 AWG', thickest: '6 AWG', amps: 70, milliohms: -1 },
  ],
  runs: [
    { sourceEnd: 'Pin', farEnd: 'Plug' },
    { farEnd: 'lug' },
    { sourceEnd: 'Nothing', farEnd: 'Nothing' },
    { sourceEnd: 'Crossed' },
  ],
};
