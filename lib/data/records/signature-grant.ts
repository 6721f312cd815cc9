import 'server-only'
import { z } from 'zod'
import { readStoredJson } from '@/lib/engine'
import type { GrantedCapacity } from '@/lib/review'

const grantSchema = z.object({ statement: z.string(), grantedByName: z.string(), grantedAt: z.string() })

/** Kept with the signature word for word, so that a grant that is withdrawn or reworded later changes nothing signed. */
export function writeGrant({ statement, grantedByName, grantedAt }: GrantedCapacity): string {
  return JSON.stringify({ statement, grantedByName, grantedAt })
}

export function readGrant(grantJson: string): z.infer<typeof grantSchema> {
  return readStoredJson('the capacity of a signature', grantSchema, grantJson)
}
