/** The manifest for the place that serves the add-in. */

/** Where the committed manifest points: the development server on the user's own machine. */
export const DEVELOPMENT_ORIGIN = 'https://localhost:3000';

/** The longest address that Office reads in a manifest ("resources" of its manifest reference). */
const LONGEST_ADDRESS = 2048;

/** The address that an add-in is served from, without a slash at its end. Throws where Office would not take it. */
export function hostAddress(given: string): string {
  const url = URL.canParse(given) ? new URL(given) : undefined;
  const bare = url?.href.replace(/\/+$/, '') ?? '';
  if (url?.protocol !== 'https:' || bare !== given.replace(/\/+$/, '') || /[?#@"'<>&]/.test(bare)) {
    throw new Error(
      `"${given}" is no address to host at; give https, the host in small letters and its folder if it has one, as in https://cables.example or https://club.example/cables`,
    );
  }
  if (bare.length > LONGEST_ADDRESS / 2) throw new Error(`"${given}" is too long for a manifest`);
  return bare;
}

/** The manifest with every address moved to another https address. Throws where it is none. */
export function manifestFor(manifest: string, address: string): string {
  return manifest.replaceAll(DEVELOPMENT_ORIGIN, hostAddress(address));
}
