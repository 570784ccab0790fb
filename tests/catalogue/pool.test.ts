/** How work is handed out. */
import { expect, it } from 'vitest';
import { inParallel } from '../../src/catalogue/build/pool.ts';

it('everything is done once, never more at a time than asked for, each beginning apart from the others', async () => {
  for (const [count, atOnce] of [
    [0, 2],
    [1, 4],
    [10, 3],
    [11, 2],
  ] as const) {
    const begun: number[] = [];
    let [atWork, most] = [0, 0];
    await inParallel(
      Array.from({ length: count }, (_, i) => i),
      atOnce,
      async (item) => {
        begun.push(item);
        most = Math.max(most, ++atWork);
        await new Promise((end) => setTimeout(end, item % 3));
        atWork--;
      },
    );
    expect([...begun].sort((a, b) => a - b)).toEqual(Array.from({ length: count }, (_, i) => i));
    expect(most).toBe(Math.min(count, atOnce));
    const starts = Array.from({ length: most }, (_, i) => Math.floor((i * count) / most));
    expect(begun.slice(0, most)).toEqual(starts);
  }
});
it('what throws ends all of it', async () => {
  const work = inParallel([1, 2], 1, async (item) => {
    if (item === 2) throw new Error('two');
  });
  await expect(work).rejects.toThrow('two');
});
