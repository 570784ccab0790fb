/**
 * A web server for a folder, as strict as the strictest shop: every answer carries the policy under which what `embed` writes must
 * work. It remembers what was asked for in vain and what browsers report of breaches, which not all of them say to a page's listener.
 */
import { readFileSync } from 'node:fs';
import { createServer } from 'node:http';
import type { AddressInfo } from 'node:net';
import { extname, resolve, sep } from 'node:path';

export const POLICY = "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'";

const TYPES: Readonly<Record<string, string>> = {
  '.html': 'text/html; charset=utf-8',
  '.css': 'text/css; charset=utf-8',
  '.js': 'text/javascript; charset=utf-8',
  '.json': 'application/json',
  '.svg': 'image/svg+xml',
  '.png': 'image/png',
};

export interface ShopServer {
  readonly address: string;
  /** Paths that were not there, and reports of breaches of the policy, since it was last emptied. */
  readonly complaints: string[];
  /** Paths that were asked for, in their order, since it was last emptied. */
  readonly asked: string[];
  /** Answers none of these paths until what it returns is called. */
  hold(paths: RegExp): () => void;
  close(): void;
}

export interface Served {
  /** 0 for any that is free. */
  readonly port?: number;
  /** False for a server that allows everything, under which whatever can run does. */
  readonly strict?: boolean;
}

/**
 * Serves a folder on this machine alone.
 *
 * @param pages pages that are no files, by their path
 */
export async function serveShop(
  folder: string,
  pages: ReadonlyMap<string, string> = new Map(),
  { port = 0, strict = true }: Served = {},
): Promise<ShopServer> {
  const root = resolve(folder);
  const complaints: string[] = [];
  const asked: string[] = [];
  const held = new Map<RegExp, Promise<void>>();
  const read = (path: string): string | Buffer | undefined => {
    const page = pages.get(path);
    if (page !== undefined) return page;
    const file = resolve(root, `.${path.endsWith('/') ? `${path}index.html` : path}`);
    if (!file.startsWith(`${root}${sep}`)) return undefined;
    try {
      return readFileSync(file);
    } catch {
      return undefined;
    }
  };
  const server = createServer((request, answer) => {
    const { pathname } = new URL(request.url ?? '/', 'http://localhost');
    if (pathname === '/breaches') {
      let text = '';
      request.on('data', (piece) => {
        text += piece;
      });
      request.on('end', () => {
        complaints.push(`breach: ${text}`);
        answer.writeHead(204).end();
      });
      return;
    }
    // Browsers ask for it unasked.
    if (pathname === '/favicon.ico') return void answer.writeHead(204).end();
    asked.push(pathname);
    const body = read(decodeURIComponent(pathname));
    if (body === undefined) complaints.push(`not found: ${pathname}`);
    const waits = [...held].flatMap(([paths, until]) => (paths.test(pathname) ? [until] : []));
    void Promise.all(waits).then(() => {
      answer.writeHead(body === undefined ? 404 : 200, {
        'content-type': TYPES[extname(pathname)] ?? 'text/html; charset=utf-8',
        ...(strict ? { 'content-security-policy': `${POLICY}; report-uri /breaches` } : {}),
        'x-content-type-options': 'nosniff',
        'cache-control': 'no-store',
      });
      answer.end(body ?? '');
    });
  });
  await new Promise<void>((done) => server.listen(port, '127.0.0.1', done));
  return {
    address: `http://127.0.0.1:${(server.address() as AddressInfo).port}`,
    complaints,
    asked,
    hold: (paths) => {
      let letGo = (): void => undefined;
      held.set(
        paths,
        new Promise<void>((done) => {
          letGo = done;
        }),
      );
      return () => {
        held.delete(paths);
        letGo();
      };
    },
    close: () => {
      server.close();
      server.closeAllConnections();
    },
  };
}
