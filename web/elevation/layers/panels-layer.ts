import type { Panel } from '../../../core/panels/panel';
import { boxOf, type Polygon } from '../../../core/geometry/polygon';
import { isPlainRectangle, numberFont, numberOn, sizeFont, sizeOn } from './panel-texts';
import { inks, screenBox, strokePolygon, traceRing, type Pen } from './pen';

export interface PanelsDrawing {
  readonly panels: readonly Panel[];
  /** Where by hand no panel is fixed. */
  readonly leftOut: readonly Polygon[];
  /** Only the joints, thin: another station's work is in the foreground. */
  readonly faint: boolean;
  /** Mark of the chosen panel. */
  readonly chosen: string | null;
}

/** The panels of a wall as one drawing: whole ones washed, cut ones hatched, joints and marks in red lead. */
export function paintPanels(pen: Pen, { panels, leftOut, faint, chosen }: PanelsDrawing): void {
  const { context } = pen;
  const all = tracePanels(pen, panels);
  context.save();
  context.strokeStyle = inks['red-lead'];
  context.lineWidth = 1;
  for (const outline of leftOut) strokePolygon(pen, outline, inks['red-lead'], 1, [4, 4]);
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

/** Setting a font is dearer than writing with it, so that all numbers come first, then all sizes. */
function paintMarks({ context, frame }: Pen, panels: readonly Panel[]): void {
  context.textBaseline = 'alphabetic';
  context.textAlign = 'left';
  context.font = numberFont;
  context.fillStyle = inks['red-lead'];
  const numbered = panels.filter((panel) => {
    const number = numberOn(frame, panel);
    if (number) context.fillText(number.text, number.x, number.y);
    return number !== null;
  });
  context.font = sizeFont;
  context.fillStyle = inks.ink;
  for (const panel of numbered) {
    const size = sizeOn(frame, panel, (words) => context.measureText(words).width);
    if (size) context.fillText(size.text, size.x, size.y);
  }
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
