/** `npm run schedule`: see command.ts. */
import { runTerminal } from './command';

/** A reader that has seen enough (`| head`) closes the pipe: what is left to print is dropped, the workbook still written. */
for (const stream of [process.stdout, process.stderr]) {
  stream.on('error', (fault: NodeJS.ErrnoException) => {
    if (fault.code !== 'EPIPE') throw fault;
  });
}

runTerminal(process.argv.slice(2), {
  print: (line) => process.stdout.write(`${line}\n`),
  complain: (line) => process.stderr.write(`${line}\n`),
}).then(
  (code) => {
    process.exitCode = code;
  },
  (error: unknown) => {
    // A fault of ours: say all there is to say.
    process.stderr.write(
      `${error instanceof Error ? (error.stack ?? error.message) : String(error)}\n`,
    );
    process.exitCode = 70;
  },
);
