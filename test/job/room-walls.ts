import { emptyJob, newWall } from '../../core/job/defaults';
import type { Corner, Job, Layout, Wall, Zone } from '../../core/job/schema';
import { rectangleVertices } from '../../core/job/shape';

export const layout: Layout = {
  stock: 'S1',
  start: 'lower-left',
  turned: false,
  jointGap: 0,
  stagger: 0,
  leastWidth: 50,
};

export function sheet(width: number, height: number) {
  return { id: 'S1', name: '', width, height, thickness: 0.5, price: 5, hasFace: false, spares: 0 };
}

export function steel(
  id: string,
  [x, y, width, height]: readonly [number, number, number, number],
  changes: Partial<Layout> = {},
): Zone {
  return {
    id,
    name: 'Proofs',
    shape: rectangleVertices({ x, y, width, height }),
    holes: [],
    buildUp: 'steel-panel',
    layout: { ...layout, ...changes },
  };
}

export function wallOf(id: string, width: number, corner?: Corner, zones: Zone[] = []): Wall {
  return { ...newWall(id, '', width, 2600), ...(corner && { corner }), zones };
}

export function room(walls: Wall[], stock = sheet(500, 500)): Job {
  return { ...emptyJob(), stock: [stock], walls };
}

export const inside = (to: string, rise = 0): Corner => ({ to, kind: 'internal', ...(rise && { rise }) });
export const outside = (to: string): Corner => ({ to, kind: 'external' });
