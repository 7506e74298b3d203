import * as pdf from 'pdf-lib';
import type { DocumentPart } from './page';

/*
 * How a reader finds its way in a set: names of pages and a tree of bookmarks. pdf-lib has no call for either, so the
 * dictionaries are written as ISO 32000-1:2008 has them.
 */

/** Page labels (12.4.2) and bookmarks (12.3.3) of a set; the pages stand in the file already. */
export function writeNavigation(target: pdf.PDFDocument, parts: readonly DocumentPart[]): void {
  const { catalog, context } = target;
  catalog.set(pdf.PDFName.of('PageLabels'), context.obj({ Nums: pageLabels(context, parts) }));
  catalog.set(pdf.PDFName.of('Outlines'), writeTree(context, bookmarksOf(target, parts)));
  catalog.set(pdf.PDFName.of('PageMode'), pdf.PDFName.of('UseOutlines'));
}

/** Where each part starts, with its prefix and decimal numbers from 1. */
function pageLabels(context: pdf.PDFContext, parts: readonly DocumentPart[]): pdf.PDFArray {
  const numbers = context.obj([]);
  let from = 0;
  for (const { label, pageCount } of parts) {
    numbers.push(pdf.PDFNumber.of(from));
    numbers.push(context.obj({ P: pdf.PDFHexString.fromText(label), S: 'D' }));
    from += pageCount;
  }
  return numbers;
}

interface Bookmark {
  readonly title: string;
  readonly page: pdf.PDFRef;
  readonly children: readonly Bookmark[];
}

/** One a part; below it one a page where there are several. */
function bookmarksOf(target: pdf.PDFDocument, parts: readonly DocumentPart[]): Bookmark[] {
  const refs = target.getPages().map(({ ref }) => ref);
  let from = 0;
  return parts.flatMap(({ title, label, pageCount }) => {
    const own = refs.slice(from, from + pageCount);
    from += pageCount;
    const pages = own.map((page, i) => ({ title: `${label}${i + 1}`, page, children: [] }));
    return own.length === 0 ? [] : [{ title, page: own[0]!, children: pages.length > 1 ? pages : [] }];
  });
}

/** The root of the tree; branches are closed, so that its count is that of the first level. */
function writeTree(context: pdf.PDFContext, bookmarks: readonly Bookmark[]): pdf.PDFRef {
  const root = context.nextRef();
  const ends = writeLevel(context, root, bookmarks);
  context.assign(root, context.obj({ Type: 'Outlines', ...ends, Count: bookmarks.length }));
  return root;
}

function writeLevel(
  context: pdf.PDFContext,
  parent: pdf.PDFRef,
  bookmarks: readonly Bookmark[],
): { First: pdf.PDFRef; Last: pdf.PDFRef } | Record<string, never> {
  const refs = bookmarks.map(() => context.nextRef());
  bookmarks.forEach(({ title, page, children }, i) => {
    const below = children.length > 0 ? writeLevel(context, refs[i]!, children) : {};
    const entry = context.obj({
      Title: pdf.PDFHexString.fromText(title),
      Parent: parent,
      Dest: [page, 'Fit'],
      ...below,
      ...(children.length > 0 && { Count: -children.length }),
      ...(i > 0 && { Prev: refs[i - 1]! }),
      ...(i < refs.length - 1 && { Next: refs[i + 1]! }),
    });
    context.assign(refs[i]!, entry);
  });
  return refs.length > 0 ? { First: refs[0]!, Last: refs.at(-1)! } : {};
}
