import type { StartingBatten } from '../../core/panels/fixing-order';
import type { Polygon } from '../../core/geometry/polygon';
import type { HungItem, HungKind } from '../../core/job/hung-schema';
import type { Panel } from '../../core/panels/panel';
import type { Fitting, Opening, OwnKind, Wall } from '../../core/job/schema';
import {
  boxOfVertices,
  findObject,
  findWall,
  type MmBox,
  type MmPoint,
  type ObjectRef,
  type WallObject,
} from '../../core/job/shape';
import { removeObjects } from '../../core/job/several';
import type { OpenJob, Selection } from '../job/open-job.svelte';
import type { NamedChange } from '../job/changes/named-change';
import type { Results } from '../results/results.svelte';
import type { HandEvent } from './gestures/gesture';
import { Room } from './room.svelte';
import { HandAim } from './by-hand/hand-aim.svelte';
import { handSigns, type HandSign } from './by-hand/hand-signs';
import type { Guide } from './snap';
import { choose, toolsAt, type Tool } from './tool';
import { View } from './view.svelte';

/** Corners set so far, where the next would be, and the length typed for the edge to it. */
export interface Corners {
  readonly placed: readonly MmPoint[];
  readonly next: MmPoint | null;
  readonly typed: string;
  /** What is wrong with what was typed. */
  readonly fault: string | null;
}

/** The object under the hand and the wall without it, as it was when the drag began. */
export interface Lifted {
  /** Null: a stretch with people below, which is no object. */
  readonly ref: ObjectRef | null;
  readonly rest: Wall;
  /** Its size is what the hand changes. */
  readonly sized?: boolean;
  /** What moves along with it. */
  readonly along?: readonly ObjectRef[];
}

/** Tools that go with what is chosen: a hole is put into the chosen zone, an edge bent of what is chosen. */
const keepsChosen: ReadonlySet<Tool['kind']> = new Set([
  'choose',
  'hole',
  'marking',
  'bend',
  'mark',
  'measure',
  'offset',
]);

/** How near on the screen something snaps, px. */
const snapReach = 8;

/**
 * What the hand is doing on the drawing: the view, the tool, what is lifted off the wall while it is dragged, and
 * what is said about it. The job itself stays with `OpenJob`.
 */
export class Hand {
  readonly open: OpenJob;
  readonly view = new View();
  readonly room: Room;
  /** What is aimed at while something is chosen by hand, and what a start leads to. */
  readonly byHand = new HandAim();
  readonly #results: Results;
  #chosenTool = $state.raw<{ readonly tool: Tool; readonly station: string }>({ tool: choose, station: '' });

  /** Signs of what was chosen by hand, where they lie on the drawing. */
  readonly signs: readonly HandSign[] = $derived.by(() => handSigns(this));

  lifted = $state.raw<Lifted | null>(null);
  guides = $state.raw<readonly Guide[]>([]);
  corners = $state.raw<Corners | null>(null);
  /** What a click would put in, where it would. */
  ghost = $state.raw<Opening | Fitting | HungItem | null>(null);
  /** The edge that a distance is taken from; null: the wall's outline. */
  offsetOf = $state.raw<ObjectRef | null>(null);
  /** The frame that is drawn about what is to be chosen. */
  framing = $state.raw<MmBox | null>(null);
  /** The user's own kinds of fitting that can be put in. */
  ownKinds: () => readonly OwnKind[] = () => [];
  /** Likewise of hung item. */
  ownHungKinds: () => readonly HungKind[] = () => [];
  /** Opens a pinned photo. */
  lookAtPin: (id: string) => void = () => undefined;
  /** The last thing that happened, for those who listen instead of looking. */
  said = $state.raw('');
  /** The standing figure for scale. */
  figure = $state.raw(false);
  /** Usual heights of reach and of writing. */
  heights = $state.raw(false);

  constructor(open: OpenJob, results: Results) {
    this.open = open;
    this.#results = results;
    this.room = new Room(open, results);
  }

  get wall(): Wall | undefined {
    return this.open.wall;
  }

  /** What the first panels of the wall on the screen stand on, as last worked out. */
  get battens(): readonly StartingBatten[] {
    return this.worked?.zones.flatMap(({ layout }) => layout?.fixing.battens ?? []) ?? [];
  }

  /** The panels of the wall on the screen, as last worked out. */
  get panels(): readonly Panel[] {
    return this.worked?.zones.flatMap(({ layout }) => layout?.panels ?? []) ?? noPanels;
  }

  /** Where by hand no panel is fixed, as last worked out. */
  get leftOut(): readonly Polygon[] {
    return (
      this.worked?.zones.flatMap(({ layout }) => (layout?.leftOut ?? []).map(({ outline }) => outline)) ?? []
    );
  }

  /** The wall on the screen as last worked out. */
  get worked() {
    const id = this.wall?.id;
    return this.#results.worked?.walls.find(({ survey }) => survey.wall.id === id);
  }

  /** A tool belongs to the station it was taken up at. */
  get tool(): Tool {
    const { tool, station } = this.#chosenTool;
    return station === this.open.station ? tool : choose;
  }

  takeUp(tool: Tool): void {
    this.#chosenTool = { tool, station: this.open.station };
    this.corners = tool.kind === 'corners' ? { placed: [], next: null, typed: '', fault: null } : null;
    if (tool.kind === 'offset') this.offsetOf = objectIn(this.open.selection);
    this.ghost = null;
    this.guides = [];
    this.byHand.clear();
    if (!keepsChosen.has(tool.kind)) this.open.selection = null;
  }

  lift(
    ref: ObjectRef,
    from: Wall,
    { sized = false, along = [] }: { sized?: boolean; along?: readonly ObjectRef[] } = {},
  ): void {
    const rest = removeObjects(this.open.job, from.id, [ref, ...along]);
    this.lifted = { ref, rest: findWall(rest, from.id) ?? from, sized, along };
  }

  /** Nothing is under the hand any more. */
  letGo(): void {
    this.lifted = null;
    this.framing = null;
    this.guides = [];
  }

  /** Whether a strip above the drawing says what can be put in; where none does, the drawing has its space. */
  get hasStrip(): boolean {
    const { corners, wall, open } = this;
    if (open.chosen.isSeveral || corners !== null) return true;
    if (open.station === 'panels') return wall?.zones.some(({ layout }) => layout) ?? false;
    return wall !== undefined && toolsAt(open.station).length > 0;
  }

  fit(): void {
    this.view.fit(this.wallBox, this.#above);
  }

  /** The wall with its room beside it, or alone; either is shown whole. */
  showRoom(wanted: boolean): void {
    this.room.wanted = wanted;
    this.fit();
    this.said = wanted ? 'The room in one strip' : 'This wall alone';
  }

  /** The drawing has another size. */
  resize(width: number, height: number): void {
    this.view.resize(width, height, this.wallBox, this.#above);
  }

  /** px above a fitted wall: for a hint, or for the view's buttons where they lie on the paper. */
  get #above(): number {
    return (this.hasStrip ? 36 : 52) + (this.room.strip ? 26 : 0);
  }

  /** What "Fit" shows: the wall, or its room. */
  get wallBox() {
    if (this.room.strip) return this.room.strip.box;
    return this.wall ? boxOfVertices(this.wall.outline) : { x: 0, y: 0, width: 5000, height: 2700 };
  }

  /** How near in mm something has to be to snap; less than nothing while Ctrl or Alt holds snapping off. */
  snapReachOf({ ctrl, alt }: Pick<HandEvent, 'ctrl' | 'alt'>): number {
    return ctrl || alt ? -1 : snapReach / this.view.frame.scale;
  }

  /** Shows guides and says them once, when they change. */
  guide(guides: readonly Guide[]): void {
    const words = guides.map((guide) => guide.words).join('; ');
    if (words && words !== this.guides.map((guide) => guide.words).join('; ')) this.said = words;
    this.guides = guides;
  }

  /** A finished change outside a gesture; what refuses it is said. */
  make({ name, change }: NamedChange, options?: { merge?: boolean }): boolean {
    const refused = this.open.apply(name, change, options);
    this.said = refused ?? name;
    return refused === null;
  }

  /** Ends a gesture with the name it is undone by. */
  commit(name: string): void {
    const refused = this.open.commit(name);
    this.said = refused ?? name;
    this.letGo();
  }

  /** Ends a gesture as if it had never begun. */
  cancel(): void {
    this.open.cancel();
    this.letGo();
  }

  find(ref: ObjectRef): WallObject | undefined {
    return this.wall && findObject(this.wall, ref);
  }
}

const noPanels: readonly Panel[] = [];

function objectIn(selection: Selection): ObjectRef | null {
  return selection && selection.kind !== 'panel' && selection.kind !== 'vertex' ? selection : null;
}
