import type { HeldItem, PlacedMagnet } from './item';

/** One sentence for each figure of an item that nothing can be worked out from, with how to mend it; [] if all are sound. */
export function faultsOfItem({ loads, magnets, measuredFriction, proofLoad = 0 }: HeldItem): string[] {
  const said: string[] = [];
  const say = (isWrong: boolean, sentence: string) => isWrong && said.push(sentence);
  const isFinite = (...values: readonly number[]) => values.every((value) => Number.isFinite(value));

  for (const { words, down, out, side, x, y, reach } of loads) {
    say(!isFinite(down, out, side, x, y, reach), `Of the ${words} a figure is missing: enter it.`);
    say(down < 0, `The ${words} pushes up; only what hangs or is pulled off is worked out.`);
    say(out < 0, `The ${words} presses on the wall; enter what pulls off as above 0 N.`);
    say(reach < 0, `The ${words} lies ${-reach} mm inside the wall: measure its reach from the wall's face.`);
  }
  const total = loads.reduce((sum, { down, out, side }) => sum + Math.hypot(down, out, side), 0);
  say(!(total > 0), 'The item weighs nothing and nothing pulls at it: enter its weight.');
  say(magnets.length === 0, 'The item has no magnets: add one.');
  for (const [
    i,
    { magnet, x, y, ground, between = 0, otherItem = Infinity, clearance = 0 },
  ] of magnets.entries()) {
    const which = `Magnet ${i + 1}`;
    const { diameter, height, Br, mur, cover } = magnet;
    say(!isFinite(x, y, clearance) || !(otherItem >= 0), `${which} has no place: enter it.`);
    // Where nothing draws it, it bears nothing, wherever it is.
    say(
      !(y > 0) && ground.kind !== 'none',
      `${which} is not above the item's lowest contact edge: measure its height from that edge.`,
    );
    say(
      !(diameter > 0 && height > 0 && Br > 0 && mur > 0 && cover >= 0) || !isFinite(mur),
      `${which}: diameter, height and remanence have to be above 0.`,
    );
    say(
      magnet.rated !== undefined &&
        !(magnet.rated.force > 0 && magnet.rated.thickness > 0 && magnet.rated.gap >= 0),
      `${which}: its maker's pull needs a force, the steel's thickness and the gap that it was measured with.`,
    );
    say(!(between >= 0), `${which}: what lies between has to be 0 mm or thicker.`);
    if (ground.kind === 'steel')
      say(
        !(ground.thickness > 0 && ground.gap >= 0 && (ground.gapMost ?? 0) >= 0) ||
          !isFinite(ground.thickness, ground.gap, ground.gapLeast ?? 0, ground.gapMost ?? 0),
        `${which}: the steel behind it needs a thickness above 0 mm and a gap of 0 mm or more.`,
      );
    if (ground.kind === 'steel' || ground.kind === 'coating')
      say(
        ground.tests.some(
          ({ readings, between: lay }) => !isFinite(...readings, lay) || Math.min(...readings, lay) < 0,
        ),
        `${which}: a reading of the pull test behind it is no force.`,
      );
  }
  say(
    magnets.some((one, i) => magnets.slice(i + 1).some((other) => isOver(one, other))),
    'Two of its magnets lie over each other: set them apart.',
  );
  say(!(proofLoad >= 0), 'The load that the item bore in a test has to be a weight: enter it.');
  say(
    measuredFriction !== undefined && !(measuredFriction > 0),
    'The measured friction has to be above 0: enter slip force over pull.',
  );
  return [...new Set(said)];
}

/** By more than what a rounded place leaves; blocks by their shorter sides, as nobody says how they lie. */
function isOver(one: PlacedMagnet, other: PlacedMagnet): boolean {
  const apart = Math.hypot(one.x - other.x, one.y - other.y);
  return apart < (one.magnet.diameter + other.magnet.diameter) / 2 - 0.1;
}
