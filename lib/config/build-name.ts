import 'server-only'
import { readFileSync } from 'node:fs'
import path from 'node:path'
import { isProduction } from './environment'

let name: string | undefined

/** Tells this build of the application from others, also where no version was raised; `source` where nothing was built. */
export function getBuildName(): string {
  name ??= readBuildName()
  return name
}

function readBuildName(): string {
  if (!isProduction()) return 'source'
  try {
    return readFileSync(path.join(/* turbopackIgnore: true */ process.cwd(), '.next', 'BUILD_ID'), 'utf8').trim()
  } catch {
    return 'source'
  }
}
