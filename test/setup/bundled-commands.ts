import { rmSync } from 'node:fs'
import path from 'node:path'
import { build } from 'esbuild'
import type { TestProject } from 'vitest/node'
import { cacheFolder, rootFolder } from '../../scripts/steps/places.mjs'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the bundled programs, `<name of the program's file>.mjs` each. */
    commandsFolder: string
  }
}

/** Commands and programs of the tests' own that are started many times, as folder and name. */
const PROGRAMS = [
  'lib/cli/account-recover',
  'lib/cli/package-verify',
  'lib/cli/trail-check',
  'test/integration/data-layer/counting-program',
  'test/integration/data-layer/inserting-program',
  'test/integration/jobs/job-program',
]

/**
 * The programs that tests start many times, each in one file. As people start them, the loader for TypeScript takes most of their time (and
 * all of a test's, on a busy machine); tests that call a command once start it as people do.
 */
export default async function bundleCommands(project: TestProject): Promise<() => void> {
  const outdir = path.join(cacheFolder, `commands-${process.pid}`)
  await build({
    entryPoints: PROGRAMS.map((name) => ({ in: path.join(rootFolder, `${name}.ts`), out: path.basename(name) })),
    outdir,
    outExtension: { '.js': '.mjs' },
    bundle: true,
    platform: 'node',
    format: 'esm',
    target: 'node20',
    packages: 'external',
    alias: { '@': rootFolder },
    logLevel: 'error',
  })
  project.provide('commandsFolder', outdir)
  return () => rmSync(outdir, { recursive: true, force: true })
}
