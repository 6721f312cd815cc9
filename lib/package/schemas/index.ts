import { z } from 'zod'
import { DESIGN_FORMAT_VERSION, designSchema } from '@/lib/engine/design'
import type { PackageFile } from '../content'
import { manifestSchema } from '../manifest'
import { trailFileSchema } from '../trail-file'
import { meetingsFileSchema, needsFileSchema } from './minutes'
import { artworkIndexSchema, releaseFileSchema } from './release'
import { resultsFileSchema } from './results'
import { actionsFileSchema, checklistFileSchema, threadsFileSchema } from './review'
import { signaturesFileSchema } from './signatures'

/** The form of each JSON file of a package, by its path. */
const FILE_SCHEMAS: Readonly<Record<string, z.ZodType>> = {
  'actions.json': actionsFileSchema,
  'artwork/index.json': artworkIndexSchema,
  'checklist.json': checklistFileSchema,
  'design.json': designSchema,
  'manifest.json': manifestSchema,
  'release.json': releaseFileSchema,
  'results.json': resultsFileSchema,
  'signatures.json': signaturesFileSchema,
  'threads.json': threadsFileSchema,
  'trail.json': trailFileSchema,
}

/** Of the team's edition alone. */
const MINUTES_SCHEMAS: Readonly<Record<string, z.ZodType>> = {
  'meetings.json': meetingsFileSchema,
  'needs.json': needsFileSchema,
}

const presentDesignSchema = z.looseObject({ formatVersion: z.literal(DESIGN_FORMAT_VERSION) })

/** `schemas/artwork-index.schema.json` */
export const getSchemaPath = (path: string): string =>
  `schemas/${path.replace('.json', '').replaceAll('/', '-')}.schema.json`

/**
 * The schemas (JSON Schema 2020-12), so that the files can be read and checked when this program is long gone. A design is kept in the format
 * in which it was signed: an older one has no schema here, since this describes the present format alone.
 *
 * @param hasMinutes  whether the package carries meetings and needs: a fabricator's edition does not
 */
export function makeSchemaFiles(storedDesign: unknown, hasMinutes: boolean): PackageFile[] {
  const isPresentFormat = presentDesignSchema.safeParse(storedDesign).success
  return Object.entries({ ...FILE_SCHEMAS, ...(hasMinutes ? MINUTES_SCHEMAS : {}) })
    .filter(([path]) => path !== 'design.json' || isPresentFormat)
    .map(([path, schema]) => {
      const written = { title: path, ...z.toJSONSchema(schema, { target: 'draft-2020-12' }) }
      return { path: getSchemaPath(path), bytes: new TextEncoder().encode(`${JSON.stringify(written, null, 1)}\n`) }
    })
}
