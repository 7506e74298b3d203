import { intersection } from '../../geometry/clip';
import type { Region } from '../../geometry/polygon';
import { findKind } from '../../job/kind-names';
import type { Fitting, Job } from '../../job/schema';
import type { SurveyedWall } from '../../survey/surveyed-wall';
import type { Mm } from '../../units';
import type { Item } from '../page';
import { boxRegion, realBox, regionOf } from './openings';
import { inset, type Pencil, type RealBox } from './pencil';
import { castShadow } from './shadows';

const shade = '#1f2d36';
const plate = '#f8f7f3';
const edge = '#8a8f91';

/** How far a fitting usually stands out of the wall, mm. Common practice, no source. */
const depths: Readonly<Record<string, Mm>> = {
  socket: 10,
  switch: 10,
  thermostat: 24,
  light: 90,
  radiator: 100,
  pipe: 40,
  'beam-end': 60,
};

/** Sockets, switches, radiators and whatever else sits on the wall, each as it is known by from a distance. */
export function drawFittings(job: Job, { wall, outline, keepOuts }: SurveyedWall, pencil: Pencil): Item[] {
  const room = regionOf(outline.ring);
  return wall.fittings.flatMap((fitting) => {
    const keepOut = keepOuts.find(({ kind, id }) => kind === 'fitting' && id === fitting.id);
    if (!keepOut) return [];
    const area = intersection(regionOf(keepOut.bare.ring), room);
    const depth = findKind(job.fittingKinds ?? [], fitting.kind)?.depth ?? depths[fitting.kind] ?? 8;
    return [
      ...pencil.region(castShadow(area, depth, room), shade, 0.2),
      ...bodyOf(fitting, area, realBox(keepOut.bare.ring), pencil),
    ];
  });
}

function bodyOf({ kind }: Fitting, area: Region, box: RealBox, pencil: Pencil): Item[] {
  const { left, bottom, right, top } = box;
  const [wide, high] = [right - left, top - bottom];
  const [x, y] = [(left + right) / 2, (bottom + top) / 2];
  const body = (colour: `#${string}`): Item[] => [
    ...pencil.region(area, colour),
    ...pencil.rim(area, 2.5, edge),
  ];
  switch (kind) {
    case 'socket': {
      // One outlet, or two side by side where the plate is about twice as wide as high.
      const outlets = wide > 1.5 * high ? [-0.25, 0.25] : [0];
      const radius = Math.min(wide / outlets.length, high) * 0.3;
      return [
        ...body(plate),
        ...outlets.flatMap((share) => [
          pencil.disc(x + share * wide, y, radius, '#dedcd5'),
          ...[-0.4, 0.4].map((aside) =>
            pencil.disc(x + share * wide + aside * radius, y, radius * 0.16, '#4a5357'),
          ),
        ]),
      ];
    }
    case 'switch':
      return [
        ...body(plate),
        ...pencil.rim(boxRegion(inset(box, wide * 0.2, high * 0.2)), 2, edge),
        pencil.line(
          [
            [left + wide * 0.2, y],
            [right - wide * 0.2, y],
          ],
          2,
          edge,
        ),
      ];
    case 'thermostat':
      return [...body(plate), pencil.disc(x, y, Math.min(wide, high) * 0.32, '#dedcd5')];
    case 'light':
      return [...body('#fdf4d6'), pencil.disc(x, y, Math.min(wide, high) * 0.28, '#fffdf2')];
    case 'radiator': {
      const fins = Math.max(2, Math.round(wide / 60));
      return [
        ...body('#f5f4ef'),
        pencil.lines(
          Array.from({ length: fins - 1 }, (_, i): [Mm, Mm][] => {
            const at = left + ((i + 1) * wide) / fins;
            return [
              [at, bottom + high * 0.05],
              [at, top - high * 0.05],
            ];
          }),
          6,
          '#c9c7bf',
        ),
      ];
    }
    case 'pipe':
      return body('#c8ccce');
    case 'beam-end':
      return body('#c9b48f');
    default:
      return body('#ebe8e0');
  }
}
