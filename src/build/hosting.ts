/** What a build is for, as its environment says. */
import { hostAddress } from './manifest-for';

/** Where the pane takes Office.js from: the platform's delivery address, or a copy beside the page. */
export type OfficeJs = 'delivered' | 'own' | 'none';

export interface Hosting {
  /** Where the built folder will be served; undefined for the development server. */
  readonly address: string | undefined;
  readonly officeJs: Exclude<OfficeJs, 'none'>;
}

/**
 * LOOM_ORIGIN is the https address of the host, with its folder where it has one. LOOM_OFFICE_JS=own keeps a copy of
 * Office.js beside the page, for a network that does not reach the platform's delivery address. Throws on another word,
 * and where Office would not take the address.
 */
export function hostingAsked(environment: Readonly<Record<string, string | undefined>>): Hosting {
  const address = environment['LOOM_ORIGIN'];
  const word = environment['LOOM_OFFICE_JS'];
  if (word !== undefined && word !== 'own' && word !== 'delivered') {
    throw new Error(
      `LOOM_OFFICE_JS is "${word}"; write own for a copy of ours, delivered for the platform's address, or leave it out`,
    );
  }
  return {
    address: address === undefined ? undefined : hostAddress(address),
    officeJs: word ?? (address === undefined ? 'own' : 'delivered'),
  };
}
