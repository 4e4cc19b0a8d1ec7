/** What is typed into the head of the Wire list. */
import { METRES_PER } from '../../core/length';
import { numberParameter } from '../../functions/parameter';
import type { RuleReferences } from '../station/house-rules';
import type { NamedCell } from '../station/named-cells';
import type { WireCellKey } from '../station/wire-list';

/** Added to the length of every run, for bends and second thoughts: common practice, the figure is ours. */
export const USUAL_SLACK = 0.1;
/** For stripping and a second crimp at each end of a conductor: common practice, the figure is ours. */
const USUAL_TAIL = { ft: 0.5, otherM: 0.15 } as const;
/** A spool of wire as shops have it: common practice, from memory. */
const USUAL_SPOOL = { ft: 100, otherM: 25 } as const;

/** A usual length in the schedule's unit, as a formula: round in feet, and round in metres for every other unit. */
const inUnit = (
  { unit }: RuleReferences,
  usual: { readonly ft: number; readonly otherM: number },
) =>
  Object.entries(METRES_PER).reduceRight(
    (further, [word, metres]) =>
      `IF(${unit}="${word}",${word === 'ft' ? usual.ft : Number((usual.otherM / metres).toPrecision(3))},${further})`,
    'NA()',
  );

const slack = numberParameter('slack', 'Share of its length that a run gets on top.', {
  least: 0,
  most: 1,
});
const tail = numberParameter('tail', 'Length on top at each end of a conductor.', { least: 0 });
const spool = numberParameter('spool', 'Length of a spool.', { above: 0 });

export const WIRE_LABELS: Readonly<Record<WireCellKey, string>> = {
  slack: 'Slack',
  tail: 'Tail at each end',
  spool: 'Spool',
  plus: 'Colour of plus',
  minus: 'Colour of minus',
};

/** The cells, given the rules that their usual figures follow. */
export function wireCells(rule: RuleReferences): Readonly<Record<WireCellKey, NamedCell>> {
  return {
    slack: {
      label: WIRE_LABELS.slack,
      note: 'of the one-way length, for bends. Common practice.',
      style: { numberFormat: '0 %' },
      parameter: slack,
      initial: USUAL_SLACK,
    },
    tail: {
      label: WIRE_LABELS.tail,
      note: "in the schedule's length unit, for stripping and a second crimp. Common practice.",
      style: { numberFormat: '0.0##' },
      parameter: tail,
      initial: { formula: `=${inUnit(rule, USUAL_TAIL)}` },
    },
    spool: {
      label: WIRE_LABELS.spool,
      note: 'length on a spool, in the same unit; a size may have its own among the prices at the right. Common practice.',
      style: { numberFormat: '0.0##' },
      parameter: spool,
      initial: { formula: `=${inUnit(rule, USUAL_SPOOL)}` },
    },
    plus: {
      label: WIRE_LABELS.plus,
      note: 'your own word, for every run that names no other below; blank where colours do not matter.',
      style: { numberFormat: '@' },
      initial: null,
    },
    minus: {
      label: WIRE_LABELS.minus,
      note: 'the same. Both blank: the two conductors of a run are bought as one wire, in one line.',
      style: { numberFormat: '@' },
      initial: null,
    },
  };
}
