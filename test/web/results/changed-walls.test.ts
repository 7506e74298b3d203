import { describe, expect, it } from 'vitest';
import { demoJob } from '../../../core/job/demo';
import { workOutFully } from '../../../core/run/pipeline';
import { surveyWall } from '../../../core/survey/survey';
import type { WorkedWall } from '../../../core/worked-out';
import { packWalls, unpackWalls } from '../../../web/results/changed-walls';

const [a, b, c] = demoJob().walls.map((wall): WorkedWall => ({
  survey: surveyWall(wall),
  zones: [],
  hung: [],
  hungFindings: [],
}));

describe('walls on their way from the worker', () => {
  it('sends a wall once, and its place from then on', () => {
    expect(packWalls([a!, b!], [])).toEqual([a, b]);
    expect(packWalls([c!, b!], [a!, b!])).toEqual([c, 1]);
  });

  it('arrives as it was sent, in any order, over any number of replies', () => {
    let [sent, received]: WorkedWall[][] = [[], []];
    for (const walls of [[a!, b!, c!], [c!, a!], [], [b!], [b!, b!, a!]]) {
      const message = structuredClone(packWalls(walls, sent!));
      received = unpackWalls(message, received!);
      sent = walls;
      expect(received).toEqual(walls);
    }
  });

  it('is told from a fault of ours when a wall is missing', () => {
    expect(() => unpackWalls([3], [a!])).toThrow('never received');
  });

  it('sends of a wall that changed only the layouts that did', () => {
    const [wall] = workOutFully(demoJob()).walls;
    const steel = wall!.zones.findIndex(({ layout }) => layout);
    const changed = { ...wall!, survey: surveyWall({ ...wall!.survey.wall, name: 'Renamed' }) };
    const sent = structuredClone(packWalls([changed], [wall!]));
    expect(sent[0]).toMatchObject({ zones: { [steel]: { layout: 0 } } });
    const [received] = unpackWalls(sent, [wall!]);
    expect(received).toEqual(changed);
    expect(received!.zones[steel]!.layout).toBe(wall!.zones[steel]!.layout);
  });
});
