import type { Finding } from '../finding';
import { nameOfWall, nameOfZone, sentence } from '../job/names';
import type { Job, Wall, Zone } from '../job/schema';
import { findWall } from '../job/shape';
import { changeLayers } from './change-layers';
import { buildUpOf, resolve } from './resolve';
import type { Rule, RuleContext } from './rule';
import { coatRules } from './rules-coats';
import { filmRules } from './rules-films';
import { groundRules } from './rules-ground';
import { steelRules } from './rules-steel';

/** Every rule of build-ups. */
export const rules: readonly Rule[] = [...steelRules, ...coatRules, ...filmRules, ...groundRules];

/** What a rule has to say of a zone. */
export interface Remark {
  readonly code: string;
  readonly level: Finding['level'];
  /** What is, and how to mend it: a clause that follows on the zone's name, without its stop. */
  readonly says: string;
  readonly reason: string;
  readonly source: string;
  readonly mend: string;
  /** Whether `mendBuildUp` can do it, and the rule is kept then. */
  readonly isMendable: boolean;
}

/** In the order of the rules. */
export function remarksOn(context: RuleContext): Remark[] {
  return rules
    .filter((rule) => rule.test(context))
    .map((rule) => ({
      code: rule.code,
      level: rule.level,
      says: `${rule.text(context)}; ${rule.mend}`,
      reason: rule.reason,
      source: rule.source,
      mend: rule.mend,
      isMendable: canMend(rule, context),
    }));
}

/** A mend may fail where the user's own products stand in for those that it puts in. */
function canMend({ apply, test }: Rule, context: RuleContext): boolean {
  if (!apply) return false;
  const { job, zone, layers } = context;
  const mended = [...apply(layers.map(({ layer }) => layer))];
  const buildUp = { id: '', name: '', kind: zone.buildUp, layers: mended };
  return !test({ ...context, layers: resolve(job, buildUp, zone).layers });
}

/**
 * The job with a zone's layers mended so that it keeps a rule; the zone then has layers of its own. The job as it was
 * where the rule is kept, or cannot be mended without a decision, or there is no such zone.
 */
export function mendBuildUp(job: Job, wallId: string, zoneId: string, code: string): Job {
  const wall = findWall(job, wallId);
  const zone = wall?.zones.find(({ id }) => id === zoneId);
  const rule = rules.find((one) => one.code === code);
  if (!wall || !zone || !rule?.apply || !rule.test(contextOf(job, wall, zone))) return job;
  return changeLayers(job, wallId, zoneId, rule.apply);
}

export function contextOf(job: Job, wall: Wall, zone: Zone): RuleContext {
  return {
    job,
    wall,
    ground: wall.ground ?? {},
    zone,
    layers: buildUpOf(job, zone, wall.ground).layers,
  };
}

/** `Zone Z1 (Proofs) on wall A (Proofing wall): …` */
export function findingOf({ code, level, says }: Remark, wall: Wall, zone: Zone): Finding {
  const place = sentence(`${nameOfZone(zone)} on ${nameOfWall(wall)}`);
  return { level, code, wall: wall.id, object: zone.id, text: `${place}: ${says}.` };
}
