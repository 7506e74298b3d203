import { describe, expect, it } from 'vitest';
import { readReadings, type Reading } from '../../../web/readings/read-readings';

/** `door 220 0 926 2040`; a fault as `width: why`. */
function read(text: string, reading: Reading = 'running', from?: number): string[] {
  return readReadings(text, reading, from).map((row) => {
    if ('fault' in row) return `${row.line} ${row.column}: ${row.fault}`;
    const { kind, name, box } = row.measured;
    return [kind, box.x, box.y, box.width, box.height, ...(name ? [name] : [])].join(' ');
  });
}

describe('tape readings, one a line', () => {
  const wanted = ['door 220 0 926 2040', 'window 2400 900 1200 1200'];
  it.each([
    ['by hand', 'door 220 0 926 2040\nwindow 2400 900 1200 1200'],
    ['with units', 'door 22 cm 0 92.6 cm 2.04 m\n\nwindow 2.4 m 0,9 m 1,2m 120cm'],
    ['from a spreadsheet', 'Door\t220\t0\t926\t2040\r\nWindow\t2400\t900\t1200\t1200\r\n'],
    ['with semicolons and decimal commas', 'door;220;0;926,0;2040\nwindow;2,4 m;900;1200;1200'],
    ['pasted, with a line added by hand', 'door\t220\t0\t926\t2040\nwindow 2400 900 1200 1200'],
    ['with commas', 'door,220,0,926,2040\nwindows, 2400, 900, 1200, 1200'],
    ['to the far end', 'door 220 0 to 1146 to 2040\nwindow 2400 900 to 3600 to 2.1 m'],
    [
      'in another order',
      'height\twidth\tkind\tfrom floor\tfrom left\n2040\t926\tdoor\t0\t220\n1200\t1200\twindow\t900\t2400',
    ],
    ['by ends under heads', 'what;left;to;floor;up to\ndoor;220;1146;0;2040\nwindow;2400;3600;900;2100'],
    [
      'in units of the heads',
      'kind;from left (cm);from floor, cm;width cm;height in m\ndoor;22;0;92.6;2.04\nwindow;240;90;120;1.2',
    ],
  ])('%s', (_, text) => {
    expect(read(text)).toEqual(wanted);
  });

  it('in feet and inches, as a spreadsheet quotes them', () => {
    // 1 inch is 25.4 mm (international yard and pound agreement, 1959).
    expect(read(`window\t3' 11 1/4"\t"2' 6"""\t4'\t"48"""`)).toEqual(['window 1200.15 762 1219.2 1219.2']);
  });

  it('in feet and inches by hand, inches with their mark', () => {
    expect(read(`window 3' 11 1/4" 2' 6" 48" 4'`)).toEqual(['window 1200.15 762 1219.2 1219.2']);
    expect(read(`window 3' 2' 1/2" 4'`)).toEqual(['window 914.4 622.3 1219.2 1200']);
  });

  it('of the usual size where none was written', () => {
    expect(read('socket 1500')).toEqual(['socket 1500 257 146 86']);
    expect(read('beam end 1500 2200')).toEqual(['beam-end 1500 2200 200 240']);
  });

  it('to the middle of round things, unless it is said where they end', () => {
    expect(read('pipe 1500 200 50')).toEqual(['pipe 1475 175 50 50']);
    expect(read('pipe 1475 200 to 1525')).toEqual(['pipe 1475 175 50 50']);
  });

  it('of kinds of the user’s own, whatever stands in their names', () => {
    const own = [
      { name: 'Hook 60', round: true, width: 60, floor: 1800, clearance: 4 },
      { name: 'Hook', width: 30, height: 50, floor: 1700, clearance: 4 },
      { name: 'Pin rail', width: 900, height: 60, floor: 1500, clearance: 10 },
    ];
    const rows = readReadings(
      'pin rail 500\nhook 60 1000 1750\nhook 1200 1000 40 60\nladder 5',
      'running',
      0,
      own,
    );
    expect(rows.map((row) => ('measured' in row ? row.measured.kind : row.fault))).toEqual([
      'Pin rail',
      'Hook 60',
      'Hook',
      expect.stringContaining('beam end, free fitting, Hook 60, Hook, Pin rail.'),
    ]);
    expect(rows.map((row) => 'measured' in row && row.measured.box).slice(0, 3)).toEqual([
      { x: 500, y: 1500, width: 900, height: 60 },
      { x: 970, y: 1720, width: 60, height: 60 },
      { x: 1200, y: 1000, width: 40, height: 60 },
    ]);
  });

  it('with names where a column has them', () => {
    expect(read('kind;name;left;floor\nsocket;Light table;2347;907')).toEqual([
      'socket 2347 907 146 86 Light table',
    ]);
  });
});

describe('chained readings', () => {
  it('begin where the one before ends, or at the middle of a round thing', () => {
    expect(
      read('door 220 0 926 2040\nsocket 414 300 146 86\npipe 300 200 40\nsocket 100', 'chained'),
    ).toEqual([
      'door 220 0 926 2040',
      'socket 1560 300 146 86',
      'pipe 1986 180 40 40',
      'socket 2106 257 146 86',
    ]);
  });
  it('go on from where others ended, their ends read along with them', () => {
    expect(read('socket 100 300 to 246', 'chained', 1000)).toEqual(['socket 1100 300 146 86']);
  });
  it('wait for a line that could not be read', () => {
    expect(read('socket 500\nsocket 1O0 300\nsocket 100', 'chained')).toEqual([
      'socket 500 257 146 86',
      '2 from left: Write how far it is from the left, such as 1200, 1.2 m or 120 cm.',
      '3 from left: It is read from the one before: mend line 2 first.',
    ]);
  });
});

describe('a reading that cannot be read', () => {
  it.each([
    ['gate 100 0', /^1 kind: Write what it is: door, window, .*socket/],
    ['free 100 0', /^1 kind/],
    [';100;0', /^1 kind/],
    ['door', /^1 from left: Write how far/],
    ['door;1,200;0', /^1 from left: 1,200 could be 1200 or 1.2/],
    ['door;100;NaN', /^1 from floor/],
    ['door;100;0;0', /^1 width: Write its width/],
    ['door;100;0;-5', /^1 width/],
    ['door 500 0 to 400', /^1 width: It ends to the left/],
    ['window 500 900 600 to 800', /^1 height: It ends below/],
    ['door;100;0;900;2e3', /^1 height/],
    ['door 100 0 900 2000 12', /^1 height: “12” stands beyond/],
    [`window 3' 11 1/4 2' 6" 4'`, /^1 /],
  ])('%j says why and where', (text, fault) => {
    const [row, ...others] = read(text);
    expect(others).toEqual([]);
    expect(row).toMatch(fault);
  });
  it('leaves the others as they are', () => {
    expect(read('door 220 0\ngate 5 5\n\nsocket 1560 300')).toEqual([
      'door 220 0 926 2040',
      expect.stringMatching(/^2 kind/),
      'socket 1560 300 146 86',
    ]);
  });
  it('is none where nothing is written', () => {
    expect(read(' \n\n')).toEqual([]);
    expect(read('kind;left;floor')).toEqual([]);
  });
});
