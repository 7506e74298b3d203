import * as pdfjs from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a PDF says about a page, read by a reader that shares nothing with the writer; mm on paper. */
export interface ReadPage {
  readonly width: number;
  readonly height: number;
  readonly strokes: readonly { readonly width: number; readonly points: readonly [number, number][] }[];
  readonly texts: readonly ReadText[];
}

export interface ReadText {
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  /** Size of the font, not of its capitals. */
  readonly size: number;
  readonly turned: boolean;
}

const mmPerPoint = 25.4 / 72;

export async function readPdf(
  bytes: Uint8Array,
): Promise<{ info: Record<string, unknown>; pages: ReadPage[] }> {
  const loading = pdfjs.getDocument({ data: bytes.slice(), verbosity: 0 });
  const document = await loading.promise;
  const pages: ReadPage[] = [];
  for (let n = 1; n <= document.numPages; n++) {
    const page = await document.getPage(n);
    const [left, bottom, right, top] = page.view as [number, number, number, number];
    const operators = await page.getOperatorList();
    pages.push({
      width: (right - left) * mmPerPoint,
      height: (top - bottom) * mmPerPoint,
      strokes: strokesOf(operators.fnArray, operators.argsArray),
      texts: textsOf(operators.fnArray, operators.argsArray),
    });
  }
  const { info } = await document.getMetadata();
  await loading.destroy();
  return { info: info as Record<string, unknown>, pages };
}

interface Glyph {
  readonly unicode: string;
  /** Thousandths of the font's size. */
  readonly width: number;
}

/** Every shown text with the reader's own glyph widths, in the order of the page. */
function textsOf(functions: readonly number[], args: readonly unknown[]): ReadText[] {
  const texts: ReadText[] = [];
  let scale = Number.NaN;
  let size = 0;
  let matrix: readonly number[] = [];
  functions.forEach((fn, i) => {
    const given = args[i] as unknown[];
    if (fn === pdfjs.OPS.transform) scale = (given[0] as number) * mmPerPoint;
    if (fn === pdfjs.OPS.setFont) size = given[1] as number;
    if (fn === pdfjs.OPS.setTextMatrix) matrix = Object.values(given[0] as ArrayLike<number>);
    if (fn !== pdfjs.OPS.showText) return;
    const glyphs = (given[0] as (Glyph | number)[]).filter(
      (glyph): glyph is Glyph => typeof glyph === 'object',
    );
    texts.push({
      text: glyphs.map(({ unicode }) => unicode).join(''),
      x: matrix[4]! * scale,
      y: matrix[5]! * scale,
      width: (glyphs.reduce((sum, { width }) => sum + width, 0) / 1000) * size * scale,
      size: size * scale,
      turned: matrix[1] === 1,
    });
  });
  return texts;
}

/** Straight strokes; the writer's one matrix makes a unit a millimetre, which is checked here. */
function strokesOf(functions: readonly number[], args: readonly unknown[]): ReadPage['strokes'][number][] {
  const strokes: ReadPage['strokes'][number][] = [];
  let scale = Number.NaN;
  let width = 1;
  functions.forEach((fn, i) => {
    const given = args[i] as unknown[];
    if (fn === pdfjs.OPS.transform) scale = (given[0] as number) * mmPerPoint;
    if (fn === pdfjs.OPS.setLineWidth) width = given[0] as number;
    if (fn !== pdfjs.OPS.constructPath || (given[0] as number) !== pdfjs.OPS.stroke) return;
    const data = Array.from(Object.values((given[1] as ArrayLike<number>[])[0]!));
    const points: [number, number][] = [];
    for (let at = 0; at < data.length;) {
      const kind = data[at]!;
      const numbers = kind === 2 ? 6 : kind < 2 ? 2 : kind === 3 ? 4 : 0;
      if (kind < 2) points.push([data[at + 1]! * scale, data[at + 2]! * scale]);
      if (kind === 4) points.push(points[0]!);
      at += 1 + numbers;
    }
    if (points.length > 1) strokes.push({ width: width * scale, points });
  });
  return strokes;
}
