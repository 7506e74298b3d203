import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readSvg } from '../../core/svg/read-svg';

const read = (text: string) => readSvg(new TextEncoder().encode(text));
const svg = (inner: string, head = 'viewBox="0 0 200 100"') =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${head}>${inner}</svg>`;
const faultOf = (text: string) => {
  const picture = read(text);
  return 'fault' in picture ? picture.fault : null;
};
const shapesOf = (inner: string, head?: string) => {
  const picture = read(svg(inner, head));
  if ('fault' in picture) throw new Error(picture.fault);
  return picture.shapes;
};

describe('the plain part of an SVG file', () => {
  it('has the frame of its view box, else of its size', () => {
    expect(read(svg('<rect width="5" height="5"/>'))).toMatchObject({ width: 200, height: 100 });
    const sized = read(svg('<rect width="5" height="5"/>', 'width="30mm" height="20mm"'));
    expect(sized).toMatchObject({ width: 30, height: 20 });
    const [moved] = shapesOf('<rect x="10" y="20" width="5" height="5"/>', 'viewBox="10 20 50 50"');
    expect(moved!.chains[0]!.points[0]).toEqual({ x: 0, y: 0 });
  });

  it('puts transforms one into the other', () => {
    // By hand: turned about (10, 10) by a right angle (20, 10) comes to (10, 20); then doubled, then moved.
    const [line] = shapesOf(
      '<g transform="translate(1 2) scale(2)"><line transform="rotate(90 10 10)" x1="20" y1="10" x2="10" y2="10" stroke="red" stroke-width="3"/></g>',
    );
    const [from, to] = line!.chains[0]!.points;
    expect(from!.x).toBeCloseTo(21, 9);
    expect(from!.y).toBeCloseTo(42, 9);
    expect([to!.x, to!.y]).toEqual([21, 22]);
    expect(line).toMatchObject({ stroke: '#ff0000', strokeWidth: 6 });
  });

  it('inherits paint, and takes style before attributes', () => {
    const shapes = shapesOf(
      '<g fill="none" stroke="#0a0"><path d="M0 0h9"/><path d="M0 9h9" style="stroke:rgb(0,0,255);fill:#123456"/></g>',
    );
    expect(shapes[0]).toMatchObject({ fill: null, stroke: '#00aa00', strokeWidth: 1 });
    expect(shapes[1]).toMatchObject({ fill: '#123456', stroke: '#0000ff' });
  });

  it('leaves out what is hidden, only defined, or not painted', () => {
    const inner =
      '<defs><path d="M0 0h9"/></defs><path d="M0 0h9" fill="none"/><g display="none"><path d="M0 0h9"/></g><circle r="4" cx="5" cy="5"/>';
    expect(shapesOf(inner)).toHaveLength(1);
  });

  it.each([
    ['text', '<text>Hall</text>', 'has text'],
    ['a picture in it', '<image href="https://example.org/a.png"/>', 'has pictures in it'],
    ['a style sheet', '<style>.a{fill:red}</style><path d="M0 0h9v9z"/>', 'has a style sheet'],
    [
      'a style sheet set apart',
      '<style><![CDATA[.a{fill:red}]]></style><path d="M0 0h9v9z"/>',
      'has a style sheet',
    ],
    ['a gradient', '<path d="M0 0h9v9z" fill="url(#a)"/>', 'has gradients or patterns'],
    ['see-through parts', '<path d="M0 0h9v9z" opacity=".5"/>', 'has see-through parts'],
    ['parts used again', '<use href="#a"/>', 'has parts used again'],
  ])('says what it does not draw: %s', (_, inner, says) => {
    expect(faultOf(svg(inner))).toContain(says);
  });

  it('does nothing with scripts, events and what lies elsewhere', () => {
    const [shape] = shapesOf(
      '<script>globalThis.wasRun = true</script><path onclick="globalThis.wasRun = true" d="M0 0h9v9z" fill="#ABCDEF"/>',
    );
    expect(shape!.fill).toBe('#abcdef');
    expect(globalThis).not.toHaveProperty('wasRun');
    expect(faultOf(`<!DOCTYPE svg [<!ENTITY a "aaaa">]>${svg('<path d="M0 0h9"/>')}`)).toContain('entities');
  });

  it.each([
    ['nothing', ''],
    ['another format', '<html></html>'],
    ['a file that is cut short', svg('<path d="M0 0h9"/>').slice(0, -9)],
    ['no size at all', svg('<path d="M0 0h9"/>', '')],
    ['an empty picture', svg('')],
    ['a broken path', svg('<path d="M0 0 L nine"/>')],
    ['a broken transform', svg('<path transform="fly(9)" d="M0 0h9"/>')],
    ['nesting without end', svg('<g>'.repeat(500))],
  ])('refuses %s in words', (_, text) => {
    expect(faultOf(text)).toMatch(/^(is|has|says|shows) /);
  });

  it('never throws, whatever it is given', () => {
    const pieces = fc.constantFrom(
      '<',
      '>',
      '"',
      'svg',
      '<g>',
      '</g>',
      '<path d="M0',
      ' 9"/>',
      '<!--',
      'z',
      '&#x9;',
    );
    fc.assert(
      fc.property(fc.array(fc.oneof(pieces, fc.string({ maxLength: 6 })), { maxLength: 30 }), (parts) => {
        expect(() => read(svg(parts.join('')))).not.toThrow();
        expect(() => read(parts.join(''))).not.toThrow();
      }),
      { numRuns: 500, seed: 7 },
    );
  });
});
