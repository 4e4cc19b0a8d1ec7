/**
 * `npm start`: builds the pages and serves the workbench on this machine alone.
 *   --port N   another port (default 4173, or the next free one)
 *   --https    serves the add-in's pages at https://localhost:3000, where the manifest looks for them
 */
import { existsSync, readFileSync } from 'node:fs';
import { homedir } from 'node:os';
import path from 'node:path';
import { parseArgs } from 'node:util';
// Its main module also loads a usage reporter, which nothing here needs.
import { parseNumber } from 'office-addin-cli/lib/parse';
import { build, builtFolder } from './build';
import { serve, type Certificate, type RunningServer } from './web-server';

const WORKBENCH_PORT = 4173;
/** The manifest names this port. */
const ADD_IN_PORT = 3000;
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

async function start(): Promise<void> {
  const { values } = parseArgs({
    options: { port: { type: 'string' }, https: { type: 'boolean', default: false } },
  });
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
