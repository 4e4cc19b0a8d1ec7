/** The twelve stations of the judgement, by the name of their file. */
import { hutUntouchedList } from './hut-untouched-list';
import { hutBankOf400 } from './hut-bank-of-400';
import { ridge48Volts } from './ridge-48-volts';
import { vanLithiumMain } from './van-lithium-main';
import { vanInverter } from './van-inverter';
import { carryOutCases } from './carry-out-cases';
import { hutThreeInARow } from './hut-three-in-a-row';
import { hut24VoltsSolar } from './hut-24-volts-solar';
import { van24Volts } from './van-24-volts';
import { floodCentre } from './flood-centre';
import { typedInAHurry } from './typed-in-a-hurry';
import { hutMainFuse } from './hut-main-fuse';
import type { Station } from './station';

export const STATIONS: Readonly<Record<string, Station>> = {
  'hut-untouched-list': hutUntouchedList,
  'hut-bank-of-400': hutBankOf400,
  'ridge-48-volts': ridge48Volts,
  'van-lithium-main': vanLithiumMain,
  'van-inverter': vanInverter,
  'carry-out-cases': carryOutCases,
  'hut-three-in-a-row': hutThreeInARow,
  'hut-24-volts-solar': hut24VoltsSolar,
  'van-24-volts': van24Volts,
  'flood-centre': floodCentre,
  'typed-in-a-hurry': typedInAHurry,
  'hut-main-fuse': hutMainFuse,
};
