import { DOMParser } from '@xmldom/xmldom';
import DxfParser from 'dxf-parser';

/** A closed contour as a reader finds it: corners with bulges, or a circle; mm. */
export interface ReadContour {
  readonly layer: string;
  readonly closed: boolean;
  readonly vertices: readonly { x: number; y: number; bulge: number }[];
  readonly circle: { x: number; y: number; radius: number } | null;
}

export interface ReadDxf {
  readonly units: unknown;
  readonly version: unknown;
  readonly layers: readonly string[];
  readonly contours: readonly ReadContour[];
  readonly texts: readonly { layer: string; text: string }[];
  readonly types: readonly string[];
}

interface Entity {
  readonly type: string;
  readonly layer: string;
  readonly shape?: boolean;
  readonly vertices?: readonly { x: number; y: number; bulge?: number }[];
  readonly center?: { x: number; y: number };
  readonly radius?: number;
  readonly text?: string;
}

/** By dxf-parser (MIT), a reader of its own. */
export function readDxf(text: string): ReadDxf {
  const file = new DxfParser().parseSync(text)!;
  const entities = file.entities as unknown as Entity[];
  return {
    units: file.header.$INSUNITS,
    version: file.header.$ACADVER,
    layers: Object.keys(file.tables.layer.layers),
    types: entities.map(({ type }) => type),
    texts: entities
      .filter(({ type }) => type === 'TEXT')
      .map(({ layer, text: words }) => ({ layer, text: words ?? '' })),
    contours: entities
      .filter(({ type }) => type === 'LWPOLYLINE' || type === 'CIRCLE')
      .map((one) => ({
        layer: one.layer,
        closed: one.type === 'CIRCLE' || one.shape === true,
        vertices: (one.vertices ?? []).map(({ x, y, bulge }) => ({ x, y, bulge: bulge ?? 0 })),
        circle: one.center ? { ...one.center, radius: one.radius! } : null,
      })),
  };
}

/**
 * Area inside a read contour, mm², by Green's theorem along chords and arcs: of each arc the centre is found by the two-bulge
 * construction and the integral ½∮(x dy − y dx) taken in closed form.
 */
export function areaOfRead({ vertices, circle }: ReadContour): number {
  if (circle) return Math.PI * circle.radius ** 2;
  let area = 0;
  vertices.forEach((a, i) => {
    const b = vertices[(i + 1) % vertices.length]!;
    if (a.bulge === 0) {
      area += (a.x * b.y - b.x * a.y) / 2;
      return;
    }
    const { x, y, radius, from, sweep } = arcOfRead(a, b);
    const to = from + sweep;
    area +=
      (radius * radius * sweep +
        radius * x * (Math.sin(to) - Math.sin(from)) -
        radius * y * (Math.cos(to) - Math.cos(from))) /
      2;
  });
  return Math.abs(area);
}

/** Centre, radius and angles of the arc that a bulge stands for. */
export function arcOfRead(
  a: { x: number; y: number; bulge: number },
  b: { x: number; y: number },
): { x: number; y: number; radius: number; from: number; sweep: number } {
  const sweep = 4 * Math.atan(a.bulge);
  const half = Math.hypot(b.x - a.x, b.y - a.y) / 2;
  const rise = half / Math.tan(sweep / 2);
  const [ux, uy] = [(b.x - a.x) / (2 * half), (b.y - a.y) / (2 * half)];
  const x = (a.x + b.x) / 2 - uy * rise;
  const y = (a.y + b.y) / 2 + ux * rise;
  return { x, y, radius: Math.hypot(a.x - x, a.y - y), from: Math.atan2(a.y - y, a.x - x), sweep };
}

/** By @xmldom/xmldom (MIT); a fault in the XML is thrown. */
export function readXml(text: string) {
  const parser = new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  });
  return parser.parseFromString(text, 'text/xml').documentElement!;
}
