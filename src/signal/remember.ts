/** Looks a key up and makes its value on first use. */
export function remembered<K, V>(
  store: { get(key: K): V | undefined; set(key: K, value: V): unknown },
  key: K,
  make: () => V,
): V {
  const found = store.get(key);
  if (found !== undefined) return found;
  const made = make();
  store.set(key, made);
  return made;
}
