/** What a worker thread runs. It has a file of its own in `dist/`. */
export { make as default } from './make.ts';
