/** What is wrong with the files of messages: a build with a message too few or too many stops. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { type MessageFormatElement, parse, TYPE } from '@formatjs/icu-messageformat-parser';
import { languages } from '../../src/messages/language.ts';
import { messages } from '../../src/messages/say.ts';

/** Names of a message's arguments, those within plurals and choices as well. */
export function argumentsOf(text: string): readonly string[] {
  const within = (elements: readonly MessageFormatElement[]): readonly string[] =>
    elements.flatMap((one): readonly string[] => {
      if (one.type === TYPE.literal || one.type === TYPE.pound) return [];
      if (one.type === TYPE.tag) return within(one.children);
      const inner =
        one.type === TYPE.select || one.type === TYPE.plural
          ? Object.values(one.options).flatMap(({ value }) => within(value))
          : [];
      return [one.value, ...inner];
    });
  return [...new Set(within(parse(text, { ignoreTag: true })))].sort();
}

/** The program's text without the messages themselves. */
const source = (): string =>
  readdirSync('src', { recursive: true, encoding: 'utf8' })
    .filter((name) => /\.ts$/.test(name) && !/^messages[/\\][a-z]{2}\.ts$/.test(name))
    .map((name) => readFileSync(join('src', name), 'utf8'))
    .join('\n');

/**
 * Keys that nobody says: neither by name nor by what they begin with, as kinds and colours are looked up by `keyOf('kind', …)`. That
 * such a table has nothing to spare is tested beside what it is of.
 */
export function unsaid(
  keys: readonly string[] = Object.keys(messages.en),
  text = source(),
): readonly string[] {
  const prefixes = [...text.matchAll(/keyOf\(\s*'([\w.-]+)'/g)].map(([, prefix]) => `${prefix}.`);
  return keys.filter(
    (key) => !text.includes(`'${key}'`) && !prefixes.some((prefix) => key.startsWith(prefix)),
  );
}

/** Each language against English, by key: what it lacks, what it has besides, and other arguments. */
export function differing(
  tables: Readonly<Record<string, Readonly<Record<string, string>>>> = messages,
): readonly string[] {
  const english = tables.en ?? {};
  return languages.flatMap((language) => {
    const own = tables[language] ?? {};
    return [...new Set([...Object.keys(english), ...Object.keys(own)])].flatMap((key) => {
      const [wanted, text] = [english[key], own[key]];
      if (text === undefined) return [`${language}: no message ${key}`];
      if (wanted === undefined) return [`${language}: ${key} is no message in English`];
      const [a, b] = [argumentsOf(wanted).join(', '), argumentsOf(text).join(', ')];
      return a === b ? [] : [`${language}: ${key} has the arguments “${b}”, in English “${a}”`];
    });
  });
}
