/** Where a text stops being JSON, and what would have to stand there. */
export interface JsonFault {
  /** Position in the text; its length if the text ends too early. */
  readonly offset: number;
  readonly wanted: string;
}

/**
 * The first place where a text breaks the grammar of RFC 8259; null if it is JSON. The runtimes' own parsers
 * say this in words that differ, and some do not say it at all. Walks without recursion.
 */
export function findJsonFault(text: string): JsonFault | null {
  const open: ('{' | '[')[] = [];
  let offset = 0;
  let expects: keyof typeof wants = 'value';
  for (;;) {
    offset = skipSpace(text, offset);
    const char = text[offset];
    const fault = { offset, wanted: wants[expects] };
    if (expects === 'end') return char === undefined ? null : fault;
    if (char === undefined) return fault;
    if (expects.endsWith(`or ${char}`)) {
      open.pop();
      expects = afterValue(open);
      offset++;
    } else if (expects.startsWith('value')) {
      if (char === '{' || char === '[') {
        open.push(char);
        expects = char === '{' ? 'key or }' : 'value or ]';
        offset++;
      } else {
        const end = char === '"' ? endOfString(text, offset) : endOfScalar(text, offset);
        if (typeof end !== 'number') return end ?? fault;
        offset = end;
        expects = afterValue(open);
      }
    } else if (expects.startsWith('key')) {
      const end = char === '"' ? endOfString(text, offset) : fault;
      if (typeof end !== 'number') return end;
      offset = end;
      expects = 'colon';
    } else if (expects === 'colon') {
      if (char !== ':') return fault;
      offset++;
      expects = 'value';
    } else {
      if (char !== ',') return fault;
      offset++;
      expects = open.at(-1) === '{' ? 'key' : 'value';
    }
  }
}

const wants = {
  value: 'a value',
  'value or ]': 'a value or a closing bracket ]',
  key: 'a field name in double quotes',
  'key or }': 'a field name in double quotes or a closing brace }',
  colon: 'a colon',
  ', or }': 'a comma or a closing brace }',
  ', or ]': 'a comma or a closing bracket ]',
  end: 'the end of the file',
} as const;

function afterValue(open: readonly string[]): keyof typeof wants {
  const inner = open.at(-1);
  return inner === undefined ? 'end' : inner === '{' ? ', or }' : ', or ]';
}

function skipSpace(text: string, offset: number): number {
  while (' \t\n\r'.includes(text[offset] ?? 'x')) offset++;
  return offset;
}

function endOfString(text: string, start: number): number | JsonFault {
  for (let i = start + 1; i < text.length; i++) {
    const char = text[i]!;
    if (char === '"') return i + 1;
    if (char < ' ') return { offset: i, wanted: 'a closing quote before the end of the line' };
    if (char !== '\\') continue;
    const escape = /^(?:["\\/bfnrt]|u[0-9a-fA-F]{4})/.exec(text.slice(i + 1, i + 6));
    if (!escape) return { offset: i, wanted: 'a doubled backslash' };
    i += escape[0].length;
  }
  return { offset: text.length, wanted: 'a closing quote' };
}

/** Numbers and the three words; null if there is neither. */
function endOfScalar(text: string, start: number): number | null {
  const scalar = /(?:-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null)/y;
  scalar.lastIndex = start;
  return scalar.test(text) ? scalar.lastIndex : null;
}
