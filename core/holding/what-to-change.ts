import type { Mm } from '../units';
import { edgeDistance, neighbourDistance } from './derating';
import { usualCondition } from './friction';
import { surfaceOf, type HoldingGround, type SteelGround } from './ground';
import type { HeldItem, PlacedMagnet } from './item';
import { judgeItem, type Judgement, type Verdict } from './judge-item';
import { grades, withRubber, type Magnet } from './magnet';

/** One thing to change, and what it does. */
export interface Change {
  readonly words: string;
  /** How much more the item then holds: 2 is twice. Infinity where it held nothing. */
  readonly effect: number;
  readonly factor: number;
  readonly verdict: Verdict;
  readonly item: HeldItem;
}

/**
 * What to change so that an item holds, ranked by effect: the factor it then has, over the one it has now, in the worse of the
 * designed and the worst case. What helps by less than a hundredth is left out; [] where nothing can be said of the item.
 *
 * @param catalogue magnets that can be had, for a larger one
 */
export function whatToChange(item: HeldItem, catalogue: readonly Magnet[]): Change[] {
  const now = judgeItem(item);
  if (now.factor === undefined) return [];
  const before = reserve(now);
  const tried = candidates(item, now, catalogue).flatMap(({ words, item: changed }) => {
    const after = judgeItem(changed);
    if (after.factor === undefined) return [];
    const effect = before > 0 ? reserve(after) / before : reserve(after) > 0 ? Infinity : 0;
    return effect > 1.01
      ? [{ words, effect, factor: after.factor, verdict: after.verdict, item: changed }]
      : [];
  });
  return tried.sort((a, b) => b.effect - a.effect || b.factor - a.factor);
}

interface Candidate {
  readonly words: string;
  readonly item: HeldItem;
}

/** Of 1 what is asked for, in the mode that governs. */
function reserve({ modes }: Judgement): number {
  return 1 / Math.max(...modes.map(({ utilisation }) => utilisation));
}

function candidates(item: HeldItem, now: Judgement, catalogue: readonly Magnet[]): Candidate[] {
  const { magnets } = item;
  const each = (change: (place: PlacedMagnet, i: number) => PlacedMagnet): HeldItem => ({
    ...item,
    magnets: magnets.map(change),
  });
  const onSteel = (change: (ground: SteelGround) => Partial<SteelGround>) =>
    each((place) => ({ ...place, ground: changedSteel(place.ground, change) }));
  const larger = nextLarger(magnets, catalogue);
  const isDusty = magnets.some(
    ({ ground }) => (item.condition ?? usualCondition(surfaceOf(ground))) === 'dusty',
  );
  const isChalk = magnets.some(({ ground }) => surfaceOf(ground) === 'chalk');
  const nearEdge = now.magnets.some(({ derating }) => derating.isNearEdge);
  const nearNeighbour = now.magnets.some(({ derating }) => derating.isNearNeighbour);
  const isDown = item.loads.every(({ side, out }) => side === 0 && out === 0);
  const middle = magnets.reduce((sum, { x }) => sum + x, 0) / magnets.length;
  return [
    {
      words: 'put 1 mm of rubber on the magnets',
      item: each((place) =>
        place.magnet.contact === 'rubber' ? place : { ...place, magnet: withRubber(place.magnet, 1) },
      ),
    },
    ...(larger
      ? [
          {
            words: `take larger magnets: ${larger.name}`,
            item: each((place) => ({ ...place, magnet: larger })),
          },
        ]
      : []),
    {
      words: 'take magnets of grade N42',
      item: each((place) => ({ ...place, magnet: inN42(place.magnet) })),
    },
    { words: 'add magnets in the top row', item: { ...item, magnets: withMoreOnTop(magnets) } },
    ...(hasLowerRow(magnets)
      ? [{ words: 'move the top row of magnets 100 mm up', item: { ...item, magnets: raised(magnets) } }]
      : []),
    {
      words: 'bring its weight half as far from the wall',
      item: { ...item, loads: item.loads.map((load) => ({ ...load, reach: load.reach / 2 })) },
    },
    ...(isDown
      ? [
          {
            words: 'hang its weight under the middle of the magnets',
            item: { ...item, loads: item.loads.map((load) => ({ ...load, x: middle })) },
          },
        ]
      : []),
    ...(isDusty && !isChalk
      ? [{ words: 'clean the surface and keep it dry', item: { ...item, condition: 'clean-dry' as const } }]
      : []),
    ...(nearEdge
      ? [
          {
            words: `move magnets ${edgeDistance} diameters clear of edges, joints, holes and screws`,
            item: each((place) => ({
              ...place,
              clearance: Math.max(place.clearance ?? Infinity, edgeDistance * place.magnet.diameter),
            })),
          },
        ]
      : []),
    ...(nearNeighbour
      ? [
          {
            words: `set the magnets ${neighbourDistance} diameters apart`,
            item: { ...item, magnets: apart(magnets) },
          },
        ]
      : []),
    {
      words: 'lay half a millimetre less over the steel',
      item: onSteel(({ gap }) => ({ gap: Math.max(Math.min(gap, 0.1), gap - 0.5) })),
    },
    ...([0.7, 1, 1.5, 2] as const).map((thickness) => ({
      words: `take steel of ${thickness} mm`,
      item: onSteel((ground) => ({ thickness: Math.max(ground.thickness, thickness) })),
    })),
  ];
}

/** What was measured on the wall as it is says nothing of another. */
function changedSteel(
  ground: HoldingGround,
  change: (ground: SteelGround) => Partial<SteelGround>,
): HoldingGround {
  return ground.kind === 'steel' ? { ...ground, tests: [], ...change(ground) } : ground;
}

/** The next larger of the largest magnet's grade and contact: wider first, then taller. */
function nextLarger(magnets: readonly PlacedMagnet[], catalogue: readonly Magnet[]): Magnet | undefined {
  const largest = magnets.map(({ magnet }) => magnet).reduce((a, b) => (size(b) > size(a) ? b : a));
  return catalogue
    .filter(
      (other) =>
        other.shape === 'disc' &&
        other.material === largest.material &&
        other.contact === largest.contact &&
        Math.abs(other.Br - largest.Br) < 0.01 &&
        size(other) > size(largest) * 1.01,
    )
    .sort((a, b) => size(a) - size(b))[0];
}

function size({ diameter, height }: Magnet): number {
  return diameter * diameter * height;
}

function inN42(magnet: Magnet): Magnet {
  const { Br, mur, material } = grades.N42;
  if (magnet.material !== material || magnet.Br >= Br || magnet.shape !== 'disc') return magnet;
  const { id: _id, rated: _rated, price: _price, ...rest } = magnet;
  return { ...rest, name: magnet.name.replace(/^N\d+/, 'N42'), Br, mur };
}

/** One into the widest space of the top row if two fit three diameters apart, else one beyond each end. */
function withMoreOnTop(magnets: readonly PlacedMagnet[]): PlacedMagnet[] {
  const top = Math.max(...magnets.map(({ y }) => y));
  const row = magnets.filter(({ y }) => y > top - 1).sort((a, b) => a.x - b.x);
  const step = neighbourDistance * row[0]!.magnet.diameter;
  const spaces = row.slice(1).map((right, i) => ({ left: row[i]!, width: right.x - row[i]!.x }));
  const widest = spaces.sort((a, b) => b.width - a.width)[0];
  const like = (place: PlacedMagnet, x: Mm): PlacedMagnet => ({ ...place, x });
  if (widest && widest.width >= 2 * step)
    return [...magnets, like(widest.left, widest.left.x + widest.width / 2)];
  return [...magnets, like(row[0]!, row[0]!.x - step), like(row.at(-1)!, row.at(-1)!.x + step)];
}

/** Otherwise the lowest edge may be the magnets' own, and go up with them. */
function hasLowerRow(magnets: readonly PlacedMagnet[]): boolean {
  const heights = magnets.map(({ y }) => y);
  return Math.min(...heights) < Math.max(...heights) - 1;
}

function raised(magnets: readonly PlacedMagnet[]): PlacedMagnet[] {
  const top = Math.max(...magnets.map(({ y }) => y));
  return magnets.map((place) => (place.y > top - 1 ? { ...place, y: place.y + 100 } : place));
}

/** The same arrangement, stretched until its nearest two are far enough from each other; y from the contact edge. */
function apart(magnets: readonly PlacedMagnet[]): PlacedMagnet[] {
  let stretch = 1;
  for (const [i, a] of magnets.entries())
    for (const b of magnets.slice(i + 1)) {
      const asked = neighbourDistance * Math.max(a.magnet.diameter, b.magnet.diameter);
      stretch = Math.max(stretch, asked / Math.max(1e-6, Math.hypot(a.x - b.x, a.y - b.y)));
    }
  const middle = magnets.reduce((sum, { x }) => sum + x, 0) / magnets.length;
  return magnets.map((place) => {
    const { otherItem: _otherItem, ...rest } = place;
    return { ...rest, x: middle + (place.x - middle) * stretch, y: place.y * stretch };
  });
}
