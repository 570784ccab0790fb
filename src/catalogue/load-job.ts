/** The kit of a job, with every problem of it. */
import { type Loaded, loadKit } from '../files/load.ts';
import type { Job } from './catalogue.ts';

/** Reads and checks a job's kit. */
export const loadJob = (job: Job): Promise<Loaded> => loadKit(job.file);
