/*
 * The one file of core that knows Node: `npm run job -- JOB.json --out DIR` works out a job without a browser
 * and writes `results.json`, every PDF, every list and every drawing for the workshop; of another alternative, or of each into a folder of its own, if
 * asked. With a bad file it prints one line per fault on standard error, writes nothing and exits with 1.
 */
import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { basename, join } from 'node:path';
import { parseArgs } from 'node:util';
import { composeDocuments } from '../drawings/compose';
import { clientAlternatives, type DrawnAlternative } from '../drawings/client-alternatives';
import { csvTables } from '../drawings/csv';
import { measureWith, type FontFiles } from '../drawings/fonts';
import { writePdf } from '../drawings/pdf';
import { oneSet, setOf, subjectOf } from '../drawings/set/one-set';
import { pricedTables } from '../drawings/priced-tables';
import { picturesInFile } from '../drawings/pictures';
import { writeWorkbook } from '../drawings/workshop/workbook';
import { workshopFiles } from '../drawings/workshop/workshop-files';
import { alternativesOf, chooseAlternative } from '../job/alternatives';
import type { Job } from '../job/schema';
import { readJob } from '../job/read';
import { priceJob } from '../offer/price-job';
import { workOutFully } from './pipeline';
import { pricedResults } from './priced-results';
import { toResults } from './results';
import type { WorkedOut } from '../worked-out';
import { sinceRevision } from './since-revision';
import { defaultSteps } from './steps';

const usage =
  'Usage: npm run job -- JOB.json --out DIR [--alternative NAME | --all-alternatives] [--steps N] [--date YYYY-MM-DD]';

await main().catch((fault: unknown) => fail([fault instanceof Error ? fault.message : String(fault)]));

async function main(): Promise<void> {
  const { file, out, steps, date, alternative, all } = readArguments();
  const text = await readFile(file, 'utf8').catch(() =>
    fail([`${file} cannot be read: give the path of a job file.`]),
  );
  const { job, findings } = readJob(text);
  if (!job) return fail(findings.map((finding) => `${basename(file)}: ${finding.text}`));

  const dated = date ? { ...job, date } : job;
  if (!all) {
    await writeOut(alternative === undefined ? dated : alternativeOf(dated, alternative), out, steps);
    return;
  }
  // By their numbers: names and ids may be alike but for capitals, or hold what no folder may be called.
  const alternatives: DrawnAlternative[] = [];
  for (const [i, { id, title }] of alternativesOf(dated).entries()) {
    console.log(`${title}:`);
    const worked = await writeOut(chooseAlternative(dated, id), join(out, `alternative-${i + 1}`), steps);
    alternatives.push({ title, worked });
  }
  await writeSideBySide(dated, alternatives, out);
}

/** The client's pages of all alternatives; nothing if the job has but one or no zone. */
async function writeSideBySide(
  job: Job,
  alternatives: readonly DrawnAlternative[],
  out: string,
): Promise<void> {
  const fonts = await loadFonts();
  const document = clientAlternatives(job, alternatives, measureWith(fonts));
  if (document.pages.length === 0) return;
  const file = join(out, `${document.name}.pdf`);
  await writeFile(file, await writePdf(document, fonts, { date: dayOf(job) }));
  console.log(`Side by side: ${file}.`);
}

async function writeOut(job: Job, out: string, steps: number): Promise<WorkedOut> {
  const worked = workOutFully(job, { steps });
  const files = await produceFiles(worked.job, worked);
  await mkdir(out, { recursive: true });
  for (const { name, content } of files) await writeFile(join(out, name), content);
  for (const { level, wall, text: said } of worked.findings)
    console.log(`${level}${wall === undefined ? '' : `, wall ${wall}`}: ${said}`);
  console.log(summaryOf(worked, files.length, out));
  return worked;
}

/** The job with the alternative chosen that has this name or id. */
function alternativeOf(job: Job, name: string): Job {
  const listed = alternativesOf(job);
  const named = listed.filter(({ title }) => title === name);
  const found = named.length === 0 ? listed.filter(({ id }) => id === name) : named;
  const choice = listed.map(({ id, title }) => `${title} (${id})`).join(', ');
  if (found.length === 0)
    return fail([`--alternative ${name}: the job has none of this name; it has ${choice}.`]);
  if (found.length > 1)
    return fail([`--alternative ${name}: several have this name; give the id of one: ${choice}.`]);
  return chooseAlternative(job, found[0]!.id);
}

function readArguments() {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      out: { type: 'string' },
      steps: { type: 'string' },
      date: { type: 'string' },
      alternative: { type: 'string' },
      'all-alternatives': { type: 'boolean', default: false },
    },
  });
  const [file] = positionals;
  const steps = values.steps === undefined ? defaultSteps : Number(values.steps);
  if (!file || positionals.length > 1 || !values.out) return fail([usage]);
  if (!Number.isInteger(steps) || steps < 1)
    return fail([`--steps ${values.steps}: give a whole number from 1 up.`]);
  if (values.date !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(values.date)) {
    return fail([`--date ${values.date}: write the day as YYYY-MM-DD.`]);
  }
  const { out, date, alternative, 'all-alternatives': all } = values;
  if (all && alternative !== undefined) return fail(['Give --alternative or --all-alternatives, not both.']);
  return { file, out, steps, date, alternative, all };
}

async function produceFiles(job: Job, worked: ReturnType<typeof workOutFully>) {
  const fonts = await loadFonts();
  const date = dayOf(job);
  const pictures = picturesInFile(job);
  const results = { ...toResults(worked), ...pricedResults(worked, priceJob(worked)) };
  const files: { name: string; content: string | Uint8Array }[] = [
    { name: 'results.json', content: `${JSON.stringify(results, null, 2)}\n` },
  ];
  const beside = { since: sinceRevision(worked, job.revisions.at(-1)), pictures };
  const measure = measureWith(fonts);
  const documents = composeDocuments(worked, measure, beside);
  const set = oneSet(worked, setOf(job, documents), measure);
  for (const document of [...documents, ...(set.pages.length > 0 ? [set] : [])]) {
    const content = await writePdf(document, fonts, { date, pictures, subject: subjectOf(job) });
    files.push({ name: `${document.name}.pdf`, content });
  }
  for (const table of csvTables(worked)) files.push({ name: `${table.name}.csv`, content: table.text });
  for (const { name, text } of [...pricedTables(worked), ...workshopFiles(worked)])
    files.push({ name, content: text });
  files.push({ name: 'lists.xlsx', content: writeWorkbook(worked) });
  return files;
}

/** The day a document carries: the job's own, so that the same job gives the same bytes; else today. */
function dayOf(job: Job): Date {
  const day = new Date(`${job.date}T00:00:00Z`);
  return Number.isNaN(day.getTime()) ? new Date() : day;
}

async function loadFonts(): Promise<FontFiles> {
  const resolve = createRequire(import.meta.url).resolve;
  const load = async (path: string) =>
    new Uint8Array(await readFile(resolve(`@expo-google-fonts/${path}.ttf`)));
  return {
    sans: await load('fira-sans/400Regular/FiraSans_400Regular'),
    sansSemiBold: await load('fira-sans/600SemiBold/FiraSans_600SemiBold'),
    condensed: await load('fira-sans-condensed/400Regular/FiraSansCondensed_400Regular'),
    condensedSemiBold: await load('fira-sans-condensed/600SemiBold/FiraSansCondensed_600SemiBold'),
  };
}

function summaryOf({ cutting, walls }: ReturnType<typeof workOutFully>, files: number, out: string): string {
  const spares = cutting.order.reduce((sum, entry) => sum + entry.spares, 0);
  const proof = cutting.leastPossible ? 'no plan needs fewer' : `at least ${cutting.lowerBound} are needed`;
  const count = walls.length === 1 ? '1 wall' : `${walls.length} walls`;
  return `${count}, ${cutting.newSheets} stock sheets + ${spares} spare (${proof}). ${files} files in ${out}.`;
}

function fail(lines: readonly string[]): never {
  for (const line of lines) console.error(line);
  process.exit(1);
}
