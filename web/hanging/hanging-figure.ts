import type { PeopleBelow } from '../../core/job/hung-schema';
import { kindWordsOfPeople } from '../../core/job/people-below';
import type { WorkedWall } from '../../core/worked-out';
import type { KeyFigure } from '../findings/key-figure';
import { hungStates, stateOf } from './state-words';

/** How many of the wall's items plainly hold, and what is said of the others. */
export function hangingFigure({ hung, survey }: WorkedWall): KeyFigure {
  const heading = 'Hung items, this wall';
  const below = survey.wall.peopleBelow;
  const people = {
    label: 'People below',
    value: below === undefined ? 'nobody has said' : peopleInWords(below),
  };
  if (hung.length === 0)
    return {
      heading,
      figure: '0',
      unit: 'items hang here',
      proof: 'Put in what is to hang here; whether it holds is then worked out.',
      rows: [people],
    };
  const count = (state: (typeof hungStates)[number]) =>
    hung.filter((verdict) => stateOf(verdict) === state).length;
  return {
    heading,
    figure: String(count('holds')),
    unit: `of ${hung.length} ${hung.length === 1 ? 'item holds' : 'items hold'}`,
    proof: 'Test each on site with its real magnet before use.',
    rows: [
      ...hungStates
        .slice(1)
        .flatMap((state) =>
          count(state) > 0 ? [{ label: stateLabel(state), value: String(count(state)) }] : [],
        ),
      people,
    ],
  };
}

/** `bed, walkway`; of more than two kinds, in how many places. */
function peopleInWords(below: readonly PeopleBelow[]): string {
  const kinds = [...new Set(below.map(({ kind }) => kindWordsOfPeople[kind]))];
  if (kinds.length > 2) return `in ${below.length} places`;
  return kinds.join(', ') || 'nobody';
}

function stateLabel(state: string): string {
  return state.charAt(0).toUpperCase() + state.slice(1);
}
