/** What the YAML parser finds wrong, in words for somebody who has never heard of YAML. */

const WORDS: Readonly<Record<string, string>> = {
  BAD_ALIAS: 'an alias (*) needs a name',
  ALIAS_PROPS: 'an alias (*) cannot carry an anchor or a tag',
  BAD_DIRECTIVE: 'a line may not start with % here',
  BAD_DQ_ESCAPE: 'a backslash in double quotes starts an escape that does not exist',
  BAD_INDENT: 'the indentation of this line does not match any line above',
  BAD_PROP_ORDER: 'an anchor (&) or tag (!) stands before the colon; it belongs after it',
  BAD_COLLECTION_TYPE: 'an unknown tag (!)',
  BAD_SCALAR_START: 'text cannot start with this character unless it is in quotes',
  BLOCK_AS_IMPLICIT_KEY: 'a second key on this line; it belongs on a line of its own, or in quotes',
  BLOCK_IN_FLOW: 'a bracket or brace opened above is not closed before this line',
  KEY_OVER_1024_CHARS: 'a key is longer than 1024 characters',
  MERGE_KEY: 'a merge key (<<) takes an alias (*) of keys and values',
  MISSING_CHAR: 'a bracket, brace, comma, colon or space is missing here',
  MULTILINE_IMPLICIT_KEY: 'a key runs over several lines; a colon may be missing on the line above',
  MULTIPLE_ANCHORS: 'two anchors (&) on one value',
  MULTIPLE_TAGS: 'two tags (!) on one value',
  MULTIPLE_DOCS: 'a second document starts here; one file holds one kit',
  NON_STRING_KEY: 'a key must be plain text',
  TAB_AS_INDENT: 'a tab is used for indentation',
  TAG_RESOLVE_FAILED: 'an unknown tag (!)',
  UNEXPECTED_TOKEN: 'this does not belong here; a quote, bracket or comma is missing or too many',
};

/** A brace left open is told as wrong indentation of the next line; the brace is what the user must look for. */
const LEFT_OPEN = 'a brace or bracket opened before this point is not closed';

/** Whether a line is out of step with those above; a brace left open has the same code, and another message. */
export const isIndentation = (code: string, message: string): boolean =>
  code === 'BAD_INDENT' && !message.startsWith('Flow');

/** Whether a line was taken for more of the value above it. */
export const isRunOn = (code: string): boolean =>
  code === 'BLOCK_AS_IMPLICIT_KEY' || code === 'MULTILINE_IMPLICIT_KEY';

/** An error's code in words; its own message only tells apart two errors that share a code. */
export const explainYaml = (code: string, message = ''): string =>
  code === 'BAD_INDENT' && !isIndentation(code, message)
    ? LEFT_OPEN
    : (WORDS[code] ?? 'the text cannot be read from here on');
