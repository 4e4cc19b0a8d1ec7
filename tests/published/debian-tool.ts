/** Runs a system program that a check needs, and says how to install it where it is missing. */
import { spawnSync } from 'node:child_process';

export interface DebianTool {
  readonly command: string;
  /** The Debian package that holds it. */
  readonly debianPackage: string;
  /** Longest time it may take; a minute unless given. */
  readonly timeoutMs?: number;
}

/**
 * What the program prints on standard output, given `input` on standard input. Throws where the program is missing
 * (naming the package to install) or ends with an error (with all it printed).
 */
export function runDebianTool(tool: DebianTool, args: readonly string[], input = ''): string {
  const timeout = tool.timeoutMs ?? 60_000;
  const ended = spawnSync(tool.command, [...args], { input, encoding: 'utf8', timeout });
  if (ended.error !== undefined) {
    const missing = 'code' in ended.error && ended.error.code === 'ENOENT';
    throw new Error(
      missing
        ? `this check runs the program "${tool.command}", which is not installed; on Debian: sudo apt-get install ${tool.debianPackage}`
        : `"${tool.command}" did not run: ${ended.error.message}`,
    );
  }
  if (ended.status !== 0) {
    throw new Error(
      `"${tool.command}" ended with status ${String(ended.status)}:\n${ended.stdout}${ended.stderr}`,
    );
  }
  return ended.stdout;
}
