/**
 * A function that makes each value once: for what is costly to make and never changes.
 *
 * @example
 * const schemaFor = remember((units: FileUnits) => knifeSchema(units));
 */
export function remember<Key, Value>(make: (key: Key) => Value): (key: Key) => Value {
  const made = new Map<Key, { readonly value: Value }>();
  return (key) => {
    const known = made.get(key) ?? { value: make(key) };
    made.set(key, known);
    return known.value;
  };
}
