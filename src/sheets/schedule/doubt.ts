/** What sheets that follow the sizing say of a run whose verdict wants to be read first. */
import { text } from '../plan/formula';
import { LEVELS } from '../station/verdicts';

const DOUBTED = LEVELS.filter(
  (level) => level === 'danger' || level === 'fails' || level === 'unclear',
);

/** A formula over a run's level; empty where nothing speaks against buying and building. */
export function doubtOf(level: string): string {
  const doubts = DOUBTED.reduceRight(
    (further, word) =>
      `IF(${level}=${LEVELS.indexOf(word) + 1},${text(`its verdict is "${word}": read it before you buy`)},${further})`,
    '""',
  );
  return `IF(ISERROR(${level}),${text('its verdict is not understood')},${doubts})`;
}
