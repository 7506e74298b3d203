import type { ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { nameOfWall, nameOfZone } from '../job/names';
import type { Product } from '../job/product-schema';
import { figure } from '../lengths';
import { toHundredth } from '../units';
import { planStrips, type StripPlan } from './film-strips';
import { itemOfProduct, type Need } from './need';
import { withLoss } from './spreading';
import type { FilmDirection, Stretch } from './strip-slabs';
import type { ZoneTask } from './zone-task';

/** Whether a product is laid in strips from a roll. */
export function isFilm({ layer, unit, rollWidth }: Product): boolean {
  return (
    (layer === 'magnetic-film' || layer === 'writable-film' || layer === 'glass-film') &&
    (unit === 'm2' || unit === 'm') &&
    rollWidth !== undefined
  );
}

/**
 * What a film takes of its roll by its plan of strips. The plan knows what is lost, so the product's own loss does not
 * count; where there is no plan it does, and a finding says so.
 *
 * @param below films that this one lies on: its seams keep off theirs
 */
export function filmNeeds(
  task: ZoneTask,
  { layer, coats }: ResolvedLayer,
  index: number,
  product: Product,
  below: readonly { readonly plan: StripPlan }[],
): { needs: readonly Need[]; plan: StripPlan | null; findings: readonly Finding[] } {
  const { wall, measures, settings } = task;
  if (measures.faceArea === 0) return { needs: [], plan: null, findings: [] };
  const rollWidth = product.rollWidth!;
  const rules = {
    rollWidth: toHundredth(rollWidth),
    overlap: toHundredth(settings.filmOverlap),
    trim: toHundredth(settings.filmTrim),
    leastStrip,
    keepOff: keepOffOf(task, below),
  };
  const direction = settings.filmDirection === 'least-waste' ? undefined : settings.filmDirection;
  const kept = planStrips(measures.face, rules, direction);
  const plan =
    kept ?? planStrips(measures.face, { ...rules, keepOff: { upright: [], level: [] } }, direction);
  const inUnit = (area: number) =>
    product.unit === 'm2' ? area / 1e10 : area / 1e5 / toHundredth(rollWidth);
  const common = {
    wall: wall.id,
    zone: measures.zone.id,
    delivery: wall.delivery ?? '',
    layer: index,
    kind: layer.kind,
    of: 'face' as const,
    item: itemOfProduct(product.id),
    unit: product.unit,
    net: inUnit(measures.faceArea),
  };
  const need = plan
    ? { ...common, withLoss: inUnit(plan.taken), how: planWords(plan, rollWidth), pieces: piecesOf(plan) }
    : {
        ...common,
        withLoss: withLoss(common.net, product.loss ?? 0),
        how: `${figure(measures.faceArea / 1e10, 2)} m², ${figure((product.loss ?? 0) * 100, 1)} % lost; no plan of strips.`,
      };
  const place = `${product.name} in ${nameOfZone(measures.zone)} on ${nameOfWall(wall)}`;
  const findings: Finding[] = [];
  const warn = (code: string, text: string) =>
    findings.push({ level: 'warning', code, wall: wall.id, object: measures.zone.id, text });
  if (!plan) {
    warn(
      'film-too-narrow',
      `There is no plan of strips for ${place}: its roll of ${figure(rollWidth, 1)} mm is no wider than what overlap and trim take; check its width.`,
    );
  } else if (!kept) {
    warn(
      'film-seam-on-joint',
      `Seams of ${place} cannot all keep ${figure(settings.filmSeamClear, 1)} mm off the joints below; take a wider roll, the other direction or a smaller distance.`,
    );
  }
  return {
    needs: Array.from({ length: coats }, (_, i) => ({ ...need, coat: i + 1 })),
    plan,
    findings,
  };
}

/** 50 mm: a narrower strip has no hold. Common practice, no source. */
const leastStrip = 5000;

function piecesOf({ strips }: StripPlan): number[] {
  return strips.flatMap(({ pieces }) => pieces.map(({ from, to }) => to - from));
}

function planWords(plan: StripPlan, rollWidth: number): string {
  const count = piecesOf(plan).length;
  const strips = `${count} ${plan.direction} ${count === 1 ? 'strip' : 'strips'}`;
  return `${strips}, ${figure(plan.length / 1e5, 2)} m together, of a roll of ${figure(rollWidth, 1)} mm.`;
}

/** Joints of panels and of the ground, and seams of films below, with the distance that is kept from them. */
function keepOffOf(
  { wall, measures, settings }: ZoneTask,
  below: readonly { readonly plan: StripPlan }[],
): Readonly<Record<FilmDirection, readonly Stretch[]>> {
  const clear = toHundredth(settings.filmSeamClear);
  const about = (from: number, to: number): Stretch => ({ from: from - clear, to: to + clear });
  const along = (axis: 'x' | 'y', direction: FilmDirection): Stretch[] => [
    ...measures.joints.filter((joint) => joint.axis === axis).map(({ at, gap }) => about(at, at + gap)),
    ...(wall.lines ?? []).flatMap(({ from, to }) => {
      const [a, b] = axis === 'x' ? [from[0], to[0]] : [from[1], to[1]];
      return a === b ? [about(toHundredth(a), toHundredth(a))] : [];
    }),
    ...below.flatMap(({ plan }) =>
      plan.direction === direction ? plan.seams.map((seam) => about(seam, seam)) : [],
    ),
  ];
  return { upright: along('x', 'upright'), level: along('y', 'level') };
}
