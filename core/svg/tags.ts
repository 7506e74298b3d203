/*
 * The tags of a file in markup, one after the other. It is read as text and nothing else: no entity is looked up, nothing
 * is fetched or run.
 */

export interface Tag {
  /** Without the prefix of its namespace, which `prefix` holds. */
  readonly name: string;
  readonly prefix: string;
  readonly attributes: ReadonlyMap<string, string>;
  readonly opens: boolean;
  readonly closes: boolean;
  /** Text up to the next tag has a letter in it. */
  readonly hasText: boolean;
}

/** Longest run of tags that is read. */
const mostTags = 50_000;

/** @returns what is wrong with the file, in words, where it cannot be read as markup */
export function readTags(text: string): readonly Tag[] | { readonly fault: string } {
  const tags: Tag[] = [];
  let at = 0;
  while ((at = text.indexOf('<', at)) >= 0) {
    const skipped = skip(text, at);
    if (skipped !== null) {
      if (skipped < 0) return { fault: 'is cut short' };
      at = skipped;
      continue;
    }
    if (text.startsWith('<!', at)) return { fault: 'declares entities, which are not read' };
    const end = endOfTag(text, at);
    if (end < 0) return { fault: 'is cut short' };
    const tag = tagOf(text.slice(at + 1, end));
    if (!tag) return { fault: 'is no markup that can be read' };
    if (tags.length >= mostTags) return { fault: `has more than ${mostTags} elements` };
    // A style sheet may be set apart by a mark that begins with "<", too.
    const next = text.indexOf(tag.name === 'style' ? '</' : '<', end);
    tags.push({ ...tag, hasText: /\S/.test(text.slice(end + 1, next < 0 ? undefined : next)) });
    at = end + 1;
  }
  return tags;
}

/** Past what says nothing: comments, instructions, text set apart, a type without declarations; null for a tag, −1 if cut. */
function skip(text: string, at: number): number | null {
  const past = (mark: string) => {
    const end = text.indexOf(mark, at);
    return end < 0 ? -1 : end + mark.length;
  };
  if (text.startsWith('<!--', at)) return past('-->');
  if (text.startsWith('<?', at)) return past('?>');
  if (text.startsWith('<![CDATA[', at)) return past(']]>');
  const type = /^<!DOCTYPE[^[>]*>/i.exec(text.slice(at, at + 1000));
  return type ? at + type[0].length : null;
}

/** The ">" that is in no quotation marks. */
function endOfTag(text: string, from: number): number {
  let quote = '';
  for (let i = from + 1; i < text.length; i++) {
    const character = text[i]!;
    if (quote) {
      if (character === quote) quote = '';
    } else if (character === '"' || character === "'") quote = character;
    else if (character === '>') return i;
  }
  return -1;
}

function tagOf(inner: string): Omit<Tag, 'hasText'> | null {
  const head = /^(\/?)\s*(?:([\w.-]+):)?([A-Za-z_][\w.-]*)/.exec(inner);
  if (!head) return null;
  const [all, slash, prefix = '', name] = head;
  const attributes = new Map<string, string>();
  const pattern = /([\w.:-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
  for (const [, key, double, single] of inner.slice(all.length).matchAll(pattern)) {
    attributes.set(key!, decoded(double ?? single ?? ''));
  }
  const alone = inner.endsWith('/');
  return { name: name!, prefix, attributes, opens: slash === '', closes: slash !== '' || alone };
}

/** The five entities of XML 1.0 and characters by number. */
function decoded(value: string): string {
  const named: Readonly<Record<string, string>> = { lt: '<', gt: '>', amp: '&', quot: '"', apos: "'" };
  return value.replace(/&(?:#(\d{1,7})|#x([\da-f]{1,6})|(\w+));/gi, (all, decimal, hex, name: string) => {
    const code = decimal ? Number(decimal) : hex ? parseInt(hex as string, 16) : NaN;
    if (code <= 0x10ffff) return String.fromCodePoint(code);
    return named[name] ?? (all as string);
  });
}
