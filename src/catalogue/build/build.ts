/**
 * Builds a catalogue: everything that is out of date, and nothing else. What each kit's outputs depend on is a hash of it; outputs
 * whose hash is the recorded one and whose files are what was written are up to date.
 */
import { existsSync } from 'node:fs';
import { join, relative, sep } from 'node:path';
import { WriteError } from '../../files/write.ts';
import type { Catalogue, Job } from '../catalogue.ts';
import { type KitFigures, warningsOf } from '../changes/figures.ts';
import { forgetOthers, notSaved } from '../changes/store.ts';
import { keepMark } from '../marks.ts';
import { Cache } from './cache.ts';
import { Earlier, leftOver, notWhole, whyLeft } from './earlier.ts';
import { Texts } from './keys.ts';
import type { Answer, Task } from './make.ts';
import { ALL_KITS, type Entry, joinShards, writeEntries } from './manifest.ts';
import type { BuildOptions, Listener, Summary } from './options.ts';
import { inParallel, type Pool } from './pool.ts';
import { isIn } from './shard.ts';
import { buildShop } from './shop.ts';
import { FileHashes, Outputs } from './write-out.ts';

/** How often the record is written while a build is at work, milliseconds. */
const RECORD = 2000;

/** A job that is not known to be up to date. */
interface Due {
  readonly job: Job;
  readonly task: Task;
}

export class Build {
  readonly #catalogue: Catalogue;
  readonly #options: BuildOptions;
  readonly #tell: Listener;
  readonly #earlier: Earlier;
  readonly #now = new Map<string, Entry>();
  readonly #cache: Cache;
  readonly #outputs: Outputs;
  readonly #claimed = new Map<string, Job>();
  /** The first kit of which just this was told. */
  readonly #said = new Map<string, string>();
  /** Of these it is not known which outputs they have. */
  readonly #unknown = new Set<string>();
  readonly #hashes: FileHashes;
  readonly #count = { made: 0, found: 0, fresh: 0, failed: 0, leftOver: 0, stale: 0 };
  #shopStale = false;
  #recorded = Date.now();
  #trouble: string | undefined;

  constructor(catalogue: Catalogue, options: BuildOptions, tell: Listener, hashes = new FileHashes()) {
    this.#hashes = hashes;
    this.#catalogue = catalogue;
    this.#options = options;
    this.#tell = tell;
    this.#earlier = new Earlier(catalogue.out);
    this.#cache = new Cache(options.cache);
    this.#outputs = new Outputs(catalogue.out, this.#cache, this.#earlier.entries);
  }

  async run(pool: Pool): Promise<Summary> {
    const jobs = this.#catalogue.jobs.filter(({ id }) => this.#isMine(id));
    const due = this.#dueOf(jobs);
    let done = 0;
    await inParallel(due, pool.workers, async ({ job, task }) => {
      const answer = await pool.run(task).catch(
        (thrown: unknown): Answer => ({
          became: 'failed',
          diagnostics: `${job.file}: an error of the program: ${thrown instanceof Error ? thrown.message : String(thrown)}`,
        }),
      );
      this.#take(job, answer);
      this.#tell.progress(++done, due.length, job.id);
      if (!this.#options.check && Date.now() - this.#recorded > RECORD) this.#record(true);
    });
    this.#shop();
    this.#leftOvers(jobs);
    if (!this.#options.check) this.#finish(jobs);
    return { kits: jobs.length, ...this.#count, shopStale: this.#shopStale, warned: this.#warned(jobs) };
  }

  /** Writes the record of what there is by now, where a build ends early. */
  interrupt(): void {
    if (!this.#options.check) this.#record(true);
  }

  #isMine(id: string): boolean {
    const { shard } = this.#options;
    return shard === undefined || (id !== ALL_KITS && isIn(shard, id));
  }

  /** Takes what is up to date as it is; the rest is due. Neither solves nor places, and reads no kit that was read before. */
  #dueOf(jobs: readonly Job[]): readonly Due[] {
    const { cache, program, check } = this.#options;
    const texts = new Texts(program);
    const due: Due[] = [];
    for (const job of jobs) {
      const readKey = texts.keyOf(job);
      const known = readKey === undefined ? undefined : this.#cache.find('read', readKey);
      const have = this.#earlier.keyOf(job.id, this.#hashes);
      if (have !== undefined && have === known) this.#keep(job);
      else {
        const task = {
          job,
          cache,
          program,
          check,
          ...(readKey === undefined ? {} : { readKey }),
          ...(have === undefined ? {} : { have }),
        };
        due.push({ job, task });
      }
    }
    return due;
  }

  /** Kits with warnings, which a build says only when it makes the kit. */
  #warned(jobs: readonly Job[]): readonly string[] {
    const warned = new Set([...this.#now.values()].filter(({ warnings }) => warnings).map(({ kit }) => kit));
    return jobs.flatMap(({ id }) => (warned.has(id) && !this.#unknown.has(id) ? [id] : []));
  }

  /** @param figures where they were worked out again: what a price or the list says of it may be new */
  #keep(job: Job, figures?: KitFigures): void {
    this.#count.fresh++;
    for (const file of this.#earlier.wantedOf(job.id)) {
      this.#carry(file, figures);
      this.#claimed.set(file.toLowerCase(), job);
    }
  }

  #carry(file: string, figures?: KitFigures): void {
    const entry = this.#earlier.entries.get(file);
    if (entry) this.#now.set(file, figures ? { ...entry, warnings: warningsOf(figures) } : entry);
  }

  #take(job: Job, answer: Answer): void {
    switch (answer.became) {
      case 'fresh':
        this.#keep(job, answer.figures);
        if (answer.figures) this.#save(job, { ...answer.figures, mark: this.#earlier.markOf(job.id) });
        return;
      case 'stale':
        this.#count.stale++;
        this.#unknown.add(job.id);
        this.#tell.line(`stale     ${job.id} (${this.#sourceOf(job)})`);
        return;
      case 'failed':
        this.#count.failed++;
        this.#unknown.add(job.id);
        this.#sayOnce(job, answer.diagnostics);
        for (const file of this.#earlier.filesOf(job.id)) {
          this.#carry(file);
          this.#claimed.set(file.toLowerCase(), job);
          this.#tell.errorLine(
            `stale     ${join(this.#catalogue.out, file)}: left as it was, since its kit has errors`,
          );
        }
        return;
      case 'made':
        this.#put(job, answer);
    }
  }

  #put(job: Job, answer: Extract<Answer, { became: 'made' }>): void {
    const { key, mark, figures, files, notes, diagnostics, found, trouble } = answer;
    if (diagnostics !== '') this.#sayOnce(job, diagnostics);
    for (const note of notes) this.#tell.line(note);
    for (const words of figures.substitutions) this.#tell.line(`replaced  ${job.id}: ${words}`);
    this.#trouble ??= trouble;
    const failures: string[] = [];
    const entries: [string, Entry][] = [];
    for (const file of files) {
      const taken = this.#claim(file.name, job);
      const written = taken === undefined ? this.#outputs.put(file) : { failed: taken };
      if (typeof written === 'object') {
        failures.push(written.failed);
        continue;
      }
      const warnings = warningsOf(figures);
      const entry = { kit: job.id, source: this.#sourceOf(job), sha256: file.sha256, key, mark, warnings };
      entries.push([file.name, entry]);
      if (written === 'written') this.#tell.line(`written   ${join(this.#catalogue.out, file.name)}`);
    }
    for (const failure of failures) this.#tell.errorLine(failure);
    if (failures.length > 0) {
      this.#count.failed++;
      for (const { name } of files) if (this.#earlier.entries.get(name)?.kit === job.id) this.#carry(name);
    } else if (found) this.#count.found++;
    else this.#count.made++;
    for (const [name, entry] of entries) this.#now.set(name, failures.length > 0 ? notWhole(entry) : entry);
    // What customers now have is what a change is measured by.
    if (failures.length === 0) this.#save(job, figures);
  }

  /** Members of one family have one mistake between them: it is told of the first, and the others name that one. */
  #sayOnce({ id }: Job, diagnostics: string): void {
    const first = this.#said.get(diagnostics);
    if (first === undefined) this.#said.set(diagnostics, id);
    this.#tell.errorLine(
      first === undefined ? `${diagnostics.trimEnd()}\n` : `${id}: the same as told of ${first}`,
    );
  }

  #save(job: Job, figures: KitFigures): void {
    const { folder } = this.#catalogue;
    this.#trouble ??= notSaved(folder, figures);
    const { kit, mark, title } = figures;
    const { date } = job;
    const dated = date === undefined ? {} : { date };
    if (mark !== null)
      this.#trouble ??= keepMark(folder, { kit, mark, title, source: this.#sourceOf(job), ...dated });
  }

  /**
   * Two kits may have an output of one name, where one's id begins with the other's. The first in the catalogue has it, whichever
   * is done first.
   *
   * @returns why it may not be written, in words
   */
  #claim(name: string, job: Job): string | undefined {
    const { jobs, out } = this.#catalogue;
    const other = this.#claimed.get(name.toLowerCase());
    const refused = (by: Job, of: Job): string =>
      `not written ${join(out, name)} of ${of.id}: ${by.id} has an output of this name; give one of the two kits another id`;
    if (other && jobs.indexOf(other) < jobs.indexOf(job)) return refused(other, job);
    this.#claimed.set(name.toLowerCase(), job);
    if (other && other !== job) {
      this.#count.failed++;
      this.#tell.errorLine(refused(job, other));
      for (const [file, entry] of this.#now) if (entry.kit === other.id) this.#now.set(file, notWhole(entry));
    }
    return undefined;
  }

  /** In a check with kits out of date nobody knows what they will share. */
  #shop(): void {
    if (this.#options.shard) return;
    const done = buildShop(this.#now, this.#unknown.size > 0, this.#tell, {
      ...this.#options,
      catalogue: this.#catalogue,
      earlier: this.#earlier,
      hashes: this.#hashes,
      outputs: this.#outputs,
    });
    this.#shopStale = done.stale;
    this.#count.failed += done.failed;
  }

  #sourceOf({ file }: Job): string {
    return relative(this.#catalogue.folder, file).split(sep).join('/');
  }

  /** Files that were written once and are asked for no more. */
  #leftOvers(jobs: readonly Job[]): void {
    const ids = new Set(jobs.map(({ id }) => id));
    const { out } = this.#catalogue;
    for (const [file, entry] of this.#earlier.entries) {
      if (!this.#isMine(entry.kit) || this.#now.has(file) || this.#unknown.has(entry.kit)) continue;
      if (!existsSync(join(out, file))) continue;
      const why = whyLeft(entry, ids);
      if (!this.#options.prune || this.#options.check) {
        this.#count.leftOver++;
        this.#now.set(file, leftOver(entry));
        this.#tell.line(`left over ${join(out, file)}: ${why}; --prune deletes it`);
        continue;
      }
      const pruned = this.#outputs.prune(file, entry);
      if (pruned === 'deleted') this.#tell.line(`deleted   ${join(out, file)}: ${why}`);
      else {
        this.#count.leftOver++;
        if (pruned === 'changed')
          this.#tell.line(`kept      ${join(out, file)}: ${why}, but it was changed since it was written`);
        else {
          this.#count.failed++;
          this.#now.set(file, leftOver(entry));
          this.#tell.errorLine(pruned.failed);
        }
      }
    }
  }

  #finish(jobs: readonly Job[]): void {
    const { prune, shard } = this.#options;
    // While one has errors it may be one that is gone, whose id cannot be read.
    const forgotten =
      prune && !shard && this.#count.failed === 0
        ? forgetOthers(
            this.#catalogue.folder,
            jobs.map(({ id }) => id),
          )
        : [];
    for (const id of forgotten)
      this.#tell.line(`deleted   figures of ${id}: it is no longer in the catalogue`);
    if (this.#trouble !== undefined) this.#tell.errorLine(`warning: ${this.#trouble}`);
    const failed = this.#record(false);
    if (failed !== undefined) {
      this.#count.failed++;
      this.#tell.errorLine(`the record of the build was not written: ${failed}`);
    } else if (!shard) joinShards(this.#catalogue.out);
  }

  /**
   * @param early while some kits are not done: what is recorded of them is kept
   * @returns why it could not be written
   */
  #record(early: boolean): string | undefined {
    this.#recorded = Date.now();
    const old = early ? [...this.#earlier.entries].filter(([, { kit }]) => this.#isMine(kit)) : [];
    try {
      writeEntries(this.#catalogue.out, new Map([...old, ...this.#now]), this.#options.shard);
      return undefined;
    } catch (thrown) {
      if (!(thrown instanceof WriteError)) throw thrown;
      return thrown.message;
    }
  }
}
