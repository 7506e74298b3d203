import type { ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { polygonArea } from '../geometry/polygon';
import { nameOfWall, nameOfZone } from '../job/names';
import type { Product } from '../job/product-schema';
import { figure } from '../lengths';
import { mixingPlans, type MixingPlan, type WorkSection } from './mixing-plan';
import { onceFor } from './once-for';
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
export function mixingOf(
  walls: readonly WallNeeds[],
  products: ReadonlyMap<string, Product>,
  settings: Settings,
): Mixing {
  const plans: JobMixingPlan[] = [];
  const findings: Finding[] = [];
  for (const { delivery, layer, sections } of usesOf(walls)) {
    // As the job has it now: its packs may have changed since the layers were worked out.
    const product = products.get(layer.product!.id) ?? layer.product!;
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
  readonly key: string;
  readonly delivery: string;
  readonly layer: ResolvedLayer;
  readonly sections: readonly WorkSection[];
}

/** Where each product that is mixed is laid, by product, delivery, number of coats and thickness. */
function usesOf(walls: readonly WallNeeds[]): Use[] {
  const uses = new Map<string, Use & { readonly sections: WorkSection[] }>();
  for (const use of walls.flatMap(usesOnWall)) {
    const known = uses.get(use.key);
    if (known) known.sections.push(...use.sections);
    else uses.set(use.key, { ...use, sections: [...use.sections] });
  }
  return [...uses.values()];
}

const usesOnWall = onceFor((own: WallNeeds): Use[] =>
  own.zones.flatMap(({ layers, areas }, z) =>
    layers.flatMap((layer, i): Use[] => {
      const { product } = layer;
      if (!product?.mixing || (layer.layer.over ?? 'face') !== 'face') return [];
      const { delivery = '' } = own.wall.survey.wall;
      const key = JSON.stringify([product.id, delivery, layer.coats, layer.layer.thickness]);
      const area = areas[i]!.face + areas[i]!.feather + areas[i]!.reveals;
      return [{ key, delivery, layer, sections: sectionsOf(own, z, layer, area) }];
    }),
  ),
);

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
