import type { StartingBatten } from '../panels/fixing-order';
import type { WorkedZone } from '../worked-out';
import { placeFirst, type LabelRoom } from './label-room';
import type { Stroke, Text } from './page';
import { grownBox } from './paper';
import { paperPoint, paperX, paperY, shows, type View } from './setting-out-view';
import { textBox } from './text';

/** A batten's line reaches past the panels that stand on it, and lies just below them; mm on paper. */
const reach = 2;
const below = 0.7;

/** Starting battens as bold lines under the panels that stand on them. */
export function battenLines({ layout }: WorkedZone, view: View): Stroke[] {
  return shown(layout?.fixing.battens ?? [], view).map(({ from, to }) => {
    const [a, b] = [paperPoint(view, from), paperPoint(view, to)];
    return {
      kind: 'stroke',
      width: 0.7,
      points: [
        { x: a.x - reach, y: a.y - below },
        { x: b.x + reach, y: b.y - below },
      ],
    };
  });
}

/** What the battens are and how high their upper edge lies, where there is room beside them. */
export function labelBattens({ layout }: WorkedZone, view: View, room: LabelRoom): Text[] {
  const level = shown(layout?.fixing.battens ?? [], view).filter(({ from, to }) => from.y === to.y);
  return level.flatMap(({ from, to }) => {
    const [left, right] = [paperX(view, from.x), paperX(view, to.x)];
    const y = paperY(view, from.y);
    const base = { kind: 'text', height: 2.5, face: 'condensed' } as const;
    const words = [`starting batten, top at ${view.write(from.y)}`, `batten ${view.write(from.y)}`];
    const candidates = words.flatMap((text): Text[] => {
      const own = { ...base, text };
      const width = room.measure(text, own.height, own);
      const starts = [
        right - width,
        left,
        (left + right - width) / 2,
        right + reach + 1.5,
        left - reach - 1.5 - width,
      ];
      return starts.flatMap((x) =>
        [y - below - 1 - own.height, y - below - 4.5 - own.height].map((baseline) => ({
          ...own,
          at: { x, y: baseline },
        })),
      );
    });
    const within = candidates.filter((text) => {
      const box = grownBox(textBox(text, room.measure), 0.5);
      const { bounds } = room;
      return (
        box.left >= bounds.left &&
        box.right <= bounds.right &&
        box.bottom >= bounds.bottom &&
        box.top <= bounds.top
      );
    });
    const text = placeFirst(room, within);
    return text ? [text] : [];
  });
}

function shown(battens: readonly StartingBatten[], view: View): StartingBatten[] {
  return battens.filter(({ from, to }) => shows(view, [from, to]));
}
