import type { MmBox, MmPoint } from '../../core/job/shape';

/** A point on the screen: CSS px from the top left corner of the drawing, y down. */
export interface ScreenPoint {
  readonly px: number;
  readonly py: number;
}

/** How the wall lies on the screen. `originX`, `originY`: where the datum is, in px. `scale`: px per mm. */
export interface Frame {
  readonly scale: number;
  readonly originX: number;
  readonly originY: number;
  readonly width: number;
  readonly height: number;
}

/** px per mm: a 400 m wall still fits a tablet, and a hundredth of a millimetre is never wider than a pixel. */
const leastScale = 0.0008;
const greatestScale = 20;

export function toScreen(frame: Frame, { x, y }: MmPoint): ScreenPoint {
  return { px: frame.originX + x * frame.scale, py: frame.originY - y * frame.scale };
}

/** Not rounded. */
export function toWall(frame: Frame, { px, py }: ScreenPoint): MmPoint {
  return { x: (px - frame.originX) / frame.scale, y: (frame.originY - py) / frame.scale };
}

/** The frame that shows a whole box, in the middle, with a margin in px on every side. */
export function fitFrame(box: MmBox, width: number, height: number, margin: Margin): Frame {
  const free = {
    width: Math.max(20, width - margin.left - margin.right),
    height: Math.max(20, height - margin.top - margin.bottom),
  };
  const scale = clampScale(Math.min(free.width / (box.width || 1), free.height / (box.height || 1)));
  return {
    scale,
    originX: margin.left + (free.width - box.width * scale) / 2 - box.x * scale,
    originY: margin.top + (free.height + box.height * scale) / 2 + box.y * scale,
    width,
    height,
  };
}

export interface Margin {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export function panned(frame: Frame, dx: number, dy: number): Frame {
  return { ...frame, originX: frame.originX + dx, originY: frame.originY + dy };
}

/** Zoomed so that the wall's point under the cursor stays under it. */
export function zoomedAt(frame: Frame, at: ScreenPoint, factor: number): Frame {
  const scale = clampScale(frame.scale * factor);
  const ratio = scale / frame.scale;
  return {
    ...frame,
    scale,
    originX: at.px + (frame.originX - at.px) * ratio,
    originY: at.py + (frame.originY - at.py) * ratio,
  };
}

function clampScale(scale: number): number {
  return Math.min(greatestScale, Math.max(leastScale, scale));
}
