/** Small pieces that formulas are made of. */
import { NAMESPACE } from '../../functions/catalogue';

/** A call of one of our worksheet functions. */
export function call(id: string, ...args: readonly string[]): string {
  return `${NAMESPACE}.${id}(${args.join(',')})`;
}

/** A text as a formula writes it. */
export function text(content: string): string {
  return `"${content.replaceAll('"', '""')}"`;
}
