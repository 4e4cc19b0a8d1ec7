/**
 * A loader of the build: the grid's packages come with each field of a class set through a helper (`defineProperty`), which
 * the browser cannot make fast, and the grid makes objects by the hundred thousand. It sets them plainly again.
 */
const FIELD = /_defineProperty\(this, "([\w$]+)", /g;

/** The script with `_defineProperty(this, "x", value)` as `this.x = (value)`: the last bracket closes both. */
export default function plainFields(script: string): string {
  return script.replace(FIELD, 'this.$1 = (');
}
