import Konva from 'konva/lib/Core';

/** From the back to the front; those of one canvas are painted together, as each canvas more costs in every frame. */
const canvases = [
  ['photo'],
  ['wall', 'room', 'zones'],
  ['panels'],
  ['markings', 'objects', 'hung'],
  ['hand'],
] as const;
export type LayerName = (typeof canvases)[number][number];

/** Draws one layer, in CSS px of the drawing. */
export type Paint = (context: CanvasRenderingContext2D) => void;

interface PaintedLayer {
  /** Shared by those of one canvas. */
  readonly canvas: Konva.Layer;
  paint: Paint;
  timer?: ReturnType<typeof setTimeout> | undefined;
}

/**
 * The drawing surface: a stack of canvases that hold a custom shape for each layer and listen to nothing, so that a
 * canvas is painted again only when what it shows has changed. Hits are found from the wall's geometry, not here.
 */
export class Stage {
  readonly #stage: Konva.Stage;
  readonly #layers: Record<LayerName, PaintedLayer>;
  #ratio: MediaQueryList | undefined;

  constructor(container: HTMLDivElement) {
    this.#stage = new Konva.Stage({ container, listening: false });
    const layers = canvases.flatMap((names) => this.#addCanvas(names));
    this.#layers = Object.fromEntries(layers) as Record<LayerName, PaintedLayer>;
    this.#sharpen();
    document.fonts.addEventListener('loadingdone', this.#redraw);
  }

  /** Shows something else on a layer, at the next animation frame. */
  paint(name: LayerName, paint: Paint): void {
    const entry = this.#layers[name];
    clearTimeout(entry.timer);
    entry.timer = undefined;
    entry.paint = paint;
    entry.canvas.batchDraw();
  }

  /** The same, but at most every `ms`: for what is dear to draw and may lag a little behind the hand. */
  paintAtPace(name: LayerName, paint: Paint, ms: number): void {
    const entry = this.#layers[name];
    entry.paint = paint;
    entry.timer ??= setTimeout(() => this.paint(name, entry.paint), ms);
  }

  resize(width: number, height: number): void {
    this.#stage.size({ width, height });
  }

  destroy(): void {
    this.#ratio?.removeEventListener('change', this.#sharpen);
    for (const { timer } of Object.values(this.#layers)) clearTimeout(timer);
    document.fonts.removeEventListener('loadingdone', this.#redraw);
    this.#stage.destroy();
  }

  /** Canvases keep as many pixels as the screen has, also after it was zoomed or changed. */
  readonly #sharpen = (): void => {
    this.#ratio?.removeEventListener('change', this.#sharpen);
    this.#ratio = matchMedia(`(resolution: ${devicePixelRatio}dppx)`);
    this.#ratio.addEventListener('change', this.#sharpen);
    for (const canvas of this.#stage.getLayers()) {
      canvas.getCanvas().setPixelRatio(devicePixelRatio);
      canvas.batchDraw();
    }
  };

  /** Text drawn before its font had arrived is drawn again. */
  readonly #redraw = (): void => {
    this.#stage.batchDraw();
  };

  #addCanvas(names: readonly LayerName[]): [LayerName, PaintedLayer][] {
    const canvas = new Konva.Layer({ listening: false });
    const layers = names.map((name): [LayerName, PaintedLayer] => {
      const entry: PaintedLayer = { canvas, paint: () => {} };
      canvas.add(
        new Konva.Shape({
          listening: false,
          perfectDrawEnabled: false,
          sceneFunc: (context) => {
            context.save();
            entry.paint(context._context as CanvasRenderingContext2D);
            context.restore();
          },
        }),
      );
      return [name, entry];
    });
    this.#stage.add(canvas);
    return layers;
  }
}
