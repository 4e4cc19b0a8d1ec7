/** What the tests need beside Node, and what is to be done about what is missing: decisions only, nothing is run here. */

export interface SystemPackage {
  readonly debianPackage: string;
  /** What shows that it is there: a command on the PATH, or a font family that pages may use. */
  readonly sign: { readonly command: string } | { readonly font: string };
  /** What the tests need it for. */
  readonly why: string;
}

export const SYSTEM_PACKAGES: readonly SystemPackage[] = [
  { debianPackage: 'chromium', sign: { command: 'chromium' }, why: 'opens the pages' },
  {
    debianPackage: 'libreoffice-calc',
    sign: { command: 'soffice' },
    why: 'calculates written workbooks',
  },
  { debianPackage: 'units', sign: { command: 'units' }, why: 'knows the wire gauge' },
  { debianPackage: 'ngspice', sign: { command: 'ngspice' }, why: 'solves the same circuits' },
  { debianPackage: 'poppler-utils', sign: { command: 'pdftotext' }, why: 'reads printed sheets' },
  { debianPackage: 'fontconfig', sign: { command: 'fc-list' }, why: 'finds the fonts' },
  {
    debianPackage: 'fonts-dejavu-core',
    sign: { font: 'DejaVu Sans' },
    why: 'letters of the pages',
  },
  {
    debianPackage: 'fonts-liberation',
    sign: { font: 'Liberation Sans' },
    why: 'letters of printed sheets',
  },
];

/** What is on a machine, as far as it matters here. */
export interface Machine {
  hasCommand(command: string): boolean;
  hasFont(family: string): boolean;
}

export function missingFrom(machine: Machine): readonly SystemPackage[] {
  return SYSTEM_PACKAGES.filter(({ sign }) =>
    'command' in sign ? !machine.hasCommand(sign.command) : !machine.hasFont(sign.font),
  );
}

/** Why what is missing cannot be installed from here; null where it can be tried. */
export type Hindrance = 'no apt-get' | 'not root' | 'apt-get failed';

export function hindranceBefore(machine: Machine, isRoot: boolean): Hindrance | null {
  if (!machine.hasCommand('apt-get')) return 'no apt-get';
  return isRoot ? null : 'not root';
}

const REMEDIES: Readonly<Record<Hindrance, (packages: string) => string>> = {
  'no apt-get': (packages) =>
    `install them by this system's own means (in Debian the packages are ${packages})`,
  'not root': (packages) => `install them with: sudo apt-get install ${packages}`,
  'apt-get failed': (packages) =>
    `apt-get, whose words are above, did not bring them; once it works again, run: apt-get install ${packages}`,
};

/** One sentence: what is missing, what for, and how to get it. */
export function stopSentence(missing: readonly SystemPackage[], hindrance: Hindrance): string {
  const named = missing.map(({ sign, why }) =>
    'command' in sign ? `${sign.command} (${why})` : `the font ${sign.font} (${why})`,
  );
  const packages = missing.map(({ debianPackage }) => debianPackage).join(' ');
  return `The tests were not started, since this machine lacks ${named.join(', ')}: ${REMEDIES[hindrance](packages)}`;
}
