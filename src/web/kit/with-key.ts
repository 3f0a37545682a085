/** A copy with the key set, or without it when there is nothing to say: unknown stays absent. */
export function withKey<T extends object, K extends keyof T>(from: T, key: K, value: T[K] | undefined): T {
  const { [key]: _, ...rest } = from;
  return (value === undefined || value === '' ? rest : { ...rest, [key]: value }) as T;
}
