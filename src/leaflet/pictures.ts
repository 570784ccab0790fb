/** The drawings of a leaflet, each as large as the room it is given. */
import type { Prepared } from '../draw/compose.ts';
import type { ThemeName } from '../draw/theme.ts';
import { drawResponse, render } from '../pipeline.ts';
import type { Picture } from './document.ts';

/** Room for a picture, millimetres. */
export interface Room {
  readonly width: number;
  readonly height: number;
}

/** Millimetres of a drawing unit at most: larger, lines look coarse and words shout. */
const MOST_SCALE = 0.3;

/** A drawing scaled to a room. */
function fitted(svg: string, room: Room, most = MOST_SCALE): Picture {
  const [, width = 0, height = 0] = (/ viewBox="0 0 ([\d.]+) ([\d.]+)"/.exec(svg) ?? []).map(Number);
  const scale = Math.min(most, room.width / width, room.height / height);
  return { svg, width: width * scale, height: height * scale, alt: altOf(svg) };
}

/** What the drawing itself says for those who cannot see it. */
const altOf = (svg: string): string =>
  [/<title[^>]*>([^<]*)</, /<desc[^>]*>([^<]*)</]
    .map((pattern) => (pattern.exec(svg)?.[1] ?? '').trim())
    .filter((words) => words !== '')
    .join('. ')
    .replaceAll('&lt;', '<')
    .replaceAll('&gt;', '>')
    .replaceAll('&quot;', '"')
    .replaceAll('&amp;', '&');

export class Pictures {
  readonly #prepared: Prepared;
  readonly #theme: ThemeName;
  constructor(prepared: Prepared, theme: ThemeName) {
    this.#prepared = prepared;
    this.#theme = theme;
  }

  /** The wiring by itself. */
  wiring(room: Room): Picture {
    return fitted(render(this.#prepared, { theme: this.#theme, only: ['drawing'] }).svg, room);
  }

  /** The wiring up to a step, at the same place and scale in every step. */
  step(step: number, room: Room): Picture {
    return fitted(render(this.#prepared, { theme: this.#theme, only: ['drawing'], step }).svg, room);
  }

  /** What lines and signs mean. */
  key(room: Room): Picture {
    return fitted(render(this.#prepared, { theme: this.#theme, only: ['key'] }).svg, room);
  }

  response(room: Room): Picture {
    return fitted(drawResponse(this.#prepared.circuit.kit), room);
  }
}
