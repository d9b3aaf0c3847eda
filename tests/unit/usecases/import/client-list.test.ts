import { stringify } from 'csv-stringify/sync';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type CheckedRow, checkClientList, type TeamFacts } from '#lib/usecases/import/check-client-list.ts';
import { LIST_BOUNDS, readClientList } from '#lib/usecases/import/read-client-list.ts';

const TEAM: TeamFacts = {
  coaches: [
    { id: 'ines', name: 'Inês Halloran', email: 'ines@wall.example' },
    { id: 'ruth', name: 'Ruth', email: 'ruth@wall.example' },
  ],
  clients: [{ name: 'Maren Oduya', email: 'maren@home.example' }],
  self: { id: 'ines', zone: 'Europe/Lisbon' },
  today: '2026-11-26',
};
const checked = (text: string): CheckedRow[] => checkClientList(readClientList(text).rows, TEAM);
const only = (text: string): CheckedRow => {
  const [row] = checked(text);
  if (!row) throw new Error('no row');
  return row;
};
const words = (row: CheckedRow) => row.problems.map(({ column, message }) => `${column} ${message}`);

describe('a list', () => {
  it.each([
    ['comma', ','],
    ['semicolon', ';'],
    ['tab', '\t'],
  ])('parted by %s, with and without a byte order mark', (_, sign) => {
    const text = `Name${sign}E-mail${sign}Time zone\r\nBo Berg${sign}bo@b.example${sign}europe/oslo\r\n`;
    for (const bom of ['', '\uFEFF'])
      expect(checked(bom + text)).toMatchObject([
        { line: 2, name: 'Bo Berg', email: 'bo@b.example', zone: 'Europe/Oslo', problems: [], double: null },
      ]);
  });

  it('keeps commas, quotation marks and line breaks inside a cell, and the right line numbers', () => {
    const text = 'name;goal\n"Berg; ""Bo""";"press,\nthen more"\n\nAda;x\n';
    expect(checked(text).map(({ line, name, goal }) => [line, name, goal])).toEqual([
      [2, 'Berg; "Bo"', 'press,\nthen more'],
      [5, 'Ada', 'x'],
    ]);
  });

  it('takes a head in other words, and says which columns it does not read', () => {
    const list = readClientList(
      'Client Name,MAIL,Time Zone,Trainer,Shoe size,Under-18?,Since\nAda,,,,41,,\n',
    );
    expect(list.columns).toEqual(['name', 'email', 'zone', 'coach', 'under18', 'started']);
    expect(list.notRead).toEqual(['Shoe size']);
  });

  it.each([
    ['', 'The list is empty'],
    ['name\n', 'no rows below it'],
    ['who,mail\nAda,a@b.example\n', 'no column is called “name”. Found: “who”, “mail”'],
    ['name,client\nAda,Bo\n', '“name” and “client” both mean “name”'],
    ['name\n"Ada\n', 'a quotation mark is opened and not closed'],
    ['name\nAda "A" B\n', 'a quotation mark stands inside a cell'],
    [`name\n${'Ada\n'.repeat(LIST_BOUNDS.rows + 1)}`, 'at most 500 go at once'],
    [`name\n${'a'.repeat(LIST_BOUNDS.bytes)}`, 'longer than 1 MB'],
  ])('is refused with what is wrong (%#)', (text, message) => {
    expect(() => readClientList(text)).toThrow(message);
  });

  it('of 500 rows is read', () => {
    expect(readClientList(`name\n${'Ada\n'.repeat(LIST_BOUNDS.rows)}`).rows).toHaveLength(500);
  });

  it('written by csv-stringify is read as it was, whatever stands in its cells', () => {
    const cell = fc.string({ maxLength: 20 }).map((text) => text.replaceAll('\r', '').trim());
    const row = fc.record({ name: cell.filter((text) => text !== ''), goal: cell });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 8 }),
        fc.constantFrom(',', ';', '\t'),
        (rows, sign) => {
          const text = stringify(rows, { header: true, delimiter: sign, quoted: true });
          expect(readClientList(text).rows.map(({ cells }) => cells)).toEqual(rows);
        },
      ),
    );
  });
});

describe('a row', () => {
  it('without zone and coach takes those of who imports', () => {
    expect(only('name\nAda\n')).toMatchObject({
      zone: 'Europe/Lisbon',
      coachId: 'ines',
      under18: false,
      started: null,
      problems: [],
    });
  });

  it('finds a coach by name without accents, or by e-mail', () => {
    expect(only('name,coach\nAda,ines halloran\n').coachId).toBe('ines');
    expect(only('name,coach\nAda,Ruth@Wall.example\n').coachId).toBe('ruth');
  });

  it('names each problem by its column', () => {
    const row = only(
      'name,email,zone,coach,goal,under 18,started\n"",nobody,Mars/Base,Tove,g,maybe,2026-02-30\n',
    );
    expect(words(row)).toEqual([
      'name is empty',
      'email “nobody” is not an e-mail address',
      'zone “Mars/Base” is no zone such as Europe/Lisbon',
      'coach nobody called “Tove” coaches in your team',
      'under18 “maybe” is neither yes nor no',
      'started “2026-02-30” is no date such as 2024-03-31',
    ]);
  });

  it('reads dates with dots as day, month, year, and none ahead', () => {
    expect(only('name,started\nAda,3.11.2024\n').started).toBe('2024-11-03');
    expect(words(only('name,started\nAda,2026-11-27\n'))).toEqual(['started lies ahead']);
    expect(words(only('name,started\nAda,11/03/2024\n'))).toEqual([
      'started “11/03/2024” is no date such as 2024-03-31',
    ]);
  });

  it('that begins like a formula is a name like any', () => {
    for (const name of ['=1+1', '+Ada', '-Bo', '@Cem'])
      expect(only(`name\n${name}\n`)).toMatchObject({ name, problems: [] });
  });

  it('says whom it doubles: by e-mail before name, in the team and further up in the list', () => {
    const text =
      'name,email\nSomebody,Maren@Home.example\nmáren  oduya,\nAda,ada@a.example\nADA,\nBo,ada@a.example\n';
    expect(checked(text).map(({ double }) => double)).toEqual([
      { by: 'e-mail', of: 'your team' },
      { by: 'name', of: 'your team' },
      null,
      { by: 'name', of: 'line 4' },
      { by: 'e-mail', of: 'line 4' },
    ]);
  });
});
