import type { Finding } from '../finding';
import { nameOfHung, nameOfWall, nameOfZone, sentence } from '../job/names';
import { liesOn, markingOf } from '../job/pieces';
import type { Wall } from '../job/schema';

/** Pieces that do not lie on the marking they belong to, or whose marking has gone: they are judged where they lie. */
export function pieceFindings(wall: Wall): Finding[] {
  return (wall.hung ?? []).flatMap((item): Finding[] => {
    if (!item.marking) return [];
    const name = `${sentence(nameOfHung(item))} on ${nameOfWall(wall)}`;
    const played = markingOf(wall, item);
    if (played && liesOn(item, played)) return [];
    const found = { level: 'warning', wall: wall.id, object: item.id } as const;
    if (!played) {
      const { zone, marking } = item.marking;
      return [
        {
          ...found,
          code: 'piece-without-marking',
          text: `${name} is moved about on marking ${marking} of zone ${zone}, which is gone. Choose another for it, or say that it stays; it is judged where it lies.`,
        },
      ];
    }
    const on = `marking ${played.marking.id} of ${nameOfZone(played.zone)}`;
    return [
      {
        ...found,
        code: 'piece-off-marking',
        text: `${name} lies off ${on}, on which it is moved about. Put it there, or choose another for it; it is judged where it lies.`,
      },
    ];
  });
}
