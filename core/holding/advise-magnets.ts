import type { HungItem } from '../job/hung-schema';
import type { MagnetRecord } from '../job/magnet-schema';
import type { Candidate } from './advice';
import { neighbourDistance } from './derating';
import { across, grades, withRubber, type Magnet } from './magnet';
import { arrange, broughtBehind, counts, isBehind, leastApart, type Places } from './magnet-layouts';
import { recordOf } from './ready-magnets';
import type { Trial, Trials } from './trials';

/** Thickness of rubber or foil that is put on a magnet, mm; common practice, no source. */
const rubber = 1;

/** What other magnets, or the same ones elsewhere behind the item, would do: at most one candidate a kind. */
export function adviseMagnets(trials: Trials): Candidate[] {
  const { item, on } = trials;
  const magnet = on.magnets.get(item.magnets?.magnet ?? '');
  if (!magnet) return [];
  return [
    ...coated(trials, magnet),
    ...larger(trials, magnet),
    ...stronger(trials, magnet),
    ...more(trials, magnet),
    ...apart(trials, magnet),
    ...raised(trials, magnet),
  ];
}

/**
 * Other magnets or other places of them. What the item bore in a test, and how its magnets gripped, was of those it had.
 */
export function withMagnets(
  item: HungItem,
  changes: { magnet?: string; places?: Places },
): Partial<HungItem> {
  const { magnet, places } = changes;
  return {
    magnets: {
      ...item.magnets,
      magnet: magnet ?? item.magnets?.magnet ?? '',
      places: (places ?? item.magnets?.places ?? []).map(([x, y]) => [tidy(x), tidy(y)]),
    },
    proof: undefined,
    ...(magnet !== undefined && magnet !== item.magnets?.magnet && { friction: undefined }),
  };
}

function coated({ item, on }: Trials, magnet: Magnet): Candidate[] {
  if (magnet.contact === 'rubber') return [];
  const { id, record } = listed(on.magnets, withRubber(magnet, rubber), `${magnet.id}-rubber`);
  return [
    {
      kind: 'rubber',
      words: `Put ${rubber} mm of rubber on its magnets.`,
      patch: withMagnets(item, { magnet: id }),
      ...(record && { magnet: record }),
    },
  ];
}

/** The smallest that would do, or else the one that does most. */
function larger(trials: Trials, magnet: Magnet): Candidate[] {
  const { item, on } = trials;
  const all = [...on.magnets.values()]
    .filter(
      (other) =>
        other.shape === magnet.shape &&
        other.material === magnet.material &&
        other.contact === magnet.contact &&
        Math.abs(other.Br - magnet.Br) < 0.01 &&
        volume(other) > volume(magnet) * 1.01,
    )
    .sort((a, b) => volume(a) - volume(b))
    .flatMap((other): Candidate[] => {
      const places = broughtBehind(item, item.magnets!.places, across(other));
      if (!places) return [];
      return [
        {
          kind: 'larger-magnets',
          words: `Take larger magnets: ${other.name}.`,
          patch: withMagnets(item, { magnet: other.id!, places }),
        },
      ];
    });
  return enoughOrBest(trials, all);
}

function stronger({ item, on }: Trials, magnet: Magnet): Candidate[] {
  const alike = [...on.magnets.values()]
    .filter(
      (other) =>
        other.shape === magnet.shape &&
        other.diameter === magnet.diameter &&
        other.height === magnet.height &&
        other.cover === magnet.cover &&
        (other.contact === magnet.contact || magnet.contact === 'ferrite') &&
        other.Br > magnet.Br + 0.005,
    )
    .sort((a, b) => b.Br - a.Br)[0];
  const kind = 'other-grade';
  if (alike)
    return [
      {
        kind,
        words: `Take magnets of a stronger grade: ${alike.name}.`,
        patch: withMagnets(item, { magnet: alike.id! }),
      },
    ];
  const { Br, mur, material } = grades.N42;
  if (magnet.shape !== 'disc' || magnet.material !== material || magnet.Br >= Br - 0.005) return [];
  const { rated: _rated, ratedPerArea: _area, price: _price, id: _id, ...rest } = magnet;
  const name = /N\d+/.test(magnet.name) ? magnet.name.replace(/N\d+/, 'N42') : `${magnet.name}, N42`;
  const { id, record } = listed(on.magnets, { ...rest, name, Br, mur }, `${magnet.id}-N42`);
  return [
    {
      kind,
      words: 'Take magnets of grade N42.',
      patch: withMagnets(item, { magnet: id }),
      ...(record && { magnet: record }),
    },
  ];
}

function more(trials: Trials, magnet: Magnet): Candidate[] {
  const { item } = trials;
  const now = item.magnets!.places.length;
  const all = counts
    .filter((count) => count > now)
    .flatMap((count): Candidate[] => {
      const places = arrange(count, across(magnet), item.width, item.height);
      if (!places) return [];
      return [
        {
          kind: 'more-magnets',
          words: `Take ${count} of these magnets instead of ${now}, spread over its back.`,
          patch: withMagnets(item, { places }),
        },
      ];
    });
  return enoughOrBest(trials, all);
}

function apart({ item, now }: Trials, magnet: Magnet): Candidate[] {
  const { places } = item.magnets!;
  const asked = neighbourDistance * across(magnet);
  if (!now.judgement.magnets.some(({ derating }) => derating.isNearNeighbour)) return [];
  if (leastApart(places) >= asked - 1e-9) return [];
  const spread = spreadOut(places, (asked + 0.05) / leastApart(places));
  const fits = isBehind(item, spread, across(magnet))
    ? spread
    : arrange(places.length, across(magnet), item.width, item.height);
  if (!fits) return [];
  return [
    {
      kind: 'set-apart',
      words: `Set its magnets at least ${asked} mm apart, centre to centre.`,
      patch: withMagnets(item, { places: fits }),
    },
  ];
}

function raised({ item, now }: Trials, magnet: Magnet): Candidate[] {
  const { places } = item.magnets!;
  const heights = places.map(([, y]) => y);
  const [low, top] = [Math.min(...heights), Math.max(...heights)];
  const up = item.height - across(magnet) / 2 - top;
  // A single row would take its own lower rim up with it.
  const isLever = item.restsOnWall || low < top - 1;
  if (!isLever || up < 5 || !now.placed.held) return [];
  return [
    {
      kind: 'top-row-up',
      words: `Move the top row of its magnets ${Math.floor(up)} mm up.`,
      patch: withMagnets(item, {
        places: places.map(([x, y]) => (y > top - 1 ? ([x, y + Math.floor(up)] as const) : [x, y])),
      }),
    },
  ];
}

/** Of trials in the order of what they ask for, the first with which the item holds at least if tested, or else the best. */
export function enoughOrBest<T extends Trial>(trials: Trials, all: readonly T[]): T[] {
  let best: { readonly one: T; readonly factor: number } | undefined;
  for (const one of all) {
    const { verdict, factor = 0 } = trials.alone(one).judgement;
    if (verdict === 'holds' || verdict === 'holds only if tested') return [one];
    if (!best || factor > best.factor * 1.001) best = { one, factor };
  }
  return best ? [best.one] : [];
}

/** The magnet as the job may have it already, or a record of it under an id that is free. */
function listed(
  magnets: ReadonlyMap<string, Magnet>,
  wanted: Magnet,
  id: string,
): { readonly id: string; readonly record?: MagnetRecord } {
  const isWanted = (one: Magnet | undefined) => {
    const { id: _a, name: _b, price: _c, ...rest } = one ?? ({} as Magnet);
    const { id: _d, name: _e, price: _f, ...asked } = wanted;
    return JSON.stringify(sorted(rest)) === JSON.stringify(sorted(asked));
  };
  for (let n = 1; ; n++) {
    const free = n === 1 ? id : `${id}-${n}`;
    if (!magnets.has(free)) return { id: free, record: recordOf(free, wanted) };
    if (isWanted(magnets.get(free))) return { id: free };
  }
}

function sorted(fields: object): [string, unknown][] {
  return Object.entries(fields).sort(([a], [b]) => (a < b ? -1 : 1));
}

/** From their middle, by so many times. */
function spreadOut(places: Places, by: number): Places {
  const middle = [0, 1].map((axis) => places.reduce((sum, place) => sum + place[axis]!, 0) / places.length);
  return places.map(
    ([x, y]) => [middle[0]! + (x - middle[0]!) * by, middle[1]! + (y - middle[1]!) * by] as const,
  );
}

function volume({ diameter, height }: Magnet): number {
  return diameter * diameter * height;
}

/** Tenths of a millimetre, away from binary dust. */
function tidy(length: number): number {
  return Math.round(length * 100) / 100 + 0;
}
