/*
 * Runs in the page that is sent to a client, by itself: pan, zoom, cutaway, names. Without it the pictures stand still.
 */
(() => {
  'use strict';
  const bandShare = 0.18;

  for (const figure of document.querySelectorAll('figure')) {
    const svg = figure.querySelector('svg[data-left]');
    const tools = figure.querySelector('.tools');
    if (svg && tools) start(figure, svg, tools);
  }

  function start(figure, svg, tools) {
    const [, , width, height] = svg.getAttribute('viewBox').split(' ').map(Number);
    let view = { x: 0, y: 0, width, height };
    tools.hidden = false;

    const show = (next) => {
      const x = Math.max(0, Math.min(width - next.width, next.x));
      const y = Math.max(0, Math.min(height - next.height, next.y));
      view = { ...next, x, y };
      svg.setAttribute('viewBox', `${view.x} ${view.y} ${view.width} ${view.height}`);
    };
    const zoom = (factor, across = 0.5, down = 0.5) => {
      const wide = Math.max(width / 12, Math.min(width, view.width / factor));
      const high = (wide * height) / width;
      const x = view.x + (view.width - wide) * across;
      show({ x, y: view.y + (view.height - high) * down, width: wide, height: high });
    };
    const pan = (across, down) =>
      show({ ...view, x: view.x - across * view.width, y: view.y - down * view.height });
    const placeOf = (event) => {
      const box = svg.getBoundingClientRect();
      return [(event.clientX - box.left) / box.width, (event.clientY - box.top) / box.height];
    };

    // A page is scrolled with the wheel; with Control it is the picture that is meant.
    svg.addEventListener(
      'wheel',
      (event) => {
        if (!event.ctrlKey) return;
        event.preventDefault();
        zoom(Math.exp(-event.deltaY * 0.004), ...placeOf(event));
      },
      { passive: false },
    );
    const hands = new Map();
    svg.addEventListener('pointerdown', (event) => {
      hands.set(event.pointerId, placeOf(event));
      if (view.width < width || hands.size > 1) svg.setPointerCapture(event.pointerId);
    });
    svg.addEventListener('pointermove', (event) => {
      const before = hands.get(event.pointerId);
      if (!before) return;
      const now = placeOf(event);
      if (hands.size === 1) pan(now[0] - before[0], now[1] - before[1]);
      else {
        const [other] = [...hands].filter(([id]) => id !== event.pointerId).map(([, at]) => at);
        const apart = (at) => Math.hypot(at[0] - other[0], at[1] - other[1]) || 1;
        zoom(apart(now) / apart(before), (now[0] + other[0]) / 2, (now[1] + other[1]) / 2);
      }
      hands.set(event.pointerId, now);
    });
    for (const end of ['pointerup', 'pointercancel'])
      svg.addEventListener(end, (event) => hands.delete(event.pointerId));

    const commands = {
      in: () => zoom(1.5),
      out: () => zoom(1 / 1.5),
      whole: () => show({ x: 0, y: 0, width, height }),
    };
    for (const button of tools.querySelectorAll('button'))
      button.addEventListener('click', commands[button.dataset.does]);
    figure.querySelector('.view').addEventListener('keydown', (event) => {
      const keys = {
        '+': commands.in,
        '-': commands.out,
        0: commands.whole,
        ArrowLeft: () => pan(0.1, 0),
        ArrowRight: () => pan(-0.1, 0),
        ArrowUp: () => pan(0, 0.1),
        ArrowDown: () => pan(0, -0.1),
      };
      if (!keys[event.key] || event.ctrlKey || event.metaKey) return;
      event.preventDefault();
      keys[event.key]();
    });

    const names = tools.querySelector('[type=checkbox]');
    names.addEventListener('change', () => {
      for (const group of svg.querySelectorAll('[data-names]'))
        group.setAttribute('display', names.checked ? 'inline' : 'none');
    });

    const range = tools.querySelector('[type=range]');
    if (!range) return;
    const [left, right] = [Number(svg.dataset.left), Number(svg.dataset.right)];
    const clips = [...svg.querySelectorAll('[data-band]')];
    const edges = [...svg.querySelectorAll('[data-edge]')];
    const words = figure.querySelector('.steps');
    const cut = () => {
      const share = Number(range.value);
      const wide = right - left;
      const first = right - share * wide * (1 + bandShare * Math.max(0, edges.length - 1));
      const hold = (x) => Math.max(left, Math.min(right, x));
      const starts = [left, ...edges.map((_, i) => hold(first + i * bandShare * wide))];
      clips.forEach((clip, i) => {
        clip.setAttribute('x', starts[i]);
        clip.setAttribute('width', (starts[i + 1] ?? right) - starts[i]);
      });
      edges.forEach((edge, i) => {
        const from = starts[i + 1];
        edge.setAttribute('x', from - 0.15);
        edge.setAttribute('width', from > left && (starts[i + 2] ?? right) > from ? 0.3 : 0);
      });
      words.hidden = share === 0;
    };
    range.addEventListener('input', cut);
    cut();
  }
})();
