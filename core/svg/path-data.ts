import type { SvgPoint } from './matrix';

/** A run of straight pieces; curves are drawn out. */
export interface Chain {
  readonly points: readonly SvgPoint[];
  readonly closed: boolean;
}

/** Pieces of a curve: so many that no eye finds a corner in a picture that fills a wall. */
const piecesOfCurve = 24;
/** Degrees that one piece of an arc spans at most. */
const degreesOfPiece = 4;

/**
 * The chains of path data. Source: SVG 1.1 (second edition), 8.3 (commands), F.6.5 (arcs from their ends to their middle).
 *
 * @returns null if it is no path data
 */
export function parsePath(data: string): Chain[] | null {
  const reader = readerOf(data);
  const chains: { points: SvgPoint[]; closed: boolean }[] = [];
  let at: SvgPoint = { x: 0, y: 0 };
  let start = at;
  let control: SvgPoint | null = null;
  let before = '';
  const run = () => {
    const last = chains.at(-1);
    if (last && !last.closed) return last.points;
    const fresh = { points: [at], closed: false };
    chains.push(fresh);
    return fresh.points;
  };
  for (;;) {
    const command = reader.command(before);
    if (command === '') return reader.atEnd() ? chains : null;
    const name = command.toUpperCase();
    if (before === '' && name !== 'M') return null;
    const from = command === name ? { x: 0, y: 0 } : at;
    const point = (): SvgPoint => ({ x: from.x + reader.number(), y: from.y + reader.number() });
    let next: SvgPoint = at;
    let held: SvgPoint | null = null;
    switch (name) {
      case 'M':
        next = point();
        chains.push({ points: [next], closed: false });
        start = next;
        break;
      case 'Z': {
        const last = chains.at(-1);
        if (last) last.closed = true;
        next = start;
        break;
      }
      case 'L':
        run().push((next = point()));
        break;
      case 'H':
        run().push((next = { x: from.x + reader.number(), y: at.y }));
        break;
      case 'V':
        run().push((next = { x: at.x, y: from.y + reader.number() }));
        break;
      case 'C':
      case 'S': {
        const reflected: SvgPoint | null = 'CS'.includes(before.toUpperCase()) ? control : null;
        const first = name === 'C' ? point() : mirrored(reflected, at);
        held = point();
        next = point();
        run().push(...cubic(at, first, held, next));
        break;
      }
      case 'Q':
      case 'T': {
        const reflected: SvgPoint | null = 'QT'.includes(before.toUpperCase()) ? control : null;
        held = name === 'Q' ? point() : mirrored(reflected, at);
        next = point();
        const third = (a: SvgPoint, b: SvgPoint) => ({
          x: a.x + (2 / 3) * (b.x - a.x),
          y: a.y + (2 / 3) * (b.y - a.y),
        });
        run().push(...cubic(at, third(at, held), third(next, held), next));
        break;
      }
      case 'A': {
        const [rx, ry, turn] = [reader.number(), reader.number(), reader.number()];
        const [large, sweep] = [reader.flag(), reader.flag()];
        next = point();
        run().push(...arc(at, next, Math.abs(rx), Math.abs(ry), turn, large, sweep));
        break;
      }
    }
    if (reader.failed()) return null;
    at = next;
    control = held;
    // More pairs after a move are lines.
    before = command === 'M' ? 'L' : command === 'm' ? 'l' : command;
  }
}

function mirrored(control: SvgPoint | null, about: SvgPoint): SvgPoint {
  return control ? { x: 2 * about.x - control.x, y: 2 * about.y - control.y } : about;
}

function cubic(a: SvgPoint, b: SvgPoint, c: SvgPoint, d: SvgPoint): SvgPoint[] {
  return Array.from({ length: piecesOfCurve }, (_, i) => {
    const t = (i + 1) / piecesOfCurve;
    const u = 1 - t;
    const [p, q, r, s] = [u * u * u, 3 * u * u * t, 3 * u * t * t, t * t * t];
    return { x: p * a.x + q * b.x + r * c.x + s * d.x, y: p * a.y + q * b.y + r * c.y + s * d.y };
  });
}

function arc(
  from: SvgPoint,
  to: SvgPoint,
  rx: number,
  ry: number,
  turn: number,
  large: boolean,
  sweep: boolean,
): SvgPoint[] {
  if (rx === 0 || ry === 0) return [to];
  if (from.x === to.x && from.y === to.y) return [];
  const phi = (turn * Math.PI) / 180;
  const [cos, sin] = [Math.cos(phi), Math.sin(phi)];
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const x1 = cos * hx + sin * hy;
  const y1 = -sin * hx + cos * hy;
  const grown = Math.sqrt(Math.max(1, (x1 / rx) ** 2 + (y1 / ry) ** 2));
  const [a, b] = [rx * grown, ry * grown];
  const below = (a * y1) ** 2 + (b * x1) ** 2;
  const root = Math.sqrt(Math.max(0, ((a * b) ** 2 - below) / below)) * (large === sweep ? -1 : 1);
  const [cx1, cy1] = [(root * a * y1) / b, (-root * b * x1) / a];
  const [cx, cy] = [cos * cx1 - sin * cy1 + (from.x + to.x) / 2, sin * cx1 + cos * cy1 + (from.y + to.y) / 2];
  const begin = Math.atan2((y1 - cy1) / b, (x1 - cx1) / a);
  let span = Math.atan2((-y1 - cy1) / b, (-x1 - cx1) / a) - begin;
  if (sweep && span < 0) span += 2 * Math.PI;
  if (!sweep && span > 0) span -= 2 * Math.PI;
  const pieces = Math.max(2, Math.ceil(Math.abs(span) / ((degreesOfPiece * Math.PI) / 180)));
  return Array.from({ length: pieces }, (_, i) => {
    if (i === pieces - 1) return to;
    const angle = begin + (span * (i + 1)) / pieces;
    const [ex, ey] = [a * Math.cos(angle), b * Math.sin(angle)];
    return { x: cos * ex - sin * ey + cx, y: sin * ex + cos * ey + cy };
  });
}

/** Numbers and commands of path data, which may stand close together: `M.5.5-1-1a1 1 0 0110 10`. */
function readerOf(data: string) {
  let at = 0;
  let failed = false;
  const skip = () => {
    while (at < data.length && /[\s,]/.test(data[at]!)) at++;
  };
  const number = (): number => {
    skip();
    const pattern = /[+-]?(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
    pattern.lastIndex = at;
    const found = pattern.exec(data);
    if (!found) {
      failed = true;
      return 0;
    }
    at = pattern.lastIndex;
    return Number(found[0]);
  };
  return {
    number,
    flag(): boolean {
      skip();
      const digit = data[at++];
      if (digit !== '0' && digit !== '1') failed = true;
      return digit === '1';
    },
    /** The next command, or the one before once more where figures follow; '' where nothing does. */
    command(before: string): string {
      skip();
      const next = data[at];
      if (next === undefined) return '';
      if (/[MZLHVCSQTAmzlhvcsqta]/.test(next)) {
        at++;
        return next;
      }
      return /[\d.+-]/.test(next) && before !== '' && !/z/i.test(before) ? before : '';
    },
    atEnd(): boolean {
      skip();
      return at >= data.length;
    },
    failed: () => failed || !Number.isFinite(at),
  };
}
