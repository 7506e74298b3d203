import type { Finding } from '../finding';
import { shown } from './place';

export type JobFile = Readonly<Record<string, unknown>>;

/** Turns a file of version `from` into one of version `from` + 1, on plain data and before any check. */
export interface Migration {
  readonly from: number;
  readonly apply: (file: JobFile) => JobFile;
}

export const jobFormat = 'lodeplan-job';
export const currentVersion = 1;

/** Oldest first, one for each version that has a successor; version 1 is the first, so there is none yet. */
export const jobMigrations: readonly Migration[] = [];

/**
 * A file of any version that this program understands, brought to the current one.
 *
 * @returns the same object if it is current; a finding if it is no job file, or of a version without a way here
 */
export function migrateJob(
  file: JobFile,
  migrations: readonly Migration[] = jobMigrations,
  current: number = currentVersion,
): { file: JobFile } | { finding: Finding } {
  if (file.format !== jobFormat) return { finding: wrongFormat(file.format) };
  const version = file.version;
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 1) {
    return refuse(
      'no-version',
      `version is ${given(version)}; this program understands ${understood(current)}.`,
    );
  }
  if (version > current) {
    return refuse(
      'newer-version',
      `version is ${version}, but this program understands ${understood(current)}; open the file with a newer Lodeplan.`,
    );
  }
  let migrated = file;
  for (let from = version; from < current; from++) {
    const migration = migrations.find((candidate) => candidate.from === from);
    if (!migration) {
      return refuse('unknown-version', `version is ${version}, which this program can no longer read.`);
    }
    migrated = { ...migration.apply(migrated), version: from + 1 };
  }
  return { file: migrated };
}

function wrongFormat(format: unknown): Finding {
  if (format === 'lodeplan-results') {
    return fault(
      'not-a-job',
      'format is "lodeplan-results": this is a results file; open the job it came from.',
    );
  }
  return fault('not-a-job', `format is ${given(format)}; a job file has "format": "${jobFormat}".`);
}

function understood(current: number): string {
  return current === 1 ? 'version 1' : `versions 1 to ${current}`;
}

function given(value: unknown): string {
  return value === undefined ? 'missing' : shown(value);
}

function refuse(code: string, text: string): { finding: Finding } {
  return { finding: fault(code, text) };
}

function fault(code: string, text: string): Finding {
  return { level: 'error', code, text };
}
