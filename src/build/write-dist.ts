/** `npm run build`: everything minified into `dist`, with its manifest, for the host that LOOM_ORIGIN names. */
import { builtFolder } from './build-folders';
import { hostingAsked } from './hosting';
import { DEVELOPMENT_ORIGIN } from './manifest-for';
import { buildShipped } from './shipped-build';

async function main(): Promise<void> {
  const { address, officeJs } = hostingAsked(process.env);
  const { name, files } = await buildShipped(builtFolder);
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
