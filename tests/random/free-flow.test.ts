import { it } from 'vitest';
import { checkRandom } from './check.ts';

it('random circuits in free flow: nothing is found', { timeout: 600_000 }, () =>
  checkRandom(40, ['free-flow']),
);
