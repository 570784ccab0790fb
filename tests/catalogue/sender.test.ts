/** A new address makes leaflets again, a new website shop pages too, and neither anything else. */
import { expect, it } from 'vitest';
import { madeKey, Texts } from '../../src/catalogue/build/keys.ts';
import type { Job, Output } from '../../src/catalogue/catalogue.ts';
import { loadJob } from '../../src/catalogue/load-job.ts';
import { kitText, listed } from './folder.ts';

it.each([
  ['drawing', false, false],
  ['loads', false, false],
  ['leaflet', true, true],
  ['booklet', true, true],
  ['shop', false, true],
] as const)('%s', async (output, again, ofWebsite) => {
  const { catalogue } = await listed({
    'a.yaml': kitText('a'),
    'solderleaf.yaml': 'workshop: { name: A, address: Here }\nkits: [a.yaml]\n',
  });
  const [found] = catalogue?.jobs ?? [];
  if (!found?.workshop) throw new Error('no job with a workshop');
  const { kit } = await loadJob(found);
  if (!kit) throw new Error('no kit');
  const job: Job = { ...found, outputs: [output as Output] };
  const moved: Job = { ...job, workshop: { ...found.workshop, address: 'There' } };
  expect(madeKey('program', kit, moved) !== madeKey('program', kit, job)).toBe(again);
  expect(new Texts('program').keyOf(moved) !== new Texts('program').keyOf(job)).toBe(again);
  const online: Job = { ...job, workshop: { ...found.workshop, website: 'https://www.example.com/' } };
  expect(madeKey('program', kit, online) !== madeKey('program', kit, job)).toBe(ofWebsite);
  const based: Job = { ...job, base: 'https://www.example.com/drawings/' };
  expect(madeKey('program', kit, based) !== madeKey('program', kit, job)).toBe(output === 'shop');
  expect(new Texts('program').keyOf(based) !== new Texts('program').keyOf(job)).toBe(output === 'shop');
});
