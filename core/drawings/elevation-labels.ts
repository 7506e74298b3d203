import type { Outline } from '../geometry/outline';
import { boxOf } from '../geometry/polygon';
import { buildUpKind } from '../job/build-up-kinds';
import { kindInWords } from '../job/names';
import { fittingKinds, type Fitting, type Opening, type Zone } from '../job/schema';
import type { KeepOut } from '../survey/surveyed-wall';
import type { Hundredth, Mm } from '../units';
import type { WorkedZone } from '../worked-out';
import { placeFirst, placeWithLeader, type LabelRoom } from './label-room';
import type { Item, PaperPoint, Text } from './page';
import { boxHeight, boxWidth, type PaperBox } from './paper';
import type { WriteLength } from './paper-figures';
import { circleOf } from './setting-out-stops';
import { boundsOf, boxWithin, isUpright } from './ring-places';
import { paperBox, paperRing, type View } from './setting-out-view';

/*
 * Names on the elevation. Each tries the places where one would look for it, then stands aside with a leader.
 */

type Base = Omit<Text, 'at' | 'anchor' | 'turned'>;

const off = 1.2;

/** "D1 door" inside the opening, or near it. */
export function labelOpening(opening: Opening, { bare }: KeepOut, view: View, room: LabelRoom): Item[] {
  const box = visible(paperBox(view, boxOf(bare.ring)), room);
  const word = opening.kind === 'free' ? 'opening' : opening.kind;
  const text = [`${opening.id} ${opening.name || word}`, ...arcWords(bare, view.write)].join(', ');
  const base: Base = { kind: 'text', text, height: 2.5, weight: 'semi-bold' };
  const x = (box.left + box.right) / 2;
  const inside = [0.3, 0.42, 0.6, 0.75, 0.15].map((share): Text => ({
    ...base,
    anchor: 'middle',
    at: { x, y: box.bottom + boxHeight(box) * share },
  }));
  const upright = [0.5, 0.25, 0.75].map((share): Text => ({
    ...base,
    anchor: 'middle',
    turned: 90,
    at: { x: box.left + boxWidth(box) * share + base.height / 2, y: (box.bottom + box.top) / 2 },
  }));
  return placed(room, base, [...inside, ...upright, ...around(base, box)], box);
}

/** "K1", and a diameter for what is round; what no symbol tells by is named: "F1 Pin rail". */
export function labelFitting(fitting: Fitting, { bare }: KeepOut, view: View, room: LabelRoom): Item[] {
  const ring = paperRing(view, bare.ring);
  const box = visible(boundsOf(ring), room);
  const base: Base = {
    kind: 'text',
    text: [fitting.id, ...kindWords(fitting), ...arcWords(bare, view.write)].join(' '),
    height: 2.5,
    face: 'condensed',
    weight: 'semi-bold',
  };
  if (isUpright(ring) || circleOf(bare)) return placed(room, base, around(base, box), box);
  // A slanted thing fills little of its box: its name stands beside its own edge.
  const spots = spotsAlong(ring);
  return placed(
    room,
    base,
    spots.flatMap((spot) => around(base, spot)),
    spots[0]!,
  );
}

function kindWords({ kind, name }: Fitting): string[] {
  return (fittingKinds as readonly string[]).includes(kind) ? [] : [name || kindInWords(kind, 'fitting')];
}

/** "Z1 Proofs: steel panels" above the zone's upper left corner, or along another of its edges. */
export function labelZone(
  { area, layout }: WorkedZone,
  outline: Outline,
  view: View,
  room: LabelRoom,
  brief: boolean,
): Item[] {
  const box = visible(paperBox(view, area.box), room);
  const colour = layout ? 'red-lead' : 'ink';
  const style = { kind: 'text', weight: 'semi-bold', colour } as const;
  const [short, long] = zoneWords(area.zone);
  // The build-up goes first where there is no room: the table of zones has it too.
  const bases: Base[] = brief
    ? [{ ...style, text: area.zone.id, height: 2.5 }]
    : [
        { ...style, text: long, height: 3.5 },
        { ...style, text: long, height: 2.5, face: 'condensed' },
        { ...style, text: short, height: 3.5 },
        { ...style, text: short, height: 2.5, face: 'condensed' },
      ];
  const most = Math.max(boxWidth(box), 60);
  const wanted = bases.filter((base) => room.measure(base.text, base.height, base) <= most);
  const wallRing = paperRing(view, outline.ring);
  const onWall = (candidate: PaperBox) => boxWithin(candidate, [wallRing]);
  const ring = paperRing(view, area.shape.ring);
  const beside = (base: Base) =>
    isUpright(ring) ? besideZone(base, box) : spotsAlong(ring).flatMap((spot) => around(base, spot));
  const text =
    placeFirst(room, wanted.flatMap(beside), onWall) ??
    placeFirst(
      room,
      wanted.flatMap((base) => insideZone(base, box)),
      onWall,
    );
  if (text) return [text];
  return placed(room, bases.at(-1)!, wanted.flatMap(beside), box);
}

/** The zone's name without and with its build-up. */
function zoneWords({ id, name, buildUp }: Zone): [string, string] {
  const short = [id, name].filter(Boolean).join(' ');
  const { label } = buildUpKind(buildUp);
  return [short, `${short}: ${label.charAt(0).toLowerCase()}${label.slice(1)}`];
}

function besideZone(base: Base, box: PaperBox): Text[] {
  const above = box.top + off + 0.2;
  const below = box.bottom - off - 0.6 - base.height;
  return [above, above + 5, below, below - 5].flatMap((y) => inRow(base, box.left, box.right, y));
}

function insideZone(base: Base, box: PaperBox): Text[] {
  const inset = off + 0.6;
  const from = box.top - inset - base.height;
  const rows = Math.max(1, Math.floor((from - box.bottom - inset) / 3));
  return Array.from({ length: rows }, (_, row) => from - row * 3).flatMap((y) =>
    inRow(base, box.left + inset, box.right - inset, y),
  );
}

function inRow(base: Base, left: Mm, right: Mm, y: Mm): Text[] {
  return [
    { ...base, anchor: 'start', at: { x: left, y } },
    { ...base, anchor: 'end', at: { x: right, y } },
    { ...base, anchor: 'middle', at: { x: (left + right) / 2, y } },
  ];
}

/** "R 450, rise 300" beside the crown of each arc of the wall's own outline. */
export function labelWallArcs(outline: Outline, view: View, room: LabelRoom): Item[] {
  return outline.arcs.flatMap((arc, i) => {
    const middle = outline.ring[(arc.firstEdge + Math.floor(arc.edges / 2)) % outline.ring.length]!;
    const spot = visible(paperBox(view, boxOf([middle])), room);
    const base: Base = {
      kind: 'text',
      text: arcWords(outline, view.write)[i] ?? '',
      height: 2.5,
      face: 'condensed',
    };
    return placed(room, base, around(base, spot), spot);
  });
}

/** Radius and rise of each arc, or the diameter of a circle, in whole tenths of a millimetre. */
export function arcWords(outline: Outline, write: WriteLength): string[] {
  const circle = circleOf(outline);
  if (circle) return [`Ø ${write(2 * circle.radius)}`];
  return outline.arcs.map(({ firstEdge, edges, radius }) => {
    const from = outline.ring[firstEdge]!;
    const to = outline.ring[(firstEdge + edges) % outline.ring.length]!;
    const middle = outline.ring[(firstEdge + Math.floor(edges / 2)) % outline.ring.length]!;
    return `R ${write(radius)} rise ${write(riseOf(from, middle, to, radius))}`;
  });
}

/** Height of an arc over its chord; past the half circle where `middle` is farther from the chord than R. */
function riseOf(
  from: { x: Hundredth; y: Hundredth },
  middle: { x: Hundredth; y: Hundredth },
  to: { x: Hundredth; y: Hundredth },
  radius: number,
): number {
  const half = Math.hypot(to.x - from.x, to.y - from.y) / 2;
  const toCentre = Math.sqrt(Math.max(0, radius * radius - half * half));
  const chordMiddle = { x: (from.x + to.x) / 2, y: (from.y + to.y) / 2 };
  const beyond = Math.hypot(middle.x - chordMiddle.x, middle.y - chordMiddle.y) > radius;
  return beyond ? radius + toCentre : radius - toCentre;
}

function placed(room: LabelRoom, base: Base, candidates: readonly Text[], box: PaperBox): Item[] {
  const text = placeFirst(room, candidates);
  if (text) return [text];
  const target = { x: (box.left + box.right) / 2, y: (box.bottom + box.top) / 2 };
  const aside = placeWithLeader(room, { ...base, at: target }, target);
  return aside ? [...aside.leader, aside.text] : [];
}

/** The corners of a ring and the middles of its edges, as boxes without size. */
function spotsAlong(ring: readonly PaperPoint[]): PaperBox[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length]!;
    return [boundsOf([{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }]), boundsOf([a])];
  });
}

function around(base: Base, { left, bottom, right, top }: PaperBox): Text[] {
  const x = (left + right) / 2;
  const y = (bottom + top) / 2 - base.height / 2;
  const rows = [off, off + 3.2];
  return rows.flatMap((gap): Text[] => [
    { ...base, anchor: 'middle', at: { x, y: top + gap } },
    { ...base, anchor: 'middle', at: { x, y: bottom - gap - base.height } },
    { ...base, anchor: 'start', at: { x: right + gap, y } },
    { ...base, anchor: 'end', at: { x: left - gap, y } },
    { ...base, anchor: 'start', at: { x: right + off, y: top + gap } },
    { ...base, anchor: 'end', at: { x: left - off, y: top + gap } },
    { ...base, anchor: 'start', at: { x: right + off, y: bottom - gap - base.height } },
    { ...base, anchor: 'end', at: { x: left - off, y: bottom - gap - base.height } },
  ]);
}

/** The part of a box that is on the page, so that a label of a cut-off object stands in its visible part. */
function visible(box: PaperBox, { bounds }: LabelRoom): PaperBox {
  const left = Math.min(Math.max(box.left, bounds.left), bounds.right);
  const bottom = Math.min(Math.max(box.bottom, bounds.bottom), bounds.top);
  return {
    left,
    bottom,
    right: Math.max(left, Math.min(box.right, bounds.right)),
    top: Math.max(bottom, Math.min(box.top, bounds.top)),
  };
}
