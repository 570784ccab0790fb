/** Tests run the program as it is shipped: it is built anew before them, so that none tests what was built earlier. */
import { availableParallelism } from 'node:os';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

/** Files that take minutes; begun last, they would keep one processor busy while the others have nothing to do. */
const LONG =
  /random\/(kits|usual)|catalogue\/processes|files\/hostile|inspect\/(samples|tamperings)|draw\/paged|publish\/(gallery|commands|samples-out)|leaflet\/(leaflet|type)|golden\/golden|shop\/(browser-chromium|element-states|narrow)|package\/pack|fuzz\/fuzz/;
/** These look at what one of those makes: begun beside it, they would wait for it. */
const AFTER = /golden\/shop|shop\/browser-firefox/;

class LongestFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const sorted = await super.sort(files);
    const long = ({ moduleId }: TestSpecification): boolean => LONG.test(moduleId);
    const after = ({ moduleId }: TestSpecification): boolean => AFTER.test(moduleId);
    return [
      ...sorted.filter(long),
      ...sorted.filter(after),
      ...sorted.filter((file) => !long(file) && !after(file)),
    ];
  }
}

export default defineConfig({
  test: {
    include: ['tests/**/*.test.ts'],
    globalSetup: ['tests/tools/build.ts', 'tests/tools/placements-folder.ts'],
    // A machine that does something else beside it takes its time; what hangs is found all the same.
    testTimeout: 120_000,
    hookTimeout: 120_000,
    // One more than processors, as many a test waits for a browser, a command or another program that it has begun.
    maxWorkers: availableParallelism() + 1,
    // Drawings are made of many short-lived nodes: with the usual room for such, a tenth of the time goes into making room.
    execArgv: ['--max-semi-space-size=64'],
    // No test changes what another reads; reading the source anew for each file would take a third of the time.
    isolate: false,
    sequence: { sequencer: LongestFirst },
  },
});
