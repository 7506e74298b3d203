let pen: CanvasRenderingContext2D | null = null;
const known = new Map<string, number>();

/** How wide words are in a font, px; measured again once fonts have arrived. */
export function widthOfWords(font: string, words: string): number {
  const key = `${font}\n${words}`;
  let width = known.get(key);
  if (width === undefined) {
    pen ??= document.createElement('canvas').getContext('2d')!;
    pen.font = font;
    width = pen.measureText(words).width;
    if (document.fonts.status === 'loaded' && document.fonts.check(font)) known.set(key, width);
    if (known.size > 2000) known.clear();
  }
  return width;
}
