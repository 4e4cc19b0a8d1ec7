/** Solves a circuit's d.c. operating point with the circuit simulator ngspice. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { runDebianTool } from './debian-tool';

const NGSPICE = { command: 'ngspice', debianPackage: 'ngspice' };

/** Far tighter than the simulator's own (1e-3), so that circuits with steady-power loads are solved to the end. */
const TOLERANCES = '.options reltol=1e-10 abstol=1e-13 vntol=1e-12 itl1=1000 tnom=20 temp=20';

function runDeck(deck: string): string {
  const folder = mkdtempSync(join(tmpdir(), 'loomsheet-netlist-'));
  try {
    const file = join(folder, 'netlist.cir');
    writeFileSync(file, deck);
    return runDebianTool(NGSPICE, ['-b', file]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * Volts at each node against node 0, keyed by the node's name as given. `netlist` holds the element lines alone, no
 * title and no commands; resistors are at 20 degC unless they say otherwise. Element and node names are read without
 * regard to case, so give them names that differ by more. Throws where ngspice is missing or finds no solution.
 */
export function solveNetlist(netlist: string, nodes: string[]): Record<string, number> {
  const deck = [
    'direct-current operating point',
    netlist.trim(),
    TOLERANCES,
    '.control',
    'set numdgt=16',
    'op',
    ...nodes.flatMap((node, index) => [`let asked${index} = v(${node})`, `print asked${index}`]),
    'quit 0',
    '.endc',
    '.end',
    '',
  ].join('\n');
  const printed = runDeck(deck);
  return Object.fromEntries(
    nodes.map((node, index) => {
      const shown = new RegExp(`^asked${index} = (\\S+)`, 'm').exec(printed)?.[1];
      const volts = Number(shown);
      if (shown === undefined || !Number.isFinite(volts)) {
        throw new Error(
          `ngspice gave no voltage for node "${node}" of\n${deck}\nIt printed:\n${printed}`,
        );
      }
      return [node, volts];
    }),
  );
}
