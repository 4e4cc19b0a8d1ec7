/** What is typed into the head of the As built sheet: the limit, the meter, and the wire during the readings. */
import { EXCESS_MILLIOHMS, WIRE_DOUBT_SHARE } from '../../core/tables/joint-practice';
import { numberParameter } from '../../functions/parameter';
import { tempC } from '../../functions/parameters/run';
import type { BuiltCellKey } from '../station/as-built';
import { conductorTempInForce, type RuleReferences } from '../station/house-rules';
import type { NamedCell } from '../station/named-cells';

/** Resolution of a plain multimeter in its 20 V range, and of a clamp meter: common practice, from memory. */
const USUAL_STEP = { volts: 0.01, amps: 0.1 } as const;

const excess = numberParameter('excess', 'Milliohms beyond those planned.', { above: 0 });
const step = numberParameter('step', 'Last digit of the meter.', { above: 0 });
const doubt = numberParameter('doubt', 'Share of the resistance of the wire.', {
  least: 0,
  below: 1,
});

export const BUILT_LABELS: Readonly<Record<BuiltCellKey, string>> = {
  excess: 'Look at joints from',
  voltsStep: 'Volts are read to',
  ampsStep: 'Amps are read to',
  wireDoubt: 'The wire may differ by',
  tempC: 'Wire during the reading',
};

/** The cells, given the rules that the temperature follows. */
export function builtCells(rule: RuleReferences): Readonly<Record<BuiltCellKey, NamedCell>> {
  return {
    excess: {
      label: BUILT_LABELS.excess,
      note: 'more than the wire and the joints planned in the schedule. Common practice, from memory: a sound crimp has well under 1.',
      style: { numberFormat: '0.0# "mΩ"' },
      parameter: excess,
      initial: EXCESS_MILLIOHMS,
    },
    voltsStep: {
      label: BUILT_LABELS.voltsStep,
      note: 'the last digit of the meter; each reading may be one off either way. Common practice: look at your meter.',
      style: { numberFormat: '0.0## "V"' },
      parameter: step,
      initial: USUAL_STEP.volts,
    },
    ampsStep: {
      label: BUILT_LABELS.ampsStep,
      note: 'the same of the amps.',
      style: { numberFormat: '0.0## "A"' },
      parameter: step,
      initial: USUAL_STEP.amps,
    },
    wireDoubt: {
      label: BUILT_LABELS.wireDoubt,
      note: 'either way from its computed resistance: lay of the strands 2 %, 8 °C of doubt 3 %. Common practice, from memory.',
      style: { numberFormat: '0 %' },
      parameter: doubt,
      initial: WIRE_DOUBT_SHARE,
    },
    tempC: {
      label: BUILT_LABELS.tempC,
      note: 'its temperature; follows the conductor temperature of the house rules until you type over it.',
      style: { numberFormat: '0 "°C"' },
      parameter: tempC,
      initial: { formula: `=${conductorTempInForce(rule)}` },
    },
  };
}
