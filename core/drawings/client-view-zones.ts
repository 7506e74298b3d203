import { buildUpKind, type BuildUpKind } from '../job/build-up-kinds';
import { boxOf, polygonArea, regionArea, type Polygon, type Region, type Ring } from '../geometry/polygon';
import { offsetMitred } from '../geometry/clip';
import type { LengthUnits } from '../lengths';
import type { ZoneArea } from '../zones/zone-area';
import type { ToPaper } from './client-view-wall';
import { paperFigures } from './paper-figures';
import { hatch } from './hatch';
import type { Colour, Fill, Item, PaperPoint, TextHeight, TextMeasure } from './page';
import { grownBox, type PaperBox } from './paper';
import { labelWithin, type LabelLine } from './label-within';
import { wrapText } from './text';

/** What the client is told of a zone. */
export interface ZoneNotice {
  /** From 1, in the order of the wall. */
  readonly number: number;
  readonly zone: ZoneArea;
  readonly kind: BuildUpKind;
  /** The zone's name as the job has it, or `Zone 1`. */
  readonly title: string;
  /** `Magnetic, heavy duty`. */
  readonly use: string;
  /** `about 2,2 m²`. */
  readonly size: string;
}

/** Zones with an area, in the order of the wall. */
export function zoneNotices(zones: readonly ZoneArea[], units?: LengthUnits): ZoneNotice[] {
  return zones
    .filter(({ area }) => regionArea(area) > 0)
    .map((zone, i) => {
      const kind = buildUpKind(zone.zone.buildUp);
      const title = zone.zone.name || `Zone ${i + 1}`;
      const size = `about ${paperFigures(units).roughly(regionArea(zone.area))}`;
      return { number: i + 1, zone, kind, title, use: useOf(kind), size };
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
  const plain = (zone.zone.markings?.length ?? 0) > 0;
  return [...swatch(rings, kind, { plain }), ...magneticLine(zone.area, kind, toPaper)];
}

/** The same colour and texture on any rings; the legend uses it too. Without the texture lines that are marked are not taken for it. */
export function swatch(
  rings: readonly (readonly PaperPoint[])[],
  kind: BuildUpKind,
  { plain = false } = {},
): Item[] {
  const fill = (colour: Colour): Fill => ({ kind: 'fill', rings, colour });
  if (kind.surface === 'writable') {
    return [
      fill('water'),
      ...(plain ? [] : hatch(rings, { spacing: 3.6, angle: 0, width: 0.25, colour: 'white' })),
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
  { zone, kind, title, use, size, number }: ZoneNotice,
  toPaper: ToPaper,
  obstacles: readonly PaperBox[],
  measure: TextMeasure,
): Item[] {
  const colour: Colour = kind.surface === 'chalk' ? 'paper' : 'ink';
  const areas = paperRegion(zone.area, toPaper).sort((a, b) => polygonArea(b) - polygonArea(a));
  const area = areas[0];
  if (!area) return [];
  const { left, right } = boxOf(area.outer);
  const room = (right - left) / 100 - 5;
  // No lines at all where a word would have to be broken.
  const lines = (words: string, height: TextHeight, weight: 'regular' | 'semi-bold'): LabelLine[] => {
    const wrapped = wrapText(words, room, height, { weight }, measure);
    if (wrapped.join(' ') !== words.trim().split(/\s+/).join(' ')) return [];
    return wrapped.map((text) => ({ text, height, weight, colour }));
  };
  const inFull = (large: TextHeight, small: TextHeight): LabelLine[][] => {
    const heading = lines(title, large, 'semi-bold');
    const [first, ...rest] = lines(use, small, 'regular');
    // Words that must break more often than this read better in the legend.
    if (heading.length !== 1 || !first || rest.length > 1) return [];
    const last: LabelLine = { text: size, height: small, colour };
    return [[...heading, { ...first, gap: large * 0.3 }, ...rest, last]];
  };
  const variants: LabelLine[][] = [
    ...inFull(5, 3.5),
    ...inFull(3.5, 2.5),
    lines(title, 3.5, 'semi-bold'),
    lines(title, 2.5, 'semi-bold'),
    lines(String(number), 3.5, 'semi-bold'),
  ];
  for (const variant of variants) {
    const label = variant.length > 0 && labelWithin(variant, area, obstacles, [0], measure);
    if (label) return [...clearGround(kind, label.box), ...label.texts];
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

/** In hundredths of a paper millimetre, for `labelWithin`. */
function paperRegion(region: Region, toPaper: ToPaper): Polygon[] {
  const scaled = (ring: Ring): Ring =>
    ring.map((point) => {
      const { x, y } = toPaper(point);
      return { x: Math.round(x * 100), y: Math.round(y * 100) };
    });
  return region.map(({ outer, holes }) => ({ outer: scaled(outer), holes: holes.map(scaled) }));
}

function paperRings(region: Region, toPaper: ToPaper): PaperPoint[][] {
  return region.flatMap(({ outer, holes }) => [outer, ...holes].map((ring) => ring.map(toPaper)));
}
