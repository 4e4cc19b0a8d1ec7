/** XML as a plain tree that keeps the order of elements. */
import { createRequire } from 'node:module';

export interface XmlElement {
  readonly '#name': string;
  /** Attributes. */
  readonly $?: Readonly<Record<string, string>>;
  /** Child elements in their order. */
  readonly $$?: readonly XmlElement[];
  /** Text. */
  readonly _?: string;
}

interface XmlParser {
  parseStringPromise(text: string, options: object): Promise<unknown>;
}

// The parser that the platform's own manifest package reads manifests with.
const manifestPackage = createRequire(import.meta.resolve('office-addin-manifest'));
const parser = manifestPackage('xml2js') as XmlParser;

/** The root element. Rejects where the text is not well formed. */
export async function parseXml(text: string): Promise<XmlElement> {
  const root = await parser.parseStringPromise(text, {
    explicitRoot: false,
    explicitChildren: true,
    preserveChildrenOrder: true,
  });
  return root as XmlElement;
}

export function childrenOf(element: XmlElement): readonly XmlElement[] {
  return element.$$ ?? [];
}

/** An element and everything in it, from the top down. */
export function everythingIn(element: XmlElement): readonly XmlElement[] {
  return [element, ...childrenOf(element).flatMap(everythingIn)];
}

/** Every element of that name within another. */
export function named(element: XmlElement, name: string): readonly XmlElement[] {
  return everythingIn(element).filter((candidate) => candidate['#name'] === name);
}

/** The only element of that name within another. Throws where there are none or several. */
export function only(element: XmlElement, name: string): XmlElement {
  const [found, ...others] = named(element, name);
  if (found === undefined || others.length > 0) {
    throw new Error(
      `expected one ${name} in ${element['#name']}, found ${found ? 'several' : 'none'}`,
    );
  }
  return found;
}
