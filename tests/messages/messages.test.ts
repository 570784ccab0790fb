/** Every language says everything, with the same arguments, in words that can be drawn; and nothing is kept that nobody says. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { describe, expect, it } from 'vitest';
import { languages } from '../../src/messages/language.ts';
import { messages } from '../../src/messages/say.ts';
import * as kinds from '../../src/parts/kinds.ts';

const entries = (language: keyof typeof messages) => Object.entries(messages[language]);

/** Names of a message's arguments, those within plurals and choices as well. */
function argumentsOf(elements: readonly MessageFormatElement[]): readonly string[] {
  const names = elements.flatMap((one): readonly string[] => {
    if (one.type === TYPE.literal || one.type === TYPE.pound) return [];
    if (one.type === TYPE.tag) return argumentsOf(one.children);
    const inner =
      one.type === TYPE.select || one.type === TYPE.plural
        ? Object.values(one.options).flatMap(({ value }) => argumentsOf(value))
        : [];
    return [one.value, ...inner];
  });
  return [...new Set(names)].sort();
}

const source = (folder: string): string =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ts$/.test(name) && !/^messages[/\\][a-z]{2}\.ts$/.test(name))
    .map((name) => readFileSync(join(folder, name), 'utf8'))
    .join('\n');

describe.each(languages)('%s', (language) => {
  it('has every message and no other, in the order of the English ones', () =>
    expect(Object.keys(messages[language])).toEqual(Object.keys(messages.en)));

  it.each(entries('en'))('%s: with the same arguments', (key, english) => {
    const text = messages[language][key as keyof typeof messages.en];
    const read = (of: string) => argumentsOf(parse(of, { ignoreTag: true }));
    expect(text.trim(), 'without blanks around it').toBe(text);
    expect(text).not.toBe('');
    expect(read(text)).toEqual(read(english));
  });
});

it('every message is said somewhere', () => {
  const text = source('src');
  // Kinds, colours and the like are looked up by a prefix, as in keyOf('kind', …).
  const prefixes = [...text.matchAll(/keyOf\(\s*'([\w.-]+)'/g)].map(([, prefix]) => `${prefix}.`);
  const unused = Object.keys(messages.en).filter(
    (key) => !text.includes(`'${key}'`) && !prefixes.some((prefix) => key.startsWith(prefix)),
  );
  expect(unused).toEqual([]);
});

it('every kind of part has a name', () => {
  const missing = Object.values(kinds)
    .map(({ kind }) => kind)
    .filter((kind) => !(`kind.${kind}` in messages.en));
  expect(missing).toEqual([]);
});
