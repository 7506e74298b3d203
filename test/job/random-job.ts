import fc from 'fast-check';

/** JSON that can stand as an unknown field: no negative zero, no name that a file may not use. */
const anything = fc
  .jsonValue({ maxDepth: 2 })
  .map((value) => JSON.parse(JSON.stringify(value)) as unknown)
  .filter((value) => !JSON.stringify(value).includes('__proto__'));

const extras = fc.dictionary(fc.stringMatching(/^x-[a-z]{1,6}$/), anything, { maxKeys: 2 });
const mm = (min: number, max: number) => fc.integer({ min: min * 100, max: max * 100 }).map((n) => n / 100);

function withExtras<T extends object>(object: fc.Arbitrary<T>): fc.Arbitrary<T> {
  return fc.tuple(object, extras).map(([known, unknown]) => ({ ...unknown, ...known }));
}

const rectangle = fc.record({
  x: mm(-500, 9000),
  y: mm(-500, 4000),
  width: mm(1, 3000),
  height: mm(1, 3000),
});

/** A rectangle as points, or one whose upper edge is an arch, in either direction. */
const shape = fc
  .record({ box: rectangle, arched: fc.boolean(), turned: fc.boolean(), extra: extras })
  .map(({ box: { x, y, width, height }, arched, turned, extra }) => {
    const [right, top] = [tidy(x + width), tidy(y + height)];
    if (arched) {
      const via = [tidy(x + width / 2), tidy(top + width / 2 + 1)];
      return [[x, y], [right, y], [right, top], { arcTo: [x, top], via, ...extra }];
    }
    const points = [
      [x, y],
      [right, y],
      [right, top],
      [x, top],
    ];
    return turned ? points.reverse() : points;
  });

const place = fc.oneof(
  rectangle,
  withExtras(fc.record({ x: mm(0, 5000), y: mm(0, 3000), diameter: mm(1, 500) })).map((circle) => ({
    circle,
  })),
  shape.map((points) => ({ shape: points })),
);

const layout = withExtras(
  fc.record(
    {
      stock: fc.constantFrom('S1', 'S2'),
      stocks: fc.constant(['S1', 'S2']),
      start: fc.oneof(
        fc.constantFrom('best', 'upper-left', 'centre-on-joint'),
        fc.record({ x: mm(-10, 10), y: mm(-10, 10) }),
      ),
      turned: fc.boolean(),
      jointGap: mm(0, 10),
      stagger: fc.constantFrom(0, 0.5, 1 / 3),
      leastWidth: mm(0, 100),
      leastArea: mm(0, 5000),
    },
    { requiredKeys: ['stock'] },
  ),
);

/** Of the user's own making, no two of one name. */
const ownKinds = fc
  .array(
    withExtras(
      fc.record(
        {
          name: fc.stringMatching(/^[Qß][a-z0-9 ./&'-]{0,12}[a-z0-9]$/),
          round: fc.boolean(),
          width: mm(1, 900),
          height: mm(1, 900),
          floor: mm(-100, 3000),
          clearance: mm(0, 60),
          depth: mm(0, 300),
          electric: fc.boolean(),
        },
        { requiredKeys: ['name', 'width'] },
      ),
    ),
    { maxLength: 3 },
  )
  .map((kinds) => kinds.map((kind, i) => ({ ...kind, name: `${kind.name}${i}` })));

const sizes = (count: number) => fc.array(mm(1, 300), { minLength: count, maxLength: count });

const marking = fc
  .tuple(mm(-200, 2000), mm(-200, 2000), fc.integer({ min: 1, max: 5 }), fc.integer({ min: 1, max: 5 }))
  .chain(([x, y, across, up]) =>
    fc
      .oneof(
        fc
          .record({ width: mm(50, 900), height: mm(50, 900), spacingAcross: mm(5, 90), spacingUp: mm(5, 90) })
          .map((own) => ({ kind: 'ruled-grid', ...own })),
        fc
          .record({ width: mm(50, 900), height: mm(50, 900), spacingUp: mm(5, 90) })
          .map((own) => ({ kind: 'ruled-lines', ...own })),
        fc.tuple(sizes(across), sizes(up), mm(1, 50)).map(([columnWidths, rowHeights, heading]) => ({
          kind: 'table',
          columns: columnWidths.map((_, i) => `C${i}`),
          rows: rowHeights.map(() => ''),
          width: sumOf(columnWidths),
          height: sumOf([...rowHeights, heading]),
          headingHeight: heading,
          columnWidths,
          rowHeights,
        })),
        mm(5, 200).map((side) => ({ kind: 'board', across, up, side, tones: 'two' })),
      )
      .map((own) => ({ x, y, lineWidth: 2, ...own })),
  );

/** Openings, fittings and zones under ids that no other on the wall has. */
const wall = fc
  .record({
    outline: shape,
    openings: fc.array(withExtras(place), { maxLength: 3 }),
    fittings: fc.array(withExtras(place), { maxLength: 4 }),
    zones: fc.array(
      withExtras(
        fc.record(
          {
            shape,
            holes: fc.array(shape, { maxLength: 2 }),
            buildUp: fc.constantFrom('steel-panel', 'chalk', 'moss'),
            layout,
            markings: fc
              .array(withExtras(marking), { maxLength: 2 })
              .map((list) => list.map((one, i) => ({ ...one, id: `M${i}` }))),
          },
          { requiredKeys: ['shape', 'buildUp'] },
        ),
      ),
      { maxLength: 3 },
    ),
    extra: extras,
  })
  .map(({ outline, openings, fittings, zones, extra }) => ({
    outline,
    openings: openings.map((opening, i) => ({ id: `O${i}`, kind: 'window', ...opening })),
    fittings: fittings.map((fitting, i) => ({ id: `F${i}`, kind: 'socket', ...fitting })),
    zones: zones.map((zone, i) => ({ id: `Z${i}`, ...zone })),
    ...extra,
  }));

/** Job files, as JSON, that hold everything the format allows and fields it does not know. */
export const jobFile = fc
  .record({
    name: fc.string({ minLength: 1, maxLength: 20 }),
    walls: fc.array(wall, { maxLength: 3 }),
    rack: fc.array(
      withExtras(fc.record({ stock: fc.constant('S1'), width: mm(1, 500), height: mm(1, 500) })),
      {
        maxLength: 2,
      },
    ),
    kerf: mm(0, 10),
    kinds: fc.option(ownKinds),
    others: fc.option(fc.array(wall, { maxLength: 3 })),
    extra: extras,
  })
  .map(({ name, walls, rack, kerf, kinds, others, extra }) => ({
    ...extra,
    format: 'lodeplan-job',
    version: 1,
    name,
    stock: [
      { id: 'S1', width: 500, height: 500, price: 6.4, ...extra },
      { width: 1000, id: 'S2', height: 2000 },
    ],
    rack: rack.map((piece, i) => ({ id: `R${i}`, ...piece })),
    cutting: { kerf, ...extra },
    ...(kinds && { fittingKinds: kinds }),
    walls: walls.map((entry, i) => ({
      id: `W${i}`,
      ...entry,
      fittings: entry.fittings.map((fitting, k) => ({ ...fitting, kind: kinds?.[k]?.name ?? fitting.kind })),
    })),
    ...(others && {
      ...(extra['x-a'] === undefined && { chosenAlternative: { ...extra, id: 'V7', name, place: 1 } }),
      alternatives: others.map(({ zones }, i) => ({
        id: `V${i}`,
        name,
        zones: walls[i] ? { [`W${i}`]: zones } : {},
        ...extra,
      })),
    }),
    revisions: [{ id: 'A', date: '2026-03-02', job: { any: extra }, ...extra }],
  }));

function tidy(length: number): number {
  return Math.round(length * 100) / 100;
}

function sumOf(lengths: readonly number[]): number {
  return tidy(lengths.reduce((sum, length) => sum + length, 0));
}
