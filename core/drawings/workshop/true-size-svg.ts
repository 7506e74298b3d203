import { colours } from '../colours';
import { escapeXml } from '../svg';
import { radiusOf, type Contour } from './contour';
import { extentOf, type WorkshopDrawing, type WorkshopLayer, type WorkshopShape } from './workshop-drawing';

const inks: Readonly<Record<WorkshopLayer, string>> = {
  cut: colours.ink,
  mark: colours['red-lead'],
  sheet: colours.soft,
  text: colours.soft,
  wall: colours.ink,
  opening: colours.ink,
  fitting: colours.ink,
  zone: colours['red-lead'],
  panel: colours['red-lead'],
};

/** Room about the drawing, mm. */
const margin = 10;
/** Over the height of a capital; a common sans serif has 0.72 (common practice, no source). */
const sizePerCapital = 1.39;

/**
 * A drawing as SVG at its true size: width and height in mm, one unit of the view box a millimetre, one group a layer with the
 * layer's name as its id. Arcs are arcs, contours closed paths.
 *
 * Source: W3C SVG 1.1 (Second Edition), 7.2, 8.3.8 and 9.3.
 */
export function toTrueSizeSvg(drawing: WorkshopDrawing): string {
  const { left, bottom, right, top } = extentOf(drawing);
  const [width, height] = [right - left + 2 * margin, top - bottom + 2 * margin].map(number);
  const thin = number(Math.max(right - left, top - bottom) / 4000 + 0.1);
  const groups = drawing.layers.map((layer) => {
    const own = drawing.shapes.filter((shape) => (shape.kind === 'text' ? 'text' : shape.layer) === layer);
    const look =
      layer === 'text'
        ? `fill="${inks[layer]}" font-family="sans-serif"`
        : `fill="none" stroke="${inks[layer]}" stroke-width="${thin}"`;
    return [`<g id="${layer}" ${look}>`, ...own.map(element), '</g>'].join('\n');
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${number(left - margin)} ${number(-top - margin)} ${width} ${height}">`,
    `<title>${escapeXml(drawing.title)}</title>`,
    ...groups,
    '</svg>',
    '',
  ].join('\n');
}

function element(shape: WorkshopShape): string {
  if (shape.kind === 'line') {
    const [[x1, y1], [x2, y2]] = [shape.from, shape.to];
    return `<line x1="${number(x1)}" y1="${number(-y1)}" x2="${number(x2)}" y2="${number(-y2)}"/>`;
  }
  if (shape.kind === 'contour') return contourElement(shape.contour);
  const [x, y] = shape.at;
  const anchor = shape.centred ? ' text-anchor="middle"' : '';
  const size = number(shape.height * sizePerCapital);
  return `<text x="${number(x)}" y="${number(-y)}" font-size="${size}"${anchor}>${escapeXml(shape.text)}</text>`;
}

function contourElement(contour: Contour): string {
  if (contour.kind === 'circle') {
    return `<circle cx="${number(contour.x)}" cy="${number(-contour.y)}" r="${number(contour.radius)}"/>`;
  }
  const { vertices } = contour;
  const steps = vertices.map((from, i) => {
    const to = vertices[(i + 1) % vertices.length]!;
    const end = `${number(to.x)} ${number(-to.y)}`;
    if (from.bulge === 0) return i + 1 < vertices.length ? `L${end}` : '';
    const radius = number(radiusOf(from, to));
    // y points down: what turns left here turns left there, which SVG calls sweep 0.
    return `A${radius} ${radius} 0 ${Math.abs(from.bulge) > 1 ? 1 : 0} ${from.bulge > 0 ? 0 : 1} ${end}`;
  });
  return `<path d="M${number(vertices[0]!.x)} ${number(-vertices[0]!.y)}${steps.join('')}Z"/>`;
}

/** A ten-thousandth of a millimetre. */
function number(value: number): string {
  return String(Math.round(value * 1e4) / 1e4 + 0);
}
