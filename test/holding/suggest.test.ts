import { describe, expect, it } from 'vitest';
import { judgeItem } from '../../core/holding/judge-item';
import { flatItem, type HeldItem, type PlacedMagnet } from '../../core/holding/item';
import { disc, withRubber } from '../../core/holding/magnet';
import { catalogue } from '../../core/holding/ready-magnets';
import { outsideLimits } from '../../core/holding/limits';
import { arrange, suggestMagnets, type ItemToCarry } from '../../core/holding/suggest';
import { whatToChange } from '../../core/holding/what-to-change';
import { coatingGround, steelGround } from './grounds';

const picture: ItemToCarry = {
  weight: 4,
  reach: 5,
  width: 300,
  height: 250,
  ground: steelGround(),
  consequence: 'light-at-reach',
};

describe('the catalogue', () => {
  it('holds only what the pull is known of (sizes: note on holding force, section 1), no name twice', () => {
    for (const { diameter, height, Br, mur } of catalogue)
      expect(outsideLimits({ diameter, height, Br, mur, thickness: 0.5, gap: 1 })).toEqual([]);
    expect(new Set(catalogue.map(({ name }) => name)).size).toBe(catalogue.length);
  });

  it('says of rubber what it adds to the gap, and that it grips', () => {
    const bare = { ...disc('N42', 20, 5), price: 2, rated: { force: 60, thickness: 10, gap: 0 } };
    const covered = withRubber(bare, 1);
    expect(covered).toMatchObject({ cover: 1, contact: 'rubber' });
    expect(covered.price).toBeUndefined();
    expect(covered.rated).toBeUndefined();
  });
});

describe('suggested magnets', () => {
  const { fewest, thinnest, cheapest } = suggestMagnets(picture, catalogue);

  it('carry the item with its factor', () => {
    for (const one of [fewest, thinnest]) {
      expect(one!.judgement.verdict).toBe('holds');
      expect(judgeItem(one!.item).factor).toBeGreaterThanOrEqual(3);
      expect(one!.item.magnets).toHaveLength(one!.count);
    }
  });

  it('are the fewest and the thinnest of all that do, by trying every one', () => {
    const all = catalogue.flatMap((magnet) =>
      [1, 2, 4, 6, 8, 10, 12, 16, 20].flatMap((count) => {
        const places = arrange(count, magnet.diameter, picture.width, picture.height);
        if (!places) return [];
        // One row turns about its own rims, two rows about the lower one's, which is the item's edge.
        const down = count > 2 ? 0 : picture.height - magnet.diameter;
        const magnets = places.map(({ x, y }): PlacedMagnet => {
          return { x, y: y - down, magnet, ground: picture.ground };
        });
        const item = flatItem(4, 5, { x: 150, y: 125 }, { magnets, consequence: 'light-at-reach' });
        return judgeItem(item).verdict === 'holds' ? [{ count, thick: magnet.height + magnet.cover }] : [];
      }),
    );
    expect(fewest!.count).toBe(Math.min(...all.map(({ count }) => count)));
    expect(thinnest!.magnet.height + thinnest!.magnet.cover).toBe(Math.min(...all.map(({ thick }) => thick)));
  });

  it('turn about the rim of the lowest magnet: a single row high up bears no more than one low down', () => {
    const light = suggestMagnets({ ...picture, weight: 0.6, reach: 12 }, [disc('N42', 25, 5)]);
    expect(light.fewest!.count).toBeLessThanOrEqual(2);
    expect(light.fewest!.item.magnets[0]!.y).toBe(12.5);
    expect(light.fewest!.places[0]!.y).toBe(250 - 12.5);
  });

  it('are cheapest by the prices that are given, and none without a price', () => {
    expect(cheapest).toBeUndefined();
    const priced = [
      { ...disc('N42', 30, 10), price: 9 },
      { ...disc('N42', 20, 5), price: 1.5 },
      disc('N42', 25, 5),
    ];
    const found = suggestMagnets(picture, priced);
    expect(found.cheapest!.magnet.name).toBe('N42 20 × 5 mm');
    expect(found.cheapest!.price).toBeCloseTo(1.5 * found.cheapest!.count, 12);
  });

  it('are none where nothing carries it, or nothing can be said', () => {
    expect(suggestMagnets({ ...picture, weight: 4000 }, catalogue)).toEqual({});
    expect(suggestMagnets({ ...picture, ground: coatingGround() }, catalogue)).toEqual({});
  });

  it('where a fall could hurt are those that hold if tested', () => {
    const found = suggestMagnets({ ...picture, weight: 1, consequence: 'could-hurt' }, catalogue);
    expect(found.fewest!.judgement.verdict).toBe('holds only if tested');
  });

  it('stand three diameters apart on the item, or not at all', () => {
    expect(arrange(4, 20, 80, 80)).toHaveLength(4);
    expect(arrange(4, 20, 79, 80)).toBeUndefined();
    expect(arrange(1, 20, 15, 80)).toBeUndefined();
    const places = arrange(12, 20, 500, 200)!;
    const nearest = places.flatMap((a, i) =>
      places.slice(i + 1).map((b) => Math.hypot(a.x - b.x, a.y - b.y)),
    );
    expect(Math.min(...nearest)).toBeGreaterThanOrEqual(60);
  });
});

describe('what to change', () => {
  const bare = disc('N42', 20, 5);
  const shelf = (change: Partial<PlacedMagnet> = {}): HeldItem => {
    const magnets = [20, 120].flatMap((y) =>
      [0, 200].map((x): PlacedMagnet => ({ magnet: bare, x, y, ground: steelGround(), ...change })),
    );
    return flatItem(8, 60, { x: 100, y: 0 }, { magnets, consequence: 'light-at-reach' });
  };

  it('is ranked by effect, each with the factor that it leads to', () => {
    const changes = whatToChange(shelf(), catalogue);
    expect(changes.length).toBeGreaterThan(4);
    for (const [i, { effect, item, factor }] of changes.entries()) {
      expect(effect).toBeLessThanOrEqual(changes[i - 1]?.effect ?? Infinity);
      expect(effect).toBeGreaterThan(1);
      expect(judgeItem(item).factor).toBe(factor);
    }
    expect(changes.map(({ words }) => words)).toContain('put 1 mm of rubber on the magnets');
  });

  it('names what stands in the way: edges, neighbours, dust, a load to one side', () => {
    const wordsOf = (item: HeldItem) =>
      whatToChange(item, catalogue)
        .map(({ words }) => words)
        .join('; ');
    expect(wordsOf(shelf({ clearance: 5 }))).toContain('clear of edges');
    expect(wordsOf(shelf({ otherItem: 30 }))).toContain('3 diameters apart');
    expect(wordsOf(shelf({ ground: steelGround({ surface: 'writable' }) }))).toContain('clean the surface');
    expect(wordsOf(shelf({ ground: steelGround({ surface: 'chalk' }) }))).not.toContain('clean the surface');
    const aside = { ...shelf(), loads: shelf().loads.map((load) => ({ ...load, x: 180 })) };
    expect(wordsOf(aside)).toContain('under the middle');
    expect(wordsOf(shelf())).not.toContain('clear of edges');
  });

  it('offers no thinner filler or thicker steel as tested, when only the wall as it is was', () => {
    const tests = [{ magnet: bare, between: 0, readings: [15, 15, 15] }];
    const changes = whatToChange(shelf({ ground: steelGround({ tests }) }), catalogue);
    const thicker = changes.find(({ words }) => words === 'take steel of 2 mm')!;
    for (const { ground } of thicker.item.magnets) expect(ground).toMatchObject({ thickness: 2, tests: [] });
  });

  it('raises a top row only above another row', () => {
    const wordsOf = (item: HeldItem) =>
      whatToChange(item, catalogue)
        .map(({ words }) => words)
        .join('; ');
    const heavy = (magnets: readonly PlacedMagnet[]): HeldItem =>
      flatItem(2, 150, { x: 100, y: 0 }, { magnets, consequence: 'light-at-reach' });
    expect(wordsOf(heavy(shelf().magnets))).toContain('100 mm up');
    expect(wordsOf(heavy(shelf().magnets.slice(2)))).not.toContain('100 mm up');
  });

  it('is nothing where nothing can be said', () => {
    expect(whatToChange(shelf({ ground: coatingGround() }), catalogue)).toEqual([]);
  });
});
