/** For what a program's own logic guarantees: where it does not hold, there is an error in this program. */

/**
 * The value, which is known to be there.
 *
 * @param what that is there, in words, for whoever must find the error
 * @throws Error when it is not
 */
export function must<T>(value: T | undefined | null, what: string): T {
  if (value === undefined || value === null) throw new Error(`there is no ${what}: an error in this program`);
  return value;
}

/**
 * An element of a list that is known to be long enough.
 *
 * @throws RangeError when it is not
 */
export function nth<T>(list: ArrayLike<T>, index: number): T {
  const value = list[index];
  if (value === undefined)
    throw new RangeError(`no element ${index} of ${list.length}: an error in this program`);
  return value;
}
