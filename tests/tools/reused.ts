/** Pages of a browser that tests use one after another: to open a new one takes longer than most of what is looked at on it. */

export interface Reused<Item> {
  /** One that was put back under this key, or a new one. */
  take(key: string, make: () => Promise<Item>): Promise<Item>;
  putBack(key: string, item: Item): void;
}

/** @param Item something that is as good as new when it is put back */
export function reused<Item>(): Reused<Item> {
  const free = new Map<string, Item[]>();
  return {
    take: async (key, make) => free.get(key)?.pop() ?? make(),
    putBack: (key, item) => void free.set(key, [...(free.get(key) ?? []), item]),
  };
}

/** Run in a page before it is left: takes away what it keeps for another of its address, and the name of its window. */
export const FORGET = `(() => {
  localStorage.clear();
  sessionStorage.clear();
  for (const one of document.cookie.split('; ')) document.cookie = one.replace(/=.*/, '') + '=; max-age=0';
  window.name = '';
})()`;
