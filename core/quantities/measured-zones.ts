import { offerArea, type MeasurementRule } from './measurement-rules';
import { onceFor } from './once-for';
import type { WallNeeds } from './wall-needs';

/** A zone as an offer measures it, hundredths squared. */
export interface MeasuredZone {
  readonly wall: string;
  readonly zone: string;
  readonly trueArea: number;
  readonly offerArea: number;
}

/** Every zone by a rule of measurement, the true area beside it. */
export function measuredZones(walls: readonly WallNeeds[], rule: MeasurementRule): MeasuredZone[] {
  return walls.flatMap((own) => {
    const byRule = measuredByRule(own);
    const zones = byRule.get(rule.id) ?? zonesOfWall(own, rule);
    byRule.set(rule.id, zones);
    return zones;
  });
}

const measuredByRule = onceFor((_: WallNeeds) => new Map<MeasurementRule['id'], MeasuredZone[]>());

function zonesOfWall({ wall: { survey }, zones }: WallNeeds, rule: MeasurementRule): MeasuredZone[] {
  return zones.map(({ measures }) => {
    const { area, trueArea } = offerArea(survey, measures, rule);
    return { wall: survey.wall.id, zone: measures.zone.id, trueArea, offerArea: area };
  });
}
