/** XML held to published schemas (W3C XML Schema 1.0) by libxml2. */
import { readdirSync, readFileSync } from 'node:fs';
import {
  xmlCleanupInputProvider,
  XmlBufferInputProvider,
  XmlDocument,
  XmlLibError,
  xmlRegisterInputProvider,
  XsdValidator,
} from 'libxml2-wasm';

/** Schema files by the addresses that they name one another by. */
export type SchemaFiles = Readonly<Record<string, Uint8Array>>;

export function schemaFiles(folder: URL): SchemaFiles {
  return Object.fromEntries(
    readdirSync(folder)
      .filter((name) => name.endsWith('.xsd'))
      .map((name) => [name, readFileSync(new URL(name, folder))]),
  );
}

const text = (file: Uint8Array) => new TextDecoder().decode(file);

function namespaceOf(file: Uint8Array): string {
  return /\btargetNamespace="([^"]*)"/.exec(text(file))?.[1] ?? '';
}

/**
 * One schema of all these files. Of files of one namespace libxml2 takes the first that is imported and no other, and so each
 * namespace is imported here first, as a whole.
 */
function wholeSchema(files: SchemaFiles): { readonly all: SchemaFiles; readonly top: string } {
  const spaces = new Map<string, string[]>();
  for (const [name, file] of Object.entries(files)) {
    const space = namespaceOf(file);
    spaces.set(space, [...(spaces.get(space) ?? []), name]);
  }
  const schema = (attributes: string, content: string) =>
    `<xs:schema xmlns:xs="http://www.w3.org/2001/XMLSchema"${attributes}>${content}</xs:schema>`;
  const wholes = [...spaces].map(([space, names], place) => {
    const includes = names.map((name) => `<xs:include schemaLocation="${name}"/>`).join('');
    const one = names.length === 1 ? names[0]! : `whole-${place}.xsd`;
    return { space, one, content: schema(` targetNamespace="${space}"`, includes) };
  });
  const imports = wholes.map(
    ({ space, one }) => `<xs:import namespace="${space}" schemaLocation="${one}"/>`,
  );
  const made = wholes
    .filter(({ one }) => !(one in files))
    .map(({ one, content }) => [one, new TextEncoder().encode(content)] as const);
  return { all: { ...files, ...Object.fromEntries(made) }, top: schema('', imports.join('')) };
}

/** What stands in a document where, and why it may not. */
function faults(fault: unknown): readonly string[] {
  if (!(fault instanceof XmlLibError)) throw fault;
  return fault.details.map(({ xpath = '', message }) => `${xpath} ${message.trim()}`);
}

export class XmlSchema {
  private readonly validator: XsdValidator;

  /** Throws with libxml2's words where the files are no schema. */
  constructor(files: SchemaFiles) {
    const { all, top } = wholeSchema(files);
    xmlRegisterInputProvider(new XmlBufferInputProvider({ ...all }));
    const document = XmlDocument.fromString(top);
    try {
      this.validator = XsdValidator.fromDoc(document);
    } finally {
      document.dispose();
      xmlCleanupInputProvider();
    }
  }

  /**
   * What of a document the schemas refuse, by its place; nothing where they hold. `look` sees the document first.
   */
  faultsOf(xml: Uint8Array | string, look?: (document: XmlDocument) => void): readonly string[] {
    let document: XmlDocument;
    try {
      document =
        typeof xml === 'string' ? XmlDocument.fromString(xml) : XmlDocument.fromBuffer(xml);
    } catch (fault) {
      return faults(fault);
    }
    try {
      look?.(document);
      this.validator.validate(document);
      return [];
    } catch (fault) {
      return faults(fault);
    } finally {
      document.dispose();
    }
  }
}
