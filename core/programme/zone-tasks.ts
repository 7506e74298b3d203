import type { ResolvedLayer } from '../build-up/resolve';
import { perimeter, regionArea, type Region } from '../geometry/polygon';
import type { Layer, LayerKind } from '../job/product-schema';
import type { TaskKind } from '../job/programme-schema';
import { onPanels, taperedFrom } from '../quantities/layer-needs';
import { cutEdgesOf } from '../quantities/zone-measures';
import { toSquareMm } from '../units';
import type { WorkedZone } from '../worked-out';
import { hour, roundTheClock } from './calendar';
import type { Draft, DraftLink, DraftTask, ProgrammeKind } from './draft';
import { dryingOf, type Drying } from './drying';
import type { Settings } from './settings';
import { bandAlong, usualPaces } from './usual-rates';

/*
 * The tasks of one zone, as its layers ask for them (common practice, no source): protect and mask, set out, then layer by
 * layer from the wall outwards, each coat after the one below has dried, demask, and cure.
 */

interface ZoneDraft {
  readonly draft: Draft;
  readonly settings: Settings;
  readonly wall: string;
  readonly zone: WorkedZone;
  readonly layers: readonly ResolvedLayer[];
  /** m². */
  readonly area: number;
  /** m² beyond it that layers are drawn out to, from this one on. */
  readonly feather: { readonly area: number; readonly from: number };
  readonly prefix: string;
  /** How many tasks the zone has. */
  count: number;
  /** What the next task has to wait for. */
  wet: DraftLink[];
  /** Of all layers: when they have hardened through. */
  readonly curing: { readonly task: number; readonly cure: number; readonly isFinish: boolean }[];
}

/** @returns the numbers of the events at the end of the zone, which the inspection waits for; [] if there is nothing to do */
export function addZoneTasks(
  draft: Draft,
  settings: Settings,
  wall: string,
  zone: WorkedZone,
  layers: readonly ResolvedLayer[],
): number[] {
  const area = squareMetres(zone.area.area);
  if (layers.length === 0 || area === 0) return [];
  const { id } = zone.area.zone;
  const state: ZoneDraft = {
    ...{ draft, settings, wall, zone, layers, area, prefix: `${wall}-${id}` },
    feather: { area: squareMetres(zone.buildUp.edges.feather), from: taperedFrom(layers) },
    count: 0,
    wet: [],
    curing: [],
  };
  addWork(state, 'protect', 'Protect and mask');
  if (layers.some(({ layer }) => layer.kind === 'steel')) addWork(state, 'set-out', 'Set out panels');
  const lampAfter = lastSmoothing(layers);
  let below: ResolvedLayer | null = null;
  layers.forEach((layer, i) => {
    const face = areaAt(state, layer.layer.kind, i);
    addLayer(state, layer, face, below, layers[i + 1]);
    if (i === lampAfter) addWork(state, 'lamp-check', 'Check flatness by raking light', face);
    below = layer;
  });
  const last = state.wet.map((link) => ({ ...link, lag: Math.min(link.lag ?? 0, touchOf(state, layers)) }));
  state.wet = last.map(({ most: _, ...link }) => link);
  addWork(state, 'demask', 'Demask');
  return addEnds(state, layers);
}

function squareMetres(region: Region): number {
  return toSquareMm(regionArea(region)) / 1e6;
}

/** m² that a layer over the face has: what is drawn out round a zone is worked on like the zone. */
function areaAt({ area, feather }: ZoneDraft, kind: LayerKind, index: number): number {
  return index >= feather.from && !onPanels.includes(kind) ? area + feather.area : area;
}

/** @param face m² of the layer where it lies over the face */
function addLayer(
  state: ZoneDraft,
  resolved: ResolvedLayer,
  face: number,
  below: ResolvedLayer | null,
  above: ResolvedLayer | undefined,
): void {
  const { layer, product, coats } = resolved;
  const { kind } = layer;
  const drying = dryingOf(resolved, state.settings);
  // Adhesive goes on with the panels that it holds.
  if (kind === 'adhesive' && above?.layer.kind === 'steel') return;
  if (kind === 'steel') {
    addSteel(state, below?.layer.kind === 'adhesive' ? below : null);
    return;
  }
  // Cut edges and joints of a layer are done beside its face, not over it.
  const isBeside = (layer.over === 'joints' || layer.over === 'edges') && below?.layer.kind === kind;
  const besides = isBeside ? state.wet : [];
  if (isBeside) state.wet = state.wet.slice(-1).map(({ from }) => ({ from, to: 0 }));
  for (let coat = 1; coat <= coats; coat++) {
    const name = nameOfCoat(workInWords(layer), coat, coats, product?.name);
    const task = addWork(state, kindOfWork[kind], name, face, resolved, coat);
    state.wet = [...(coat === 1 ? besides : []), afterCoat(task, drying)];
    if (coat === coats && drying.cure > 0) {
      state.curing.push({ task, cure: drying.cure, isFinish: writing.has(kind) });
    }
  }
}

/** `Key the ground`, `Degrease backs of panels`, `Prime steel along cut edges` */
function workInWords({ kind, over }: Layer): string {
  if (over === 'backs')
    return kind === 'keying' ? 'Key backs of panels' : `${workNames[kind]} backs of panels`;
  return `${workNames[kind]}${over === 'face' ? '' : over === 'joints' ? ' along joints' : ' along cut edges'}`;
}

/** `Fill, coat 1 of 2: Fine filler`, `Coat 2 of 3: Writable finish`; nothing is said twice. */
function nameOfCoat(work: string, coat: number, coats: number, product: string | undefined): string {
  const nth = coats === 1 ? '' : `${work === 'Coat' ? '' : ', coat'} ${coat} of ${coats}`;
  return product === undefined || product === work ? `${work}${nth}` : `${work}${nth}: ${product}`;
}

function afterCoat(from: number, { next, most }: Drying): DraftLink {
  if (next === 0 && most === undefined) return { from, to: 0 };
  return { from, to: 0, lag: next, wait: 'dry', ...(most !== undefined && { most }) };
}

function addSteel(state: ZoneDraft, adhesive: ResolvedLayer | null): void {
  const battens = state.zone.layout?.fixing.battens.length ?? 0;
  if (battens > 0) addWork(state, 'batten', 'Fix starting battens');
  const of = adhesive?.product ? `: ${adhesive.product.name}` : '';
  const bond = addWork(state, 'bond', `Bond panels${of}`, state.area, adhesive ?? undefined);
  if (!adhesive) return;
  addWork(state, 'prop', 'Prop panels until they hold');
  const { next, cure } = dryingOf(adhesive, state.settings);
  state.wet.push({ from: bond, to: 0, lag: next, wait: 'harden' });
  state.curing.push({ task: bond, cure, isFinish: false });
}

/** Work of the crew after all that is still wet. */
function addWork(
  state: ZoneDraft,
  kind: TaskKind,
  name: string,
  face = state.area,
  layer?: ResolvedLayer,
  coat = 1,
): number {
  const { draft, wet } = state;
  const isSanding = kind === 'sand' || kind === 'key';
  const isCoat = !isSanding && layer !== undefined;
  const uses = layer && { layer: state.layers.indexOf(layer), coat };
  const task = add(state, kind, name, minutesFor(state, kind, face, layer), isCoat, uses);
  // What is keyed first may come at any time.
  for (const { from, lag, most, wait } of wet) {
    draft.links.push({ from, to: task, lag, most: isCoat ? most : undefined, wait });
  }
  state.wet = [{ from: task, to: 0 }];
  return task;
}

function add(
  state: ZoneDraft,
  kind: ProgrammeKind,
  name: string,
  work: number,
  unbroken: boolean,
  uses?: DraftTask['uses'],
): number {
  const { draft, wall, zone, prefix } = state;
  const isEvent = work === 0;
  return (
    draft.tasks.push({
      id: `${prefix}-${++state.count}`,
      kind,
      name,
      ...(uses && { uses }),
      wall,
      zone: zone.area.zone.id,
      calendar: isEvent ? roundTheClock : draft.calendar,
      work,
      unbroken,
      crew: !isEvent,
    }) - 1
  );
}

/** Working minutes of the whole crew, rounded up to five. */
function minutesFor(
  { settings, zone }: ZoneDraft,
  kind: TaskKind,
  face: number,
  resolved?: ResolvedLayer,
): number {
  const usual = usualPaces[kind as keyof typeof usualPaces];
  const rate = settings.rates[kind] ?? resolved?.product?.pace ?? usual.rate;
  const over = resolved?.layer.over ?? 'face';
  const worked =
    over === 'face'
      ? face
      : over === 'backs'
        ? squareMetres((zone.layout?.panels ?? []).map(({ outline }) => outline))
        : bandAlong[over] * runningMetres(zone, over);
  const minutes = usual.around + (worked / (rate * settings.crew)) * hour;
  return Math.ceil(minutes / 5 - 1e-9) * 5;
}

/** Cut edges as they are cut; of joints half of all edges, as a joint has two. */
function runningMetres({ layout }: WorkedZone, over: 'joints' | 'edges'): number {
  const panels = layout?.panels ?? [];
  const edges = panels.map((panel) => (over === 'joints' ? perimeter(panel.outline) / 2 : cutEdgesOf(panel)));
  return edges.reduce((sum, length) => sum + length, 0) / 1e5;
}

/** Ready for magnets when all has hardened through, for writing when the finish has. */
function addEnds(state: ZoneDraft, layers: readonly ResolvedLayer[]): number[] {
  const kinds = new Set(layers.map(({ layer }) => layer.kind));
  const isMagnetic = magnetic.some((kind) => kinds.has(kind));
  const isWritable = [...writing].some((kind) => kinds.has(kind));
  const demask = state.wet[0]!.from;
  const event = (kind: 'magnets' | 'writing' | 'cured', name: string, cures: ZoneDraft['curing']) => {
    const task = add(state, kind, name, 0, false);
    state.draft.links.push({ from: demask, to: task });
    for (const { task: from, cure } of cures) {
      state.draft.links.push({ from, to: task, lag: cure, wait: 'cure' });
    }
    return task;
  };
  const finish = state.curing.filter(({ isFinish }) => isFinish);
  return [
    ...(isMagnetic ? [event('magnets', 'Ready for magnets', state.curing)] : []),
    ...(isWritable ? [event('writing', 'Ready for writing', finish)] : []),
    ...(isMagnetic || isWritable ? [] : [event('cured', 'Cured', state.curing)]),
  ];
}

function touchOf({ settings }: ZoneDraft, layers: readonly ResolvedLayer[]): number {
  return dryingOf(layers.at(-1)!, settings).touch;
}

/** The layer after which the wall is as flat as it will be; −1 if nothing levels it. */
function lastSmoothing(layers: readonly ResolvedLayer[]): number {
  const levels = layers.some(({ layer }) => layer.kind === 'filler' || layer.kind === 'smoothing');
  return levels
    ? layers.findLastIndex(({ layer }) => ['filler', 'smoothing', 'sanding'].includes(layer.kind))
    : -1;
}

const magnetic: readonly LayerKind[] = ['steel', 'magnetic-coating', 'magnetic-film'];
const writing: ReadonlySet<LayerKind> = new Set([
  'writable',
  'clear-writable',
  'chalk',
  'writable-film',
  'glass-film',
]);

const kindOfWork: Readonly<Record<LayerKind, TaskKind>> = {
  degreasing: 'degrease',
  keying: 'key',
  primer: 'prime',
  adhesive: 'bond',
  steel: 'bond',
  'metal-primer': 'metal-primer',
  reinforcement: 'reinforce',
  'bonding-coat': 'bonding-coat',
  filler: 'fill',
  sanding: 'sand',
  sealer: 'seal',
  'magnetic-coating': 'coat',
  'magnetic-film': 'film',
  smoothing: 'fill',
  writable: 'coat',
  'clear-writable': 'coat',
  chalk: 'coat',
  decorative: 'coat',
  'writable-film': 'film',
  'glass-film': 'film',
};

const workNames: Readonly<Record<LayerKind, string>> = {
  degreasing: 'Degrease',
  keying: 'Key the ground',
  primer: 'Prime',
  adhesive: 'Spread adhesive',
  steel: 'Bond panels',
  'metal-primer': 'Prime steel',
  reinforcement: 'Reinforce',
  'bonding-coat': 'Bonding coat',
  filler: 'Fill',
  sanding: 'Sand',
  sealer: 'Seal',
  'magnetic-coating': 'Coat',
  'magnetic-film': 'Hang film',
  smoothing: 'Smooth',
  writable: 'Coat',
  'clear-writable': 'Coat',
  chalk: 'Coat',
  decorative: 'Coat',
  'writable-film': 'Hang film',
  'glass-film': 'Hang film',
};
