/** The shop folder in Debian's Firefox. */
import { suite } from './suite.ts';
import { startFirefox } from './view.ts';

suite(startFirefox);
