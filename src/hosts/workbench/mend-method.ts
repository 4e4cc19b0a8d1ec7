/** A method of the grid's own classes put right, for all that are made of them. */
const mended = new WeakMap<object, Set<PropertyKey>>();

/** Puts another method in the place of one, made from it; once in a page, however many grids there are. */
export function mendMethod<T extends object, K extends keyof T>(
  prototype: T,
  name: K,
  make: (original: T[K]) => T[K],
): void {
  const names = mended.get(prototype) ?? new Set<PropertyKey>();
  if (names.has(name)) return;
  mended.set(prototype, names.add(name));
  prototype[name] = make(prototype[name]);
}
