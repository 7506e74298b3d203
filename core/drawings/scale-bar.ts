import { inch, type LengthUnits } from '../lengths';
import { toHundredth, type Mm } from '../units';
import { formatMm } from './figures';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { onPaper, type Scale } from './paper';
import { paperFigures } from './paper-figures';
import { fitText } from './text';

/** Figures, bar and the sentence under it. */
export const scaleBarHeight: Mm = 15;

const barHeight = 1.8;

/**
 * A divided bar of a round real length, the longest that fits, with the length it must have on paper: the
 * one way to find out whether a print is true to scale.
 */
export function scaleBar(
  scale: Scale,
  units: LengthUnits,
  at: { readonly left: Mm; readonly top: Mm; readonly width: Mm },
  measure: TextMeasure,
): Item[] {
  const { length, parts } = roundLength(scale, units, at.width - 12);
  const { length: figureOf, words } = paperFigures(units);
  const left = at.left + 1.5;
  const top = at.top - 4;
  const xAt = (part: number) => left + onPaper((length * part) / parts, scale);
  const items: Item[] = [];
  for (let part = 0; part < parts; part++) {
    const ring = rectangleRing(xAt(part), top - barHeight, xAt(part + 1), top);
    if (part % 2 === 0) items.push({ kind: 'fill', rings: [ring], colour: 'ink' });
    items.push({ kind: 'stroke', points: ring, closed: true, width: 0.25 });
  }
  for (const part of new Set([0, 1, Math.ceil(parts / 2), parts])) {
    const real = (length * part) / parts;
    items.push({
      ...figure(part === parts ? words(real) : figureOf(toHundredth(real)), xAt(part), top + 1),
      anchor: part === parts ? 'start' : 'middle',
      at: { x: part === parts ? xAt(part) - 2 : xAt(part), y: top + 1 },
    });
  }
  const long = onPaper(length, scale);
  const inFeet = units === 'ft-in' ? `, ${figureOf(toHundredth(long))},` : '';
  const onPrint = `The bar is ${formatMm(long)} mm${inFeet} long on a`;
  const sentences = [`${onPrint} print that is true to scale.`, `${onPrint} true print.`];
  const sentence =
    sentences.find((one) => measure(one, 2.5, { face: 'condensed' }) <= at.width) ?? sentences.at(-1)!;
  items.push(
    fitText({ ...figure(sentence, at.left, top - barHeight - 4.1), colour: 'soft' }, at.width, measure),
  );
  return items;
}

function figure(text: string, x: Mm, y: Mm): Text {
  return { kind: 'text', text, at: { x, y }, height: 2.5, face: 'condensed' };
}

/** 1, 2 or 5 times a power of ten, in five or four parts; inches and feet as tapes part them. */
function roundLength(scale: Scale, units: LengthUnits, room: Mm): { length: Mm; parts: number } {
  if (units === 'ft-in') {
    const found = feetAndInches.filter(({ length }) => onPaper(length, scale) <= room).at(-1);
    return found ?? { length: inch / 2, parts: 2 };
  }
  const fitting = [1, 2, 3, 4, 5, 6]
    .flatMap((power) => [1, 2, 5].map((digit) => ({ digit, length: digit * 10 ** power })))
    .filter(({ length }) => onPaper(length, scale) <= room);
  const { digit, length } = fitting.at(-1) ?? { digit: 1, length: 10 };
  return { length, parts: digit === 2 ? 4 : 5 };
}

const inFeet = (feet: number, parts: number) => ({ length: feet * 12 * inch, parts });
const feetAndInches: readonly { length: Mm; parts: number }[] = [
  { length: inch, parts: 4 },
  { length: 2 * inch, parts: 4 },
  { length: 3 * inch, parts: 3 },
  { length: 6 * inch, parts: 6 },
  ...[inFeet(1, 4), inFeet(2, 4), inFeet(3, 3), inFeet(5, 5)],
  ...[1, 10, 100].flatMap((tens) => [inFeet(10 * tens, 5), inFeet(20 * tens, 4), inFeet(50 * tens, 5)]),
];

function rectangleRing(left: Mm, bottom: Mm, right: Mm, top: Mm): PaperPoint[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}
