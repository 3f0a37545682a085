/** Whether two pieces of a job say the same. A store may hand back the keys of an object in another order. */
export function isSame(a: unknown, b: unknown): boolean {
  if (Object.is(a, b)) return true;
  if (typeof a !== 'object' || typeof b !== 'object' || a === null || b === null) return false;
  if (Array.isArray(a) || Array.isArray(b)) {
    return Array.isArray(a) && Array.isArray(b) && a.length === b.length && a.every((item, i) => isSame(item, b[i]));
  }
  const keysOf = (value: object): string[] =>
    Object.keys(value).filter((key) => (value as Record<string, unknown>)[key] !== undefined);
  const keys = keysOf(a);
  return (
    keys.length === keysOf(b).length &&
    keys.every((key) => isSame((a as Record<string, unknown>)[key], (b as Record<string, unknown>)[key]))
  );
}
