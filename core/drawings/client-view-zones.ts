import { buildUpKind, type BuildUpKind } from '../job/build-up-kinds';
import { boxOfRegion, regionArea, type Region } from '../geometry/polygon';
import { offsetMitred } from '../geometry/clip';
import type { ZoneArea } from '../zones/zone-area';
import type { ToPaper } from './client-view-wall';
import { formatMm } from './figures';
import { hatch } from './hatch';
import type { Colour, Fill, Item, PaperPoint, Text, TextMeasure } from './page';
import { boxesOverlap, grownBox, type PaperBox } from './paper';
import { textBox } from './text';

/** What the client is told of a zone. */
export interface ZoneNotice {
  /** From 1, in the order of the wall. */
  readonly number: number;
  readonly zone: ZoneArea;
  readonly kind: BuildUpKind;
  /** The zone's name as the job has it, or what it is for. */
  readonly title: string;
  /** `Magnetic, heavy duty, about 2,2 m²`. */
  readonly what: string;
}

/** Zones with an area, in the order of the wall. */
export function zoneNotices(zones: readonly ZoneArea[]): ZoneNotice[] {
  return zones
    .filter(({ area }) => regionArea(area) > 0)
    .map((zone, i) => {
      const kind = buildUpKind(zone.zone.buildUp);
      const use = useOf(kind);
      const area = `about ${formatMm(Math.max(0.1, regionArea(zone.area) / 1e10))} m²`;
      return { number: i + 1, zone, kind, title: zone.zone.name || use, what: `${use}, ${area}` };
    });
}

function useOf({ magnetic, surface, label }: BuildUpKind): string {
  const duty = { steel: 'Magnetic, heavy duty', coating: 'Magnetic, light to medium duty', none: '' }[
    magnetic
  ];
  const top = { plain: '', writable: 'writable', chalk: 'for chalk' }[surface];
  const use = [duty, top].filter(Boolean).join(', ') || label;
  return use.charAt(0).toUpperCase() + use.slice(1);
}

/** A zone's colour and texture on paper; magnetic zones that are written on keep a red-lead line inside. */
export function fillZone({ kind, zone }: Pick<ZoneNotice, 'kind' | 'zone'>, toPaper: ToPaper): Item[] {
  const rings = paperRings(zone.area, toPaper);
  return [...swatch(rings, kind), ...magneticLine(zone.area, kind, toPaper)];
}

/** The same colour and texture on any rings; the legend uses it too. */
export function swatch(rings: readonly (readonly PaperPoint[])[], kind: BuildUpKind): Item[] {
  const fill = (colour: Colour): Fill => ({ kind: 'fill', rings, colour });
  if (kind.surface === 'writable') {
    return [
      fill('water'),
      ...hatch(rings, { spacing: 3.6, angle: 0, width: 0.25, colour: 'white' }),
      ...edges(rings, 'soft'),
    ];
  }
  if (kind.surface === 'chalk') return [fill('slate')];
  if (kind.magnetic === 'steel') return [fill('wash')];
  if (kind.magnetic === 'coating') {
    return [
      ...hatch(rings, { spacing: 1.4, angle: 45, width: 0.7, colour: 'wash' }),
      ...edges(rings, 'wash'),
    ];
  }
  return [fill('white'), ...edges(rings, 'hairline')];
}

export function isMagneticUnderSurface({ magnetic, surface }: BuildUpKind): boolean {
  return magnetic !== 'none' && surface !== 'plain';
}

/**
 * Title and use of a zone, in the zone where they fit clear of what stands on it; else its number; else nothing,
 * and the legend speaks alone.
 */
export function labelZone(
  notice: ZoneNotice,
  toPaper: ToPaper,
  obstacles: readonly PaperBox[],
  measure: TextMeasure,
): Item[] {
  const box = boxOfRegion(notice.zone.area);
  const low = toPaper({ x: box.left, y: box.bottom });
  const high = toPaper({ x: box.right, y: box.top });
  const colour: Colour = notice.kind.surface === 'chalk' ? 'paper' : 'ink';
  const isFree = (label: PaperBox) =>
    label.left >= low.x + 2 &&
    label.right <= high.x - 2 &&
    label.bottom >= low.y + 2 &&
    label.top <= high.y - 2 &&
    obstacles.every((obstacle) => !boxesOverlap(label, grownBox(obstacle, 0.8)));
  const variants: Text[][] = [
    [
      text(notice.title, 5, 0, 'semi-bold'),
      text(notice.what.split(', about')[0]!, 3.5, -6.4),
      text(`about${notice.what.split(', about')[1]!}`, 3.5, -12.2),
    ],
    [
      text(notice.title, 3.5, 0, 'semi-bold'),
      text(notice.what.split(', about')[0]!, 2.5, -4.8),
      text(`about${notice.what.split(', about')[1]!}`, 2.5, -9),
    ],
    [text(notice.title, 3.5, 0, 'semi-bold')],
    [text(notice.title, 2.5, 0, 'semi-bold')],
    [text(String(notice.number), 3.5, 0, 'semi-bold')],
  ];
  for (const lines of variants) {
    for (const share of [0.62, 0.5, 0.75, 0.85, 0.3, 0.15]) {
      for (const across of [0.5, 0.3, 0.7]) {
        const at = { x: low.x + across * (high.x - low.x), y: low.y + share * (high.y - low.y) };
        const placed = lines.map((line) => ({
          ...line,
          colour,
          at: { x: at.x, y: at.y + line.at.y - lines.at(-1)!.at.y / 2 - 1.5 },
        }));
        const label = around(placed.map((line) => textBox(line, measure)));
        if (isFree(label)) return [...clearGround(notice.kind, label), ...placed];
      }
    }
  }
  return [];
}

/** The rules of a writable zone stop for the words on it. */
function clearGround({ surface }: BuildUpKind, label: PaperBox): Item[] {
  if (surface !== 'writable') return [];
  const { left, bottom, right, top } = grownBox(label, 1.2);
  const ring = [
    { x: left, y: bottom },
    { x: right, y: bottom },
    { x: right, y: top },
    { x: left, y: top },
  ];
  return [{ kind: 'fill', rings: [ring], colour: 'water' }];
}

function magneticLine(area: Region, kind: BuildUpKind, toPaper: ToPaper): Item[] {
  if (!isMagneticUnderSurface(kind)) return [];
  const perMm = toPaper({ x: 100, y: 0 }).x - toPaper({ x: 0, y: 0 }).x;
  const inside = offsetMitred(area, -Math.round((0.9 / perMm) * 100));
  return edges(paperRings(inside, toPaper), 'red-lead', 0.7);
}

function edges(rings: readonly (readonly PaperPoint[])[], colour: Colour, width: 0.18 | 0.7 = 0.18): Item[] {
  return rings.map((points) => ({ kind: 'stroke', points, closed: true, width, colour }));
}

function text(words: string, height: Text['height'], y: number, weight: Text['weight'] = 'regular'): Text {
  return { kind: 'text', text: words, at: { x: 0, y }, height, weight, anchor: 'middle' };
}

function around(boxes: readonly PaperBox[]): PaperBox {
  return {
    left: Math.min(...boxes.map(({ left }) => left)),
    bottom: Math.min(...boxes.map(({ bottom }) => bottom)),
    right: Math.max(...boxes.map(({ right }) => right)),
    top: Math.max(...boxes.map(({ top }) => top)),
  };
}

function paperRings(region: Region, toPaper: ToPaper): PaperPoint[][] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes].map((ring) => ring.map(toPaper)));
}
