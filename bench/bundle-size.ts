import { readFile } from 'node:fs/promises'
import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build, type Plugin } from 'esbuild'
import { ROOT } from './root'

const ROOT_PATH = fileURLToPath(ROOT)

/**
 * Bytes that a bundle of one module for the browser takes, minified and gzipped.
 *
 * @param external  packages that the page loads anyway, and that do not count
 */
export async function measureBundleBytes(entry: string, external: readonly string[]): Promise<number> {
  const { outputFiles } = await build({
    stdin: { contents: `export * from '${entry}'`, resolveDir: ROOT_PATH, loader: 'ts' },
    bundle: true,
    minify: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    external: [...external],
    alias: { '@': ROOT_PATH.replace(/[\\/]$/, '') },
    write: false,
    logLevel: 'error',
  })
  return outputFiles.reduce((sum, { contents }) => sum + gzipSync(contents, { level: 9 }).byteLength, 0)
}

/** Actions are called over the network, and what a screen fetches when it needs it is not waited for. */
const ONLY_THE_SCREEN: Plugin = {
  name: 'only-the-screen',
  setup: ({ onLoad, onResolve }) => {
    onResolve({ filter: /./ }, ({ path, kind }) => (kind === 'dynamic-import' ? { path, external: true } : undefined))
    onLoad({ filter: /\.tsx?$/ }, async ({ path }) => {
      const text = await readFile(path, 'utf8')
      if (!/^['"]use server['"]|^import 'server-only'/m.test(text)) return undefined
      const names = [...text.matchAll(/^export (?:async )?(?:const|function) (\w+)/gm)].map(([, name]) => name)
      return { contents: names.map((name) => `export const ${name} = null`).join('\n') }
    })
  },
}

/**
 * Bytes of our own code that a screen waits for, minified and gzipped, packages left out.
 *
 * @returns the whole, and about how much of it is the engine's, by its share before it is compressed
 */
export async function measureScreenBytes(entry: string): Promise<{ all: number; engine: number }> {
  const { outputFiles, metafile } = await build({
    stdin: { contents: `export * from '${entry}'`, resolveDir: ROOT_PATH, loader: 'ts' },
    bundle: true,
    minify: true,
    format: 'esm',
    platform: 'browser',
    target: 'es2022',
    jsx: 'automatic',
    packages: 'external',
    loader: { '.css': 'empty' },
    plugins: [ONLY_THE_SCREEN],
    alias: { '@': ROOT_PATH.replace(/[\\/]$/, '') },
    outdir: ROOT_PATH,
    write: false,
    metafile: true,
    logLevel: 'error',
  })
  const all = outputFiles.reduce((sum, { contents }) => sum + gzipSync(contents, { level: 9 }).byteLength, 0)
  let bytes = 0
  let engineBytes = 0
  for (const { inputs } of Object.values(metafile.outputs)) {
    for (const [path, { bytesInOutput }] of Object.entries(inputs)) {
      bytes += bytesInOutput
      if (/(^|\/)lib\/engine\//.test(path)) engineBytes += bytesInOutput
    }
  }
  return { all, engine: (all * engineBytes) / bytes }
}
