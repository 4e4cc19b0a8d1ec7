/** Where a command stands on this machine. */
import { accessSync, constants } from 'node:fs';
import path from 'node:path';

function mayRun(file: string): boolean {
  try {
    accessSync(file, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/** The file that the PATH leads to, or undefined where it leads to none. */
export function commandPath(command: string): string | undefined {
  return (process.env['PATH'] ?? '')
    .split(path.delimiter)
    .map((folder) => path.join(folder, command))
    .find(mayRun);
}
