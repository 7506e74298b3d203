import type { Finding } from '../finding';
import { nameOfWall, sentence } from '../job/names';
import type { Wall } from '../job/schema';
import { groundBlanks, plannedOn, type Planned } from './ground-blanks';

/*
 * What the ground says about what is planned on it. The limits are common practice, no source; the maker's data sheet
 * of the adhesive, filler or film goes first, and each sentence leaves room for it. What an escape route asks of the
 * layers stands with these (`core/build-up/rules-ground.ts`).
 */

/** Deepest hollow under 2 m that is levelled in the course of the work, mm. */
const levelled = { steel: 5, film: 2 };
/** Driest grounds that are still too moist to be shut in, per cent. */
const moist = { gypsum: 1, mineral: 2, timber: 12 };
/** Least pull-off strength of a coating that is bonded onto, N/mm². */
const leastPullOff = 0.5;

/** Not measured, blanks as one note, and combinations that will not do. */
export function groundFindings(wall: Wall): Finding[] {
  const say = (level: Finding['level'], code: string, text: string): Finding => ({
    level,
    code,
    wall: wall.id,
    text,
  });
  const name = sentence(nameOfWall(wall));
  return [
    ...(wall.surveyed === false
      ? [
          say(
            'warning',
            'not-surveyed',
            `${name} is for a budget only, subject to survey: measure it on site, then mark it as surveyed under Ground at Survey.`,
          ),
        ]
      : []),
    ...blankNote(wall, name, say),
    ...(wall.zones.length === 0 ? [] : combinations(plannedOn(wall), name, say)),
  ];
}

type Say = (level: Finding['level'], code: string, text: string) => Finding;

function blankNote(wall: Wall, name: string, say: Say): Finding[] {
  const blanks = groundBlanks(wall);
  if (blanks.length === 0) return [];
  const words = blanks.map((blank) => blank.words);
  const list = words.length > 1 ? `${words.slice(0, -1).join(', ')} and ${words.at(-1)!}` : words[0]!;
  return [
    say(
      'note',
      'ground-not-recorded',
      `${name}: not recorded ${list}. Fill it in under Ground at Survey; what stays blank is a reservation in an offer.`,
    ),
  ];
}

function combinations(planned: Planned, name: string, say: Say): Finding[] {
  const { steel, film, coat, ground } = planned;
  const findings: Finding[] = [];
  const { hollow, moisture, adhesion, exposure } = ground;
  if (hollow !== undefined && steel && hollow > levelled.steel) {
    const says = `${name} has hollows of ${hollow} mm under 2 m, more than the ${levelled.steel} mm that adhesive and filler usually level behind steel panels: level the ground first.`;
    findings.push(say('warning', 'ground-hollow-steel', says));
  }
  if (hollow !== undefined && film && hollow > levelled.film) {
    const says = `${name} has hollows of ${hollow} mm under 2 m and film shows each one over ${levelled.film} mm: level and fill the ground before the film.`;
    findings.push(say('warning', 'ground-unlevel-film', says));
  }
  if (steel && (exposure === 'damp' || exposure === 'outdoor')) {
    const says = `${name} is ${exposure === 'damp' ? 'damp' : 'outdoors'} and steel shuts the moisture in: it rusts and comes off; find the cause and dry the wall, or choose another wall.`;
    findings.push(say('warning', 'ground-damp-steel', says));
  } else if (steel && moisture && isTooMoist(planned)) {
    const says = `${name} was found at ${moisture.value} ${moisture.unit}, too moist to be shut in behind steel: let it dry to what the adhesive's maker allows and measure again.`;
    findings.push(say('warning', 'ground-damp-steel', says));
  }
  if (adhesion && !holds(adhesion)) {
    const says = `The old coating of ${name.replace(/^W/, 'w')} does not hold (${adhesion.test}: ${resultInWords(adhesion)}): take it off before anything is bonded or coated onto it.`;
    findings.push(say('warning', 'ground-old-coating', says));
  }
  if (coat && ground.suction === 'strong') {
    const says = `${name} draws in water strongly, so a coat dries before it levels: prime it first, as the coat's maker says.`;
    findings.push(say('note', 'ground-strong-suction', says));
  }
  if (steel && exposure === 'heated-behind') {
    const says = `${name} is heated from behind: ask the adhesive's maker for the warmth that it stands, and give the panels the joint gap that they need to grow.`;
    findings.push(say('note', 'ground-heated', says));
  }
  return findings;
}

/** Digits are the instrument's own scale: nothing follows from them here. */
function isTooMoist({ ground: { material = '', moisture } }: Planned): boolean {
  if (!moisture || moisture.unit === 'digits') return false;
  if (material === 'timber') return moisture.unit === '%' && moisture.value > moist.timber;
  const isGypsum = material === 'gypsum-board' || material === 'bare-plaster';
  return moisture.value > (isGypsum ? moist.gypsum : moist.mineral);
}

/**
 * Classes from memory: ISO 16276-2 counts as ISO 2409 does, 0 (nothing comes off) to 5; ASTM D3359 the other way
 * round, 5 (nothing) to 0. A coating of up to class 2, or from class 3, is taken to hold: up to 15 per cent came off.
 */
function holds({ test, result }: NonNullable<Planned['ground']['adhesion']>): boolean {
  if (test === 'ISO 16276-2') return result <= 2;
  if (test === 'ASTM D3359') return result >= 3;
  return result >= leastPullOff;
}

function resultInWords({ test, result }: NonNullable<Planned['ground']['adhesion']>): string {
  return test === 'ISO 4624' || test === 'EN 1542' ? `${result} N/mm²` : `class ${result}`;
}
