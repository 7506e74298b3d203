import Konva from 'konva/lib/Core';

/** From the back to the front. */
export const layerNames = [
  'photo',
  'wall',
  'room',
  'zones',
  'panels',
  'markings',
  'objects',
  'hand',
] as const;
export type LayerName = (typeof layerNames)[number];

/** Draws one layer, in CSS px of the drawing. */
export type Paint = (context: CanvasRenderingContext2D) => void;

interface PaintedLayer {
  readonly layer: Konva.Layer;
  paint: Paint;
  timer?: ReturnType<typeof setTimeout> | undefined;
}

/**
 * The drawing surface: a stack of layers that each hold one custom shape and listen to nothing, so that a layer
 * is painted again only when what it shows has changed. Hits are found from the wall's geometry, not here.
 */
export class Stage {
  readonly #stage: Konva.Stage;
  readonly #layers: Record<LayerName, PaintedLayer>;
  #ratio: MediaQueryList | undefined;

  constructor(container: HTMLDivElement) {
    this.#stage = new Konva.Stage({ container, listening: false });
    this.#layers = Object.fromEntries(layerNames.map((name) => [name, this.#addLayer()])) as Record<
      LayerName,
      PaintedLayer
    >;
    this.#sharpen();
    document.fonts.addEventListener('loadingdone', this.#redraw);
  }

  /** Shows something else on a layer, at the next animation frame. */
  paint(name: LayerName, paint: Paint): void {
    const entry = this.#layers[name];
    clearTimeout(entry.timer);
    entry.timer = undefined;
    entry.paint = paint;
    entry.layer.batchDraw();
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
    for (const { layer } of Object.values(this.#layers)) {
      layer.getCanvas().setPixelRatio(devicePixelRatio);
      layer.batchDraw();
    }
  };

  /** Text drawn before its font had arrived is drawn again. */
  readonly #redraw = (): void => {
    this.#stage.batchDraw();
  };

  #addLayer(): PaintedLayer {
    const entry: PaintedLayer = {
      layer: new Konva.Layer({ listening: false }),
      paint: () => {},
    };
    entry.layer.add(
      new Konva.Shape({
        listening: false,
        perfectDrawEnabled: false,
        sceneFunc: (context) => entry.paint(context._context as CanvasRenderingContext2D),
      }),
    );
    this.#stage.add(entry.layer);
    return entry;
  }
}
