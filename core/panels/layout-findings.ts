import type { Finding } from '../finding';
import { polygonArea } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import { toHundredth, toMm, toSquareMm } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { Panel } from './panel';
import type { NarrowPlace } from './narrow-place';
import { weakWebs } from './weak-web';

interface LaidOut {
  readonly wallId: string;
  readonly area: ZoneArea;
  readonly stock: StockSheet;
  readonly panels: readonly Panel[];
  /** Where each sliver is too narrow, by mark. */
  readonly narrow: ReadonlyMap<string, NarrowPlace>;
  /** The search for the best start gave up before it had compared every start. */
  readonly capped: boolean;
}

/** What a layout shows: slivers, panels under the least area, weak webs, and what was asked for but not done. */
export function layoutFindings(laidOut: LaidOut): Finding[] {
  const layout = laidOut.area.zone.layout!;
  return [
    ...emptyZone(laidOut),
    ...formatsNotLaid(laidOut, layout),
    ...searchCapped(laidOut),
    ...slivers(laidOut, layout),
    ...smallPanels(laidOut, layout),
    ...weakPlaces(laidOut),
  ];
}

function emptyZone({ wallId, area: { zone }, panels }: LaidOut): Finding[] {
  if (panels.length > 0) return [];
  return [
    {
      level: 'warning',
      code: 'zone-without-panels',
      wall: wallId,
      object: zone.id,
      text: `Zone ${zone.id} has no room for a panel: move it clear of openings and other zones, or make it larger.`,
    },
  ];
}

function formatsNotLaid({ wallId, area: { zone }, stock }: LaidOut, layout: Layout): Finding[] {
  const others = (layout.stocks ?? []).filter((id) => id !== stock.id);
  if (others.length === 0) return [];
  return [
    {
      level: 'warning',
      code: 'mixed-formats-not-laid',
      wall: wallId,
      object: zone.id,
      text:
        `Zone ${zone.id} asks for mixed formats and is laid from ${stock.id} alone, without ${others.join(', ')}: ` +
        `choose one format, or divide the zone.`,
    },
  ];
}

function searchCapped({ wallId, area: { zone }, capped }: LaidOut): Finding[] {
  if (!capped) return [];
  return [
    {
      level: 'note',
      code: 'best-start-not-exhaustive',
      wall: wallId,
      object: zone.id,
      text:
        `Zone ${zone.id} has more possible starts than are compared: its start is the best of those compared; ` +
        `divide the zone or pick a start by hand to look further.`,
    },
  ];
}

function slivers({ wallId, panels, narrow }: LaidOut, { leastWidth, start }: Layout): Finding[] {
  return panels.flatMap(({ mark }): Finding[] => {
    const place = narrow.get(mark);
    if (!place) return [];
    const lacking = toMm(Math.max(1, toHundredth(leastWidth) - place.width));
    const mend =
      start === 'best'
        ? `no start avoids it, so move the zone's edge or an opening by ${lacking} mm, or allow a smaller least width`
        : `move the start by ${lacking} mm, or let the best start be found`;
    return [
      {
        level: 'warning',
        code: 'sliver',
        wall: wallId,
        object: mark,
        text:
          `Panel ${mark} is ${toMm(place.width)} mm wide at (${toMm(place.at.x)}, ${toMm(place.at.y)}), ` +
          `under the least width of ${leastWidth} mm: ${mend}.`,
      },
    ];
  });
}

function smallPanels({ wallId, panels }: LaidOut, { leastArea }: Layout): Finding[] {
  if (leastArea === undefined) return [];
  return panels.flatMap(({ mark, outline }): Finding[] => {
    const area = toSquareMm(polygonArea(outline));
    if (area >= leastArea) return [];
    return [
      {
        level: 'warning',
        code: 'panel-under-least-area',
        wall: wallId,
        object: mark,
        text:
          `Panel ${mark} has ${Math.round(area)} mm², under the least area of ${leastArea} mm²: ` +
          `move the start or the zone's edge, or allow a smaller least area.`,
      },
    ];
  });
}

function weakPlaces({ wallId, panels, narrow }: LaidOut): Finding[] {
  // A sliver's narrow place has its own finding.
  return panels
    .filter(({ mark }) => !narrow.has(mark))
    .flatMap(({ mark, outline }) =>
      weakWebs(outline).map(({ width }): Finding => ({
        level: 'note',
        code: 'weak-web',
        wall: wallId,
        object: mark,
        text:
          `Panel ${mark} keeps only ${toMm(width)} mm of steel beside a hole and bends there when carried: ` +
          `move the start so that a joint passes through the hole, or carry it on a board.`,
      })),
    );
}
