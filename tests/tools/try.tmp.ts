import { readFileSync, writeFileSync } from 'node:fs';
import { parse } from 'yaml';
import { readKit } from '/work/main/src/describe/read.ts';
import { draw } from '/work/main/src/pipeline.ts';
import { arrangementSchema } from '/work/main/src/place/arrangement.ts';
import { Resvg } from '@resvg/resvg-js';
const names = process.argv.slice(2);
for (const n of names) {
  const [id, arr] = n.split(':');
  const r = readKit(readFileSync(`/work/main/samples/${id}.yaml`, 'utf8'), id!);
  if (!r.kit) { console.log(r.problems); continue; }
  const a = arrangementSchema.parse(parse(readFileSync(`/work/main/layouts/${arr ?? r.kit.arrangement}.yaml`, 'utf8')));
  await draw(r.kit, a);
  const t = performance.now();
  const svg = await draw(r.kit, a);
  console.log(id, 'warm ms', (performance.now() - t).toFixed(0), svg.length);
  writeFileSync(`/tmp/${id}.svg`, svg);
  const font = ['400Regular/Inter_400Regular', '700Bold/Inter_700Bold'].map((f) => `/work/main/node_modules/@expo-google-fonts/inter/${f}.ttf`);
  writeFileSync(`/tmp/${id}.png`, new Resvg(svg, { font: { loadSystemFonts: false, fontFiles: font, defaultFontFamily: 'Inter' }, fitTo: { mode: 'width', value: 1500 } }).render().asPng());
}
