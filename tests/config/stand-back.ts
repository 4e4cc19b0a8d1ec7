/** The tests of the code take what the browser's tests beside them leave of the processors: those draw while they wait. */
import { constants, setPriority } from 'node:os';

export default function standBack(): void {
  // What this process starts from here on has its priority.
  setPriority(constants.priority.PRIORITY_BELOW_NORMAL);
}
