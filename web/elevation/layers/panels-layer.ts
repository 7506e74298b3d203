import type { Panel } from '../../../core/panels/panel';
import { boxOf, isRectilinear } from '../../../core/geometry/polygon';
import { hundredthFigure } from '../../look/figures';
import { condensed, inks, screenBox, strokePolygon, traceRing, type Pen } from './pen';

export interface PanelsDrawing {
  readonly panels: readonly Panel[];
  /** Only the joints, thin: another station's work is in the foreground. */
  readonly faint: boolean;
  /** Mark of the chosen panel. */
  readonly chosen: string | null;
}

/** The panels of a wall as one drawing: whole ones washed, cut ones hatched, joints and marks in red lead. */
export function paintPanels(pen: Pen, { panels, faint, chosen }: PanelsDrawing): void {
  const { context } = pen;
  const all = tracePanels(pen, panels);
  context.save();
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1;
  if (faint) {
    context.globalAlpha = 0.3;
    context.stroke(all);
    context.restore();
    return;
  }
  context.fillStyle = 'rgb(233 185 164 / 34%)';
  context.fill(all, 'evenodd');
  const cut = panels.filter((panel) => !panel.full);
  if (cut.length > 0) {
    context.fillStyle = hatching(context);
    context.fill(tracePanels(pen, cut), 'evenodd');
  }
  context.stroke(all);
  paintMarks(pen, panels);
  const panel = panels.find(({ mark }) => mark === chosen);
  if (panel) strokePolygon(pen, panel.outline, inks['red-lead'], 3);
  context.restore();
}

function tracePanels({ frame }: Pen, panels: readonly Panel[]): Path2D {
  const path = new Path2D();
  for (const panel of panels) {
    if (isPlainRectangle(panel)) {
      const { x, y, width, height } = screenBox(frame, boxOf(panel.outline.outer));
      path.rect(x, y, width, height);
      continue;
    }
    traceRing(path, frame, panel.outline.outer);
    for (const hole of panel.outline.holes) traceRing(path, frame, hole);
  }
  return path;
}

/** The number within the zone, at the lower left, and the size of a cut panel where both fit at 12 px. */
function paintMarks({ context, frame }: Pen, panels: readonly Panel[]): void {
  context.textBaseline = 'alphabetic';
  // Setting a font is dearer than writing with it, so that all numbers come first, then all sizes.
  const sizes: (() => void)[] = [];
  context.font = `600 12px ${condensed}`;
  context.fillStyle = inks['red-lead'];
  context.textAlign = 'left';
  for (const panel of panels) {
    const box = boxOf(panel.outline.outer);
    const { x, y, width, height } = screenBox(frame, box);
    if (x > frame.width || y > frame.height || x + width < 0 || y + height < 0) continue;
    const number = numberOf(panel.mark);
    if (width < number.length * 7 + 8 || height < 17) continue;
    context.fillText(number, x + 5, y + height - 6);
    // Of a notched panel the size over all would mislead; its row in the schedule says all.
    if (panel.full || height < 40 || !isPlainRectangle(panel)) continue;
    const size = `${hundredthFigure(box.right - box.left)} × ${hundredthFigure(box.top - box.bottom)}`;
    sizes.push(() => {
      if (context.measureText(size).width <= width - 8)
        context.fillText(size, x + width / 2, y + height / 2 - 4);
    });
  }
  context.font = `12px ${condensed}`;
  context.fillStyle = inks.ink;
  context.textAlign = 'center';
  for (const write of sizes) write();
}

function isPlainRectangle({ outline }: Panel): boolean {
  return outline.holes.length === 0 && outline.outer.length === 4 && isRectilinear(outline);
}

/** `A-Z1-07` → `07`, as on the setting-out sheets and in the schedule. */
function numberOf(mark: string): string {
  return mark.slice(mark.lastIndexOf('-') + 1);
}

let pattern: { readonly of: CanvasRenderingContext2D; readonly fill: CanvasPattern | string } | null = null;

/** Thin lines at 45°, 6 px apart. */
function hatching(context: CanvasRenderingContext2D): CanvasPattern | string {
  if (pattern?.of === context) return pattern.fill;
  const ratio = Math.max(1, Math.round(window.devicePixelRatio));
  const tile = document.createElement('canvas');
  tile.width = tile.height = 6 * ratio;
  const pen = tile.getContext('2d')!;
  pen.scale(ratio, ratio);
  pen.strokeStyle = 'rgb(181 64 28 / 45%)';
  pen.lineWidth = 0.9;
  pen.beginPath();
  for (const shift of [-6, 0, 6]) {
    pen.moveTo(shift - 1, 7);
    pen.lineTo(shift + 7, -1);
  }
  pen.stroke();
  const fill = context.createPattern(tile, 'repeat');
  fill?.setTransform(new DOMMatrix().scale(1 / ratio));
  pattern = { of: context, fill: fill ?? inks.wash };
  return pattern.fill;
}
