import type { Finding } from '../finding';
import { polygonArea } from '../geometry/polygon';
import type { Layout, StockSheet } from '../job/schema';
import { toHundredth, toMm, toSquareMm } from '../units';
import type { ZoneArea } from '../zones/zone-area';
import type { Panel } from './panel';
import { redividedFindings } from './redivided-findings';
import type { JointChange } from './redivide';
import type { NarrowPlace } from './narrow-place';
import { weakWebs } from './weak-web';

interface LaidOut {
  readonly wallId: string;
  readonly area: ZoneArea;
  readonly stock: StockSheet;
  readonly panels: readonly Panel[];
  /** Some would be there, and were left out by hand. */
  readonly isLeftOut: boolean;
  /** Where each sliver is too narrow, by mark. */
  readonly narrow: ReadonlyMap<string, NarrowPlace>;
  /** The search for the best start gave up before it had compared every start. */
  readonly capped: boolean;
  /** Joints taken out or moved because of slivers. */
  readonly changes?: readonly JointChange[];
  /** Formats could be mixed; what that saves against the layout's own stock alone, in words, if anything. */
  readonly mixed?: { readonly saved: string | null };
}

/** What a layout shows: slivers, panels under the least area, weak webs, and what was asked for but not done. */
export function layoutFindings(laidOut: LaidOut): Finding[] {
  const layout = laidOut.area.zone.layout!;
  return [
    ...emptyZone(laidOut),
    ...formatsLaid(laidOut, layout),
    ...searchCapped(laidOut),
    ...redividedFindings(laidOut.wallId, laidOut.area.zone.id, laidOut.panels, laidOut.changes ?? []),
    ...slivers(laidOut, layout),
    ...smallPanels(laidOut, layout),
    ...weakPlaces(laidOut),
  ];
}

function emptyZone({ wallId, area: { zone }, panels, isLeftOut }: LaidOut): Finding[] {
  if (panels.length > 0 || isLeftOut) return [];
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

/** Which of the formats that a layout lists are laid, and what mixing them saves. */
function formatsLaid({ wallId, area: { zone }, stock, panels, mixed }: LaidOut, layout: Layout): Finding[] {
  if (panels.length === 0 || !(layout.stocks ?? []).some((id) => id !== stock.id)) return [];
  const counts = new Map<string, number>();
  for (const panel of panels) counts.set(panel.stock, (counts.get(panel.stock) ?? 0) + 1);
  const laid = [...counts].sort(([a], [b]) => Number(b === stock.id) - Number(a === stock.id));
  const list = laid
    .map(([id, count]) => `${count} ${count === 1 ? 'panel' : 'panels'} of ${id}`)
    .join(' and ');
  const unused = (layout.stocks ?? []).filter((id) => id !== stock.id && !counts.has(id));
  const why = !mixed
    ? `${unused.join(', ')} cannot be mixed with ${stock.id}, so choose stock of the same thickness, coating and face`
    : mixed.saved
      ? `that saves ${mixed.saved} against ${stock.id} alone`
      : `no mix of the listed formats costs less than ${stock.id} alone`;
  return [
    {
      level: mixed ? 'note' : 'warning',
      code: mixed ? 'formats-mixed' : 'mixed-formats-not-laid',
      wall: wallId,
      object: zone.id,
      text: `Zone ${zone.id} is laid with ${list}: ${why}.`,
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
