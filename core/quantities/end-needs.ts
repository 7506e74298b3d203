import type { PieceKind } from '../job/quantities-schema';
import type { Consequence } from '../build-up/consequences';
import type { WorkedBuildUp } from '../build-up/worked-build-up';
import { figure } from '../lengths';
import { itemOfThing, type Need } from './need';
import type { ZoneTask } from './zone-task';

/**
 * Beads and trims along the edges of a zone, and what has to be bought because its face comes forward.
 *
 * @param counted what zones listed before have counted already; what this one counts is added
 */
export function endNeeds(
  { wall, measures }: ZoneTask,
  { edges, consequences }: Pick<WorkedBuildUp, 'edges' | 'consequences'>,
  counted: Set<string>,
): Need[] {
  const needOf = (kind: PieceKind, of: Need['of'], unit: string, amount: number, how: string): Need => ({
    wall: wall.id,
    zone: measures.zone.id,
    delivery: wall.delivery ?? '',
    layer: null,
    kind: null,
    coat: 0,
    of,
    item: itemOfThing(kind),
    unit,
    net: amount,
    withLoss: amount,
    how,
  });
  const profiles = (['stop-bead', 'trim'] as const).flatMap((kind): Need[] => {
    const length = edges.lengths[kind] / 1000;
    return length > 0
      ? [needOf(kind, 'ends', 'm', length, `${figure(length, 2)} m of edges that end so.`)]
      : [];
  });
  const pieces = bought.flatMap((kind): Need[] => {
    const own = consequences.filter(
      (one) => one.kind === kind && one.unit === 'piece' && !counted.has(`${kind} ${one.object}`),
    );
    for (const { object } of own) counted.add(`${kind} ${object}`);
    const count = own.reduce((sum, { amount }) => sum + amount, 0);
    if (count === 0) return [];
    const places = `${own.length} ${own.length === 1 ? 'place' : 'places'}`;
    return [needOf(kind, 'boxes', 'piece', count, `${count} at ${places} where the face comes forward.`)];
  });
  const packed = alongEdges.flatMap(([kind, consequence, words]): Need[] => {
    const own = consequences.filter((one) => one.kind === consequence);
    const length = own.reduce((sum, { amount }) => sum + amount, 0) / 1000;
    return length > 0
      ? [
          needOf(
            kind,
            'ends',
            'm',
            length,
            `${figure(length, 2)} m of ${words} where the face comes forward.`,
          ),
        ]
      : [];
  });
  return [...profiles, ...pieces, ...packed];
}

/** What an architrave or skirting is packed out with, and the bead on the edge of a reveal that has become deeper. */
const alongEdges = [
  ['architrave-packing', 'architrave', 'architrave'],
  ['skirting-packing', 'skirting', 'skirting'],
  ['reveal-bead', 'reveal-return', 'reveals'],
] as const satisfies readonly (readonly [PieceKind, Consequence['kind'], string])[];

const bought = ['extension-ring', 'longer-screws', 'radiator-bracket'] as const;
