import { rmSync } from 'node:fs'
import path from 'node:path'
import { build } from 'esbuild'
import type { TestProject } from 'vitest/node'
import { cacheFolder, rootFolder } from '../../scripts/steps/places.mjs'

declare module 'vitest' {
  interface ProvidedContext {
    /** Folder of the bundled commands, `<name of the command's file>.mjs` each. */
    commandsFolder: string
  }
}

const COMMANDS = ['account-recover', 'package-verify', 'trail-check']

/**
 * The commands that tests call many times, each in one file. As people start them, the loader for TypeScript takes most of their time; tests
 * that call a command once start it as people do.
 */
export default async function bundleCommands(project: TestProject): Promise<() => void> {
  const outdir = path.join(cacheFolder, `commands-${process.pid}`)
  await build({
    entryPoints: COMMANDS.map((name) => path.join(rootFolder, 'lib', 'cli', `${name}.ts`)),
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
