/** `npm run shop`: the samples' shop folder, or another, on this machine, under the policy that it must work under. */
import { serveShop } from './shop-server.ts';

const [folder = 'out/shop', port = '8080'] = process.argv.slice(2);
const { address } = await serveShop(folder, new Map(), { port: Number(port) });
console.log(`${address}/product.html (Ctrl+C ends it)`);
