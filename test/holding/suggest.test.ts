import { describe, expect, it } from 'vitest';
import { standardGravity } from '../../core/holding/force-units';
import { judgeAlone } from '../../core/holding/judge-wall';
import { outsideLimits } from '../../core/holding/limits';
import { disc, withRubber } from '../../core/holding/magnet';
import { arrange, counts } from '../../core/holding/magnet-layouts';
import { catalogue, recordOf } from '../../core/holding/ready-magnets';
import { suggestMagnets } from '../../core/holding/suggest';
import { board, firstWall, jobWith, type Fields } from './hung-job';

/** Without magnets yet: 4 N, 5 mm from the wall, 300 × 250 mm. */
const picture = { ...board, width: 300, height: 250, restsOnWall: false, magnets: undefined };

function suggested(item: Fields, rest: Fields = {}) {
  return suggestMagnets(firstWall(jobWith([JSON.parse(JSON.stringify(item))], rest)), 'H1');
}

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
  it('are the fewest and the thinnest of all that carry the item with its factor, by trying every one', () => {
    const { fewest, thinnest } = suggested(picture);
    const on = firstWall(jobWith([JSON.parse(JSON.stringify(picture))]));
    const [item] = on.wall.hung!;
    const all = catalogue.flatMap(({ id, diameter, height, cover }) =>
      counts.flatMap((count) => {
        const places = arrange(count, diameter, 300, 250);
        if (!places) return [];
        const magnets = { magnet: id!, places: places.map(([x, y]): [number, number] => [x, y]) };
        const { judgement } = judgeAlone(on, { ...item!, magnets });
        return judgement.verdict === 'holds' ? [{ count, thick: height + cover }] : [];
      }),
    );
    expect(fewest!.count).toBe(Math.min(...all.map(({ count }) => count)));
    expect(thinnest!.magnet.height + thinnest!.magnet.cover).toBe(Math.min(...all.map(({ thick }) => thick)));
    expect(fewest!.verdict).toMatchObject({ verdict: 'holds', asked: 3 });
    expect(fewest!.verdict.factor).toBeGreaterThanOrEqual(3);
  });

  it('carry load and reach as well: a shelf with tins asks for more than the bare shelf', () => {
    const shelf = { ...picture, height: 150, width: 500, reach: 60, depth: 120, weight: 0.4 };
    const bare = suggested(shelf).fewest!;
    const loaded = suggested({ ...shelf, load: { weight: 1.1, reach: 120 } }).fewest!;
    expect(loaded.count).toBeGreaterThan(bare.count);
    expect(loaded.verdict).toMatchObject({ verdict: 'holds', asked: 3 });
  });

  it('are cheapest by the prices that are given, and none without a price', () => {
    expect(suggested(picture).cheapest).toBeUndefined();
    const magnets = [
      { ...recordOf('big', disc('N42', 30, 10)), price: 9 },
      { ...recordOf('small', disc('N42', 20, 5)), price: 1.5 },
    ];
    const { cheapest } = suggested(picture, { magnets });
    expect(cheapest!.magnet.id).toBe('small');
    expect(cheapest!.price).toBeCloseTo(1.5 * cheapest!.count, 12);
  });

  it('are none where nothing carries it', () => {
    expect(suggested({ ...picture, weight: 400 })).toEqual({});
    expect(suggested({ ...picture, x: 2500 })).toEqual({});
    expect(suggested({ ...picture, weight: undefined })).toEqual({});
  });

  it('where a fall could hurt are those that hold if tested', () => {
    const { fewest } = suggested({ ...picture, use: 'could-hurt', weight: 1 / standardGravity });
    expect(fewest!.verdict.verdict).toBe('holds only if tested');
  });

  it('lead to the verdict that was promised', () => {
    const job = jobWith([JSON.parse(JSON.stringify(picture))]);
    for (const one of Object.values(suggestMagnets(firstWall(job), 'H1'))) {
      const on = firstWall(one.change(job));
      expect(judgeAlone(on, on.wall.hung![0]!).judgement.factor).toBe(one.verdict.factor);
    }
  });

  it('stand three diameters apart on the item, or not at all', () => {
    expect(arrange(4, 20, 80, 80)).toHaveLength(4);
    expect(arrange(4, 20, 79, 80)).toBeUndefined();
    expect(arrange(1, 20, 15, 80)).toBeUndefined();
    const places = arrange(12, 20, 500, 200)!;
    const nearest = places.flatMap(([x, y], i) =>
      places.slice(i + 1).map(([u, v]) => Math.hypot(u - x, v - y)),
    );
    expect(Math.min(...nearest)).toBeGreaterThanOrEqual(60);
  });
});
