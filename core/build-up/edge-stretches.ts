import type { Point } from '../geometry/polygon';
import type { EdgePiece } from './edge-pieces';
import type { Ended, EdgeStretch } from './edge-ends';

/**
 * Pieces that follow on each other and end alike, as lines: the located counterpart of `ZoneEdges.runs`. A ring that ends
 * alike all round comes back to its first point.
 *
 * @param rings pieces in their order round each ring
 */
export function edgeStretches(rings: readonly (readonly Ended[])[]): EdgeStretch[] {
  return rings.flatMap((ring) => {
    const chains: Ended[][] = [];
    for (const one of ring) {
      const chain = chains.at(-1);
      if (chain && goesOn(chain.at(-1)!, one)) chain.push(one);
      else chains.push([one]);
    }
    // Where the ring was begun need not be where an end begins.
    if (chains.length > 1 && goesOn(chains.at(-1)!.at(-1)!, chains[0]![0]!)) {
      chains[0] = [...chains.pop()!, ...chains[0]!];
    }
    return chains.flatMap((chain): EdgeStretch[] => {
      const { end, width } = chain[0]!;
      return end ? [{ end, width, points: pointsOf(chain.map(({ piece }) => piece)) }] : [];
    });
  });
}

function goesOn(one: Ended, next: Ended): boolean {
  const [{ to }, { from }] = [one.piece, next.piece];
  return one.end === next.end && one.width === next.width && to.x === from.x && to.y === from.y;
}

function pointsOf(pieces: readonly EdgePiece[]): Point[] {
  return [pieces[0]!.from, ...pieces.map(({ to }) => to)];
}
