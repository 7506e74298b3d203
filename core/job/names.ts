import type { FixingPoint } from './ground-schema';
import { hungKindInWords } from './hung-kinds';
import type { HungItem } from './hung-schema';
import type { Fitting, Opening, SurveyLine, Wall, Zone } from './schema';

/** `wall A (Proofing wall)` */
export function nameOfWall({ id, name }: Wall): string {
  return withName(`wall ${id}`, name);
}

/** `zone Z1 (Proofs)` */
export function nameOfZone({ id, name }: Zone): string {
  return withName(`zone ${id}`, name);
}

/** `socket K4 (Light table)`; what is of no kind of its own is called by the list it stands in. */
export function nameOfPlaced({ kind, id, name }: Opening | Fitting, list: 'opening' | 'fitting'): string {
  return withName(`${kindInWords(kind, list)} ${id}`, name);
}

/** `shelf H2 (Ink tins)` */
export function nameOfHung({ kind, id, name }: HungItem): string {
  return withName(`${hungKindInWords(kind)} ${id}`, name);
}

/** `beam end`; a kind that someone has named stays as it was written. */
export function kindInWords(kind: string, list: 'opening' | 'fitting'): string {
  if (kind === 'free') return list;
  return /^[a-z]+(-[a-z]+)+$/.test(kind) ? kind.replaceAll('-', ' ') : kind;
}

/** What is called a hole in the file is called a drilling: a hole is what a zone or a panel has. */
export const fixingPointNames: Readonly<Record<FixingPoint['kind'], string>> = {
  stud: 'stud',
  pattress: 'pattress',
  hole: 'drilling',
};

export const surveyLineNames: Readonly<Record<SurveyLine['kind'], string>> = {
  'board-joint': 'board joint',
  'movement-joint': 'movement joint',
  cable: 'concealed cable',
  pipe: 'concealed pipe',
};

/** `drilling X1 (shelf)` */
export function nameOfFixingPoint({ kind, id, name }: FixingPoint): string {
  return withName(`${fixingPointNames[kind]} ${id}`, name);
}

export function sentence(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function withName(words: string, name: string | undefined): string {
  return name ? `${words} (${name})` : words;
}
