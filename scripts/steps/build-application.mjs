import { existsSync, readFileSync } from 'node:fs'
import { fingerprint, isStamped, listFiles, stamp } from './fingerprint.mjs'
import { inRoot } from './places.mjs'
import { runQuietly, say } from './run-program.mjs'

/** All that the build reads. The generated clients come from the models. */
const SOURCES = [
  'app',
  'lib',
  'public',
  'proxy.ts',
  'instrumentation.ts',
  'next.config.js',
  'tsconfig.json',
  'package.json',
  'package-lock.json',
  'prisma/models.prisma',
]
const GENERATED = 'lib/data/generated'
const BUILD_ID_FILE = '.next/BUILD_ID'

/**
 * Build for production, unless the build at hand was made from the same sources.
 * @returns {Promise<{ changed: boolean }>}
 */
export async function buildApplication() {
  const print = fingerprint(listFiles(SOURCES, { except: [GENERATED] }), [process.versions.node.split('.')[0] ?? ''])
  // The build's own id is part of the stamp, so that a build made by hand in between is not taken for this one.
  const printOfBuild = () => `${print} ${readFileSync(inRoot(BUILD_ID_FILE), 'utf8')}`
  if (existsSync(inRoot(BUILD_ID_FILE)) && isStamped('build', printOfBuild())) return { changed: false }

  say('Building the application (about half a minute)')
  const { seconds } = await runQuietly(
    'Building the application',
    process.execPath,
    [inRoot('node_modules', 'next', 'dist', 'bin', 'next'), 'build'],
    { env: { NODE_ENV: 'production', NEXT_TELEMETRY_DISABLED: '1' } },
  )
  stamp('build', printOfBuild())
  say(`  built in ${seconds} s`)
  return { changed: true }
}
