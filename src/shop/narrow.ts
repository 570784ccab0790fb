/** Stand-in. */
import type { Kit } from '../describe/kit.ts';
import type { Aspect, Prepared } from '../draw/compose.ts';
import { wantedWidth } from '../draw/compose.ts';
import { render, renderInline } from '../pipeline.ts';
import type { PlaceOptions } from '../place/place.ts';
import { prepare } from '../prepare.ts';
export interface NarrowOptions
  extends Omit<Aspect, 'only' | 'page' | 'sheet' | 'step' | 'width'>,
    PlaceOptions {
  readonly width?: number;
}
export interface NarrowPiece {
  readonly name: string;
  readonly svg: string;
  readonly inline: string;
  readonly width: number;
  readonly height: number;
}
export interface Narrow {
  readonly prepared: Prepared;
  readonly drawing: NarrowPiece;
  readonly key: NarrowPiece;
  readonly cards: NarrowPiece;
  readonly leastType: number;
}
export async function narrowOf(
  kit: Kit,
  { width = 360, hand, effort, progress, store, ...aspect }: NarrowOptions = {},
): Promise<Narrow> {
  const prepared = await prepare(kit, undefined, {
    ...(hand ? { hand } : {}),
    ...(effort ? { effort } : {}),
    ...(progress ? { progress } : {}),
    ...(store ? { store } : {}),
  });
  const piece = (only: 'drawing' | 'key' | 'cards'): NarrowPiece => {
    const asked = { ...aspect, only: [only], width } as const;
    const a = { ...asked, width: Math.max(width, wantedWidth(prepared, asked) ?? 0) };
    const { name, svg } = render(prepared, a);
    return {
      name,
      svg,
      inline: renderInline(prepared, a),
      width: a.width,
      height: Number(/ height="(\d+)/.exec(svg)?.[1]),
    };
  };
  return { prepared, drawing: piece('drawing'), key: piece('key'), cards: piece('cards'), leastType: 11 };
}
