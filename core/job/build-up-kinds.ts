/**
 * The build-ups a zone can name, by what they do for whoever uses the wall; their layers stand in `core/build-up/`. Any
 * other string in a file is kept and treated as plain.
 */
export interface BuildUpKind {
  readonly id: string;
  readonly label: string;
  /** What magnets find: steel panels carry most, a magnetic coating or film little. */
  readonly magnetic: 'steel' | 'coating' | 'none';
  readonly surface: 'plain' | 'writable' | 'chalk';
}

export const buildUpKinds: readonly BuildUpKind[] = [
  { id: 'steel-panel', label: 'Steel panels', magnetic: 'steel', surface: 'plain' },
  { id: 'steel-panel-writable', label: 'Steel panels, writable', magnetic: 'steel', surface: 'writable' },
  {
    id: 'steel-panel-clear-writable',
    label: 'Steel panels, clear writable',
    magnetic: 'steel',
    surface: 'writable',
  },
  {
    id: 'steel-panel-writable-film',
    label: 'Steel panels, writable film',
    magnetic: 'steel',
    surface: 'writable',
  },
  { id: 'steel-panel-chalk', label: 'Steel panels, chalk', magnetic: 'steel', surface: 'chalk' },
  { id: 'magnetic-coating', label: 'Magnetic coating', magnetic: 'coating', surface: 'plain' },
  {
    id: 'magnetic-coating-writable',
    label: 'Magnetic coating, writable',
    magnetic: 'coating',
    surface: 'writable',
  },
  { id: 'magnetic-coating-chalk', label: 'Magnetic coating, chalk', magnetic: 'coating', surface: 'chalk' },
  { id: 'magnetic-film', label: 'Magnetic film', magnetic: 'coating', surface: 'plain' },
  {
    id: 'magnetic-film-writable',
    label: 'Magnetic film, writable film',
    magnetic: 'coating',
    surface: 'writable',
  },
  { id: 'magnetic-film-chalk', label: 'Magnetic film, chalk', magnetic: 'coating', surface: 'chalk' },
  { id: 'writable', label: 'Writable coat', magnetic: 'none', surface: 'writable' },
  { id: 'clear-writable', label: 'Clear writable coat', magnetic: 'none', surface: 'writable' },
  { id: 'writable-film', label: 'Writable film', magnetic: 'none', surface: 'writable' },
  { id: 'glass-film', label: 'Writable film on glass', magnetic: 'none', surface: 'writable' },
  { id: 'chalk', label: 'Chalk coat', magnetic: 'none', surface: 'chalk' },
];

export function buildUpKind(id: string): BuildUpKind {
  return buildUpKinds.find((kind) => kind.id === id) ?? { id, label: id, magnetic: 'none', surface: 'plain' };
}
