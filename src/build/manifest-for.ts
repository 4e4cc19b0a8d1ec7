/** The manifest for the place that serves the add-in. */

/** Where the committed manifest points: the development server on the user's own machine. */
export const DEVELOPMENT_ORIGIN = 'https://localhost:3000';

/** The manifest with every address moved to another https origin, given without a path. Throws where it is none. */
export function manifestFor(manifest: string, origin: string): string {
  const url = URL.canParse(origin) ? new URL(origin) : undefined;
  if (url?.protocol !== 'https:' || (origin !== url.origin && origin !== `${url.origin}/`)) {
    throw new Error(
      `"${origin}" is no https origin; give scheme and host alone, as in https://cables.example`,
    );
  }
  return manifest.replaceAll(DEVELOPMENT_ORIGIN, url.origin);
}
