import type { Finding } from '../finding';
import { intersection, offsetMitred } from '../geometry/clip';
import { boxesMeet } from '../geometry/polygon';
import { toHundredth } from '../units';
import { buildUpKind, type BuildUpKind } from './build-up-kinds';
import { isElectric, ownKindsOf } from './fitting-kinds';
import { nameOfPlaced, nameOfWall, nameOfZone, sentence } from './names';
import type { Fitting, Job, OwnKind, Wall, Zone } from './schema';
import { placedFitting, placedZone, type Placed } from './placed-regions';

/**
 * Notes of what may hurt someone, each only where the job gives cause: a live box in steel for each one, the
 * rest once for the whole job. Common practice, no source; a wall that did not change is not looked at again.
 */
export function jobCautions(job: Job): Finding[] {
  const own = ownKindsOf(job);
  return [...job.walls.flatMap((wall) => rememberedElectrics(wall, own)), ...cautionsOfWork(job)];
}

interface Remembered {
  readonly own: string;
  readonly findings: readonly Finding[];
}

const remembered = new WeakMap<Wall, Remembered>();

function rememberedElectrics(wall: Wall, kinds: readonly OwnKind[]): readonly Finding[] {
  const own = JSON.stringify(kinds);
  const known = remembered.get(wall);
  if (known?.own === own) return known.findings;
  const findings = electricsInSteel(wall, kinds);
  remembered.set(wall, { own, findings });
  return findings;
}

function electricsInSteel(wall: Wall, own: readonly OwnKind[]): Finding[] {
  const steel = wall.zones.filter(isSteel).map(placedZone);
  if (steel.length === 0) return [];
  const live = wall.fittings.filter(({ kind }) => isElectric(kind, own)).map(placedFitting);
  return steel.flatMap((zone) =>
    live.filter((fitting) => reaches(fitting, zone)).map(({ thing }) => caution(wall, zone.thing, thing)),
  );
}

function caution(wall: Wall, zone: Zone, fitting: Fitting): Finding {
  const name = sentence(nameOfPlaced(fitting, 'fitting'));
  return {
    level: 'note',
    code: 'electrics-in-steel',
    wall: wall.id,
    object: fitting.id,
    text:
      `${name} sits in the steel of ${nameOfZone(zone)} on ${nameOfWall(wall)}: switch off and isolate before ` +
      'you work round it, and let a licensed electrician and the local wiring rules decide on bonding and earthing.',
  };
}

/** Whether the zone's steel would come up to the box grown by its clearance. */
function reaches(fitting: Placed<Fitting>, zone: Placed<Zone>): boolean {
  const clearance = toHundredth(fitting.thing.clearance);
  // A mitred corner reaches at most twice as far as its edges.
  if (!boxesMeet(fitting.box, zone.box, 2 * clearance)) return false;
  const grown = clearance > 0 ? offsetMitred(fitting.region, clearance) : fitting.region;
  return intersection(grown, zone.region).length > 0;
}

function isSteel({ buildUp }: Zone): boolean {
  return buildUpKind(buildUp).magnetic === 'steel';
}

interface Caution {
  readonly code: string;
  readonly applies: (kind: BuildUpKind) => boolean;
  readonly text: string;
}

const cautions: readonly Caution[] = [
  {
    code: 'concealed-services',
    applies: () => true,
    text: 'Find concealed cables and pipes in every zone before you sand or drill.',
  },
  {
    code: 'sanding-dust',
    applies: () => true,
    text: 'Sanding makes dust: wear a mask and extract it, and have paint in an old building tested for lead.',
  },
  {
    code: 'steel-edges',
    applies: ({ magnetic }) => magnetic === 'steel',
    text: 'Steel edges cut: wear gloves and deburr every cut edge.',
  },
  {
    code: 'blind-detectors',
    applies: ({ magnetic }) => magnetic === 'steel',
    text: 'Detectors are blind behind steel: leave the owner a plan of cables and panels as built.',
  },
  {
    code: 'strong-magnets',
    applies: ({ magnetic }) => magnetic !== 'none',
    text: 'Strong magnets pinch fingers, disturb pacemakers, cards and screens, and must never come where a child could swallow them; tell the client.',
  },
  {
    code: 'fire-behaviour',
    applies: () => true,
    text: 'The fire behaviour of the whole build-up counts, above all on an escape route: ask for the evidence that the local code wants.',
  },
];

function cautionsOfWork(job: Job): Finding[] {
  const kinds = job.walls.flatMap((wall) => wall.zones.map((zone) => buildUpKind(zone.buildUp)));
  return cautions
    .filter(({ applies }) => kinds.some(applies))
    .map(({ code, text }) => ({ level: 'note', code, text }));
}
