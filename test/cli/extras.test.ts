import { execFileSync } from 'node:child_process';
import { mkdirSync, readFileSync, truncateSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { inProcess, workshop } from '../helpers/command.js';

let shop: ReturnType<typeof workshop>;
beforeAll(() => {
  shop = workshop();
});
afterAll(() => shop.clear());

/** The table-top dish with an outline of one's own. */
function withExtra(file: string, more = ''): string {
  const text = readFileSync(join(shop.folder, 'table-top.yaml'), 'utf8');
  // without a mirror and a vessel no light is traced
  const dark = text.replace(/^(?:vessel|load|reflector):.*\n/gm, '');
  writeFileSync(join(shop.folder, 'own.yaml'), `${dark}\nextra:\n  - { file: ${file}, material: ply5${more} }\n`);
  return 'own.yaml';
}

it('cuts outlines of one’s own along with the dish, and proves them', async () => {
  const ran = await inProcess(shop.folder, ['cut', withExtra('extra/trivet.svg'), '-o', 'made', '--seconds', '0']);
  expect(ran.err).toContain('read back and proven');
  expect(ran.code).toBe(0);
  expect(readFileSync(join(shop.folder, 'made/cut-list.csv'), 'utf8')).toContain('trivet 1');
});

it('checks them, and says what is wrong and where', async () => {
  writeFileSync(
    join(shop.folder, 'open.svg'),
    '<svg xmlns="http://www.w3.org/2000/svg" width="9mm" viewBox="0 0 9 9"><path d="M1 2H5V6"/></svg>',
  );
  const ran = await inProcess(shop.folder, ['check', withExtra('open.svg')]);
  expect(ran.code).toBe(1);
  expect(ran.err).toMatch(/error: extra\[1\], open\.svg: the <path> in line 1 is open: it begins at \(1, 2\)/);
});

it.each([
  ['gone.dxf', /extra\[1\]\.file: cannot read gone\.dxf: no such file/],
  ['../own.dxf', /outside the folder of the design file/],
  ['/etc/hostname', /outside the folder of the design file/],
  ['folder', /folder is a folder, not a file/],
  ['pipe', /pipe is not a plain file/],
  ['vast.dxf', /larger than 16 MB/],
])('refuses %s', async (file, message) => {
  mkdirSync(join(shop.folder, 'folder'), { recursive: true });
  if (file === 'pipe') execFileSync('mkfifo', [join(shop.folder, 'pipe')]);
  if (file === 'vast.dxf') {
    writeFileSync(join(shop.folder, file), '');
    truncateSync(join(shop.folder, file), 20_000_000);
  }
  const ran = await inProcess(shop.folder, ['check', withExtra(file)]);
  expect(ran.code).toBe(2);
  expect(ran.err).toMatch(message);
});
