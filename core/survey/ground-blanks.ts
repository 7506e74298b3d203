import { buildUpKind } from '../job/build-up-kinds';
import type { Ground } from '../job/ground-schema';
import type { Wall } from '../job/schema';

/** Something about the ground that nobody has recorded although what is planned on it depends on it. */
export interface GroundBlank {
  readonly field: GroundField;
  /** As a clause: `how flat it is`. */
  readonly words: string;
  /** What an offer says as long as it is blank. */
  readonly reservation: string;
}

/** What of the ground can be asked for. */
export type GroundField =
  'material' | 'hollow' | 'moisture' | 'adhesion' | 'suction' | 'escapeRoute' | 'fire';

interface Question extends GroundBlank {
  /** Whether it matters on this wall. */
  readonly matters: (planned: Planned) => boolean;
}

/** What is planned on a wall, as far as the ground must bear it. */
export interface Planned {
  readonly steel: boolean;
  readonly film: boolean;
  /** A coat straight on the ground. */
  readonly coat: boolean;
  readonly ground: Ground;
}

export function plannedOn(wall: Wall): Planned {
  const kinds = wall.zones.map(({ buildUp }) => buildUpKind(buildUp));
  const steel = kinds.some(({ magnetic }) => magnetic === 'steel');
  const isFilm = (id: string) => /(^|-)film(-|$)/.test(id);
  return {
    steel,
    // Filler over steel is level whatever the ground.
    film: kinds.some(({ id, magnetic }) => magnetic !== 'steel' && isFilm(id)),
    coat: kinds.some(({ id, magnetic }) => magnetic !== 'steel' && !isFilm(id)),
    ground: wall.ground ?? {},
  };
}

const mineral: readonly string[] = ['bare-plaster', 'gypsum-board', 'concrete', 'brick'];
const painted: readonly string[] = ['sound-paint', 'old-coating'];

const questions: readonly Question[] = [
  {
    field: 'escapeRoute',
    matters: () => true,
    words: 'whether it is on an escape route',
    reservation:
      'It is not recorded whether the wall is on an escape route; fire behaviour is to be settled by the local code before work begins.',
  },
  {
    field: 'fire',
    matters: ({ ground }) => ground.escapeRoute === true,
    words: 'the reaction to fire that is required',
    reservation:
      'The wall is on an escape route; the required reaction to fire is not recorded, and evidence for the whole build-up is not part of this price.',
  },
  {
    field: 'material',
    matters: () => true,
    words: 'what it is made of',
    reservation: 'The ground is not recorded; this price assumes that it is sound and bears the build-up.',
  },
  {
    field: 'hollow',
    matters: ({ steel, film }) => steel || film,
    words: 'how flat it is',
    reservation: 'Flatness is not recorded; levelling the ground beforehand is extra.',
  },
  {
    field: 'moisture',
    matters: ({ steel }) => steel,
    words: 'how moist it is',
    reservation:
      'Moisture is not recorded; steel is not bonded before the ground is dry, and waiting or drying is extra.',
  },
  {
    field: 'adhesion',
    matters: ({ ground }) => painted.includes(ground.material ?? ''),
    words: 'how well the old coating holds',
    reservation: 'How well the old coating holds is not recorded; taking off what does not hold is extra.',
  },
  {
    field: 'suction',
    matters: ({ coat, ground }) => coat && mineral.includes(ground.material ?? ''),
    words: 'how strongly it draws in water',
    reservation: 'Suction is not recorded; a primer that it may need is extra.',
  },
];

/** What is not recorded and matters, the gravest first; none on a wall without zones. */
export function groundBlanks(wall: Wall): GroundBlank[] {
  if (wall.zones.length === 0) return [];
  const planned = plannedOn(wall);
  return questions.filter(({ field, matters }) => planned.ground[field] === undefined && matters(planned));
}

/** What an offer for this wall has to reserve, as sentences: blanks of the ground, and that it was not measured. */
export function reservationsOf(wall: Wall): string[] {
  return [
    ...(wall.surveyed === false
      ? [
          'This wall has not been measured on site: quantities and price are a budget only, subject to survey.',
        ]
      : []),
    ...groundBlanks(wall).map(({ reservation }) => reservation),
  ];
}
