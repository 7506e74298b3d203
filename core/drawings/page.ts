/*
 * One drawing model for every document: pages as plain data, millimetres on paper, origin at the lower left
 * corner of the page, y up. Writers (PDF, screen preview) only translate it, so most tests read the page.
 */

import type { Paper } from '../job/paper-sizes';
import type { Mm } from '../units';

export interface PaperPoint {
  readonly x: Mm;
  readonly y: Mm;
}

/** ISO 128 line widths in use here. Wide to narrow is 2:1 on one drawing. */
export type LineWidth = 0.18 | 0.25 | 0.35 | 0.5 | 0.7 | 1;

/** ISO 128 line types. */
export type LineType = 'continuous' | 'dashed' | 'long-dashed-dotted' | 'long-dashed-double-dotted';

/** ISO 3098 nominal heights (height of a capital letter). */
export type TextHeight = 1.8 | 2.5 | 3.5 | 5 | 7 | 10 | 14;

/** Documents for the trade use ink, soft and red-lead only, so that they photocopy. */
export type Colour =
  'ink' | 'soft' | 'hairline' | 'red-lead' | 'wash' | 'water' | 'slate' | 'paper' | 'white';

export interface Stroke {
  readonly kind: 'stroke';
  readonly points: readonly PaperPoint[];
  readonly closed?: boolean;
  readonly width: LineWidth;
  readonly line?: LineType;
  readonly colour?: Colour;
}

/** Even-odd fill of rings, no outline. */
export interface Fill {
  readonly kind: 'fill';
  readonly rings: readonly (readonly PaperPoint[])[];
  readonly colour: Colour;
}

export interface Circle {
  readonly kind: 'circle';
  readonly centre: PaperPoint;
  readonly radius: Mm;
  readonly width?: LineWidth;
  readonly colour?: Colour;
  readonly fill?: Colour;
}

export interface TextStyle {
  readonly face?: 'sans' | 'condensed';
  readonly weight?: 'regular' | 'semi-bold';
}

export interface Text extends TextStyle {
  readonly kind: 'text';
  readonly text: string;
  /** On the baseline. */
  readonly at: PaperPoint;
  readonly height: TextHeight;
  readonly anchor?: 'start' | 'middle' | 'end';
  /** Degrees anticlockwise: 90 reads from the right, as ISO 129-1 asks of vertical dimensions. */
  readonly turned?: 0 | 90;
  readonly colour?: Colour;
}

/** Letters as they will stand on the wall, at its scale: no words of the drawing's own, so of any height. */
export interface Lettering extends Omit<Text, 'kind' | 'height' | 'turned'> {
  readonly kind: 'lettering';
  readonly height: Mm;
}

/** `#rrggbb`, of somebody's picture or of a finish; all else has a colour of the look. */
export type PictureColour = `#${string}`;

/** Lines and areas in colours of their own: of a picture that somebody loaded, or of a wall as it will look. */
export interface Art {
  readonly kind: 'art';
  readonly chains: readonly { readonly points: readonly PaperPoint[]; readonly closed: boolean }[];
  readonly fill: PictureColour | null;
  readonly evenOdd: boolean;
  readonly stroke: PictureColour | null;
  /** Of its lines, to scale. */
  readonly width: Mm;
  /** Of its areas and lines, above 0; absent: 1. */
  readonly opacity?: number;
}

/** A picture of pixels over a box, named by the SHA-256 of its bytes, which the writer is given. */
export interface Photograph {
  readonly kind: 'photograph';
  readonly photo: string;
  readonly left: Mm;
  readonly bottom: Mm;
  readonly width: Mm;
  readonly height: Mm;
}

export type Item = Stroke | Fill | Circle | Text | Lettering | Art | Photograph;

export type PaperFormat = Paper;

export interface Page {
  readonly format: PaperFormat;
  readonly landscape: boolean;
  readonly items: readonly Item[];
}

export interface LodeplanDocument {
  /** File name without ending: `setting-out-A`, `cut-sheets`, `cut-list`, `client-view`. */
  readonly name: string;
  readonly title: string;
  readonly pages: readonly Page[];
  /** What was bound together, in the order of the pages and covering them all; absent: nothing was bound. */
  readonly parts?: readonly DocumentPart[];
}

/** A document within a set. */
export interface DocumentPart {
  readonly title: string;
  /** Stands before the number of each of its pages: `3.` for 3.1, 3.2 … */
  readonly label: string;
  readonly pageCount: number;
}

/** Width of a text in mm for a capital height in mm. The font's own widths; kerning and ligatures off. */
export type TextMeasure = (text: string, height: Mm, style?: TextStyle) => Mm;
