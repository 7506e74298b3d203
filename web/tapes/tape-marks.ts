import { boxOfOutline, flattenVertices } from '../../core/geometry/arc';
import type { Outline } from '../../core/geometry/outline';
import { boxOf } from '../../core/geometry/polygon';
import type { HungItem } from '../../core/job/hung-schema';
import type { Fitting, Opening, Vertex, Wall } from '../../core/job/schema';
import type { MmPoint } from '../../core/job/shape';
import type { Panel } from '../../core/panels/panel';
import { outlineOf } from '../../core/survey/keep-out';
import { toHundredth, type Hundredth } from '../../core/units';
import type { WorkedZone } from '../../core/worked-out';
import { runningMarks, type Marked, type RunningMarks } from '../../core/zones/running-marks';

/** A line that panels of a zone begin on, which is no edge of anything else. */
export interface JointMarked {
  readonly kind: 'joint';
  /** Of the zone. */
  readonly id: string;
  readonly edge: 'joint';
  /** Where the zone's panels start now, mm. */
  readonly start: MmPoint;
}

/** An edge of a hung item: on the tapes only while the item is chosen, as there are many of them. */
export interface HungMarked {
  readonly kind: 'hung';
  readonly id: string;
  readonly edge: 'left' | 'right' | 'bottom' | 'top';
}

export type TapeMarked = Marked | JointMarked | HungMarked;

/** A figure on a tape: everything that stands at this distance from the datum. */
export interface TapeMark {
  readonly at: Hundredth;
  readonly of: readonly TapeMarked[];
}

export interface TapeMarks {
  readonly along: readonly TapeMark[];
  readonly up: readonly TapeMark[];
}

/** The running dimensions of a wall as it is drawn, without working out what panels can use of it: quick enough for a drag. */
export function marksOfWall(wall: Wall): RunningMarks {
  const keepOuts = [
    ...wall.openings.map((opening) => ({ kind: 'opening' as const, id: opening.id, bare: drawn(opening) })),
    ...wall.fittings.map((fitting) => ({ kind: 'fitting' as const, id: fitting.id, bare: drawn(fitting) })),
  ];
  const zones = wall.zones.map((zone) => ({ zone, box: boxOfOutline(drawnShape(zone.shape)) }));
  return runningMarks({ wall, outline: drawnShape(wall.outline), keepOuts }, zones);
}

/** The figures of what `wall` has and `rest` has not: of what is under the hand. */
export function marksOfHeld(wall: Wall, rest: Wall): TapeMarks {
  const lifted = <T>(all: readonly T[], resting: readonly T[]) =>
    all.filter((object) => !resting.includes(object));
  const held = {
    ...wall,
    openings: lifted(wall.openings, rest.openings),
    fittings: lifted(wall.fittings, rest.fittings),
    zones: lifted(wall.zones, rest.zones),
  };
  const { along, up } = marksOfWall(held);
  const ofHeld = (marks: RunningMarks['along']) =>
    marks.flatMap(({ at, of }) => {
      const own = of.filter(({ kind }) => kind === 'opening' || kind === 'fitting' || kind === 'zone');
      return own.length > 0 ? [{ at, of: own }] : [];
    });
  return withHung({ along: ofHeld(along), up: ofHeld(up) }, lifted(wall.hung ?? [], rest.hung ?? []));
}

/** The marks with the edges of these items; what stands at one place is one mark. */
export function withHung({ along, up }: TapeMarks, items: readonly HungItem[]): TapeMarks {
  if (items.length === 0) return { along, up };
  return {
    along: merged(
      along,
      items.flatMap(({ id, x, width }) => [
        { at: x, id, edge: 'left' as const },
        { at: x + width, id, edge: 'right' as const },
      ]),
    ),
    up: merged(
      up,
      items.flatMap(({ id, y, height }) => [
        { at: y, id, edge: 'bottom' as const },
        { at: y + height, id, edge: 'top' as const },
      ]),
    ),
  };
}

function merged(
  marks: readonly TapeMark[],
  edges: readonly { readonly at: number; readonly id: string; readonly edge: HungMarked['edge'] }[],
): TapeMark[] {
  const all = new Map<Hundredth, readonly TapeMarked[]>(marks.map(({ at, of }) => [at, of]));
  for (const { at: place, id, edge } of edges) {
    const at = toHundredth(place);
    all.set(at, [...(all.get(at) ?? []), { kind: 'hung', id, edge }]);
  }
  return [...all].map(([at, of]) => ({ at, of })).sort((a, b) => a.at - b.at);
}

/** The marks of a wall with the joints of the panels, where nothing else stands; sorted as before. */
export function withJoints({ along, up }: RunningMarks, zones: readonly WorkedZone[]): TapeMarks {
  return { along: joined(along, zones, 'x'), up: joined(up, zones, 'y') };
}

function joined(marks: RunningMarks['along'], zones: readonly WorkedZone[], axis: 'x' | 'y'): TapeMark[] {
  const taken = new Set(marks.map(({ at }) => at));
  const joints = new Map<Hundredth, JointMarked[]>();
  for (const { area, layout } of zones) {
    if (!layout) continue;
    const start = { x: layout.start.x / 100, y: layout.start.y / 100 };
    const marked: JointMarked = { kind: 'joint', id: area.zone.id, edge: 'joint', start };
    for (const at of new Set(layout.panels.flatMap((panel) => beginning(panel, axis) ?? []))) {
      if (taken.has(at)) continue;
      joints.set(at, [...(joints.get(at) ?? []), marked]);
    }
  }
  return [...marks, ...[...joints].map(([at, of]): TapeMark => ({ at, of }))].sort((a, b) => a.at - b.at);
}

/** Where a panel begins on the line of its cell; null if something cuts it off before. */
function beginning({ outline, cell }: Panel, axis: 'x' | 'y'): Hundredth | null {
  const { left, bottom } = boxOf(outline.outer);
  return (axis === 'x' ? left : bottom) === cell[axis] ? cell[axis] : null;
}

const outlines = new WeakMap<object, Outline>();

function drawn(placed: Opening | Fitting): Outline {
  return remembered(placed, () => outlineOf(placed, 'inscribed'));
}

function drawnShape(vertices: readonly Vertex[]): Outline {
  return remembered(vertices, () => flattenVertices(vertices, 'inscribed'));
}

/** Kept while the object stays the same: while one is dragged, all others do. */
function remembered(key: object, make: () => Outline): Outline {
  const known = outlines.get(key);
  if (known) return known;
  const outline = make();
  outlines.set(key, outline);
  return outline;
}
