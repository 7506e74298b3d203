import { describe, expect, it } from 'vitest';
import type { HungVerdict } from '../../../core/holding/judge-wall';
import { emptyJob, newWall } from '../../../core/job/defaults';
import { addHung, setPeopleBelow } from '../../../core/job/hung';
import { newHung } from '../../../core/job/hung-kinds';
import { spreadPlaces } from '../../../core/job/hung-places';
import { findWall } from '../../../core/job/shape';
import { workOutFully } from '../../../core/run/pipeline';
import { hangingFigure } from '../../../web/hanging/hanging-figure';
import { asFields, faultOfFields, hungFields, patchOf } from '../../../web/hanging/hung-fields';
import { parseMagnetCount, parseWeight } from '../../../web/hanging/parse-hung';
import { factorFigure, stateOnDrawing, stateWords } from '../../../web/hanging/state-words';
import { countMagnets, hungInto, setHungKind } from '../../../web/job/changes/hung';
import { withValueAt } from '../../../web/price/setting-fields';

const verdict = (patch: Partial<HungVerdict>): HungVerdict => ({
  id: 'H1',
  verdict: 'holds',
  isScrewed: false,
  reasons: [],
  zones: [],
  panels: [],
  ...patch,
});

const wall = newWall('A', 'Proofing wall', 4200, 2600);
const job = { ...emptyJob('Studio'), walls: [wall] };
const shelf = newHung(job, wall, 'shelf', { x: 500, y: 1200 });

describe('states in words', () => {
  it('never round a factor up', () => {
    expect([2.99, 3, 4.96, 1, 0.04, 12.9].map(factorFigure)).toEqual([
      '2.9',
      '3.0',
      '4.9',
      '1.0',
      'under 0.1',
      '12',
    ]);
  });

  it('say how often it holds and how often is asked; on the drawing they shrink', () => {
    expect(stateWords(verdict({ factor: 2.99, asked: 3, verdict: 'does not hold' }))).toBe(
      'does not hold: 2.9 times, 3 asked',
    );
    expect(stateWords(verdict({ verdict: 'cannot be judged' }))).toBe('cannot be judged');
    expect(stateOnDrawing(verdict({ verdict: 'holds only if tested', factor: 4 }))).toEqual([
      'holds only if tested, 4.0 times',
      'holds only if tested',
      'only if tested',
    ]);
    expect(stateOnDrawing(verdict({ isScrewed: true, verdict: 'cannot be judged' }))[0]).toBe(
      'screwed to a fixing point',
    );
  });

  it('say no factor beside words that it would contradict', () => {
    const barred = verdict({ verdict: 'does not hold', factor: 6.5, asked: 5 });
    expect(stateWords(barred)).toBe('does not hold');
    expect(stateOnDrawing(barred)).toEqual(['does not hold']);
    expect(stateWords(verdict({ verdict: 'cannot be judged', factor: 7, asked: 3 }))).toBe(
      'cannot be judged',
    );
  });

  it('the figure of the station counts plain holds only, and says when nobody has said who is below', () => {
    const hung = addHung(job, 'A', shelf);
    const figure = hangingFigure(workOutFully(hung).walls[0]!);
    expect(figure).toMatchObject({ figure: '0', unit: 'of 1 item holds' });
    expect(figure.rows).toContainEqual({ label: 'Cannot be judged', value: '1' });
    expect(figure.rows).toContainEqual({ label: 'People below', value: 'nobody has said' });
    const said = hangingFigure(workOutFully(setPeopleBelow(hung, 'A', [])).walls[0]!);
    expect(said.rows).toContainEqual({ label: 'People below', value: 'nobody' });
  });
});

describe('fields of an item', () => {
  it('how a load or a pull acts is refused as long as it is none, instead of being lost', () => {
    const bare = { ...shelf, load: undefined };
    const reach = withValueAt(asFields(bare), 'load.reach', 100);
    expect(faultOfFields(reach, bare)).toContain('how much it carries');
    expect(faultOfFields(withValueAt(asFields(shelf), 'pull.angle', 45), shelf)).toContain('how hard');
    expect(faultOfFields(withValueAt(asFields(shelf), 'load.weight', undefined), shelf)).toBeUndefined();
    expect(faultOfFields(withValueAt(asFields(shelf), 'pull.force', 20), shelf)).toBeUndefined();
  });

  it('a load without a weight is none; what is needed beside a weight is as usual', () => {
    const bare = { ...shelf, load: undefined };
    const given = withValueAt(asFields(bare), 'load.weight', 3);
    expect(patchOf(given, bare).load).toEqual({ weight: 3, reach: shelf.depth });
    const gone = withValueAt(asFields(shelf), 'load.weight', undefined);
    expect(patchOf(gone, shelf).load).toBeUndefined();
    const pulled = withValueAt(asFields(shelf), 'pull.force', 20);
    expect(patchOf(pulled, shelf).pull).toEqual({ force: 20, angle: 0, reach: shelf.depth });
  });

  it('a marking is one choice, and one that is gone stays among them', () => {
    const lost = { ...shelf, marking: { zone: 'Z9', marking: 'M1' } };
    const field = hungFields(wall, lost)
      .flatMap(({ fields }) => fields)
      .find(({ path }) => path === 'on')!;
    expect(JSON.stringify(field.kind)).toContain('M1 on Z9, which is gone');
    expect(patchOf(asFields(lost), lost).marking).toEqual(lost.marking);
  });

  it('nonsense gets a sentence', () => {
    expect(parseWeight('0,35 kg')).toEqual({ value: 0.35 });
    expect(parseWeight('')).toEqual({ value: undefined });
    for (const text of ['heavy', '-1', '1e9', 'NaN']) expect(parseWeight(text)).toHaveProperty('fault');
    expect(parseMagnetCount('4')).toEqual({ value: 4 });
    for (const text of ['', '1.5', '-1', '201']) expect(parseMagnetCount(text)).toHaveProperty('fault');
  });
});

describe('changes of an item', () => {
  it('another number of magnets is spread over it; none takes them off', () => {
    const hung = addHung(job, 'A', shelf);
    const six = countMagnets(wall, shelf, 6, 'N42-20x5').change(hung);
    const places = findWall(six, 'A')!.hung![0]!.magnets!.places;
    expect(places).toHaveLength(6);
    for (const [x, y] of places) {
      expect(x >= 0 && x <= shelf.width && y >= 0 && y <= shelf.height).toBe(true);
    }
    const none = countMagnets(wall, shelf, 0, 'N42-20x5').change(hung);
    expect(findWall(none, 'A')!.hung![0]!.magnets).toBeUndefined();
    expect(spreadPlaces({ width: 300, height: 400 }, 4)).toEqual([
      [20, 380],
      [280, 380],
      [20, 20],
      [280, 20],
    ]);
    expect(spreadPlaces({ width: 10, height: 10 }, 1)).toEqual([[5, 5]]);
  });

  it('put into a box it keeps its magnets in proportion', () => {
    const wide = hungInto(shelf, { x: 0, y: 0, width: shelf.width * 2, height: shelf.height });
    expect(wide.magnets!.places.map(([x]) => x)).toEqual(shelf.magnets!.places.map(([x]) => 2 * x));
  });

  it('another kind brings its own use, unless another was chosen', () => {
    const hung = addHung(job, 'A', shelf);
    const use = (item: typeof shelf) =>
      findWall(setHungKind(job, wall, item, 'print').change(addHung(job, 'A', item)), 'A')!.hung![0]!.use;
    expect(hung.walls[0]!.hung![0]!.use).toBe('could-hurt');
    expect(use(shelf)).toBeUndefined();
    expect(use({ ...shelf, use: 'handled' })).toBe('handled');
  });
});
