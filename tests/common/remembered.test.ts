import { expect, it } from 'vitest';
import { remembered } from '../../src/common/remembered.ts';

it('works out each object’s answer once, an absent one too, and tells alike objects apart', () => {
  const asked: object[] = [];
  const answer = remembered((of: { readonly n: number }) => {
    asked.push(of);
    return of.n === 0 ? undefined : [of.n];
  });
  const [one, like, none] = [{ n: 1 }, { n: 1 }, { n: 0 }];
  expect([one, one, like, none, none, one].map(answer)).toEqual([[1], [1], [1], undefined, undefined, [1]]);
  expect(asked).toEqual([one, like, none]);
  expect(asked[0]).toBe(one);
  expect(asked[1]).toBe(like);
});
