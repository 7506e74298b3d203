import type { Command } from '../commands/command';
import type { OpenJob } from '../job/open-job.svelte';
import { titleOfWall } from '../job/changes/names';
import type { JobDesk } from '../jobs/job-desk.svelte';
import { stations } from './stations';

export function jobCommands(open: OpenJob, desk: JobDesk): readonly Command[] {
  return [
    {
      name: open.undoName ? `Undo “${open.undoName}”` : 'Undo',
      group: 'Job',
      keys: 'Ctrl+Z',
      whyNot: open.undoName ? null : 'nothing has been changed',
      run: () => open.undo(),
    },
    ...['Ctrl+Shift+Z', 'Ctrl+Y'].map((keys, i): Command => ({
      name: `${open.redoName ? `Redo “${open.redoName}”` : 'Redo'}${i > 0 ? ', other keys' : ''}`,
      group: 'Job',
      keys,
      whyNot: open.redoName ? null : 'nothing has been taken back',
      run: () => open.redo(),
    })),
    { name: 'New job', group: 'Job', keys: 'J N', run: () => (desk.dialog = 'new') },
    {
      name: 'Open a file',
      group: 'Job',
      keys: 'Ctrl+O',
      whileTyping: true,
      run: () => void desk.pickFile(),
    },
    {
      name: 'Save file',
      group: 'Job',
      keys: 'Ctrl+S',
      whileTyping: true,
      run: () => void desk.saveFile(),
    },
    { name: 'Save as another file', group: 'Job', keys: 'J S', run: () => void desk.saveFile('another') },
    {
      name: 'What has changed since a revision',
      group: 'Documents',
      keys: 'D C',
      also: 'compare differences clouds',
      whyNot: open.job.revisions.length > 0 ? null : 'no revision has been issued',
      run: () => (desk.dialog = 'changes'),
    },
    {
      name: 'Budget price',
      group: 'Job',
      keys: 'J B',
      also: 'telephone estimate width height subject to survey',
      run: () => (desk.dialog = 'budget'),
    },
    { name: 'Jobs on this device', group: 'Job', keys: 'J J', run: () => (desk.dialog = 'jobs') },
    {
      name: 'Job details',
      group: 'Job',
      keys: 'J D',
      also: 'client reference date currency',
      run: () => (desk.dialog = 'details'),
    },
    {
      name: 'The firm’s rack',
      group: 'Job',
      keys: 'J R',
      also: 'offcuts',
      run: () => (desk.dialog = 'rack'),
    },
    {
      name: 'All commands',
      group: 'Job',
      keys: 'F1',
      also: 'help keys',
      whileTyping: true,
      run: () => (desk.dialog = 'commands'),
    },
  ];
}

/** Both tables of the user's own kinds. */
export function kindCommands(fittings: { isShown: boolean }, hung: { isShown: boolean }): readonly Command[] {
  return [
    {
      name: 'Kinds of fitting',
      group: 'Put in',
      keys: 'J K',
      also: 'own sizes clearances',
      run: () => (fittings.isShown = true),
    },
    {
      name: 'Kinds of hung item',
      group: 'Put in',
      keys: 'J H',
      also: 'own sizes weights magnets keep',
      run: () => (hung.isShown = true),
    },
  ];
}

export function stationCommands(open: OpenJob): readonly Command[] {
  return stations.map(({ name, label, number }) => ({
    name: `Go to ${label}`,
    group: 'Stations',
    keys: `Alt+${number}`,
    whileTyping: true,
    run: () => (open.station = name),
  }));
}

export function wallCommands(
  open: OpenJob,
  desk: JobDesk,
  show: (wallId: string) => void,
): readonly Command[] {
  const { walls } = open.job;
  const at = walls.findIndex(({ id }) => id === open.wall?.id);
  const go = (name: string, keys: string, to: number): Command => {
    const wall = walls[to];
    return {
      name: wall ? `${name}: ${titleOfWall(wall)}` : name,
      group: 'Walls',
      keys,
      whyNot: wall ? null : 'there is none',
      run: () => wall && show(wall.id),
    };
  };
  return [
    { name: 'Add a wall', group: 'Walls', keys: 'W A', run: () => (desk.dialog = 'wall') },
    go('Next wall', 'W N', at + 1),
    go('Previous wall', 'W B', at - 1),
  ];
}
