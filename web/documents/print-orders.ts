import type { LodeplanDocument } from '../../core/drawings/page';
import type { WorkedOut } from '../../core/worked-out';

/** To the worker that draws and prints; answers carry the number of their order. */
export type PrintOrder =
  | { readonly order: number; readonly kind: 'compose'; readonly worked: WorkedOut }
  | {
      readonly order: number;
      readonly kind: 'print';
      readonly document: LodeplanDocument;
      readonly day: Date;
    };

export type PrintAnswer =
  | { readonly order: number; readonly documents: readonly LodeplanDocument[] }
  | { readonly order: number; readonly pdf: Uint8Array<ArrayBuffer> }
  | { readonly order: number; readonly fault: string };
