import { describe, expect, it } from 'vitest';
import { rectangle } from '../../lib/geometry/index.js';
import { writeCsv, writeCutList, writeSheetList } from '../../lib/output/index.js';
import { plainPart } from '../helpers/plain-part.js';

describe('CSV', () => {
  // RFC 4180 (2005), section 2, rules 1, 5, 6 and 7, with the examples given there
  it.each([
    [
      [
        ['aaa', 'bbb', 'ccc'],
        ['zzz', 'yyy', 'xxx'],
      ],
      'aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n',
    ],
    [[['aaa', 'b\r\nbb', 'ccc']], 'aaa,"b\r\nbb",ccc\r\n'],
    [[['aaa', 'b"bb', 'ccc']], 'aaa,"b""bb",ccc\r\n'],
    [[['a,b', '']], '"a,b",\r\n'],
  ])('of %j follows RFC 4180', (rows, text) => {
    expect(writeCsv(rows)).toBe(text);
  });

  // OWASP, "CSV Injection": cells that begin with = + - @, tab or carriage return are prefixed by a single quote
  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\t=1', '\r=1', ' =1', '\uff1d1+1', '=HYPERLINK("http://x","y")'])(
    'takes %j for text, not for a formula',
    (text) => {
      const cell = writeCsv([[text]]).replace(/\r\n$/, '');
      expect(cell.replace(/^"/, '')).toBe(`'${text.replaceAll('"', '""')}${cell.startsWith('"') ? '"' : ''}`);
    },
  );

  it('quotes what would divide or begin a cell elsewhere', () => {
    expect(writeCsv([['rib;=1', 'a\tb', ' a ']])).toBe('"rib;=1","a\tb"," a "\r\n');
  });

  it('writes numbers with a point, rounded, and negative ones as numbers', () => {
    const row = [
      { value: -1.25, digits: 1 },
      { value: 1e-9, digits: 3 },
      { value: 1234567.8915, digits: 2 },
      { value: -0.0001, digits: 2 },
    ];
    expect(writeCsv([row])).toBe('-1.3,0,1234567.89,0\r\n');
  });

  it('refuses rows of unequal length, and what is no number', () => {
    expect(() => writeCsv([['a', 'b'], ['c']])).toThrow('row 2 has 1 cells, the first 2');
    expect(() => writeCsv([[{ value: NaN, digits: 1 }]])).toThrow(/cannot write NaN/);
  });
});

describe('the cut list', () => {
  const part = plainPart('cleat', rectangle(-20, 10, 20, 130), {
    name: '=cleat, "left"',
    quantity: 48,
    material: 'ply-12',
    thickness: 11.65,
    grain: 'along',
    notes: ['Pre-drill.', 'Countersink 8 mm.'],
  });
  const holding = (...names: string[]) =>
    names.map((name, i) => ({ part: name, copy: i + 1, x: 0, y: 0, rotationDeg: 0, mirrored: false }));
  const sheets = [
    { id: 'ply-12-1', placed: holding('cleat', 'rib', 'cleat') },
    { id: 'ply-12-2', placed: holding('rib') },
    { id: 'ply-12-3', placed: holding('cleat') },
  ];

  it('gives each part with its size, longest side first, and its sheets', () => {
    expect(writeCutList([part], sheets, 'mm')).toBe(
      'part,name,number off,material,thickness (mm),length (mm),width (mm),grain,sheets,notes\r\n' +
        `cleat,"'=cleat, ""left""",48,ply-12,11.65,120,40,along,"ply-12-1 (2), ply-12-3 (1)",Pre-drill. Countersink 8 mm.\r\n`,
    );
  });

  it('measures in the unit of the design', () => {
    const [heading, row] = writeCutList([{ ...part, name: 'cleat' }], [], 'in').split('\r\n');
    expect(heading).toContain('length (in)');
    expect(row).toContain('0.4587,4.724,1.575,along,,');
  });
});

describe('the list of sheets', () => {
  it('has the minutes of each sheet, and none where they are not known', () => {
    const sheet = { file: 'sheets/ply-1', width: 254, height: 127, parts: 3, cutBy: 'router', atLeast: false };
    const text = writeSheetList(
      [
        { ...sheet, seconds: 4529 },
        { ...sheet, file: 'templates/rib', cutBy: 'laser', seconds: 90, atLeast: true },
        { ...sheet, file: 'sheets/foil-1', cutBy: 'hand', seconds: null },
      ],
      'in',
    );
    expect(text.split('\r\n')).toEqual([
      'sheet,width (in),height (in),parts,cut by,machine (min),notes',
      'sheets/ply-1,10,5,3,router,75.5,',
      'templates/rib,10,5,3,laser,1.5,at least: the machine’s acceleration is not stated',
      'sheets/foil-1,10,5,3,hand,,',
      '',
    ]);
  });
});
