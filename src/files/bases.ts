/** Bases of kits, from the disk: another kit's file, or a circuit that ships. */
import { readdirSync } from 'node:fs';
import { basename, dirname } from 'node:path';
import { closestName } from '../common/nearest.ts';
import type { Base } from '../describe/chain.ts';
import { decode } from '../describe/decode.ts';
import { circuitFile, circuitNameIn, circuitNames, extendedAs } from './circuits.ts';
import { isScript, pathOfBase } from './kit-path.ts';
import { isBytes, LARGEST_KIT, readBytes, whyNot } from './read-file.ts';

const KIT_FILE = /\.(ya?ml|json|ts)$/i;

/**
 * Finds a base on the disk; the reader of bases for `readKit` in Node.
 *
 * @param name what `extends` says: a path from the folder of `from`, or `circuit/NAME`
 * @param from the file that says it
 */
export function readBaseFile(name: string, from: string): Base {
  const circuit = circuitNameIn(name);
  if (circuit !== undefined) {
    const allowed = circuitNames();
    if (allowed.includes(circuit)) {
      const base = readText(circuitFile(circuit), name, from);
      return 'text' in base ? { ...base, ships: true } : base;
    }
    const near = closestName(circuit, allowed);
    const nearest = near === undefined ? {} : { nearest: extendedAs(near) };
    return { reason: 'no circuit of this name ships', allowed, ...nearest };
  }
  if (!KIT_FILE.test(name)) return notAFile(name, from);
  // A folder of kits is drawn without running any code in it.
  if (isScript(name))
    return { reason: 'a TypeScript kit is code, which only another TypeScript kit may extend' };
  return readText(pathOfBase(name, from), name, from);
}

/** A name alone is most often that of a circuit, or of a file without its ending. */
function notAFile(name: string, from: string): Base {
  const reason = 'a base is a .yaml or .json file, or circuit/NAME';
  const near = closestName(basename(name), circuitNames());
  return near === undefined
    ? { reason, ...nearestFile(`${pathOfBase(name, from)}.yaml`, `${name}.yaml`, from) }
    : { reason, nearest: extendedAs(near) };
}

function readText(file: string, name: string, from: string): Base {
  const bytes = readBytes(file, LARGEST_KIT);
  if (!isBytes(bytes)) return { reason: whyNot(bytes), ...nearestFile(file, name, from) };
  const { text } = decode(bytes);
  return text === undefined ? { reason: 'it is not text in UTF-8' } : { file, text };
}

/** A kit's file of nearly the same name in the same folder. */
function nearestFile(file: string, name: string, from: string): { readonly nearest?: string } {
  try {
    const others = readdirSync(dirname(file)).filter((one) => KIT_FILE.test(one) && one !== basename(from));
    const near = closestName(basename(file), others);
    return near === undefined ? {} : { nearest: `${name.slice(0, -basename(name).length)}${near}` };
  } catch {
    // A folder that cannot be looked into has nothing to suggest.
    return {};
  }
}
