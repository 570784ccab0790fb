/** PNG from a drawing, set in the shipped font and no other, so that every machine makes the same picture. */
import { fileURLToPath } from 'node:url';

const FONTS = ['400Regular/Inter_400Regular.ttf', '700Bold/Inter_700Bold.ttf'];

/** @param width pixels */
export async function svgToPng(svg: string, width = 1600): Promise<Uint8Array> {
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
