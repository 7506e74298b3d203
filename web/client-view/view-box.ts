/** The part of a picture that is shown, in its own units. */
export interface ViewBox {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const closest = 12;

export function wholeOf({ width, height }: { width: number; height: number }): ViewBox {
  return { x: 0, y: 0, width, height };
}

/** Zoomed so that a point stays where it is, given in shares of what is shown; never farther away than the whole. */
export function zoomed(view: ViewBox, whole: ViewBox, factor: number, across = 0.5, down = 0.5): ViewBox {
  const width = Math.max(whole.width / closest, Math.min(whole.width, view.width / factor));
  const height = (width * whole.height) / whole.width;
  return held(
    {
      x: view.x + (view.width - width) * across,
      y: view.y + (view.height - height) * down,
      width,
      height,
    },
    whole,
  );
}

/** Moved by shares of what is shown. */
export function panned(view: ViewBox, whole: ViewBox, across: number, down: number): ViewBox {
  return held({ ...view, x: view.x - across * view.width, y: view.y - down * view.height }, whole);
}

function held(view: ViewBox, whole: ViewBox): ViewBox {
  return {
    ...view,
    x: Math.max(0, Math.min(whole.width - view.width, view.x)),
    y: Math.max(0, Math.min(whole.height - view.height, view.y)),
  };
}
