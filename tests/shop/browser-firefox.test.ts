/** The shop folder in Debian's Firefox. */
import { hostileSuite, started, suite } from './suite.ts';
import { startFirefox } from './view.ts';

const firefox = started(startFirefox);
suite(firefox);
hostileSuite(firefox);
