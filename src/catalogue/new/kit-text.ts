/** The text of a kit that extends another, with comments that show what may be changed. */
import { stringify } from 'yaml';
import { isMap, type Layer, type Written } from '../../describe/chain.ts';
import type { Kit } from '../../describe/kit.ts';
import { merge } from '../../describe/merge.ts';

interface NewKit {
  readonly id: string;
  /** What the kit writes under `extends`. */
  readonly extended: string;
  /** The base, and the descriptions that it is made of. */
  readonly kit: Kit;
  readonly layers: readonly Layer[];
  /** Path of the JSON Schema from the kit's folder, where there is one. */
  readonly schema?: string;
}

/** Fields of a part that are most often changed. */
const SHOWN = ['value', 'taper', 'resistance', 'label'];

const flow = (value: unknown): string => stringify(value, { collectionStyle: 'flow', lineWidth: 0 }).trim();

/** Columns of a comment. */
const WIDTH = 96;

/** Lines of a comment, broken between words. */
function comment(text: string): string {
  const lines: string[] = [];
  for (const word of text.split(/\s+/)) {
    const last = lines.at(-1);
    if (last !== undefined && last.length + word.length < WIDTH) lines[lines.length - 1] = `${last} ${word}`;
    else lines.push(`# ${word}`);
  }
  return lines.join('\n');
}

/**
 * Every part of the base is shown as it is written there, behind `#`: without that sign alone the lines are YAML, and a change that
 * changes nothing yet.
 */
export function newKitText({ id, extended, kit, layers, schema }: NewKit): string {
  const { parts } = merge(layers).value;
  const shown = Object.entries(isMap(parts) ? parts : {}).flatMap(([name, written]) => {
    const fields = fieldsOf(written);
    return fields === undefined ? [] : [`#  ${name}: ${fields}`];
  });
  const wire = kit.joints.find((joint) => joint.kind === 'wire' && joint.colour !== undefined);
  const ends = wire && `${wire.from.part}.${wire.from.lug} > ${wire.to.part}.${wire.to.lug}`;
  return [
    ...(schema === undefined ? [] : [`# yaml-language-server: $schema=${schema}`]),
    comment(kit.about ?? `Made from ${kit.title}.`),
    `extends: ${flow(extended)}`,
    `kit: ${id}`,
    `title: ${flow(kit.title)}`,
    '',
    comment(
      'Everything else is as in the base. To change a part, remove the # from “parts:” and from the line of the part, and write your value; the other lines may stay as they are.',
    ),
    '#parts:',
    ...shown,
    ...(ends === undefined || wire?.colour === undefined
      ? []
      : [
          '',
          comment('A joint between the same two lugs replaces that of the base, here with another length.'),
          '#joints:',
          `#  - { wire: ${ends}, colour: ${wire.colour}, length: 200mm }`,
        ]),
    '',
    comment(
      'To take something out, list it under remove: parts with their joints, single joints, or keys such as page.',
    ),
    '#remove:',
    '#  parts: []',
    '#  joints: []',
    '#  keys: []',
    '',
  ].join('\n');
}

function fieldsOf(written: unknown): string | undefined {
  if (!isMap(written)) return undefined;
  const fields: Written = Object.fromEntries(
    SHOWN.flatMap((field) => (Object.hasOwn(written, field) ? [[field, written[field]] as const] : [])),
  );
  return Object.keys(fields).length === 0 ? undefined : flow(fields);
}
