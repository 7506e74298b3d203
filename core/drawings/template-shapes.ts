import { boxOf, type Box, type Point, type Ring } from '../geometry/polygon';
import { fromLowestLeft } from '../panels/blocks';
import type { Panel } from '../panels/panel';
import type { Hundredth } from '../units';
import type { WorkedOut } from '../worked-out';
import { panelMeasures, type Cutout, type PanelSide } from './panel-measures';
import type { WriteLength } from './paper-figures';
import { sizeText } from './paper-figures';
import { placedPanels } from './placed-panels';

/** A cut-out to be drawn round, in hundredths from where its setting lines cross, seen from the face. */
export interface Template {
  readonly ring: Ring;
  readonly box: Box;
  readonly kind: 'notch' | 'hole';
  readonly sides: readonly PanelSide[];
  /** `round hole Ø 70`, `notch 200 × 100, open at the foot` */
  readonly words: (write: WriteLength) => string;
  readonly uses: readonly TemplateUse[];
}

export interface TemplateUse {
  readonly panel: Panel;
  /** Where the setting lines cross, from the panel's lower left corner. */
  readonly x: Hundredth;
  readonly y: Hundredth;
}

/** Hundredths. A straight cut-out that is longer is set out with a rule (common practice, no source). */
const longestByTemplate = 60_000;

/**
 * The cut-outs of all panels, those cut alike once, in the order of the panels. Corners taken off along one line have no
 * template: they are two measures.
 *
 * @returns also how many cut-outs are left to rule and square
 */
export function jobTemplates(worked: WorkedOut): { shapes: Template[]; byRule: number } {
  const shapes = new Map<string, Template & { readonly uses: TemplateUse[] }>();
  let byRule = 0;
  for (const placed of placedPanels(worked)) {
    for (const cutout of panelMeasures(placed.panel, placed).cutouts) {
      if (cutout.kind === 'slant') continue;
      if (cutout.form === 'rectangle' && longestSide(cutout.box) > longestByTemplate) {
        byRule++;
        continue;
      }
      const at = settingPoint(cutout);
      const ring = fromLowestLeft(cutout.outline.map(({ x, y }) => ({ x: x - at.x, y: y - at.y })));
      const key = JSON.stringify([cutout.kind, cutout.sides, ring.map(({ x, y }) => [x, y])]);
      const use = { panel: placed.panel, ...at };
      const known = shapes.get(key);
      if (known) known.uses.push(use);
      else {
        const words = (write: WriteLength) => cutoutWords(cutout, write);
        const { kind, sides } = cutout;
        shapes.set(key, { ring, box: boxOf(ring), kind, sides, words, uses: [use] });
      }
    }
  }
  return { shapes: [...shapes.values()], byRule };
}

/** The middle of a round hole; else the lower left corner of what is cut away. */
function settingPoint({ kind, circle, box }: Cutout): Point {
  return kind === 'hole' && circle
    ? { x: Math.round(circle.x), y: Math.round(circle.y) }
    : { x: box.left, y: box.bottom };
}

function longestSide({ left, right, bottom, top }: Box): Hundredth {
  return Math.max(right - left, top - bottom);
}

function cutoutWords({ kind, circle, box, sides }: Cutout, write: WriteLength): string {
  const size = circle
    ? `Ø ${write(circle.diameter)}`
    : sizeText(box.right - box.left, box.top - box.bottom, write);
  const open = sides.length > 0 ? `, open at the ${sides.join(' and ')}` : '';
  return `${circle ? 'round ' : ''}${kind} ${size}${open}`;
}
