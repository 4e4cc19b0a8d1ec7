/** `npm start`: builds the pages and serves the workbench on this machine alone. */
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
// Its main module also loads a usage reporter, which nothing here needs.
import { parseNumber } from 'office-addin-cli/lib/parse';
import { build } from './build';
import { builtFolder } from './build-folders';
import { serve, type Certificate, type RunningServer } from './web-server';

const WORKBENCH_PORT = 4173;
/** The manifest names this port. */
const ADD_IN_PORT = 3000;

const HELP = [
  'Usage: npm start -- [--port N] [--https]',
  '',
  'Builds the pages and serves the workbench on this machine alone, until Ctrl+C.',
  '',
  `  --port N  another port than ${WORKBENCH_PORT}; where that is taken, the next free one`,
  `  --https   the add-in's pages for Excel at https://localhost:${ADD_IN_PORT}, where the manifest looks for them`,
  '  --help    this',
];

const CERTIFICATE_COMMAND = 'npx office-addin-dev-certs@3.0.0 install';

function portGiven(text: string | undefined, otherwise: number): number {
  const port = parseNumber(text, '--port takes a number, such as --port 4200.') ?? otherwise;
  if (!Number.isInteger(port) || port < 0 || port > 65535) {
    throw new Error(`--port ${port} is not a port; give a whole number from 0 to 65535.`);
  }
  return port;
}

function developmentCertificate(): Certificate {
  const folder = path.join(homedir(), '.office-addin-dev-certs');
  const key = path.join(folder, 'localhost.key');
  const cert = path.join(folder, 'localhost.crt');
  if (!existsSync(key) || !existsSync(cert)) {
    throw new Error(
      `Excel opens add-ins by https only, and there is no certificate for localhost in ${folder}. ` +
        `Make one with: ${CERTIFICATE_COMMAND}`,
    );
  }
  return { key: readFileSync(key), cert: readFileSync(cert) };
}

/** What was asked for. Throws where an option is none of ours, with a sentence that names it. */
function wish() {
  try {
    return parseArgs({
      options: {
        port: { type: 'string' },
        https: { type: 'boolean', default: false },
        help: { type: 'boolean', short: 'h', default: false },
      },
    }).values;
  } catch (fault) {
    const sentence = fault instanceof Error ? fault.message : String(fault);
    throw new Error(`${sentence}\nFor help: npm start -- --help`, { cause: fault });
  }
}

async function start(): Promise<void> {
  const values = wish();
  if (values.help) {
    for (const line of HELP) console.log(line);
    return;
  }
  const forExcel = values.https;
  const port = portGiven(values.port, forExcel ? ADD_IN_PORT : WORKBENCH_PORT);
  // Asked for before the build, so that what is missing is said at once.
  const certificate = forExcel ? developmentCertificate() : undefined;

  const began = performance.now();
  // The workbench needs neither Office.js nor the script that Excel loads.
  await build('development', forExcel ? ['functions', 'taskpane'] : ['workbench']);
  const seconds = ((performance.now() - began) / 1000).toFixed(1);

  const server: RunningServer = await serve({
    folder: builtFolder,
    startPage: forExcel ? 'taskpane.html' : 'workbench.html',
    host: forExcel ? 'localhost' : '127.0.0.1',
    port,
    orNextFree: !forExcel,
    ...(certificate !== undefined && { certificate }),
  });
  console.log(`Built in ${seconds} s.`);
  if (forExcel) console.log(`Add-in: ${server.origin}/taskpane.html`);
  else console.log(`Workbench: ${server.origin}/workbench.html`);
  console.log('Stop with Ctrl+C.');
}

start().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
