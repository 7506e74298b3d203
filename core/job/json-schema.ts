import { toJsonSchema } from '@valibot/to-json-schema';
import { jobSchema, vertexSchema, verticesSchema } from './schema';

/**
 * The form of a job file as JSON Schema (draft 2020-12), for other people's programs. It cannot say everything
 * that `readJob` checks: ids, references and crossings are not in it.
 */
export function jobJsonSchema(): Record<string, unknown> {
  const { $schema, ...schema } = toJsonSchema(jobSchema, {
    target: 'draft-2020-12',
    typeMode: 'input',
    // Every number of JSON is finite.
    ignoreActions: ['finite'],
    definitions: { vertex: vertexSchema, vertices: verticesSchema },
  });
  const title = 'Lodeplan job, version 1';
  const description =
    'Lengths in millimetres, x to the right and y up from the datum of the wall; fields that are not listed are kept.';
  return { $schema, title, description, ...schema };
}
