import type { ProductPack } from '../../core/job/product-schema';
import { writePrice, type Entry } from '../schedule/parse-entry';
import { plainFigure } from '../schedule/parse-sizes';

/** "5 at 64.00; 12.5": sizes in the product's unit, with a price where one is known. */
export function writePacks(packs: readonly ProductPack[]): string {
  return packs
    .map(({ size, price }) => (price > 0 ? `${size} at ${writePrice(price)}` : `${size}`))
    .join('; ');
}

export function parsePacks(text: string): Entry<ProductPack[]> {
  const parts = text
    .split(';')
    .map((part) => part.trim())
    .filter(Boolean);
  const packs: ProductPack[] = [];
  for (const part of parts) {
    const [, size = '', price] = /^(.+?)(?:\s+at\s+(.+))?$/i.exec(part) ?? [];
    const pack = { size: plainFigure(size), price: price === undefined ? 0 : plainFigure(price) };
    if (!(pack.size > 0) || !(pack.price >= 0)) {
      return {
        fault: `“${shortened(part)}” is no pack: type its size and price, such as 5 at 64.00; 12.5 at 140.`,
      };
    }
    if (packs.some(({ size: other }) => other === pack.size)) {
      return { fault: `Packs of ${pack.size} stand there twice: leave one of them out.` };
    }
    packs.push(pack);
  }
  return { value: packs.sort((a, b) => a.size - b.size) };
}

/** What was typed, so short that a sentence can say it again. */
export function shortened(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
