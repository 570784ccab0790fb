/** PNG from a drawing, set in the shipped font and no other, so that every machine makes the same picture. */
import { fileURLToPath } from 'node:url';

const FONTS = ['400Regular/Inter_400Regular.ttf', '700Bold/Inter_700Bold.ttf'];

/** Where neither a page nor a resolution says how large a picture is to be. */
const USUAL_WIDTH = 1600;
/** Dots to an inch of a picture for a printed page. */
const PRINTED = 300;
/** Drawing units to an inch, as on a web page. */
const UNITS_PER_INCH = 96;

/**
 * How wide a drawing's picture is to be, pixels: a page's by its size in millimetres, any other by its size as a web page would
 * show it, or 1600 where no resolution is asked for.
 *
 * @param dpi dots to an inch; 300 for a page unless told otherwise
 */
export function pixelsAcross(svg: string, dpi?: number): number {
  const [, size = '', unit = ''] = /^<svg[^>]* width="([\d.]+)(mm)?"/.exec(svg) ?? [];
  const inches = Number(size) / (unit === 'mm' ? 25.4 : UNITS_PER_INCH);
  return unit === 'mm' || dpi !== undefined ? Math.round(inches * (dpi ?? PRINTED)) : USUAL_WIDTH;
}

/** @param width pixels */
export async function svgToPng(svg: string, width = USUAL_WIDTH): Promise<Uint8Array> {
  // Loaded only when asked for: it is a native module and most runs write SVG alone.
  const { Resvg } = await import('@resvg/resvg-js');
  return new Resvg(svg, {
    font: {
      loadSystemFonts: false,
      fontFiles: FONTS.map((file) => fileURLToPath(import.meta.resolve(`@expo-google-fonts/inter/${file}`))),
      defaultFontFamily: 'Inter',
    },
    fitTo: { mode: 'width', value: width },
  })
    .render()
    .asPng();
}
