import type { Command } from '../commands/command';
import { showPhoto, takeOutPhoto } from '../job/changes/photos';
import type { PhotoDesk } from './photo-desk.svelte';

export function photoCommands(photos: PhotoDesk): readonly Command[] {
  const { open, underDrawing } = photos;
  const noWall = open.wall ? null : 'add a wall first';
  const none = underDrawing ? null : 'no photo lies under the drawing';
  const make = ({ name, change }: ReturnType<typeof takeOutPhoto>) => void open.apply(name, change);
  return [
    {
      name: 'Load a photo under the drawing',
      group: 'Put in',
      keys: 'F L',
      also: 'picture survey rectify',
      whyNot: noWall,
      run: () => photos.pick('drawing'),
    },
    {
      name: 'Put in a photo at a place',
      group: 'Put in',
      keys: 'F P',
      also: 'pin picture date',
      whyNot: noWall,
      run: () => photos.pick('pin'),
    },
    {
      name: 'Put in: Picture on a zone',
      group: 'Put in',
      keys: 'M P',
      also: 'marking map svg png',
      whyNot: open.wall?.zones.length ? null : 'put in a zone first',
      run: () => {
        open.station = 'zones';
        photos.pickPicture();
      },
    },
    {
      name: 'Mark the photo',
      group: 'View',
      keys: 'F M',
      also: 'corners rectify',
      whyNot: none,
      run: () => (photos.dialog = { kind: 'mark' }),
    },
    {
      name: underDrawing?.shown ? 'Hide the photo' : 'Show the photo',
      group: 'View',
      keys: 'F S',
      whyNot: none,
      run: () => open.wall && underDrawing && make(showPhoto(open.wall.id, !underDrawing.shown)),
    },
    {
      name: 'Take out the photo under the drawing',
      group: 'View',
      keys: 'F X',
      also: 'delete remove',
      whyNot: none,
      run: () => open.wall && make(takeOutPhoto(open.wall.id)),
    },
  ];
}
