/** The shop folder in Debian's Firefox. */
import { hostileSuite, suite } from './suite.ts';
import { startFirefox } from './view.ts';

suite(startFirefox);
hostileSuite(startFirefox);
