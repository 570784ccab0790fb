/**
 * JSON is read as the YAML it also is, but a file that calls itself JSON must be JSON: a comma too many would
 * pass here and fail in every other program. This finds the first place where it is not.
 */

/** A string's characters are named by what they may be; what is left out are quote, backslash and controls. */
const TOKEN =
  /[{}[\],:]|"(?:[ !#-[\]-\u{10ffff}]|\\(?:["\\/bfnrt]|u[0-9a-fA-F]{4}))*"|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.])|(?:true|false|null)(?!\w)/uy;
const SPACE = /[ \t\r\n]*/y;

/** What may come next: a value, a key, either of them or the closing bracket, a colon, or what follows a value. */
type Want = 'value' | 'key' | 'value-or-close' | 'key-or-close' | 'colon' | 'after';

interface JsonError {
  readonly offset: number;
  readonly reason: string;
}

/** The first place where the text breaks the rules of JSON (RFC 8259), or `undefined`. */
export function findJsonError(text: string): JsonError | undefined {
  const open: ('{' | '[')[] = [];
  let want: Want = 'value';
  let offset = 0;
  while (true) {
    SPACE.lastIndex = offset;
    SPACE.exec(text);
    offset = SPACE.lastIndex;
    if (offset >= text.length) break;
    TOKEN.lastIndex = offset;
    const token = TOKEN.exec(text)?.[0];
    const next: Want | undefined = token === undefined ? undefined : step(want, token, open);
    if (token === undefined || next === undefined)
      return { offset, reason: complain(want, token, open.at(-1)) };
    offset += token.length;
    want = next;
  }
  if (open.length === 0 && want === 'after') return undefined;
  return { offset: text.length, reason: 'the file ends before every bracket and brace is closed' };
}

/** Takes one token; what may follow it, or `undefined` when it does not belong here. */
function step(want: Want, token: string, open: ('{' | '[')[]): Want | undefined {
  const inside = open.at(-1);
  switch (token) {
    case '{':
    case '[':
      if (want !== 'value' && want !== 'value-or-close') return undefined;
      open.push(token);
      return token === '{' ? 'key-or-close' : 'value-or-close';
    case '}':
    case ']': {
      const closes = inside === (token === '}' ? '{' : '[');
      if (!closes || !(want === 'after' || want === 'key-or-close' || want === 'value-or-close'))
        return undefined;
      open.pop();
      return 'after';
    }
    case ',':
      return want !== 'after' || inside === undefined ? undefined : inside === '{' ? 'key' : 'value';
    case ':':
      return want === 'colon' ? 'value' : undefined;
  }
  if (want === 'key' || want === 'key-or-close') return token.startsWith('"') ? 'colon' : undefined;
  return want === 'value' || want === 'value-or-close' ? 'after' : undefined;
}

function complain(want: Want, token: string | undefined, inside: '{' | '[' | undefined): string {
  if ((token === '}' || token === ']') && (want === 'key' || want === 'value'))
    return 'JSON does not allow a comma before this closing bracket';
  if (want === 'key' || want === 'key-or-close') return 'expected a key in double quotes';
  if (want === 'colon') return 'a colon is missing after the key';
  if (want === 'after')
    return inside === undefined
      ? 'the kit ended before this; nothing may follow it'
      : 'a comma or a closing bracket is missing here';
  return 'not a JSON value; text goes in double quotes';
}
