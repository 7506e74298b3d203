import { blocksAndObjects, headerAndTables, type LayerLook } from './dxf-frame';
import type { Contour } from './contour';
import { extentOf, type WorkshopDrawing, type WorkshopLayer, type WorkshopShape } from './workshop-drawing';

/** A group of the file: its code and its value, each on a line of its own. */
export type Group = readonly [code: number, value: string | number];

/** Colours by number (1 to 255 of the format, 7: the paper's opposite), so that layers can be told apart; cut as black. */
const looks: Readonly<Record<WorkshopLayer, number>> = {
  cut: 7,
  mark: 30,
  sheet: 8,
  text: 8,
  wall: 7,
  opening: 7,
  fitting: 7,
  zone: 30,
  panel: 30,
};

/**
 * A drawing as ASCII DXF, release AC1015 (AutoCAD 2000), the first whose header states the unit: `$INSUNITS` 4, millimetres.
 * Contours are closed LWPOLYLINEs, arcs in them bulges; whole circles CIRCLEs; words TEXT on the layer TEXT and nowhere else.
 * No date, no clock: the same drawing gives the same bytes.
 *
 * Source: AutoCAD 2000 DXF Reference, HEADER, TABLES, BLOCKS, ENTITIES and OBJECTS sections.
 * @returns CRLF lines of plain ASCII; other characters as `\U+XXXX`
 */
export function toDxf(drawing: WorkshopDrawing): string {
  let last = 0x100;
  const handle = () => (last++).toString(16).toUpperCase();
  const layers = drawing.layers.map((layer): LayerLook => ({
    name: layer.toUpperCase(),
    colour: looks[layer],
    handle: handle(),
  }));
  const entities = drawing.shapes.flatMap((shape) => entity(shape, handle()));
  const { before, after } = blocksAndObjects();
  const groups: Group[] = [
    ...headerAndTables(layers, extentOf(drawing), handle()),
    ...before,
    [0, 'SECTION'],
    [2, 'ENTITIES'],
    ...entities,
    [0, 'ENDSEC'],
    ...after,
    [0, 'EOF'],
  ];
  return groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${value}\r\n`).join('');
}

function entity(shape: WorkshopShape, handle: string): Group[] {
  const layer = (shape.kind === 'text' ? 'text' : shape.layer).toUpperCase();
  const head = (type: string): Group[] => [
    [0, type],
    [5, handle],
    // Of the block of the model space.
    [330, '1F'],
    [100, 'AcDbEntity'],
    [8, layer],
  ];
  switch (shape.kind) {
    case 'contour':
      return contourEntity(shape.contour, head);
    case 'line':
      return [
        ...head('LINE'),
        [100, 'AcDbLine'],
        ...point(10, ...shape.from),
        [30, '0.0'],
        ...point(11, ...shape.to),
        [31, '0.0'],
      ];
    case 'text':
      return [
        ...head('TEXT'),
        [100, 'AcDbText'],
        ...point(10, ...shape.at),
        [30, '0.0'],
        [40, real(shape.height)],
        [1, plainText(shape.text)],
        [7, 'STANDARD'],
        // Centred words stand by their second point (72: 1).
        ...(shape.centred ? ([[72, 1], ...point(11, ...shape.at), [31, '0.0']] as Group[]) : []),
        [100, 'AcDbText'],
      ];
  }
}

function contourEntity(contour: Contour, head: (type: string) => Group[]): Group[] {
  if (contour.kind === 'circle') {
    const { x, y, radius } = contour;
    return [...head('CIRCLE'), [100, 'AcDbCircle'], ...point(10, x, y), [30, '0.0'], [40, real(radius)]];
  }
  const { vertices } = contour;
  return [
    ...head('LWPOLYLINE'),
    [100, 'AcDbPolyline'],
    [90, vertices.length],
    // 1: closed.
    [70, 1],
    [43, '0.0'],
    ...vertices.flatMap(({ x, y, bulge }): Group[] => [
      ...point(10, x, y),
      ...(bulge === 0 ? [] : [[42, real(bulge, 12)] as Group]),
    ]),
  ];
}

function point(code: number, x: number, y: number): Group[] {
  return [
    [code, real(x)],
    [code + 10, real(y)],
  ];
}

/** A real number always has its point. */
export function real(value: number, places = 6): string {
  const rounded = Number(value.toFixed(places)) + 0;
  const text = rounded.toFixed(places).replace(/0+$/, '');
  return text.endsWith('.') ? `${text}0` : text;
}

/** One line without control characters; `^` and `%%` would begin a code, so they are set apart. */
function plainText(text: string): string {
  return [...text.normalize('NFC')]
    .map((character) => {
      const code = character.codePointAt(0)!;
      if (code < 0x20 || (code >= 0x7f && code < 0xa0)) return ' ';
      if (character === '^') return '^ ';
      if (code < 0x7f) return character;
      const units = Array.from({ length: character.length }, (_, i) => character.charCodeAt(i));
      return units.map((unit) => `\\U+${unit.toString(16).toUpperCase().padStart(4, '0')}`).join('');
    })
    .join('')
    .replace(/%%/g, '% %');
}
