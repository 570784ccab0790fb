/** `pad --write`: the chosen pads into the kit's own file, which is written only when it then reads as was planned. */

import { accessSync, constants, readFileSync, realpathSync } from 'node:fs';
import { isDeepStrictEqual } from 'node:util';
import { legsOf, type PadAdvice, type PadPlan, solveLoads } from '../analyse/index.ts';
import { readKit } from '../checked.ts';
import { andList } from '../common/quoting.ts';
import { writeQuantity } from '../common/units.ts';
import { decode } from '../describe/decode.ts';
import { type AddedPart, editKit, type KitEdit, linesToAdd } from '../describe/edit.ts';
import type { Kit } from '../describe/kit.ts';
import type { PartsList } from '../describe/stock.ts';
import { newResistor, resistor } from '../parts/resistor.ts';
import { resistorsInStock } from '../report/stock-data.ts';
import { buildCircuit } from '../solve/build.ts';
import { readBaseFile } from './bases.ts';
import { isScript } from './kit-path.ts';
import { whyNotWritten } from './reason.ts';
import { WriteError, writeAtomically } from './write.ts';

interface PadWriting {
  /** `refused`: there was something to write, and it was not written. */
  readonly outcome: 'written' | 'unchanged' | 'refused';
  readonly lines: readonly string[];
}

type Chosen = Extract<PadAdvice, { readonly kind: 'pad' }>;

export function writePads(file: string, plan: PadPlan): PadWriting {
  const chosen = plan.advice.filter((advice): advice is Chosen => advice.kind === 'pad' && !advice.present);
  if (chosen.length === 0)
    return { outcome: 'unchanged', lines: [`unchanged ${file}: there is nothing to change`] };
  const edit = editFor(chosen, plan.kit.list);
  const several = chosen.filter((advice) => advice.replaces.length > 1);
  if (several.length > 0) {
    const pads = several.map(({ pickup, replaces }) => `${pickup} has ${andList(replaces)}`).join('; ');
    return refuse(file, `${pads}: remove all but one pad of each pickup, then run this again`, []);
  }
  if (isScript(file))
    return refuse(
      file,
      'TypeScript kits are not edited automatically; make these changes by hand:',
      linesToAdd(edit, true),
    );
  return writeText(file, plan, edit);
}

const refuse = (file: string, why: string, lines: readonly string[]): PadWriting => ({
  outcome: 'refused',
  lines: [`not written ${file}: ${why}`, ...lines.map((line) => `    ${line}`)],
});

function editFor(chosen: readonly Chosen[], list: PartsList | undefined): KitEdit {
  const added = chosen.filter(({ replaces }) => replaces.length === 0);
  return {
    parts: added.map(partFor),
    joints: added.flatMap((one) =>
      legsOf(one).map(([leg, to]) => ({ kind: 'leg' as const, ends: `${leg} > ${to}` })),
    ),
    values: chosen
      .filter(({ replaces }) => replaces.length > 0)
      .map(({ part, chosen: { ohms } }) => {
        const code = resistorsInStock(list).find((one) => one.ohms === ohms)?.item.code;
        return {
          part,
          text: writeQuantity(ohms, 'ohm'),
          number: ohms,
          ...(code === undefined ? {} : { code }),
        };
      }),
  };
}

const partFor = ({ part, label, sleeved, chosen }: Chosen): AddedPart => ({
  name: part,
  fields: {
    kind: resistor.kind,
    ...newResistor({ ...(label === undefined ? {} : { label }), ohms: chosen.ohms, sleeved }),
    value: writeQuantity(chosen.ohms, 'ohm'),
  },
});

const MARK = '\uFEFF';

function writeText(file: string, plan: PadPlan, edit: KitEdit): PadWriting {
  // Behind a symbolic link the file it leads to is written, and one that may not be written stays as it is.
  const target = realpathSync(file);
  const bytes = readFileSync(target);
  const text = decode(bytes).text ?? '';
  const edited = editKit(text, file, edit);
  if (edited === undefined || !reads(edited, file, plan))
    return refuse(
      file,
      'the file cannot be edited safely; make these changes by hand:',
      linesToAdd(edit, false),
    );
  // The decoder drops a byte order mark; the file keeps it.
  const mark = bytes.subarray(0, 3).equals(Buffer.from(MARK)) ? MARK : '';
  try {
    accessSync(target, constants.W_OK);
    writeAtomically(target, mark + edited);
  } catch (thrown) {
    const why = thrown instanceof WriteError ? thrown.reason : whyNotWritten(thrown);
    return refuse(file, `${why}; make these changes by hand:`, linesToAdd(edit, false));
  }
  return {
    outcome: 'written',
    lines: [`written   ${file}`, ...linesToAdd(edit, false).map((l) => `    ${l}`)],
  };
}

/** A kit without what the parts list adds to it, which another value changes. */
const unlisted = ({ list, substitutions: _, ...kit }: Kit): object =>
  list
    ? { ...kit, parts: kit.parts.map((part) => ({ ...part, code: undefined, tolerance: undefined })) }
    : kit;

/** Whether a text reads as the very kit that was planned, without errors and with the very loads. */
function reads(text: string, file: string, plan: PadPlan): boolean {
  const { kit } = readKit(text, file, readBaseFile, plan.kit.list);
  if (!kit || !isDeepStrictEqual(unlisted(kit), unlisted(plan.kit))) return false;
  const loads = solveLoads(buildCircuit(kit)).flatMap((state) => state.pickups);
  return plan.effects.every(
    ({ after }, i) => after.dcLoad === loads[i]?.dcLoad && after.signalLoad === loads[i]?.signalLoad,
  );
}
