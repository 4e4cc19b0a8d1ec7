/** What a row of the schedule comes to, in one sentence, as it is read out. */
import type { ReadRow } from './reading';

const isText = (value: unknown): value is string => typeof value === 'string' && value !== '';

/** "10 AWG, 30 A fuse, 13.0 V at the set: ok"; what is not known is left out, and what to do about it follows. */
export function runSentence({ values }: ReadRow): string {
  const { size, fuse, lowVolts, loadVolts, load, verdict, mend } = values;
  const volts = typeof lowVolts === 'number' ? lowVolts : loadVolts;
  const figures = [
    ...(isText(size) && !size.startsWith('#') ? [size] : []),
    ...(typeof fuse === 'number'
      ? [`${fuse} A fuse`]
      : fuse === 'none'
        ? ['no fuse of its own']
        : []),
    ...(typeof volts === 'number'
      ? [
          `${volts.toFixed(1)} V at ${isText(load) ? load : 'its end'}${typeof lowVolts === 'number' ? ' with the battery low' : ''}`,
        ]
      : []),
  ];
  const fix = isText(mend) && !mend.startsWith('#') ? `. Fix: ${mend}` : '';
  const said = isText(verdict) ? verdict : 'not answered yet';
  return `${figures.join(', ')}${figures.length === 0 ? '' : ': '}${said}${fix}.`;
}
