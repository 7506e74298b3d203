import type { Mm } from '../units';
import { formatMm } from './figures';
import type { Item, PaperPoint, Text, TextMeasure } from './page';
import { onPaper, type Scale } from './paper';
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
  at: { readonly left: Mm; readonly top: Mm; readonly width: Mm },
  measure: TextMeasure,
): Item[] {
  const { length, parts } = roundLength(scale, at.width - 12);
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
    const unit = part === parts ? ' mm' : '';
    items.push({
      ...figure(`${formatMm((length * part) / parts)}${unit}`, xAt(part), top + 1),
      anchor: part === parts ? 'start' : 'middle',
      at: { x: part === parts ? xAt(part) - 2 : xAt(part), y: top + 1 },
    });
  }
  const onPrint = `The bar is ${formatMm(onPaper(length, scale))} mm long on a`;
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

/** 1, 2 or 5 times a power of ten, in five or four parts. */
function roundLength(scale: Scale, room: Mm): { length: Mm; parts: number } {
  const fitting = [1, 2, 3, 4, 5, 6]
    .flatMap((power) => [1, 2, 5].map((digit) => ({ digit, length: digit * 10 ** power })))
    .filter(({ length }) => onPaper(length, scale) <= room);
  const { digit, length } = fitting.at(-1) ?? { digit: 1, length: 10 };
  return { length, parts: digit === 2 ? 4 : 5 };
}

function rectangleRing(left: Mm, bottom: Mm, right: Mm, top: Mm): PaperPoint[] {
  return [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
}
