import { verdicts } from '../holding/judge-item';
import { holdingCautions } from '../holding/safety';
import type { Page } from './page';
import { sentenceOnPaper } from './paper-figures';
import { lengthUnits } from '../lengths';

/**
 * The same pages, if each that says of something whether it holds carries every caution that goes with it, in any unit.
 *
 * @param which `all` of them say it, be it in figures
 * @throws Error naming the page that does not: such a document is not printed
 */
export function refuseWithoutCautions(
  pages: readonly Page[],
  which: 'in words' | 'all' = 'in words',
): readonly Page[] {
  for (const [i, page] of pages.entries()) {
    const words = wordsOf(page);
    const isVerdict = which === 'all' || verdicts.some((verdict) => words.toLowerCase().includes(verdict));
    const lacks = holdingCautions.find(
      ({ text }) => !lengthUnits.some((units) => words.includes(unbroken(sentenceOnPaper(text, units)))),
    );
    if (isVerdict && lacks)
      throw new Error(`Page ${i + 1} says whether something holds without the caution “${lacks.text}”`);
  }
  return pages;
}

/** Lines of a paragraph stand one after the other. */
function wordsOf({ items }: Page): string {
  return unbroken(items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])).join(' '));
}

function unbroken(text: string): string {
  return text.replace(/\s+/g, ' ');
}
