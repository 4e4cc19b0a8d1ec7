/** `npm run build`: everything minified into `dist`, with its manifest, for the host that LOOM_ORIGIN names. */
import { rmSync } from 'node:fs';
import { build } from './build';
import { builtFolder } from './build-folders';
import { hostingAsked } from './hosting';
import { DEVELOPMENT_ORIGIN } from './manifest-for';
import { writeOffline } from './offline/write-offline';
import { stampPages } from './stamp-pages';

async function main(): Promise<void> {
  const { address, officeJs } = hostingAsked(process.env);
  // Parts carry their content in their names: those of the last build would stay.
  rmSync(builtFolder, { recursive: true, force: true });
  await build('production');
  stampPages(builtFolder);
  const { name, files } = writeOffline(builtFolder);
  console.log(
    `Built into dist for ${address ?? `${DEVELOPMENT_ORIGIN} (LOOM_ORIGIN names another host)`}.`,
  );
  console.log(
    officeJs === 'own'
      ? 'Office.js: a copy beside the pane.'
      : 'Office.js: from the platform’s delivery address.',
  );
  console.log(`Works without a network: ${Object.keys(files).length} files, build ${name}.`);
}

main().catch((fault: unknown) => {
  console.error(fault instanceof Error ? fault.message : fault);
  process.exitCode = 1;
});
