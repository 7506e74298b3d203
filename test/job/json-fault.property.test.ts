import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { findJsonFault } from '../../core/job/json-fault';
import { parseJson } from '../../core/job/json-text';

describe("RFC 8259, judged by the runtime's own parser", () => {
  it('finds a fault in a damaged text if and only if the runtime refuses it', () => {
    const damage = fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      cut: fc.integer({ min: 0, max: 3 }),
      put: fc.constantFrom(
        '',
        ',',
        ':',
        '"',
        '\\',
        '}',
        ']',
        '{',
        '[',
        '0',
        '-',
        '.',
        'e',
        'null',
        '\n',
        ' ',
        '\u0001',
      ),
    });
    const seen = { refused: 0, taken: 0 };
    fc.assert(
      fc.property(fc.json(), fc.array(damage, { maxLength: 2 }), (json, damages) => {
        const text = damages.reduce((left, { at, cut, put }) => {
          const offset = Math.floor(at * left.length);
          return left.slice(0, offset) + put + left.slice(offset + cut);
        }, json);
        const refused = isRefused(text);
        seen[refused ? 'refused' : 'taken']++;
        expect(findJsonFault(text) !== null).toBe(refused);
      }),
      { numRuns: 3000, seed: 8259 },
    );
    expect(Math.min(seen.refused, seen.taken)).toBeGreaterThan(500);
  });

  it('a text that is cut off breaks at its end', () => {
    const text = JSON.stringify({ walls: [{ id: 'A', size: [1, 2.5], on: true }] });
    for (let length = 1; length < text.length; length++) {
      const cut = text.slice(0, length);
      const fault = findJsonFault(cut);
      // Half a word or half a number is told where it begins.
      expect(fault!.offset).toBeGreaterThanOrEqual(cut.search(/[a-z.\d]*$/));
    }
  });
});

describe('sentences about broken JSON', () => {
  it.each([
    ['{"a": 1,}', 'line 1, column 9; put a field name in double quotes there instead of "}"'],
    ['{"a" 1}', 'line 1, column 6; put a colon there instead of "1"'],
    ['[1 2]', 'line 1, column 4; put a comma or a closing bracket ] there instead of "2"'],
    [
      '{\n"a": [1,\n2',
      'line 3, column 2; put a comma or a closing bracket ] there where the file ends too early',
    ],
    [
      '{"a": "x\ny"}',
      'line 1, column 9; put a closing quote before the end of the line there instead of "\\n"',
    ],
    ['{"a": "C:\\job"}', 'line 1, column 10; put a doubled backslash there instead of "\\\\"'],
    ['{} {}', 'line 1, column 4; put the end of the file there instead of "{"'],
  ])('%j', (text, phrase) => {
    const parsed = parseJson(text);
    expect('finding' in parsed && parsed.finding.text).toContain(phrase);
  });

  it('reads a file that begins with a byte order mark', () => {
    expect(parseJson('\uFEFF{"a": 1}')).toEqual({ value: { a: 1 } });
  });
});

function isRefused(text: string): boolean {
  try {
    JSON.parse(text);
    return false;
  } catch {
    return true;
  }
}
