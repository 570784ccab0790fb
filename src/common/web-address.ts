/** Addresses of web pages that a person writes and a page links to: only what a browser fetches, never what it runs. */

/** Characters of an address. */
const LONGEST = 500;

/** What is wrong with an address, in words, and what to write. */
interface WrongAddress {
  readonly wrong: string;
  readonly remedy: string;
}

const EXAMPLE = 'https://www.example.com/';

/**
 * Reads the address of a page, or of a folder of pages.
 *
 * @returns the address as browsers write it, without anything that acts in a page
 */
export function webAddress(written: string): string | WrongAddress {
  const remedy = `Write an address that begins with https:// or http://, such as ${EXAMPLE}`;
  const text = written.trim();
  if (text.length > LONGEST) return { wrong: `longer than ${LONGEST} characters`, remedy };
  // A browser leaves out line breaks and tabs within an address, so that another address may be read than is seen.
  if (/[\p{C}\s<>"'`\\]/u.test(text))
    return {
      wrong: 'has a space, a quotation mark, a backslash or another character that no address has',
      remedy,
    };
  if (!/^https?:\/\//i.test(text) || !URL.canParse(text))
    return { wrong: 'not the address of a web page', remedy };
  const { href, username, password } = new URL(text);
  if (username !== '' || password !== '')
    return { wrong: 'has a user name or a password in it', remedy: 'Leave out what is before the @ sign.' };
  return href;
}

/** The same of a folder: its address ends in a slash, so that the names of files can be put behind it. */
export function webFolder(written: string): string | WrongAddress {
  const address = webAddress(written);
  if (typeof address !== 'string') return address;
  const { origin, pathname, search, hash } = new URL(address);
  if (search !== '' || hash !== '')
    return {
      wrong: 'has a question mark or a number sign in it',
      remedy: 'Write the address of the folder alone.',
    };
  return `${origin}${pathname.endsWith('/') ? pathname : `${pathname}/`}`;
}
