/** What is typed into the head of the Parts sheet. */
import { numberParameter } from '../../functions/parameter';
import type { NamedCell } from '../station/named-cells';
import type { PartsCellKey } from '../station/parts';

/** Of a blade fuse with its holder: common practice, from memory (2 to 6 milliohms). */
const USUAL_HOLDER_MILLIOHMS = 2;
/** One crimp or lug at each end of a conductor: common practice. */
const USUAL_PER_END = 1;
/** Fuses to carry along of each rating: common practice, the figure is ours. */
const USUAL_SPARES = 2;

const holder = numberParameter('holder', 'Milliohms of a fuse with its holder.', { least: 0 });
const perEnd = numberParameter('per_end', 'Contacts at each end of a conductor.', {
  least: 0,
  most: 9,
  whole: true,
});
const spares = numberParameter('spares', 'Spare fuses of each rating and kind.', {
  least: 0,
  most: 99,
  whole: true,
});

export const PARTS_CELLS: Readonly<Record<PartsCellKey, NamedCell>> = {
  holder: {
    label: 'Fuse and holder',
    note: 'milliohms of a fuse with its holder. Common practice, from memory: a blade fuse with its holder has 2 to 6; measure yours.',
    style: { numberFormat: '0.0# "mΩ"' },
    parameter: holder,
    initial: USUAL_HOLDER_MILLIOHMS,
  },
  perEnd: {
    label: 'Contacts at each end',
    note: 'of each conductor: a crimp, a lug, or two where a connector sits before the lug. Common practice.',
    style: { numberFormat: '0' },
    parameter: perEnd,
    initial: USUAL_PER_END,
  },
  spares: {
    label: 'Spare fuses',
    note: 'of each rating and kind, to carry along. Common practice; the figure is ours.',
    style: { numberFormat: '0' },
    parameter: spares,
    initial: USUAL_SPARES,
  },
};
