/**
 * The manifest: by its schema, and what that cannot see. Limits from the manifest reference of the Office add-ins documentation
 * (pages "resources", "namespace", "iconurl", "highresolutioniconurl") and the open specification MS-OWEMXML.
 */
import { OfficeAddinManifest } from 'office-addin-manifest';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { beforeAll, describe, expect, it } from 'vitest';
import { ICON_SIZES_PX } from '../src/build/icon-sizes';
import { DEVELOPMENT_ORIGIN, manifestFor } from '../src/build/manifest-for';
import { pngSizePx } from './png-size';
import { schemaFiles, XmlSchema } from './xml-schema';
import { childrenOf, everythingIn, named, only, parseXml, type XmlElement } from './xml-tree';

const file = new URL('../manifest.xml', import.meta.url);
const text = readFileSync(file, 'utf8');
const iconOf = (size: number) => new URL(`../assets/icon-${size}.png`, import.meta.url);

let manifest: XmlElement;
beforeAll(async () => {
  manifest = await parseXml(text);
});

const attribute = (element: XmlElement, name: string) => element.$?.[name] ?? '';
const namesOf = (elements: readonly XmlElement[]) => elements.map((element) => element['#name']);
const value = (element: XmlElement) => attribute(element, 'DefaultValue');

/** Elements of Resources: kind, how long their text may be. */
const RESOURCES = [
  ['bt:Image', 2048],
  ['bt:Url', 2048],
] as const;

function resources(): readonly XmlElement[] {
  return childrenOf(only(manifest, 'Resources')).flatMap(childrenOf);
}

describe('the schema of manifests', () => {
  let schema: XmlSchema;
  beforeAll(() => {
    schema = new XmlSchema(schemaFiles(new URL('manifest-schema/', import.meta.url)));
  });

  it.each([
    ['as it stands here', text],
    ['for a host', manifestFor(text, 'https://cables.example')],
    ['for a folder of a host', manifestFor(text, 'https://club.example/radio/cables/')],
  ])('holds for the manifest %s', (_where, manifest) => {
    expect(schema.faultsOf(manifest)).toEqual([]);
  });

  it.each<[string, string | RegExp, string, RegExp]>([
    ['a lifetime that is no word', 'lifetime="long"', 'lifetime="ever"', /lifetime.*'ever'/],
    ['an id that is no GUID', /<Id>[^<]*/, '<Id>loomsheet', /Id': .*'loomsheet'/],
    ['a version without numbers', /<Version>[^<]*/, '<Version>first', /Version': .*'first'/],
    ['a button without help', /<Supertip>.*?<\/Supertip>/s, '', /Supertip/],
    [
      'a runtime after what it runs',
      /(<Runtimes>.*?<\/Runtimes>)(.*)(<DesktopFormFactor>)/s,
      '$2$1$3',
      /Runtimes': This element is not expected/,
    ],
    ['a resource id of 33 characters', /resid="Loomsheet.Page"/, `resid="${'a'.repeat(33)}"`, /32/],
    ['a permission that is none', 'ReadWriteDocument</P', 'ReadWriteAll</P', /'ReadWriteAll'/],
    ['an element that nobody knows', '<Hosts>', '<Favours/><Hosts>', /Favours.* is not expected/],
  ])('refuses %s', (_what, part, instead, said) => {
    const changed = text.replace(part, instead);
    expect(changed).not.toBe(text);
    expect(schema.faultsOf(changed).join('\n')).toMatch(said);
  });
});

describe('resources', () => {
  it('are all defined once and all used', () => {
    const defined = resources().map((element) => attribute(element, 'id'));
    const used = everythingIn(manifest)
      .map((element) => attribute(element, 'resid'))
      .filter((resid) => resid !== '');
    expect(new Set(defined).size).toBe(defined.length);
    expect([...new Set(used)].sort()).toEqual([...defined].sort());
  });

  it('have ids within 32 characters', () => {
    for (const element of resources())
      expect(attribute(element, 'id').length).toBeLessThanOrEqual(32);
  });

  it.each(RESOURCES)('%s holds https addresses within %i characters', (kind, most) => {
    const addresses = named(only(manifest, 'Resources'), kind).map(value);
    expect(addresses.length).toBeGreaterThan(0);
    for (const address of addresses) {
      expect(new URL(address).protocol).toBe('https:');
      expect(address.length).toBeLessThanOrEqual(most);
    }
  });

  it.each([
    ['bt:ShortStrings', 125],
    ['bt:LongStrings', 250],
  ] as const)('%s keep within %i characters', (kind, most) => {
    const strings = childrenOf(only(manifest, kind)).map(value);
    expect(strings.length).toBeGreaterThan(0);
    for (const string of strings) {
      expect(string).not.toBe('');
      expect(string.length).toBeLessThanOrEqual(most);
    }
  });
});

describe('icons', () => {
  it.each(ICON_SIZES_PX)('%i px is drawn in that size', (size) => {
    expect(pngSizePx(iconOf(size))).toEqual({ width: size, height: size });
  });

  it('are files of the size that the manifest claims', () => {
    const images = new Map(
      named(only(manifest, 'bt:Images'), 'bt:Image').map((e) => [attribute(e, 'id'), value(e)]),
    );
    const claimed = named(manifest, 'Icon')
      .flatMap(childrenOf)
      .map((image) => [attribute(image, 'size'), images.get(attribute(image, 'resid'))] as const);
    claimed.push(['32', value(only(manifest, 'IconUrl'))]);
    claimed.push(['64', value(only(manifest, 'HighResolutionIconUrl'))]);
    for (const [size, address] of claimed) {
      expect(address).toBe(`${DEVELOPMENT_ORIGIN}/assets/icon-${size}.png`);
      expect(ICON_SIZES_PX.map(String)).toContain(size);
    }
  });

  it('come in the sizes that every button must have', () => {
    for (const icon of named(manifest, 'Icon')) {
      const sizes = childrenOf(icon).map((image) => attribute(image, 'size'));
      expect(sizes).toEqual(expect.arrayContaining(['16', '32', '80']));
    }
  });
});

describe('order of elements', () => {
  it('is the one that Office reads in a host', () => {
    const host = only(only(manifest, 'VersionOverrides'), 'Host');
    expect(namesOf(childrenOf(host))).toEqual(['Runtimes', 'AllFormFactors', 'DesktopFormFactor']);
    const [functions] = named(host, 'ExtensionPoint');
    expect(namesOf(childrenOf(functions!))).toEqual(['Script', 'Page', 'Metadata', 'Namespace']);
  });

  it('is the one that Office reads at the top', () => {
    const order = [
      ...['Id', 'Version', 'ProviderName', 'DefaultLocale', 'DisplayName', 'Description'],
      ...['IconUrl', 'HighResolutionIconUrl', 'Hosts', 'Requirements', 'DefaultSettings'],
      ...['Permissions', 'VersionOverrides'],
    ];
    expect(namesOf(childrenOf(manifest))).toEqual(order);
  });
});

describe('the shared runtime', () => {
  it('is one page for runtime, functions, commands and pane', () => {
    const overrides = only(manifest, 'VersionOverrides');
    const page = attribute(only(overrides, 'Runtime'), 'resid');
    expect(attribute(only(overrides, 'Runtime'), 'lifetime')).toBe('long');
    expect(attribute(only(only(overrides, 'Page'), 'SourceLocation'), 'resid')).toBe(page);
    expect(attribute(only(overrides, 'FunctionFile'), 'resid')).toBe(page);
    expect(attribute(only(only(overrides, 'Action'), 'SourceLocation'), 'resid')).toBe(page);
    const address = resources().find((element) => attribute(element, 'id') === page);
    expect(value(address!)).toBe(value(only(only(manifest, 'DefaultSettings'), 'SourceLocation')));
  });

  it('is asked for', () => {
    const sets = named(manifest, 'Set').map((set) => [
      attribute(set, 'Name'),
      attribute(set, 'MinVersion'),
    ]);
    expect(sets).toContainEqual(['SharedRuntime', '1.1']);
    expect(sets.map(([name]) => name)).toEqual([
      'SharedRuntime',
      'CustomFunctionsRuntime',
      'ExcelApi',
    ]);
  });
});

describe('what it asks for', () => {
  it('stands beside its reason', () => {
    for (const name of ['Requirements', 'Permissions']) {
      const [reason] = new RegExp(`<!--([^>]*)-->\\s*<${name}>`).exec(text)?.slice(1) ?? [];
      for (const asked of name === 'Permissions'
        ? [only(manifest, name)._]
        : named(manifest, 'Set').map((set) => attribute(set, 'Name'))) {
        expect(reason).toContain(asked);
      }
    }
  });

  it('is one permission, and no host but its own', () => {
    expect(only(manifest, 'Permissions')._).toBe('ReadWriteDocument');
    const elements = namesOf(everythingIn(manifest));
    for (const more of ['AppDomains', 'WebApplicationInfo', 'Scopes', 'ExtendedPermissions']) {
      expect(elements).not.toContain(more);
    }
  });
});

describe('identity', () => {
  it('is a random GUID (version 4, RFC 9562)', () => {
    expect(only(manifest, 'Id')._).toMatch(
      /^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/,
    );
  });

  it('is the one that Excel knows the add-in by in saved workbooks, and stays it', () => {
    expect(only(manifest, 'Id')._).toBe('c6025de8-ad0f-423e-973d-341db1ff00ca');
  });

  it('is of the version that the package is of', () => {
    const { version } = JSON.parse(
      readFileSync(new URL('../package.json', import.meta.url), 'utf8'),
    ) as { version: string };
    expect(only(manifest, 'Version')._).toBe(`${version}.0`);
  });

  it('has the namespace that workbooks write', () => {
    const resid = attribute(only(manifest, 'Namespace'), 'resid');
    const namespace = resources().find((element) => attribute(element, 'id') === resid);
    expect(value(namespace!)).toBe('LOOM');
  });

  it('is read alike by the platform itself', async () => {
    const info = await OfficeAddinManifest.readManifestFile(fileURLToPath(file));
    expect(info).toMatchObject({
      id: only(manifest, 'Id')._,
      displayName: 'Loomsheet',
      officeAppType: 'TaskPaneApp',
      hosts: ['Workbook'],
    });
  });
});

describe('a hosted build', () => {
  it('moves every address and nothing else', () => {
    const hosted = manifestFor(text, 'https://cables.example/');
    expect(hosted).not.toContain('localhost');
    expect(hosted.replaceAll('https://cables.example', DEVELOPMENT_ORIGIN)).toBe(text);
  });

  it('may stand in a folder of a site', async () => {
    const hosted = manifestFor(text, 'https://club.example/radio/cables/');
    const root = await parseXml(hosted);
    const addresses = [
      ...childrenOf(only(root, 'Resources')).flatMap(childrenOf),
      ...['IconUrl', 'HighResolutionIconUrl', 'SourceLocation'].map(
        (name) => named(root, name)[0]!,
      ),
    ]
      .map(value)
      .filter((one) => one.includes('://'));
    expect(addresses.length).toBeGreaterThan(7);
    for (const address of addresses) {
      expect(address).toMatch(/^https:\/\/club\.example\/radio\/cables\/(assets\/)?[\w.-]+$/);
    }
  });

  it.each([
    ...['http://cables.example', 'cables.example', '', 'https://'],
    ...['https://cables.example/?a=1', 'https://cables.example/#a', 'https://me@cables.example'],
    ...['https://Cables.example', 'https://cables.example/a/../b', `https://a.example/"x`],
    `https://cables.example/${'a'.repeat(2048)}`,
  ])('refuses "%s"', (address) => {
    expect(() => manifestFor(text, address)).toThrow(/no address to host at|too long/);
  });

  it('is read by the platform itself', async () => {
    const file = path.join(mkdtempSync(path.join(tmpdir(), 'loomsheet-manifest-')), 'manifest.xml');
    writeFileSync(file, manifestFor(text, 'https://club.example/cables'));
    const info = await OfficeAddinManifest.readManifestFile(file);
    rmSync(path.dirname(file), { recursive: true });
    expect(info.defaultSettings?.sourceLocation).toBe('https://club.example/cables/taskpane.html');
    expect(info.permissions).toBe('ReadWriteDocument');
  });
});
