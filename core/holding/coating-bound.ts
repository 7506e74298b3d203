import type { Mm } from '../units';
import type { HeldItem } from './item';
import type { CountedMagnet } from './counted-magnet';
import type { Magnet } from './magnet';
import { pullOf, tolerances } from './pull-range';
import { holdRigid, type RigidState } from './rigid-item';

/**
 * The most that a magnet can pull, N, whatever it lies on: the image force to ideally permeable iron without end behind the face.
 * A flat layer throws back less of every wave of the magnet's field than such iron does (by (μ²−1)(1−e^(−2kt)) over
 * (μ+1)² − (μ−1)² e^(−2kt), which is below 1), and saturation takes more of it away. With the remanence at its
 * highest, and never less than the model gives for the best of steels. Infinity for what is no bare disc.
 *
 * Source: method of images, E. P. Furlani, Permanent Magnet and Electromechanical Devices (2001); F₀ of the note on holding force.
 * @param between what lies between magnet and wall beside the magnet's own cover, mm
 */
export function mostPull(magnet: Magnet, between: Mm): number {
  if (magnet.shape !== 'disc') return Infinity;
  const { diameter, height, mur, cover } = magnet;
  const Br = magnet.Br * (1 + tolerances.Br);
  return (
    pullOf({ diameter, height, mur, Br, thickness: height, gap: cover + between }).F0 *
    (1 + tolerances.steelMore)
  );
}

/**
 * How an item would hold on a coating or film that nobody has tested, if that pulled as hard as anything can and no magnet took
 * from another: what does not hold so, holds on no coating. Undefined if not every magnet is a bare disc on such a coating.
 */
export function atMostOnCoating(item: HeldItem, magnets: readonly CountedMagnet[]): RigidState | undefined {
  const pulls = magnets.map(({ place: { magnet, between = 0 } }) => mostPull(magnet, between));
  const isOn = magnets.length > 0 && magnets.every(({ place }) => place.ground.kind === 'coating');
  if (!isOn || !pulls.every(Number.isFinite)) return undefined;
  return holdRigid(
    item.loads,
    magnets.map(({ place: { x, y, magnet }, friction: { mu } }, i) => ({
      x,
      y,
      R: magnet.diameter / 2,
      F: pulls[i]!,
      mu,
    })),
  );
}
