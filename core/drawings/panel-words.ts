import { kindInWords } from '../job/names';
import { usableSize } from '../job/usable-size';
import type { Panel } from '../panels/panel';
import type { EdgeCause } from '../survey/surveyed-wall';
import type { WriteLength } from './paper-figures';
import { causeKey, panelMeasures, type Cutout, type PanelMeasures, type PanelSide } from './panel-measures';
import type { PanelPlace } from './placed-panels';

export interface PanelWords {
  /** Why the panel is cut: `socket K4, notch at the foot; zone edge right`; `–` for a whole stock sheet. */
  readonly cutFor: string;
  /** Where each notch and hole sits, from the panel's lower left corner, mm: one sentence a cutout. */
  readonly cutouts: readonly string[];
}

/** What a fitter does with a closing panel. */
export const measureFirst = 'measure on the wall before cutting';

/** A panel in words, for the cut list, the schedule and the setting-out table alike. */
export function panelWords(
  panel: Panel,
  place: PanelPlace,
  write: WriteLength,
  measures: PanelMeasures = panelMeasures(panel, place),
): PanelWords {
  if (panel.full) return { cutFor: '–', cutouts: [] };
  const reasons = [
    ...measures.cutouts.map((cutout) => reasonOf(cutout, place)),
    ...edgeReasons(panel, place, measures),
  ];
  const cutFor = reasons.length > 0 ? reasons.join('; ') : 'size';
  return {
    cutFor: panel.closing ? `${measureFirst}; ${cutFor}` : cutFor,
    cutouts: measures.cutouts.map((cutout) => cutoutText(cutout, place, write)),
  };
}

/** `socket K4`, `door D1`, `zone edge`, `ceiling`. */
export function causeText(cause: EdgeCause, { wall, zone }: PanelPlace): string {
  switch (cause.kind) {
    case 'stock-edge':
      return 'stock sheet edge';
    case 'zone':
      return cause.id === zone.zone.id ? 'zone edge' : `zone ${cause.id}`;
    case 'rim':
      return cause.side === 'left' || cause.side === 'right' ? `${cause.side} end of the wall` : cause.side;
    case 'opening':
    case 'fitting': {
      const objects = cause.kind === 'opening' ? wall.wall.openings : wall.wall.fittings;
      const kind = objects.find(({ id }) => id === cause.id)?.kind ?? 'free';
      return `${kindInWords(kind, cause.kind)} ${cause.id}`;
    }
    case 'movement-joint':
      return `movement joint ${cause.id}`;
  }
}

/** `notch 156 × 51, 95 from the left, 0 from the foot`; a circle by centre and diameter. */
export function cutoutText(cutout: Cutout, place: PanelPlace, write: WriteLength): string {
  const cause = causesText(cutout, place);
  const { left, bottom, right, top } = cutout.box;
  const name = cause ? `${cause}: ${cutoutNoun(cutout)}` : cutoutNoun(cutout);
  if (cutout.circle) {
    const { x, y, diameter } = cutout.circle;
    return `${name} Ø ${write(diameter)}, centre ${write(x)} from the left, ${write(y)} from the foot`;
  }
  if (cutout.kind === 'slant') {
    const level = cutout.sides.includes('head') ? 'head' : 'foot';
    const upright = cutout.sides.includes('right') ? 'right' : 'left';
    return `${name}, ${write(right - left)} along the ${level}, ${write(top - bottom)} along the ${upright}`;
  }
  const size = `${write(right - left)} × ${write(top - bottom)}`;
  const shape = cutout.form === 'free' ? `within ${size}` : size;
  return `${name} ${shape}, ${write(left)} from the left, ${write(bottom)} from the foot`;
}

/** `notch`, `hole`, `round hole`, `slanted corner`. */
export function cutoutNoun(cutout: Cutout): string {
  if (cutout.kind === 'slant') return 'slanted corner';
  return cutout.form === 'circle' ? `round ${cutout.kind}` : cutout.kind;
}

function reasonOf(cutout: Cutout, place: PanelPlace): string {
  const cause = causesText(cutout, place) || 'shape';
  const noun = cutout.kind === 'slant' ? 'slant' : cutoutNoun(cutout);
  return `${cause}, ${noun} ${whereText(cutout.sides)}`;
}

function causesText(cutout: Cutout, place: PanelPlace): string {
  return cutout.causes.map((cause) => causeText(cause, place)).join(' and ');
}

function whereText(sides: readonly PanelSide[]): string {
  const has = (side: PanelSide) => sides.includes(side);
  if (sides.length === 0) return 'inside';
  const level = has('foot') !== has('head') ? (has('foot') ? 'lower' : 'upper') : '';
  const upright = has('left') !== has('right') ? (has('left') ? 'left' : 'right') : '';
  if (level && upright) return `at the ${level} ${upright} corner`;
  if (level) return has('foot') ? 'at the foot' : 'at the head';
  if (upright) return `at the ${upright}`;
  return 'right across';
}

/** The sides where the panel ends short of its stock sheet, with what it gives way to. */
function edgeReasons(panel: Panel, place: PanelPlace, { at, width, height }: PanelMeasures): string[] {
  const turned = place.zone.zone.layout?.turned ?? false;
  const usable = usableSize(place.stock);
  const [cellWidth, cellHeight] = turned ? [usable.height, usable.width] : [usable.width, usable.height];
  const short: Record<PanelSide, boolean> = {
    left: at.x > panel.cell.x,
    right: at.x + width < panel.cell.x + cellWidth,
    foot: at.y > panel.cell.y,
    head: at.y + height < panel.cell.y + cellHeight,
  };
  const reasons = new Map<string, { text: string; sides: PanelSide[] }>();
  for (const side of ['foot', 'head', 'left', 'right'] as const) {
    if (!short[side]) continue;
    for (const cause of causesAlong(panel, side)) {
      const reason = reasons.get(causeKey(cause)) ?? { text: causeText(cause, place), sides: [] };
      reason.sides.push(side);
      reasons.set(causeKey(cause), reason);
    }
  }
  return [...reasons.values()].map(({ text, sides }) => `${text} at the ${sides.join(' and ')}`);
}

function causesAlong(panel: Panel, side: PanelSide): EdgeCause[] {
  const ring = panel.outline.outer;
  const along = side === 'left' || side === 'right' ? 'x' : 'y';
  const values = ring.map((point) => point[along]);
  const edge = side === 'left' || side === 'foot' ? Math.min(...values) : Math.max(...values);
  const causes = new Map<string, EdgeCause>();
  ring.forEach((from, i) => {
    const to = ring[(i + 1) % ring.length]!;
    const cause = panel.causes[0]?.[i];
    if (from[along] !== edge || to[along] !== edge || !cause || cause.kind === 'stock-edge') return;
    causes.set(causeKey(cause), cause);
  });
  return [...causes.values()];
}
