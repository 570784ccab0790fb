// The yardstick of a cold start: a process that loads elkjs and lays out one graph, read from standard input.
import { readFileSync } from 'node:fs';
import ELK from 'elkjs/lib/elk.bundled.js';

await new ELK().layout(JSON.parse(readFileSync(0, 'utf8')));
