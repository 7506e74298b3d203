import fontkit from '@pdf-lib/fontkit';
import * as pdf from 'pdf-lib';
import type { Mm } from '../units';
import { alignGlyphs } from './aligned-font';
import { colours } from './colours';
import { advanceIn, drawableText, faceNames, faceOf, fontFeatures, readFaces, standsAlone } from './fonts';
import type { Face, FaceName, FontFiles } from './fonts';
import { lineRuns } from './line-types';
import { missingPhotograph } from './missing-photograph';
import type { Art, Circle, Colour, Fill, Item, Lettering, LodeplanDocument, Page } from './page';
import type { PaperPoint, Photograph, PictureColour, Stroke, Text } from './page';
import { pageSize } from './paper';
import { writeNavigation } from './pdf-navigation';
import type { Pictures } from './pictures';

/*
 * Translates pages and decides nothing about them. With `pdf-navigation.ts` the only file that knows pdf-lib.
 */

interface EmbeddedFace extends Face {
  readonly embedded: pdf.PDFFont;
  readonly advance: (text: string) => number;
  readonly encode: (text: string) => pdf.PDFHexString;
}

type Fonts = Record<FaceName, EmbeddedFace>;

const pointsPerMm = 72 / 25.4;

/** Share of a circle's radius at which the control points of its four Bézier quarters stand. */
const quarterControl = (4 / 3) * (Math.SQRT2 - 1);

interface WritePdf {
  readonly date: Date;
  readonly pictures?: Pictures;
  readonly subject?: string;
  readonly wrote?: (pages: number) => void;
}

/**
 * The document as PDF: vector lines, embedded and subsetted fonts, paper sizes exact.
 *
 * @param date written as creation and modification date; the same document, fonts, pictures and date give the same bytes
 * @param pictures PNG and JPEG that photographs of the document name; one that is not there is crossed out
 * @param subject what the document belongs to: the job's name, reference and revision
 * @param wrote is told how many pages are written
 */
export async function writePdf(
  drawn: LodeplanDocument,
  files: FontFiles,
  { date, pictures = new Map(), subject, wrote }: WritePdf,
): Promise<Uint8Array> {
  const target = await pdf.PDFDocument.create({ updateMetadata: false });
  target.registerFontkit(fontkit);
  target.setTitle(drawn.title, { showInWindowTitleBar: true });
  if (subject) target.setSubject(subject);
  target.setProducer('Lodeplan');
  target.setCreator('Lodeplan');
  target.setCreationDate(date);
  target.setModificationDate(date);
  const faces = readFaces(files);
  const fonts = {} as Fonts;
  for (const name of usedFaces(drawn)) {
    const embedded = await target.embedFont(alignGlyphs(files[name]), {
      subset: true,
      features: { ...fontFeatures },
    });
    const face = faces[name];
    fonts[name] = { ...face, embedded, advance: advanceIn(face.font), encode: encoderOf(embedded) };
  }
  const embedded = await embedPictures(target, drawn, pictures);
  for (const [i, page] of drawn.pages.entries()) {
    writePage(target, page, fonts, embedded);
    wrote?.(i + 1);
  }
  if (drawn.parts) writeNavigation(target, drawn.parts);
  return target.save();
}

type Embedded = ReadonlyMap<string, pdf.PDFImage>;

async function embedPictures(
  target: pdf.PDFDocument,
  drawn: LodeplanDocument,
  pictures: Pictures,
): Promise<Embedded> {
  const named = drawn.pages.flatMap(({ items }) =>
    items.flatMap((item) => (item.kind === 'photograph' ? [item.photo] : [])),
  );
  const embedded = new Map<string, pdf.PDFImage>();
  for (const id of new Set(named)) {
    const picture = pictures.get(id);
    const read =
      picture?.type === 'image/jpeg'
        ? target.embedJpg(picture.bytes)
        : picture?.type === 'image/png'
          ? target.embedPng(picture.bytes)
          : null;
    // A picture that is damaged is crossed out like one that is not there: the rest of the page is still wanted.
    const image = await read?.catch(() => null);
    if (image) embedded.set(id, image);
  }
  return embedded;
}

function usedFaces(drawn: LodeplanDocument): FaceName[] {
  const texts = drawn.pages.flatMap((page) =>
    page.items.filter((item) => item.kind === 'text' || item.kind === 'lettering'),
  );
  const used = new Set(texts.map((text) => faceOf(text)));
  return faceNames.filter((name) => used.has(name));
}

function writePage(target: pdf.PDFDocument, page: Page, fonts: Fonts, embedded: Embedded): void {
  const { width, height } = pageSize(page);
  const sheet = target.addPage([width * pointsPerMm, height * pointsPerMm]);
  const keys = new Map<FaceName, pdf.PDFName>();
  const keyOf = (name: FaceName): pdf.PDFName => {
    const known = keys.get(name) ?? sheet.node.newFontDictionary(name, fonts[name].embedded.ref);
    keys.set(name, known);
    return known;
  };
  const images = new Map<string, pdf.PDFName>();
  for (const item of page.items) {
    const image = item.kind === 'photograph' && embedded.get(item.photo);
    if (image && !images.has(item.photo)) images.set(item.photo, sheet.node.newXObject('Picture', image.ref));
  }
  const lucid = new Map<number, pdf.PDFName>();
  const lucidAs = (opacity: number): pdf.PDFName => {
    const known = lucid.get(opacity);
    if (known) return known;
    const state = target.context.obj({ Type: 'ExtGState', ca: opacity, CA: opacity });
    const name = sheet.node.newExtGState('Lucid', target.context.register(state));
    lucid.set(opacity, name);
    return name;
  };
  // All coordinates stay millimetres: one matrix at the start of the page turns them into points.
  const operators = [
    pdf.pushGraphicsState(),
    pdf.concatTransformationMatrix(pointsPerMm, 0, 0, pointsPerMm, 0, 0),
    ...page.items.flatMap((item) => operatorsOf(item, fonts, keyOf, images, lucidAs)),
    pdf.popGraphicsState(),
  ];
  sheet.pushOperators(...operators);
}

function operatorsOf(
  item: Item,
  fonts: Fonts,
  keyOf: (name: FaceName) => pdf.PDFName,
  images: ReadonlyMap<string, pdf.PDFName>,
  lucidAs: (opacity: number) => pdf.PDFName,
): pdf.PDFOperator[] {
  switch (item.kind) {
    case 'stroke':
      return strokeOperators(item);
    case 'fill':
      return fillOperators(item);
    case 'circle':
      return circleOperators(item);
    case 'text':
    case 'lettering':
      return textOperators(item, fonts, keyOf);
    case 'art':
      return artOperators(item, lucidAs);
    case 'photograph':
      return photographOperators(item, images.get(item.photo));
  }
}

function artOperators(
  { chains, fill, evenOdd, stroke, width, opacity = 1 }: Art,
  lucidAs: (opacity: number) => pdf.PDFName,
): pdf.PDFOperator[] {
  const drawn = chains.filter(({ points }) => points.length > 1);
  if (drawn.length === 0 || (!fill && !stroke)) return [];
  const names = pdf.PDFOperatorNames;
  const paint = fill
    ? stroke
      ? evenOdd
        ? names.FillEvenOddAndStroke
        : names.FillNonZeroAndStroke
      : evenOdd
        ? names.FillEvenOdd
        : names.FillNonZero
    : names.StrokePath;
  const isSolid = opacity >= 1;
  return [
    ...(isSolid ? [] : [pdf.pushGraphicsState(), pdf.setGraphicsState(lucidAs(tidy(opacity)))]),
    ...(fill ? [pdf.setFillingRgbColor(...rgb(fill))] : []),
    ...(stroke
      ? [pdf.setStrokingRgbColor(...rgb(stroke)), pdf.setLineWidth(tidy(width)), pdf.setDashPattern([], 0)]
      : []),
    ...drawn.flatMap(({ points, closed }) => [...path(points), ...(closed ? [pdf.closePath()] : [])]),
    pdf.PDFOperator.of(paint),
    ...(isSolid ? [] : [pdf.popGraphicsState()]),
  ];
}

function photographOperators(item: Photograph, name: pdf.PDFName | undefined): pdf.PDFOperator[] {
  if (!name) return missingPhotograph(item).flatMap(strokeOperators);
  const { left, bottom, width, height } = item;
  return [
    pdf.pushGraphicsState(),
    pdf.concatTransformationMatrix(tidy(width), 0, 0, tidy(height), tidy(left), tidy(bottom)),
    pdf.drawObject(name),
    pdf.popGraphicsState(),
  ];
}

function strokeOperators({ points, closed, width, line, colour }: Stroke): pdf.PDFOperator[] {
  if (points.length < 2) return [];
  return [
    pdf.setStrokingRgbColor(...rgb(colour ?? 'ink')),
    pdf.setLineWidth(width),
    pdf.setDashPattern(lineRuns(line ?? 'continuous', width).map(tidy), 0),
    ...path(points),
    ...(closed ? [pdf.closePath()] : []),
    pdf.stroke(),
  ];
}

function fillOperators({ rings, colour }: Fill): pdf.PDFOperator[] {
  const drawn = rings.filter((ring) => ring.length > 2);
  if (drawn.length === 0) return [];
  return [
    pdf.setFillingRgbColor(...rgb(colour)),
    ...drawn.flatMap((ring) => [...path(ring), pdf.closePath()]),
    pdf.PDFOperator.of(pdf.PDFOperatorNames.FillEvenOdd),
  ];
}

function circleOperators({ centre, radius, width, colour, fill }: Circle): pdf.PDFOperator[] {
  const round = [...circlePath(centre, radius), pdf.closePath()];
  const filled = fill ? [pdf.setFillingRgbColor(...rgb(fill)), ...round, pdf.fill()] : [];
  if (width === undefined) return filled;
  return [
    ...filled,
    pdf.setStrokingRgbColor(...rgb(colour ?? 'ink')),
    pdf.setLineWidth(width),
    pdf.setDashPattern([], 0),
    ...round,
    pdf.stroke(),
  ];
}

function circlePath({ x, y }: PaperPoint, r: Mm): pdf.PDFOperator[] {
  const c = r * quarterControl;
  const curve = (...to: [number, number, number, number, number, number]) =>
    pdf.appendBezierCurve(...(to.map(tidy) as typeof to));
  return [
    pdf.moveTo(tidy(x + r), tidy(y)),
    curve(x + r, y + c, x + c, y + r, x, y + r),
    curve(x - c, y + r, x - r, y + c, x - r, y),
    curve(x - r, y - c, x - c, y - r, x, y - r),
    curve(x + c, y - r, x + r, y - c, x + r, y),
  ];
}

function textOperators(
  text: Text | Lettering,
  fonts: Fonts,
  keyOf: (name: FaceName) => pdf.PDFName,
): pdf.PDFOperator[] {
  const name = faceOf(text);
  const { advance, encode, font, sizePerCapital } = fonts[name];
  const drawn = drawableText(text.text, font);
  if (drawn.trim() === '') return [];
  const size = text.height * sizePerCapital;
  const width = (advance(drawn) / font.unitsPerEm) * size;
  const back = text.anchor === 'middle' ? width / 2 : text.anchor === 'end' ? width : 0;
  const turned = text.kind === 'text' && text.turned === 90;
  const x = text.at.x - (turned ? 0 : back);
  const y = text.at.y - (turned ? back : 0);
  return [
    pdf.setFillingRgbColor(...rgb(text.colour ?? 'ink')),
    pdf.beginText(),
    pdf.setFontAndSize(keyOf(name), tidy(size)),
    turned
      ? pdf.setTextMatrix(0, 1, -1, 0, tidy(x), tidy(y))
      : pdf.setTextMatrix(1, 0, 0, 1, tidy(x), tidy(y)),
    pdf.showText(encode(drawn)),
    pdf.endText(),
  ];
}

/** Character codes of a text; each character is looked up once. */
function encoderOf(embedded: pdf.PDFFont): (text: string) => pdf.PDFHexString {
  const known = new Map<string, string>();
  const codeOf = (character: string): string => {
    const code = known.get(character) ?? embedded.encodeText(character).asString();
    known.set(character, code);
    return code;
  };
  return (text) =>
    standsAlone(text) ? pdf.PDFHexString.of([...text].map(codeOf).join('')) : embedded.encodeText(text);
}

function path(points: readonly PaperPoint[]): pdf.PDFOperator[] {
  return points.map(({ x, y }, i) => (i === 0 ? pdf.moveTo(tidy(x), tidy(y)) : pdf.lineTo(tidy(x), tidy(y))));
}

/** Tenths of a micrometre: far below what any printer shows, and half the size of the file. */
function tidy(length: number): number {
  return Math.round(length * 1e4) / 1e4;
}

function rgb(colour: Colour | PictureColour): [number, number, number] {
  const hex = colour in colours ? colours[colour as Colour] : colour;
  const part = (from: number) => tidy(parseInt(hex.slice(from, from + 2), 16) / 255);
  return [part(1), part(3), part(5)];
}
