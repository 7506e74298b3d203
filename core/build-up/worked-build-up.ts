import type { Finding } from '../finding';
import { nameOfWall, nameOfZone, sentence } from '../job/names';
import type { Job } from '../job/schema';
import type { SurveyedWall } from '../survey/surveyed-wall';
import type { ZoneArea } from '../zones/zone-area';
import { consequenceFindings, consequencesOf, forwardBy, noticeable, type Consequence } from './consequences';
import { edgePieces } from './edge-pieces';
import { thickNeighbours, zoneEdgeEnds, type ZoneEdges } from './edge-ends';
import { figuresOfBuildUp, type BuildUpFigures } from './figures';
import { buildUpOf, type ResolvedBuildUp } from './resolve';
import { findingOf, remarksOn, type Remark } from './rules';

/** Everything that follows from a zone's layers where they are; plain data. */
export interface WorkedBuildUp {
  readonly resolved: ResolvedBuildUp;
  readonly figures: BuildUpFigures;
  readonly edges: ZoneEdges;
  readonly consequences: readonly Consequence[];
  /** What the rules say, each with its reason and its source. */
  readonly remarks: readonly Remark[];
  /** Remarks, edges and consequences in sentences. */
  readonly findings: readonly Finding[];
}

/**
 * A zone's layers on the wall as it was surveyed. A zone without an area breaks no rule.
 *
 * @param resolved its layers, if they are not those that the job gives it now but those of an issued record
 */
export function workOutBuildUp(
  job: Job,
  survey: SurveyedWall,
  area: ZoneArea,
  resolved: ResolvedBuildUp = buildUpOf(job, area.zone, survey.wall.ground),
): WorkedBuildUp {
  const { wall } = survey;
  const { zone } = area;
  // Coats and films end anywhere and bring nothing forward.
  const by = forwardBy(resolved);
  const isThick = by === null || by >= noticeable;
  const thick = isThick ? thickNeighbours(job, survey, area) : [];
  const rings = isThick
    ? edgePieces(
        area,
        thick.flatMap(({ region }) => region),
      )
    : [];
  const edges = zoneEdgeEnds(job, survey, area, rings, thick, resolved);
  const consequences = consequencesOf(job, survey, rings.flat(), resolved);
  const context = { job, wall, ground: wall.ground ?? {}, zone, layers: resolved.layers };
  const remarks = area.area.length === 0 ? [] : remarksOn(context);
  return {
    resolved,
    figures: figuresOfBuildUp(resolved, wall.ground),
    edges,
    consequences,
    remarks,
    findings: [
      ...remarks.map((remark) => findingOf(remark, wall, zone)),
      ...edges.findings,
      ...consequenceFindings(survey, area, consequences),
    ],
  };
}

/** A zone as the job lists it, with its layers. */
export interface BuiltZone {
  readonly survey: SurveyedWall;
  readonly area: ZoneArea;
  readonly buildUp: WorkedBuildUp;
}

/** How many zones a reminder names. */
const named = 3;

/**
 * The findings of all build-ups of a job: what is wrong zone by zone, reminders that several zones share once, in the
 * place of the first.
 */
export function buildUpFindings(zones: readonly BuiltZone[]): Finding[] {
  const shared = new Map<string, BuiltZone[]>();
  const keyOf = ({ level, code, says }: Remark) => (level === 'note' ? `${code}\n${says}` : null);
  for (const zone of zones) {
    for (const remark of zone.buildUp.remarks) {
      const key = keyOf(remark);
      if (key) shared.set(key, [...(shared.get(key) ?? []), zone]);
    }
  }
  return zones.flatMap((zone) =>
    zone.buildUp.findings.flatMap((finding, i) => {
      const remark = zone.buildUp.remarks[i];
      const alike = remark && shared.get(keyOf(remark) ?? '');
      if (!alike || alike.length === 1) return [finding];
      if (alike[0] !== zone) return [];
      return [{ ...finding, text: `${placesOf(alike)}: ${remark.says}.` }];
    }),
  );
}

/** `Zone Z1 (Proofs) on wall A (Proofing wall), zone Z2 on wall B and 4 more` */
function placesOf(zones: readonly BuiltZone[]): string {
  const names = zones
    .slice(0, named)
    .map(({ survey, area }) => `${nameOfZone(area.zone)} on ${nameOfWall(survey.wall)}`);
  const left = zones.length - names.length;
  const parts = left > 0 ? [...names, `${left} more`] : names;
  return sentence(`${parts.slice(0, -1).join(', ')} and ${parts.at(-1)!}`);
}
