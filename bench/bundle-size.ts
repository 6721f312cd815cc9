import { fileURLToPath } from 'node:url'
import { gzipSync } from 'node:zlib'
import { build } from 'esbuild'
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
