/** Files written and read with care: what changes, what stays as it was, and what is refused before it is opened. */
import { execFileSync } from 'node:child_process';
import {
  chmodSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { isForeign } from '../../src/files/foreign.ts';
import { isBytes, LARGEST_DRAWING, LARGEST_KIT, readBytes, whyNot } from '../../src/files/read-file.ts';
import { whyNotRead, whyNotWritten } from '../../src/files/reason.ts';
import { hasContent, WriteError, writeAtomically } from '../../src/files/write.ts';

const folder = mkdtempSync(join(tmpdir(), 'solderleaf-writing-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const path = (name: string): string => join(folder, name);
const put = (name: string, content: string | Uint8Array): string => {
  writeFileSync(path(name), content);
  return path(name);
};

describe('writing', () => {
  it('says whether the file changed, and touches none that holds the same', () => {
    const file = path('one.svg');
    expect(writeAtomically(file, 'one')).toBe(true);
    const before = statSync(file, { bigint: true });
    expect(writeAtomically(file, 'one')).toBe(false);
    expect(statSync(file, { bigint: true }).ino).toBe(before.ino);
    expect(writeAtomically(file, 'two')).toBe(true);
    expect(writeAtomically(file, new Uint8Array([116, 119, 111]))).toBe(false);
    expect(readFileSync(file, 'utf8')).toBe('two');
    expect(readdirSync(folder)).toEqual(['one.svg']);
  });
  it('keeps the permissions of a file that is there', () => {
    const file = put('kept.svg', 'old');
    for (const mode of [0o600, 0o640, 0o755]) {
      chmodSync(file, mode);
      writeAtomically(file, `new ${mode}`);
      expect(statSync(file).mode & 0o777).toBe(mode);
    }
  });
  it('replaces a link and leaves alone what it leads to', () => {
    const target = put('target.svg', 'mine');
    symlinkSync(target, path('link.svg'));
    expect(writeAtomically(path('link.svg'), 'new')).toBe(true);
    expect([readFileSync(target, 'utf8'), lstatSync(path('link.svg')).isSymbolicLink()]).toEqual([
      'mine',
      false,
    ]);
  });
  it('makes the folders above, and none where a file stands', () => {
    expect(writeAtomically(path('a/b/c.svg'), 'x')).toBe(true);
    put('file', 'x');
    for (const name of ['file/x.svg', 'file/a/b/x.svg']) {
      const write = (): boolean => writeAtomically(path(name), 'x');
      expect(write).toThrow(WriteError);
      expect(write).toThrow('there is a file where the folder should be');
    }
    mkdirSync(path('sub'));
    let thrown: unknown;
    try {
      writeAtomically(path('sub'), 'x');
    } catch (caught) {
      thrown = caught;
    }
    expect(thrown).toMatchObject({
      folder,
      reason: 'there is a folder where the file should be',
      message: `cannot write ${path('sub')}: there is a folder where the file should be`,
    });
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
  it('a file holds just what it holds', () => {
    const file = put('held', 'abc');
    expect(hasContent(file, 'abc')).toBe(true);
    expect(hasContent(file, new Uint8Array([97, 98, 99]))).toBe(true);
    for (const other of ['abd', 'ab', 'abcd', '']) expect(hasContent(file, other), other).toBe(false);
    expect(hasContent(path('none'), '')).toBe(false);
    expect(hasContent(folder, '')).toBe(false);
    expect(hasContent(put('empty', ''), '')).toBe(true);
  });
});

describe('reading', () => {
  const why = (file: string, most: number): string => {
    const read = readBytes(file, most);
    return isBytes(read) ? `${read.length} bytes` : `${read.code}: ${whyNot(read)}`;
  };
  it('takes a file up to what is allowed, and nothing larger', () => {
    const file = put('ten', 'x'.repeat(10));
    expect(why(file, 10)).toBe('10 bytes');
    expect(why(file, 9)).toBe('file-too-large: it is too large');
    expect([LARGEST_KIT, LARGEST_DRAWING]).toEqual([1_000_000, 20_000_000]);
  });
  it('never opens a pipe, a device or a folder', () => {
    execFileSync('mkfifo', [path('pipe')]);
    expect(why(path('pipe'), 10)).toBe('file-unreadable: it is a pipe, a socket or a device, not a file');
    expect(why('/dev/zero', 10)).toBe('file-unreadable: it is a pipe, a socket or a device, not a file');
    expect(why(folder, 1e9)).toBe('file-unreadable: it is a folder');
    expect(why(path('none'), 10)).toBe('file-unreadable: file not found');
    expect(why(path('ten/x'), 10)).toBe('file-unreadable: file not found');
    symlinkSync(path('loop'), path('loop'));
    expect(why(path('loop'), 10)).toBe('file-unreadable: symbolic links form a loop');
    expect(why(path('x'.repeat(300)), 10)).toBe('file-unreadable: the name is too long');
  });
});

it('an error of the system is told in words; one that has none, in its own, without the call and its paths', () => {
  expect(whyNotWritten(new Error('ENOSPC: no space left on device, write'))).toBe('the disk is full');
  expect(whyNotWritten(new Error("EROFS: read-only file system, open '/x'"))).toBe('the disk is read-only');
  expect(whyNotRead(new Error("EACCES: permission denied, open '/x'"))).toBe('permission denied');
  expect(whyNotRead(new Error('EIO: i/o error, read'))).toBe('EIO: i/o error');
  expect(whyNotRead(new Error("EIO: i/o error, open '/a b/c'"))).toBe('EIO: i/o error');
  expect(whyNotRead(new Error('something else'))).toBe('something else');
  expect(whyNotRead('EISDIR')).toBe('it is a folder');
  expect(whyNotWritten('EISDIR')).toBe('there is a folder where the file should be');
});

describe('whose a file is', () => {
  const png = (more: string): Uint8Array =>
    Buffer.concat([Buffer.from([0x89, 0x50, 0x4e, 0x47]), Buffer.from(more)]);
  it('a picture replaces a picture, a part of the signature is none', () => {
    expect(isForeign(put('a.png', png('old')), png('new'))).toBe(false);
    expect(isForeign(put('b.png', 'text'), png('new'))).toBe(true);
    for (let i = 0; i < 4; i++) {
      const bytes = png('old');
      bytes[i] = 0;
      expect(isForeign(put('c.png', bytes), png('new')), `byte ${i}`).toBe(true);
    }
    expect(isForeign(put('d.png', png('').subarray(0, 3)), png('new'))).toBe(true);
  });
  it('what is empty, is not there, is a link or a folder is nobody’s', () => {
    expect(isForeign(put('e.svg', ''), '<svg')).toBe(false);
    expect(isForeign(path('none.svg'), '<svg')).toBe(false);
    symlinkSync(put('f.txt', 'mine'), path('f.svg'));
    expect(isForeign(path('f.svg'), '<svg')).toBe(false);
    expect(isForeign(folder, '<svg')).toBe(false);
    expect(existsSync(path('f.txt'))).toBe(true);
  });
  it('a table’s head is its first line, however that ends', () => {
    expect(isForeign(put('g.csv', 'a,b\r\n1,2\r\n'), 'a,b\n3,4\n')).toBe(false);
    expect(isForeign(put('g.csv', 'a,b'), 'a,b\n3,4\n')).toBe(false);
    expect(isForeign(put('g.csv', 'a,bc\n'), 'a,b\n')).toBe(true);
    expect(isForeign(put('g.csv', '<svg aria-labelledby="a-title a-desc">'), 'a,b\n')).toBe(true);
  });
});
