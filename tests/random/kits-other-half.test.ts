/** The other half of the random kits drawn; see `kits.test.ts`. */
import { drawn } from './some.ts';

drawn(1);
