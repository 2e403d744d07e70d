/** The one of several with the largest figure, the first of equals; undefined of none. */
export function extreme<T>(all: readonly T[], figure: (one: T) => number): T | undefined {
  return all.reduce<T | undefined>(
    (most, one) => (most !== undefined && figure(most) >= figure(one) ? most : one),
    undefined,
  );
}
