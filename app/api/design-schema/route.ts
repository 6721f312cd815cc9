import { getDesignJsonSchema } from '@/lib/engine'
import { visitorRoute } from '@/lib/server'

/** The JSON Schema of a design document: what an import must look like. */
export const GET = visitorRoute(async () =>
  Response.json(getDesignJsonSchema(), { headers: { 'content-type': 'application/schema+json' } }),
)
