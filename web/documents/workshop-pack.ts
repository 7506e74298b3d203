import type { WorkedOut } from '../../core/worked-out';
import type { MadeFile } from './print-orders';

/** The ZIP's files carry this day (the format begins with 1980), so that the same job gives the same bytes. */
const zipDay = '1980-01-01T12:00:00';

/** What writes the files: large, and wanted later than the rest, but there before the network may be gone. */
export function loadWorkshop() {
  return Promise.all([
    import('../../core/drawings/workshop/workshop-files'),
    import('../../core/drawings/workshop/workbook'),
    import('fflate'),
  ]);
}

/** Drawings, workbook and, last, the ZIP of them. */
export async function workshopPack(worked: WorkedOut): Promise<MadeFile[]> {
  const [{ workshopFiles }, { writeWorkbook }, { strToU8, zipSync }] = await loadWorkshop();
  const drawn = workshopFiles(worked);
  const book = writeWorkbook(worked);
  const entries = Object.fromEntries(drawn.map(({ name, text }) => [name, strToU8(text)]));
  const zip = zipSync({ ...entries, 'lists.xlsx': book }, { mtime: zipDay });
  return [
    ...drawn.map(({ name, text }) => ({ name, content: text })),
    { name: 'lists.xlsx', content: book },
    { name: 'workshop.zip', content: zip },
  ];
}
