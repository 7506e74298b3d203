import type { DrawnBudget } from '../../core/drawings/budget-sheet';
import type { LodeplanDocument } from '../../core/drawings/page';
import type { Pictures } from '../../core/drawings/pictures';
import type { DrawnAlternative } from '../../core/drawings/client-alternatives';
import type { Revision } from '../../core/job/schema';
import type { WorkedOut } from '../../core/worked-out';

/** What a plan is drawn beside: its alternatives once all are worked out, the revision issued before it. */
export interface DrawnBeside {
  readonly alternatives: readonly DrawnAlternative[];
  readonly since: Revision | undefined;
}

/** A file with its name and ending. */
export interface MadeFile {
  readonly name: string;
  readonly content: string | Uint8Array<ArrayBuffer>;
}

/** To the worker that draws and prints; answers carry the number of their order. */
export type PrintOrder =
  | {
      readonly order: number;
      readonly kind: 'compose';
      readonly worked: WorkedOut;
      readonly beside: DrawnBeside;
      readonly pictures: Pictures;
    }
  | { readonly order: number; readonly kind: 'workshop'; readonly worked: WorkedOut }
  | { readonly order: number; readonly kind: 'budget'; readonly budgets: readonly DrawnBudget[] }
  | {
      readonly order: number;
      readonly kind: 'holding-check';
      readonly worked: WorkedOut;
      /** Ids of the wall and of what hangs on it. */
      readonly wall: string;
      readonly item: string;
    }
  | {
      readonly order: number;
      readonly kind: 'print';
      readonly document: LodeplanDocument;
      readonly day: Date;
      readonly pictures: Pictures;
    }
  | {
      readonly order: number;
      readonly kind: 'bind';
      readonly worked: WorkedOut;
      readonly documents: readonly LodeplanDocument[];
      readonly day: Date;
      readonly pictures: Pictures;
    };

/** How far an order has come; its answer follows. */
export interface PrintProgress {
  readonly order: number;
  readonly wrote: number;
  readonly of: number;
}

export type PrintAnswer =
  | { readonly order: number; readonly documents: readonly LodeplanDocument[] }
  | { readonly order: number; readonly files: readonly MadeFile[] }
  | { readonly order: number; readonly pdf: Uint8Array<ArrayBuffer> }
  | { readonly order: number; readonly fault: string };
