/*
 * Whether rectangles fit on a sheet, by trying every corner on a whole-number grid. Slow, and knows nothing of how the
 * product looks for it.
 */

/** @param sizes sides in whole numbers, either way round */
export function exhaustiveFit(
  sizes: readonly (readonly [number, number])[],
  width: number,
  height: number,
): boolean {
  const taken = new Uint8Array(width * height);
  const isFree = (x: number, y: number, w: number, h: number) => {
    for (let v = y; v < y + h; v++) for (let u = x; u < x + w; u++) if (taken[v * width + u]) return false;
    return true;
  };
  const mark = (x: number, y: number, w: number, h: number, value: number) => {
    for (let v = y; v < y + h; v++) taken.fill(value, v * width + x, v * width + x + w);
  };
  const place = (next: number): boolean => {
    const size = sizes[next];
    if (!size) return true;
    const ways = size[0] === size[1] ? [size] : [size, [size[1], size[0]] as const];
    for (const [w, h] of ways) {
      for (let y = 0; y + h <= height; y++) {
        for (let x = 0; x + w <= width; x++) {
          if (!isFree(x, y, w, h)) continue;
          mark(x, y, w, h, 1);
          const fits = place(next + 1);
          mark(x, y, w, h, 0);
          if (fits) return true;
        }
      }
    }
    return false;
  };
  return place(0);
}

/** Every maximal free rectangle of a grid in which `taken` is not 0, as "left,bottom,right,top", sorted. */
export function maximalFree(taken: Uint8Array, width: number, height: number): string[] {
  const isFree = (l: number, b: number, r: number, t: number) => {
    if (l < 0 || b < 0 || r > width || t > height) return false;
    for (let y = b; y < t; y++) for (let x = l; x < r; x++) if (taken[y * width + x]) return false;
    return true;
  };
  const found: string[] = [];
  for (let l = 0; l < width; l++) {
    for (let b = 0; b < height; b++) {
      for (let r = l + 1; r <= width; r++) {
        for (let t = b + 1; t <= height && isFree(l, b, r, t); t++) {
          const grows =
            isFree(l - 1, b, r, t) ||
            isFree(l, b - 1, r, t) ||
            isFree(l, b, r + 1, t) ||
            isFree(l, b, r, t + 1);
          if (!grows) found.push([l, b, r, t].join());
        }
      }
    }
  }
  return found.sort();
}
