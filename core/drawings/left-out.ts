import { boxOf } from '../geometry/polygon';
import type { WorkedZone } from '../worked-out';
import type { LabelRoom } from './label-room';
import type { Item, Stroke } from './page';
import { labelPlace } from './panel-marks';
import { paperBox, paperRing, type View } from './setting-out-view';

/** What stands where by hand no panel is fixed, on the drawing as on the sheet. */
export const noPanel = 'no panel';

/** A place without a panel: dashed, with a stroke from corner to corner, so that nobody takes it for one. */
export function leftOutLines({ layout }: WorkedZone, view: View): Stroke[] {
  return (layout?.leftOut ?? []).flatMap(({ outline }) => {
    const { left, right, bottom, top } = paperBox(view, boxOf(outline.outer));
    const dashed = { kind: 'stroke', width: 0.18, line: 'dashed', colour: 'red-lead' } as const;
    const rim = [outline.outer, ...outline.holes].map((ring): Stroke => ({
      ...dashed,
      points: paperRing(view, ring),
      closed: true,
    }));
    const isNotched = outline.outer.length > 4 || outline.holes.length > 0;
    const across = {
      ...dashed,
      points: [
        { x: left, y: bottom },
        { x: right, y: top },
      ],
    };
    return isNotched ? rim : [...rim, across];
  });
}

export function labelLeftOut({ layout }: WorkedZone, view: View, room: LabelRoom): Item[] {
  return (layout?.leftOut ?? []).flatMap(({ outline }) =>
    labelPlace(
      outline,
      { kind: 'text', text: noPanel, height: 2.5, face: 'condensed', colour: 'ink' },
      view,
      room,
    ),
  );
}
