import { Resvg } from '@resvg/resvg-js';
import { readFileSync, writeFileSync, readdirSync } from 'node:fs';
const dir='/work/main/node_modules/@expo-google-fonts/inter';
const fontFiles=[dir+'/400Regular/Inter_400Regular.ttf',dir+'/700Bold/Inter_700Bold.ttf'];
const [,, svg, png, w]=process.argv;
const r=new Resvg(readFileSync(svg,'utf8'),{font:{fontFiles,loadSystemFonts:false,defaultFontFamily:'Inter'},fitTo:{mode:'width',value:Number(w??1400)},background:'#fff'});
writeFileSync(png,r.render().asPng());
