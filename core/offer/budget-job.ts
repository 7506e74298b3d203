import { addZone } from '../job/changes';
import { chooseAlternative, copyAlternative, renameAlternative, alternativesOf } from '../job/alternatives';
import { buildUpKind } from '../job/build-up-kinds';
import { defaultLayout, newZone } from '../job/defaults';
import type { Ground } from '../job/ground-schema';
import type { Offer } from '../job/offer-schema';
import { addQuickWall } from '../job/quick-wall';
import type { Job, Zone } from '../job/schema';

/** What somebody knows of a wall on the telephone. */
export interface BudgetRequest {
  readonly name: string;
  readonly client?: string;
  /** mm, of the zone, which is the whole wall. */
  readonly width: number;
  readonly height: number;
  /** Id of a build-up kind: `steel-panel`. */
  readonly buildUp: string;
  /** As far as the client could say. */
  readonly ground?: Pick<Ground, 'material' | 'exposure'>;
  /** Whether the access equipment of the rates is needed; absent: it is not. */
  readonly access?: boolean;
  /** ISO 8601 days, of the work and of the budget price; absent: dates count from day 1, and none is named. */
  readonly start?: string;
  readonly date?: string;
}

/**
 * A new job with one wall that nobody has measured and one zone over all of it, with the rates, products and working hours
 * of another job and nothing else of it: neither its client, its rack and its agreements nor the climate of its room.
 */
export function budgetJob(job: Job, request: BudgetRequest): Job {
  const { name, width, height, buildUp, ground = {} } = request;
  const walled = addQuickWall(emptied(job, request), {
    name,
    width,
    height,
    openings: [],
    zone: false,
    surveyed: false,
  });
  const recorded = Object.values(ground).some((value) => value !== undefined);
  const wall = { ...walled.walls[0]!, ...(recorded && { ground }) };
  const grounded = { ...walled, walls: [wall] };
  return addZone(grounded, wall.id, newZone(grounded, wall, { x: 0, y: 0, width, height }, buildUp));
}

/**
 * The same wall in several ways: the first on it and chosen, the others as alternatives, each named by its build-up.
 *
 * @param buildUps ids of build-up kinds, at least one, each once
 */
export function budgetJobOf(
  job: Job,
  request: Omit<BudgetRequest, 'buildUp'>,
  buildUps: readonly string[],
): Job {
  const [first = 'steel-panel', ...others] = buildUps;
  const alone = budgetJob(job, { ...request, buildUp: first });
  if (others.length === 0) return alone;
  const wallId = alone.walls[0]!.id;
  const ids = ['V1'];
  const named = renameAlternative(alone, 'V1', buildUpKind(first).label);
  const all = others.reduce((before, buildUp) => {
    const known = new Set(alternativesOf(before).map(({ id }) => id));
    const copied = copyAlternative(before, ids.at(-1)!, buildUpKind(buildUp).label);
    const id = alternativesOf(copied).find((one) => !known.has(one.id))!.id;
    ids.push(id);
    const alternatives = copied.alternatives!.map((one) =>
      one.id === id
        ? { ...one, zones: { [wallId]: one.zones[wallId]!.map((zone) => rebuilt(before, zone, buildUp)) } }
        : one,
    );
    return { ...copied, alternatives };
  }, named);
  return chooseAlternative(all, 'V1');
}

function rebuilt(job: Job, { layout: _, ...zone }: Zone, buildUp: string): Zone {
  const isSteel = buildUpKind(buildUp).magnetic === 'steel';
  const layout = isSteel ? defaultLayout(job) : undefined;
  return { ...zone, buildUp, ...(layout && { layout }) } as Zone;
}

function emptied(job: Job, { name, client = '', access = false, start, date = '' }: BudgetRequest): Job {
  const { alternatives: _a, chosenAlternative: _c, photos: _p, offer, programme, ...rest } = job;
  const { start: _s, ordered: _o, climate: _k, ...hours } = programme ?? {};
  return {
    ...rest,
    name: name || (client ? `Wall for ${client}` : 'New wall'),
    client,
    reference: '',
    revision: '',
    date,
    rack: [],
    walls: [],
    revisions: [],
    programme: { ...hours, ...(start && { start }) },
    ...(offer && { offer: withoutAgreements(offer, access) }),
  } as unknown as Job;
}

/** What was agreed for one job alone is left out; rates and terms of the firm stay. */
function withoutAgreements(offer: Offer, access: boolean): Offer {
  const {
    extras: _e,
    provisionalSums: _p,
    lineTaxes: _l,
    visits: _v,
    discount: _d,
    finish: _f,
    protection,
    access: equipment,
    ...terms
  } = offer;
  return {
    ...terms,
    ...(protection && { protection: { rate: protection.rate } }),
    // How many days it stood on another wall says nothing of this one.
    ...(access && equipment && { access: equipment.map(({ days: _, ...one }) => one) }),
  };
}
