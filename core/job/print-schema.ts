import { writeFileSync } from 'node:fs';
import { format } from 'prettier';
import { jobJsonSchema } from './json-schema';

/** `npm run schema`: writes the published schema beside the source it comes from. */
const file = new URL('./lodeplan-job.schema.json', import.meta.url);
writeFileSync(file, await format(JSON.stringify(jobJsonSchema()), { parser: 'json', printWidth: 110 }));
