import type { ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { polygonArea } from '../geometry/polygon';
import { nameOfWall, nameOfZone } from '../job/names';
import type { Product } from '../job/product-schema';
import { figure } from '../lengths';
import { mixingPlans, type MixingPlan, type WorkSection } from './mixing-plan';
import { coatNeed } from './product-need';
import type { Settings } from './settings';
import type { WallNeeds } from './wall-needs';

/** A plan for what is laid in one delivery. */
export interface JobMixingPlan extends MixingPlan {
  readonly delivery: string;
}

export interface Mixing {
  /** By product and coat. */
  readonly plans: readonly JobMixingPlan[];
  readonly findings: readonly Finding[];
}

/**
 * How every two-component product of a job is mixed, delivery by delivery. Coats are laid zone by zone in the order of the walls, each
 * connected part of a zone without a lap if its pot life allows; adhesive panel by panel in the order of fixing.
 */
export function mixingOf(walls: readonly WallNeeds[], settings: Settings): Mixing {
  const plans: JobMixingPlan[] = [];
  const findings: Finding[] = [];
  for (const { product, delivery, layer, sections } of usesOf(walls)) {
    const need = coatNeed(layer, product, 1);
    if ('missing' in need) continue;
    const own = mixingPlans(product, sections, layer.coats, need.net, settings);
    if (!own) {
      findings.push({
        level: 'note',
        code: 'mixing-without-pace',
        text: `There is no mixing plan for ${product.name}, because the product does not say how many m² one person lays in an hour; enter it.`,
      });
      continue;
    }
    plans.push(...own.map((plan) => ({ ...plan, delivery })));
    const laps = own[0]?.lapsInFace ?? 0;
    if (laps > 0) findings.push(lapFinding(product, own[0]!, settings));
  }
  return { plans, findings };
}

interface Use {
  readonly product: Product;
  readonly delivery: string;
  readonly layer: ResolvedLayer;
  readonly sections: WorkSection[];
}

/** Where each product that is mixed is laid, by product, delivery, number of coats and thickness. */
function usesOf(walls: readonly WallNeeds[]): Use[] {
  const uses = new Map<string, Use>();
  for (const own of walls) {
    own.zones.forEach(({ layers, areas }, z) => {
      layers.forEach((layer, i) => {
        const { product } = layer;
        if (!product?.mixing || (layer.layer.over ?? 'face') !== 'face') return;
        const { delivery = '' } = own.wall.survey.wall;
        const key = JSON.stringify([product.id, delivery, layer.coats, layer.layer.thickness]);
        const use = uses.get(key) ?? { product, delivery, layer, sections: [] };
        const area = areas[i]!.face + areas[i]!.feather + areas[i]!.reveals;
        use.sections.push(...sectionsOf(own, z, layer, area));
        uses.set(key, use);
      });
    });
  }
  return [...uses.values()];
}

function sectionsOf(
  { wall, zones }: WallNeeds,
  z: number,
  { layer }: ResolvedLayer,
  area: number,
): WorkSection[] {
  const { measures } = zones[z]!;
  const panels = wall.zones[z]!.layout;
  if (layer.kind === 'adhesive' && panels && panels.panels.length > 0) {
    const byMark = new Map(panels.panels.map(({ mark, outline }) => [mark, polygonArea(outline)]));
    return panels.fixing.order.map((mark) => ({ name: `panel ${mark}`, area: byMark.get(mark)! / 1e10 }));
  }
  const place = `${nameOfZone(measures.zone)} on ${nameOfWall(wall.survey.wall)}`;
  // Margins and reveals go with the part of the zone that they are on; how much with which is as good as their areas.
  const scale = measures.faceArea > 0 ? area / measures.faceArea : 0;
  return measures.face.map((polygon, i, { length }) => ({
    name: length > 1 ? `${place}, part ${i + 1}` : place,
    area: (polygonArea(polygon) / 1e10) * scale,
  }));
}

function lapFinding(
  product: Product,
  { potLife, mostArea, mixes, lapsInFace }: MixingPlan,
  { temperature, hands }: { readonly temperature: number; readonly hands: number },
): Finding {
  const where = mixes.flatMap(({ parts }) => parts).find(({ endsInFace }) => endsInFace)!.section;
  const more = lapsInFace > 1 ? ` (${lapsInFace} laps in all)` : '';
  return {
    level: 'warning',
    code: 'lap-in-face',
    text:
      `${product.name} sets in ${figure(potLife, 0)} minutes at ${figure(temperature, 1)} °C, in which ${hands} ` +
      `${hands === 1 ? 'person lays' : 'people lay'} ${figure(mostArea, 2)} m²: a lap falls within ${where}${more}; ` +
      'take more hands, work cooler or divide the zone.',
  };
}
