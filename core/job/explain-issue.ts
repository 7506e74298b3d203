import type * as v from 'valibot';
import type { Finding } from '../finding';
import { refusal, shown, type Path } from './place';

type Issue = v.BaseIssue<unknown>;

/**
 * What the schema library found, said as a refusal: path, object, wrong value, mend.
 *
 * @param file the whole value that was checked
 */
export function explainIssue(file: unknown, issue: Issue): Finding {
  const { issue: inner, path } = innermost(issue, pathOf(issue));
  const key = [...path].reverse().find((step) => typeof step === 'string');
  return refusal(file, path, codeOf(inner), sentence(inner, typeof key === 'string' ? key : ''));
}

/**
 * A value that may be one of two things is judged as the one it looks like: a list as a point, an object as an
 * arc or a pair of coordinates. Otherwise the message would complain about both.
 */
function innermost(issue: Issue, path: Path): { issue: Issue; path: Path } {
  if (issue.type !== 'union' || typeof issue.input !== 'object' || issue.input === null) {
    return { issue, path };
  }
  const container = Array.isArray(issue.input) ? 'array' : 'object';
  const branch = issue.issues?.find((sub) => sub.path?.[0].type === container);
  return branch ? innermost(branch, [...path, ...pathOf(branch)]) : { issue, path };
}

function pathOf(issue: Issue): Path {
  return (issue.path ?? []).map((item) => item.key as string | number);
}

function codeOf(issue: Issue): string {
  if (isMissing(issue)) return 'missing-field';
  switch (issue.type) {
    case 'min_value':
    case 'max_value':
    case 'lt_value':
    case 'integer':
    case 'finite':
      return 'number-out-of-range';
    case 'min_length':
      return Array.isArray(issue.input) ? 'too-few-points' : 'empty-text';
    case 'max_length':
      return 'too-many';
    default:
      return 'wrong-value';
  }
}

function sentence(issue: Issue, key: string): string {
  if (isMissing(issue)) return `is missing; ${mend(issue, key)}.`;
  if (issue.type === 'min_length' && Array.isArray(issue.input)) {
    return `has ${issue.input.length} ${issue.input.length === 1 ? 'point' : 'points'}; give at least 3.`;
  }
  if (issue.type === 'max_length') {
    const count = (issue.input as string | unknown[]).length;
    const unit = Array.isArray(issue.input) ? 'entries' : 'characters';
    return `has ${count} ${unit}; the limit is ${String(issue.requirement)}.`;
  }
  return `is ${shown(issue.input)}; ${mend(issue, key)}.`;
}

/** A field that must be there and is not; a tuple that is too short counts too. */
function isMissing(issue: Issue): boolean {
  return issue.input === undefined && issue.expected !== 'never';
}

function mend(issue: Issue, key: string): string {
  const of = unitOf(key);
  switch (issue.type) {
    case 'number':
      return `give a number${measuredIn(key)}, without quotes`;
    case 'finite':
      return `give a finite number${measuredIn(key)}`;
    case 'integer':
      return 'give a whole number';
    case 'min_value':
      return issue.requirement === 0
        ? `give 0 or more${of}`
        : `give at least ${String(issue.requirement)}${of}`;
    case 'max_value':
      return `give at most ${String(issue.requirement)}${of}`;
    case 'lt_value':
      return `give less than ${String(issue.requirement)}${of}`;
    case 'picklist':
    case 'literal':
      return `give ${issue.expected?.replace(/^\(|\)$/g, '').replaceAll(' | ', ' or ') ?? 'another value'}`;
    case 'string':
      return 'give text in quotes';
    case 'min_length':
      return 'give at least one character';
    case 'regex':
      return key === 'currency'
        ? 'give the three capital letters of a currency, such as EUR'
        : key === 'id' || key === 'photo'
          ? "give the SHA-256 of the photo's bytes, 64 figures from 0 to f"
          : 'give other text';
    case 'boolean':
      return 'give true or false';
    case 'array':
      return 'give a list in square brackets';
    case 'strict_tuple':
      return issue.expected === 'never'
        ? `take it out: only two numbers belong here`
        : 'give two numbers in square brackets';
    case 'union':
      return key === 'start'
        ? 'give {"x": …, "y": …} or the name of a start, such as "best" or "lower-left"'
        : handPlaces.has(key)
          ? 'give a number in mm, or an edge {"of": …, "id": …, "side": …}'
          : 'give a point [x, y] or an arc {"arcTo": [x, y], "via": [x, y]}';
    case 'record':
      return 'give an object in braces with a list under the id of each wall';
    case 'loose_object':
      // A missing key is reported by its object; what belongs there is only known by the field's name.
      return isMissing(issue) ? `give ${fieldInWords(key)}` : 'give an object with named fields in braces';
    default:
      return `give ${issue.expected ?? 'another value'}`;
  }
}

/** Fields that a choice by hand names a place by. */
const handPlaces = new Set(['x', 'y', 'left', 'right', 'bottom', 'top']);

function fieldInWords(key: string): string {
  switch (key) {
    case 'outline':
    case 'shape':
      return 'its points as [[x, y], …]';
    case 'arcTo':
    case 'via':
      return 'a point [x, y]';
    case 'id':
      return 'each a short name that no other here has';
    case 'buildUp':
      return 'what it is made of, such as "steel-panel"';
    case 'stock':
      return 'the id of a stock sheet';
    case 'kind':
      return 'what it is, such as "door" or "socket"';
    case 'name':
    case 'date':
      return 'it as text';
    default:
      return `a number${measuredIn(key)}`;
  }
}

function measuredIn(key: string): string {
  const unit = unitOf(key);
  return unit.startsWith(' in ') || unit === '' ? unit : ` of${unit}`;
}

function unitOf(key: string): string {
  switch (key) {
    case 'price':
    case 'rate':
    case 'amount':
    case 'setUp':
    case 'travel':
    case 'parking':
    case 'wasteRemoval':
    case 'minimumCharge':
      return " in the job's currency";
    case 'percent':
    case 'overhead':
    case 'markup':
    case 'discount':
    case 'deposit':
    case 'retention':
    case 'below':
    case 'above':
      return ' per cent';
    case 'leastArea':
      return ' mm²';
    case 'area':
      return ' m²';
    case 'visits':
    case 'days':
    case 'validityDays':
    case 'quantity':
    case 'spares':
    case 'stagger':
    case 'version':
      return '';
    default:
      return ' mm';
  }
}
