/** Flipping the switches of a figure shows what `loads --json` says, in every state; by mouse and by keyboard. */
import { join } from 'node:path';
import type { Locator } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { liveJoints } from '../../src/annotate/live.ts';
import { addLoads } from '../../src/commands/loads.ts';
import { labelOf } from '../../src/describe/kit.ts';
import { figuresIn } from '../../src/messages/figures.ts';
import { run } from '../commands/run.ts';
import { figureOf, kitIn, LINK, placed, ready, SCRIPT_TAG, sampleFiles, site } from './figures.ts';

interface Loads {
  readonly positions: readonly {
    readonly switches: Readonly<Record<string, number>>;
    readonly sounding: readonly string[];
    readonly pickups: Readonly<
      Record<string, { readonly dcLoad: number | 'open'; readonly signalLoad: number | 'open' }>
    >;
  }[];
}

const loadsOf = async (file: string): Promise<Loads> =>
  JSON.parse((await run(addLoads, 'loads', file, '--json')).stdout);

/** Several switches, a blend, a kill button, a rotary, two outputs, coils alone, and none to choose. */
const circuits = [
  'bass-ss-blend-1v1t',
  'bass-ss-2v2t-stereo',
  'h-1v1t',
  'h-1v1t-kill',
  'h-1v1t-rotary-caps',
  'hh-toggle-3-1v1t-series-parallel',
  'hsh-lever-5-1v1t-auto-split',
  'ss-lever-3-1v1t-phase',
].map((name) => join('samples/circuits', `${name}.yaml`));

const { visit } = site();

/** What the card says that is seen. */
const cardOf = (figure: Locator) =>
  figure.evaluate((root) => {
    const cards = [...root.querySelectorAll<HTMLElement>('.slf-card')].filter(
      (card) => getComputedStyle(card).visibility === 'visible',
    );
    return cards.map((card) => ({
      state: card.dataset.state,
      pickups: [...card.querySelectorAll<HTMLElement>('.slf-pickup')].map((pickup) => ({
        name: pickup.dataset.pickup,
        figures: [...pickup.querySelectorAll('b')].map(({ textContent }) => textContent),
      })),
    }));
  });

/** Numbers of the joints that are not dimmed in the drawing that is seen. */
const liveIn = (figure: Locator): Promise<readonly number[]> =>
  figure.evaluate((root) =>
    [...root.querySelectorAll('.slf-view')]
      .filter((view) => view.getClientRects().length > 0)
      .flatMap((view) => [...view.querySelectorAll('[data-joint]:not(.sl-off)')])
      .map((joint) => Number(joint.getAttribute('data-joint')))
      .sort((a, b) => a - b),
  );

describe.each([...sampleFiles, ...circuits])('%s', (file) => {
  it('in every state: its card alone, with the loads that are computed, and its live joints', async () => {
    const prepared = await placed(await kitIn(file));
    const { circuit } = prepared;
    const { kit } = circuit;
    const loads = await loadsOf(file);
    const figures = figuresIn(kit.language);
    const ohms = (value: number | 'open'): string =>
      figures.figure(value === 'open' ? Number.POSITIVE_INFINITY : value, 'ohm');
    expect(loads.positions).toHaveLength(circuit.states.length);
    await visit(LINK, figureOf(prepared) + SCRIPT_TAG, async (page, figure) => {
      await ready(page);
      // From the last to the first, as the first is shown already.
      for (const [i, position] of [...loads.positions.entries()].reverse()) {
        for (const [name, value] of Object.entries(position.switches))
          await figure.locator(`[data-switch="${name}"] input[value="${value}"]`).check();
        const where = `${file} ${JSON.stringify(position.switches)}`;
        expect(await cardOf(figure), where).toEqual([
          {
            state: String(i + 1),
            pickups: Object.entries(position.pickups).map(([name, { dcLoad, signalLoad }]) => ({
              name,
              figures: [ohms(dcLoad), ohms(signalLoad)],
            })),
          },
        ]);
        const sounds = await figure.locator(`.slf-card[data-state="${i + 1}"] .slf-sounds`).textContent();
        for (const name of position.sounding) expect(sounds, where).toContain(labelOf(kit, name));
        const state = circuit.states[i];
        if (!state) throw new Error(where);
        expect(await liveIn(figure), where).toEqual(
          [...liveJoints(circuit, state)].map((joint) => joint + 1).sort((a, b) => a - b),
        );
      }
    });
  });
});

it('what is shown of the contacts is that of the state alone', async () => {
  const prepared = await placed(await kitIn('samples/kestrel-hss.yaml'));
  await visit(LINK, figureOf(prepared) + SCRIPT_TAG, async (page, figure) => {
    await ready(page);
    for (const state of [4, 2, 1]) {
      await figure.locator(`input[value="${state}"]`).check();
      const wrong = await figure.evaluate(
        (root, now) =>
          [...root.querySelectorAll('[data-shown]')].filter(
            (one) =>
              one.getAttribute('data-shown')?.split(' ').includes(now) ===
              (one.getAttribute('display') === 'none'),
          ).length,
        String(state),
      );
      expect(wrong).toBe(0);
    }
    expect(await figure.locator('[data-shown][display="none"]').count()).toBeGreaterThan(0);
  });
});

it('by keyboard: arrows turn a switch, which is one stop of the Tab key; what sounds is told politely', async () => {
  const prepared = await placed(await kitIn('samples/circuits/hh-toggle-3-1v1t-series-parallel.yaml'));
  const labels = prepared.circuit.states.map(({ sounding }) => sounding.length);
  expect(labels.length).toBeGreaterThan(3);
  await visit(LINK, figureOf(prepared) + SCRIPT_TAG, async (page, figure) => {
    await ready(page);
    const groups = figure.getByRole('radiogroup');
    const count = await groups.count();
    expect(count).toBe(Object.keys(prepared.circuit.states[0]?.positions ?? {}).length);
    // Nothing is told before something is changed.
    expect(await figure.getByRole('status').textContent()).toBe('');
    for (let i = 0; i < count; i++) {
      await page.keyboard.press('Tab');
      const first = groups.nth(i).getByRole('radio').first();
      expect(
        await first.evaluate((radio) => radio === (radio.getRootNode() as ShadowRoot).activeElement),
      ).toBe(true);
      await page.keyboard.press('ArrowRight');
      expect(await groups.nth(i).getByRole('radio').nth(1).isChecked()).toBe(true);
      const told = await figure.getByRole('status').textContent();
      const [card] = await cardOf(figure);
      const shown = figure.locator(`.slf-card[data-state="${card?.state}"]`);
      expect(told).toContain(await shown.locator('.slf-sounds').textContent());
      expect(told).toContain(await shown.getAttribute('aria-label'));
    }
    expect(await figure.getByRole('status').getAttribute('aria-live')).toBeNull();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Space');
    expect(await figure.locator('[data-act=path]').getAttribute('aria-pressed')).toBe('false');
    expect(await figure.locator('.sl-off').count()).toBe(0);
    await figure.locator('[data-act=reset]').click();
    expect((await cardOf(figure)).map(({ state }) => state)).toEqual(['1']);
    expect(await figure.locator('[data-act=path]').getAttribute('aria-pressed')).toBe('true');
  });
});
