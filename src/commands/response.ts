/** `response`: what comes out at the jack, as a table, a plot or values. */

import { type Command, InvalidArgumentError } from 'commander';
import { type Knobs, solveKnobSettings, solveResponse } from '../analyse/index.ts';
import { inLanguage, type Kit } from '../describe/kit.ts';
import { isForeign } from '../files/foreign.ts';
import { writeAtomically } from '../files/write.ts';
import type { Language } from '../messages/language.ts';
import { drawResponse } from '../pipeline.ts';
import { svgToPng } from '../publish/png.ts';
import { responseCsv, responseHead, responseTable } from '../report/response-table.ts';
import { buildCircuit } from '../solve/build.ts';
import { fail, languageOption, print, printError } from './console.ts';
import { oneKit } from './one-kit.ts';

interface Options {
  readonly out?: string;
  readonly csv: boolean;
  readonly steps: boolean;
  readonly volume?: number;
  readonly tone?: number;
  readonly language?: Language;
}

const PLOTS = ['.svg', '.png'];
const VALUES = ['.csv'];
const FULL = 10;

const endingOf = (file: string): string => /\.[^./\\]*$/.exec(file)?.[0].toLowerCase() ?? '';

function outFile(written: string): string {
  const allowed = [...PLOTS, ...VALUES];
  if (!allowed.includes(endingOf(written)))
    throw new InvalidArgumentError(
      `“${written}” is not a plot or table; it must end in one of: ${allowed.join(', ')}`,
    );
  return written;
}

function knob(written: string): number {
  const value = written.trim() === '' ? Number.NaN : Number(written);
  if (!(value >= 0 && value <= FULL))
    throw new InvalidArgumentError(`“${written}” is not a control setting; allowed: 0 to ${FULL}`);
  return value;
}

export function addResponse(program: Command): void {
  program
    .command('response')
    .description('frequency response at the jack, 20 Hz to 20 kHz, in every switch position')
    .argument(
      '<kit>',
      'kit file, circuit/NAME for a circuit that ships, or WORKSHOP#ID for a kit of a workshop',
    )
    .option(
      '--out <file>',
      'write a plot (.svg, .png) or the values (.csv) instead of printing a table',
      outFile,
    )
    .option('--csv', 'decibels at each frequency, to --out FILE.csv or to the terminal', false)
    .option('--volume <number>', 'volume controls, 0 to 10 (default: 10)', knob)
    .option('--tone <number>', 'tone controls, 0 to 10 (default: 10)', knob)
    .addOption(languageOption())
    .option('--steps', 'the table with tone and volume on 10, 7, 5, 2 and 0', false)
    .addHelpText('after', '\nexample: solderleaf response my-kit.yaml --out response.svg --tone 7')
    .action(async (path: string, options: Options, command: Command) => {
      const wrong = misuse(options);
      if (wrong !== undefined) command.error(`error: ${wrong}`);
      const kit = await oneKit(path, command);
      if (!kit) return;
      const { out } = options;
      if (out === undefined) return print(textOf(kit, options));
      const content = await contentOf(kit, out, options);
      if (isForeign(out, content)) {
        printError(
          `not written ${out}: it already exists and is not ${VALUES.includes(endingOf(out)) ? 'a table' : 'a plot'} of this kit; move it, or give another name to --out`,
        );
        return fail();
      }
      print(`${writeAtomically(out, content) ? 'written  ' : 'unchanged'} ${out}`);
    });
}

/** Options that do not go together, in words. */
function misuse({ out, csv, steps, volume, tone }: Options): string | undefined {
  if (csv && out !== undefined && !VALUES.includes(endingOf(out)))
    return `--csv writes values, so --out must end in ${VALUES.join(' or ')}; found “${out}”`;
  if (!steps) return undefined;
  if (out !== undefined || csv)
    return '--steps prints a table only; for a plot or values choose one setting with --volume and --tone';
  return volume === undefined && tone === undefined
    ? undefined
    : '--steps uses every setting in turn; leave out --volume and --tone';
}

const knobsOf = ({ volume = FULL, tone = FULL }: Options): Knobs => ({ volume, tone });

function textOf(kit: Kit, options: Options): string {
  const circuit = buildCircuit(kit);
  if (options.steps) return `${responseHead(circuit)}\n\n${responseTable(solveKnobSettings(circuit), true)}`;
  const knobs = knobsOf(options);
  if (options.csv) return responseCsv(circuit, solveResponse(circuit, { knobs })).trimEnd();
  const { states } = solveResponse(circuit, { knobs, points: 1 });
  return `${responseHead(circuit, knobs)}\n\n${responseTable(states)}`;
}

async function contentOf(kit: Kit, out: string, options: Options): Promise<string | Uint8Array> {
  const knobs = knobsOf(options);
  const ending = endingOf(out);
  if (VALUES.includes(ending)) {
    const circuit = buildCircuit(kit);
    return responseCsv(circuit, solveResponse(circuit, { knobs }));
  }
  const svg = drawResponse(inLanguage(kit, options.language), knobs);
  return ending === '.png' ? svgToPng(svg) : svg;
}
