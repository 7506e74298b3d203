/** A function of an object, worked out once for each and kept as long as the object is. */
export function onceFor<Of extends object, Result>(work: (of: Of) => Result): (of: Of) => Result {
  const known = new WeakMap<Of, { readonly result: Result }>();
  return (of) => {
    let found = known.get(of);
    if (!found) known.set(of, (found = { result: work(of) }));
    return found.result;
  };
}
