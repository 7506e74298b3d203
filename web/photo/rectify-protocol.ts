import type { Homography } from '../../core/geometry/homography';
import type { RectifiedArea } from '../../core/geometry/rectify';

export interface RectifyRequest {
  readonly number: number;
  /** Its name: a photo that is asked for again need not be read again. */
  readonly photo: string;
  readonly bytes: Blob;
  readonly toPhoto: Homography;
  readonly area: RectifiedArea;
}

export type RectifyReply =
  /** `levels`: each half as fine as the one before, for a wall seen from farther away. */
  | { readonly number: number; readonly levels: readonly ImageBitmap[] }
  | { readonly number: number; readonly fault: string };
