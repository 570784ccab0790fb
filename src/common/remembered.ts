/** What never changes need be worked out only once. */

/**
 * The same function, which remembers what it answered for an object for as long as that object is in use. Only for functions
 * of objects that nobody changes, as all that goes from stage to stage is.
 */
export function remembered<K extends object, V>(workOut: (of: K) => V): (of: K) => V {
  const known = new WeakMap<K, { readonly answer: V }>();
  return (of) => {
    const before = known.get(of);
    if (before) return before.answer;
    const answer = workOut(of);
    known.set(of, { answer });
    return answer;
  };
}
