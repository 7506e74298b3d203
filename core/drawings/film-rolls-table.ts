import { piecesOfPlan } from '../quantities/film-pieces';
import type { RollCuts } from '../quantities/roll-cuts';
import type { TakeOff } from '../quantities/take-off';
import type { FlowColumn, FlowRow } from './flow-table';
import type { PaperFigures } from './paper-figures';

/** A film of a job and how its pieces are dealt out to rolls. */
export interface FilmOnRolls {
  readonly id: string;
  readonly name: string;
  readonly cuts: RollCuts;
}

export const rollColumns: readonly FlowColumn[] = [
  { heading: 'Roll', align: 'left', width: 12 },
  { heading: 'Length', align: 'right', width: 20 },
  { heading: 'Left over', align: 'right', width: 22 },
  { heading: 'Cut from it, the longest first', align: 'left', width: 116 },
];

/** For each film its rolls: what is cut from each, the longest strip first, and what is left of it. */
export function rollRows(
  films: readonly FilmOnRolls[],
  { films: laid, needs }: Pick<TakeOff, 'films' | 'needs'>,
  { run, cut }: PaperFigures,
): FlowRow[] {
  return films.flatMap(({ id, name, cuts }): FlowRow[] => {
    const taken = laid
      .filter(({ product }) => product === id)
      .flatMap(({ wall, zone, layer, plan }) => {
        const marks = piecesOfPlan(plan, { overlap: 0, trim: 0 });
        return needs
          .filter((need) => need.wall === wall && need.zone === zone && need.layer === layer)
          .flatMap((need) =>
            (cuts.ofNeed.get(need) ?? []).map((roll, i) => ({
              roll,
              length: marks[i]!.ends - marks[i]!.begins,
              where: `${wall}-${zone} strip ${marks[i]!.mark}`,
            })),
          );
      })
      .sort((a, b) => b.length - a.length);
    return [
      { kind: 'group', text: name },
      ...cuts.rolls.map(({ length, left }, i): FlowRow => {
        const own = taken.filter(({ roll }) => roll === i + 1);
        return {
          kind: 'row',
          cells: [
            String(i + 1),
            run(length),
            run(left),
            own.map((piece) => `${cut(piece.length)} for ${piece.where}`).join(', ') || '–',
          ],
        };
      }),
    ];
  });
}
