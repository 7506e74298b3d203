import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { flattenCircle, flattenVertices, type OutlineVertex } from '../../core/geometry/arc';
import { offsetOutline } from '../../core/geometry/offset-outline';
import { boxOfRegion, perimeter, regionArea } from '../../core/geometry/polygon';

interface Offset {
  readonly name: string;
  /** null: a circle of 600 mm. */
  readonly vertices: OutlineVertex[] | null;
  readonly distance: number;
  readonly area: number;
  readonly parts: number;
  readonly box: readonly [number, number, number, number] | null;
  readonly corners: number | null;
}

const file = new URL('../fixtures/geometry/offsets.json', import.meta.url);
const { library, offsets } = JSON.parse(readFileSync(file, 'utf8')) as {
  library: string;
  offsets: Offset[];
};

describe(`offsets of outlines as ${library} has them (fixtures/geometry/offsets.py)`, () => {
  it.each(offsets.map((offset) => [`${offset.name} by ${offset.distance} mm`, offset] as const))(
    '%s',
    (_, { vertices, distance, area, parts, box, corners }) => {
      const outline = vertices
        ? flattenVertices(vertices, 'inscribed')
        : flattenCircle({ x: 0, y: 0 }, 600, 'inscribed');
      const { region } = offsetOutline(outline, Math.round(distance * 100));
      expect(region).toHaveLength(parts);
      if (!box) return;
      const isStraight = outline.arcs.length === 0;
      // Chords stand off their arcs by 0.02 mm, here and there; corners are rounded to 0.01 mm.
      const off = (isStraight ? 0.01 : 0.03) * (perimeter(region[0]!) / 100);
      expect(Math.abs(regionArea(region) / 1e4 - area)).toBeLessThanOrEqual(off);
      const { left, bottom, right, top } = boxOfRegion(region);
      [left, bottom, right, top].forEach((side, i) =>
        expect(Math.abs(side / 100 - box[i]!)).toBeLessThanOrEqual(0.03),
      );
      if (corners !== null) expect(region[0]!.outer).toHaveLength(corners);
    },
  );
});
