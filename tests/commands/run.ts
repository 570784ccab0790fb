/** A command run within the test, with what it prints and how it ends. */
import { Command, CommanderError } from 'commander';
import { vi } from 'vitest';

export interface Ran {
  readonly stdout: string;
  readonly stderr: string;
  /** 0, 1 for problems in the input, 2 for wrong usage: as the program ends. */
  readonly status: number;
}

export async function run(add: (program: Command) => void, ...args: readonly string[]): Promise<Ran> {
  const printed = { stdout: '', stderr: '' };
  const mocks = (['stdout', 'stderr'] as const).map((stream) =>
    vi.spyOn(process[stream], 'write').mockImplementation((text) => {
      printed[stream] += String(text);
      return true;
    }),
  );
  const before = process.exitCode;
  process.exitCode = 0;
  const program = new Command('solderleaf').exitOverride();
  let wrong = false;
  try {
    add(program);
    await program.parseAsync(args, { from: 'user' });
  } catch (thrown) {
    if (!(thrown instanceof CommanderError)) throw thrown;
    wrong = true;
  } finally {
    for (const mock of mocks) mock.mockRestore();
  }
  const status = wrong ? 2 : Number(process.exitCode);
  process.exitCode = before;
  return { ...printed, status };
}
