import type { LodeplanDocument, Page, Text, TextMeasure } from '../../core/drawings/page';
import { boxesOverlap, drawingSpace, grownBox, pageSize, type PaperBox } from '../../core/drawings/paper';
import { textBoxes } from '../../core/drawings/text';

/** Documents for others than the trade, and what is stuck on: they have no frame. */
export const unframed: readonly string[] = ['client-view', 'bundle-labels', 'panel-labels', 'templates'];

/** What is wrong with the texts of a document, in words; empty where nothing is. */
export function textFaults(document: LodeplanDocument, measure: TextMeasure, framed: boolean): string[] {
  return document.pages.flatMap((page, i) =>
    pageFaults(page, measure, framed).map((fault) => `page ${i + 1}: ${fault}`),
  );
}

function pageFaults(page: Page, measure: TextMeasure, framed: boolean): string[] {
  const boxes = textBoxes(page, measure);
  const { width, height } = pageSize(page);
  const paper: PaperBox = { left: 5, bottom: 5, right: width - 5, top: height - 5 };
  const room = grownBox(framed ? drawingSpace(page) : paper, 0.01);
  const faults: string[] = [];
  boxes.forEach(({ text, box }, i) => {
    if (text.height < 2.5 && !isInDenseTable(text)) faults.push(`"${text.text}" is ${text.height} mm high`);
    if (box.left < room.left || box.right > room.right || box.bottom < room.bottom || box.top > room.top) {
      faults.push(`"${text.text}" leaves the frame`);
    }
    for (const other of boxes.slice(i + 1)) {
      if (boxesOverlap(box, other.box)) faults.push(`"${text.text}" lies on "${other.text.text}"`);
    }
  });
  return faults;
}

/** The smallest lettering of ISO 3098 stands in the tables of a calculation only, condensed. */
function isInDenseTable({ height, face }: Text): boolean {
  return height === 1.8 && face === 'condensed';
}

export function wordsOf(document: LodeplanDocument): string {
  return document.pages
    .flatMap((page) => page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])))
    .join('\n');
}

export function textsOf(page: Page): string[] {
  return page.items.flatMap((item) => (item.kind === 'text' ? [item.text] : []));
}
