import { regionOf } from './openings';
import { drawMarking } from '../../markings/draw-marking';
import { inkOf } from '../../markings/ink';
import { boxOf, type Box } from '../../geometry/polygon';
import type { Job } from '../../job/schema';
import type { WorkedWall } from '../../worked-out';
import { lookOfMarking, type OnPaper } from '../marking-items';
import type { Item, Stroke } from '../page';
import { noPictures, type Pictures } from '../pictures';
import { drawFace } from './face';
import { finishOfWall, finishOfZone } from './finish';
import { drawFittings } from './fittings';
import { boxOfItem, drawHung } from './hung';
import { depthsBehind, drawLayers, layersBehind, type DepthBehind } from './layers';
import { drawOpenings } from './openings';
import { pencilFor } from './pencil';
import { drawSkirting } from './skirting';

/**
 * A wall as it will look, and what is behind its finish: composed once, and shown on paper, on the screen, in a page to
 * send and on a photo alike.
 */
export interface WallLook {
  /** Wall and zones in their colours, with what is marked on them. */
  readonly faces: readonly Item[];
  /** The same with layers taken away, from the face inwards; only what differs from the one before. */
  readonly behind: readonly { readonly depth: DepthBehind; readonly items: readonly Item[] }[];
  /** Openings, fittings, skirting: over the faces, whatever is taken away. */
  readonly standing: readonly Item[];
  /** Over all of that, as long as the face is there. */
  readonly hung: readonly Item[];
  readonly rim: Stroke;
  /** What stands on the wall or is marked on it, hundredths: words keep off it. */
  readonly taken: readonly Box[];
}

/** The wall when all is done. */
export function finishedWall({ faces, standing, hung, rim }: WallLook): Item[] {
  return [...faces, ...standing, ...hung, rim];
}

export interface LookOptions {
  readonly pictures?: Pictures;
  /** Put over the finished faces and under everything that stands on them, such as what the wall holds where. */
  readonly overFaces?: (onPaper: OnPaper) => readonly Item[];
}

export function wallLook(
  { survey, zones }: WorkedWall,
  job: Job,
  onPaper: OnPaper,
  { pictures = noPictures, overFaces }: LookOptions = {},
): WallLook {
  const { wall, outline, keepOuts } = survey;
  const pencil = pencilFor(onPaper);
  const ring = regionOf(outline.ring);
  const marked = zones.flatMap(({ area: { zone, box } }) =>
    (zone.markings ?? []).map((marking) => ({
      ink: inkOf(marking, zone),
      drawn: drawMarking(marking, { x: box.left, y: box.bottom }),
    })),
  );
  const rim: Stroke = {
    kind: 'stroke',
    points: outline.ring.map(onPaper.toPaper),
    closed: true,
    width: 0.5,
    colour: 'ink',
  };
  const steps = depthsBehind.map((depth) => ({
    depth,
    layers: zones.map(({ buildUp }) => layersBehind(buildUp.resolved, depth)),
  }));
  // A step that takes nothing away would be the same picture again.
  const differing = steps.filter(({ layers }, i) => {
    const before = i === 0 ? zones.map(({ buildUp }) => buildUp.resolved.layers) : steps[i - 1]!.layers;
    return layers.some((left, z) => left.at(-1) !== before[z]!.at(-1));
  });
  return {
    faces: [
      ...drawFace(ring, finishOfWall(wall), pencil),
      ...zones.flatMap(({ area, buildUp }) =>
        drawFace(area.area, finishOfZone(area.zone, buildUp.resolved, wall), pencil),
      ),
      ...marked.flatMap(({ ink, drawn }) => lookOfMarking(drawn, ink, onPaper, pictures)),
      ...(overFaces?.(onPaper) ?? []),
    ],
    behind: differing.map(({ depth, layers }) => ({
      depth,
      items: [
        ...drawFace(ring, finishOfWall(wall), pencil),
        ...zones.flatMap((zone, i) => [
          // The wall under a zone is bare before its first layer.
          ...pencil.region(zone.area.area, '#ddd5c5'),
          ...drawLayers(zone, layers[i]!, pencil),
          ...pencil.rim(zone.area.area, 3, '#5d6870', 0.6),
        ]),
      ],
    })),
    standing: [
      ...drawSkirting(survey, pencil),
      ...drawOpenings(survey, pencil),
      ...drawFittings(job, survey, pencil),
    ],
    hung: drawHung(job, survey, pencil),
    rim,
    taken: [
      ...keepOuts.map(({ bare }) => boxOf(bare.ring)),
      ...marked.map(({ drawn }) => drawn.box),
      ...(wall.hung ?? []).map((item) => {
        const { left, right, bottom, top } = boxOfItem(item);
        return { left: left * 100, right: right * 100, bottom: bottom * 100, top: top * 100 };
      }),
    ],
  };
}
