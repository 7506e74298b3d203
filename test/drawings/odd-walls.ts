import { jobOf, workedOutOf, zone } from './crowded-job';

const box = (x: number, y: number, width: number, height: number) => [
  [x, y],
  [x + width, y],
  [x + width, y + height],
  [x, y + height],
];
const steel = { stock: 'S1', start: 'best' };
const socket = (id: string, x: number, y: number) => ({
  id,
  kind: 'socket',
  x,
  y,
  width: 146,
  height: 86,
  clearance: 5,
});
const door = (id: string, x: number) => ({
  id,
  kind: 'door',
  x,
  y: 0,
  width: 926,
  height: 2040,
  clearance: 60,
});

/** Walls at the edge of what a setting-out sheet is made for. */
export const oddWalls = workedOutOf(
  jobOf([
    {
      id: 'NoSteel',
      outline: box(0, 0, 4000, 2600),
      openings: [door('D1', 300)],
      zones: [{ id: 'Z1', name: 'Notes', shape: box(1500, 900, 2000, 1200), buildUp: 'writable' }],
    },
    { id: 'Bare', outline: box(0, 0, 4000, 2600) },
    { id: 'TinyBare', outline: box(0, 0, 300, 200) },
    {
      id: 'Tiny',
      outline: box(0, 0, 300, 200),
      fittings: [{ id: 'K1', kind: 'switch', x: 100, y: 50, width: 81, height: 81, clearance: 2 }],
      zones: [zone('Z1', 0, 0, 300, 200, steel)],
    },
    {
      id: 'Long',
      outline: box(0, 0, 60000, 3000),
      openings: [door('D1', 3000), door('D2', 40000)],
      fittings: [5000, 12000, 31000].map((x, i) => socket(`K${i + 1}`, x, 300)),
      zones: [zone('Z1', 5000, 900, 20000, 1500, steel)],
    },
    {
      id: 'Negative',
      outline: [
        [-1200, -300],
        [3000, -300],
        [3000, 2000],
        [1500, 2700],
        [-1200, 2700],
      ],
      openings: [{ id: 'W1', kind: 'window', x: -800, y: 800, width: 900, height: 1000, clearance: 30 }],
      fittings: [socket('K1', 500, 0)],
      zones: [zone('Z1', -1100, -200, 3600, 2000, steel)],
    },
    {
      id: 'Away',
      outline: box(5000, 800, 3000, 2400),
      fittings: [socket('K1', 6000, 1300)],
      zones: [zone('Z1', 5200, 1600, 2000, 1000, steel)],
    },
  ]),
);
