import { buildUpOf, type ResolvedLayer } from '../build-up/resolve';
import type { Finding } from '../finding';
import { buildUpKind } from '../job/build-up-kinds';
import { jobCautions } from '../job/cautions';
import { extentOf } from '../job/extent';
import { finishLevels } from '../job/offer-schema';
import type { LayerKind } from '../job/product-schema';
import type { Job, Wall, Zone } from '../job/schema';
import { makeOfMarking, markingKindWords, titleOfMarking } from '../markings/marking-words';
import { reservationsOf } from '../survey/ground-blanks';
import { termsOf } from './usual-prices';
import {
  electricianDuty,
  finishWords,
  inRakingLight,
  noLevelAgreed,
  notInRakingLight,
  usualDuties,
  usualExclusions,
} from './usual-words';

/*
 * What is offered, in plain words made from the job. Lengths are in mm, as in findings; whoever shows them puts them into
 * the job's units.
 */

export interface ZoneScope {
  readonly id: string;
  /** `Proofs: steel panels, writable, 2000 × 1000 mm` */
  readonly title: string;
  /** From the bare wall to the finish, as one sentence. */
  readonly layers: string;
  readonly markings: readonly string[];
}

export interface WallScope {
  readonly id: string;
  readonly title: string;
  readonly zones: readonly ZoneScope[];
}

/** Walls with zones, in their order. */
export function scopeOf(job: Job): WallScope[] {
  return job.walls
    .filter(({ zones }) => zones.length > 0)
    .map((wall) => ({
      id: wall.id,
      title: nameOf(wall),
      zones: wall.zones.map((zone) => ({
        id: zone.id,
        title: titleOf(zone),
        layers: layersInWords(job, wall, zone),
        markings: (zone.markings ?? []).map(
          (marking) =>
            `${titleOfMarking(marking)}: ${markingKindWords[marking.kind]}, ${makeOfMarking(marking, (length) => `${length} mm`)}`,
        ),
      })),
    }));
}

function nameOf({ id, name }: Pick<Wall, 'id' | 'name'>): string {
  return name || `Wall ${id}`;
}

function titleOf(zone: Zone): string {
  const { width, height } = extentOf(zone);
  const kind = buildUpKind(zone.buildUp).label;
  return `${zone.name || `Zone ${zone.id}`}: ${kind.charAt(0).toLowerCase()}${kind.slice(1)}, ${width} × ${height} mm`;
}

/** What is done, as a client would say it. */
const done: Readonly<Record<LayerKind, string>> = {
  degreasing: 'cleaned of grease',
  keying: 'roughened',
  primer: 'primed',
  adhesive: 'full bed of adhesive',
  steel: 'steel panels',
  'metal-primer': 'primer against rust',
  reinforcement: 'joints reinforced',
  'bonding-coat': 'bonding coat',
  filler: 'filled level',
  sanding: 'sanded',
  sealer: 'sealed',
  'magnetic-coating': 'magnetic coating',
  'magnetic-film': 'magnetic film',
  smoothing: 'smoothed with filler',
  writable: 'writable finish',
  'clear-writable': 'clear writable finish',
  chalk: 'chalk coat',
  decorative: 'paint',
  'writable-film': 'writable film',
  'glass-film': 'writable film on the glass',
};

function layersInWords(job: Job, wall: Wall, zone: Zone): string {
  const layers = buildUpOf(job, zone, wall.ground).layers.map(layerInWords);
  if (layers.length === 0) return 'Its layers are not chosen yet.';
  const words = [...new Set(layers)].join('; ');
  return `From the wall outward: ${words}.`;
}

function layerInWords({ layer, product, coats, thickness }: ResolvedLayer): string {
  const named = product && !product.typical ? ` (${product.name})` : '';
  const times = coats > 1 ? `, ${coats} coats` : '';
  const over = layer.over === 'edges' ? ' on cut edges' : '';
  const before = layer.over === 'backs' ? 'backs of panels ' : '';
  const thick = layer.kind === 'steel' && thickness !== null ? `, ${thickness} mm thick` : '';
  return `${before}${done[layer.kind]}${over}${named}${thick}${times}`;
}

/** How smooth the surface becomes and in what light it is judged, as sentences. */
export function finishInWords(job: Job): string[] {
  const { level, rakingLight, light } = termsOf(job).finish;
  const judged = rakingLight
    ? `${inRakingLight}${light ? `: ${light}` : ''}.`.replace(/\.\.$/, '.')
    : notInRakingLight;
  return [level ? `Level of finish ${finishWords[level]}` : noLevelAgreed, ...otherLevels(job), judged];
}

/** Levels of zones that are to be finished otherwise than the offer says, from the lowest. */
function otherLevels(job: Job): string[] {
  const { level } = termsOf(job).finish;
  return finishLevels.flatMap((one) => {
    const zones = job.walls.flatMap((wall) =>
      wall.zones
        .filter(({ finishLevel }) => finishLevel === one && one !== level)
        .map(({ id, name }) => `${nameOf(wall)}, ${name || `zone ${id}`}`),
    );
    return zones.length > 0 ? [`For ${zones.join('; ')}: level of finish ${finishWords[one]}`] : [];
  });
}

/** What has not been recorded and may change the price; the same of several walls is said once. */
export function reservationsInWords(job: Job): string[] {
  const wallsOf = new Map<string, string[]>();
  for (const wall of job.walls.filter(({ zones }) => zones.length > 0)) {
    for (const text of reservationsOf(wall)) wallsOf.set(text, [...(wallsOf.get(text) ?? []), nameOf(wall)]);
  }
  return [...wallsOf].map(([text, walls]) => `${walls.join(', ')}: ${text}`);
}

export function dutiesInWords(job: Job): string[] {
  const duties = termsOf(job).duties ?? usualDuties;
  const isLive = jobCautions(job).some(({ code }) => code === 'electrics-in-steel');
  return [...duties, ...(isLive ? [electricianDuty] : [])];
}

export function exclusionsInWords(job: Job): string[] {
  return [...(termsOf(job).exclusions ?? usualExclusions)];
}

/** At most this many boxes in steel are named one by one. */
const mostNamed = 3;

/** Said to the client, where a caution of the job speaks to whoever does the work. */
const toTheClient: Readonly<Record<string, string>> = {
  'strong-magnets':
    'Strong magnets pinch fingers, disturb pacemakers, cards and screens, and must never come where a child could swallow them.',
  'blind-detectors':
    'Detectors are blind behind steel: the owner keeps a plan of cables and panels as built.',
};

/** While the wall is used these speak to nobody. */
const ofTheWorkAlone = ['sanding-dust', 'steel-edges'];

/** Every caution that the job gives cause for; nothing leaves one out. */
export function cautionsInWords(job: Job): string[] {
  return clientCautions(job, () => true);
}

/** Those that stay when the work is done, and what holds for the next work on the wall. */
export function lastingCautions(job: Job): string[] {
  const isSteel = jobCautions(job).some(({ code }) => code === 'steel-edges');
  return [
    ...clientCautions(job, (code) => !ofTheWorkAlone.includes(code)),
    `Before the wall is sanded or painted again: dust needs a mask and extraction, and old paint may hold lead${isSteel ? '; cut steel has sharp edges, so nobody drills or cuts into it without gloves' : ''}.`,
  ];
}

function clientCautions(job: Job, applies: (code: string) => boolean): string[] {
  const all = jobCautions(job).filter(({ code }) => applies(code));
  const live = all.filter(({ code }) => code === 'electrics-in-steel');
  const others = all.filter(({ code }) => code !== 'electrics-in-steel');
  return [...liveInWords(job, live), ...others.map(({ code, text }) => toTheClient[code] ?? text)];
}

function liveInWords(job: Job, live: readonly Finding[]): string[] {
  if (live.length <= mostNamed) return live.map(({ text }) => text);
  const walls = job.walls.filter(({ id }) => live.some(({ wall }) => wall === id)).map(nameOf);
  const boxes = new Set(live.map(({ wall, object }) => `${wall}/${object}`)).size;
  return [
    `${boxes} sockets, switches or lights sit in steel (${walls.join(', ')}): switch off and isolate before you work round ` +
      'them, and let a licensed electrician and the local wiring rules decide on bonding and earthing.',
  ];
}
