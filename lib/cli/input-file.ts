import { readFileSync, statSync } from 'node:fs'

/** What stops a command before anything is computed. */
export class UnusableInput extends Error {}

/**
 * A file's bytes.
 *
 * @param kind  what is expected, as an address: `a design file`
 * @throws UnusableInput naming the file
 */
export function readInputFile(
  file: string,
  { kind, maxBytes, atMost }: { readonly kind: string; readonly maxBytes: number; readonly atMost: string },
): Uint8Array {
  try {
    const status = statSync(file)
    if (status.isDirectory()) throw new UnusableInput(`${file}: is a folder; give ${kind}`)
    if (status.size > maxBytes) throw new UnusableInput(`${file}: has ${status.size} bytes; ${atMost}`)
    return readFileSync(file)
  } catch (error) {
    if (error instanceof UnusableInput) throw error
    if (error instanceof Error && 'code' in error && error.code === 'ENOENT')
      throw new UnusableInput(`${file}: no such file`)
    throw new UnusableInput(`${file}: cannot be read (${error instanceof Error ? error.message : String(error)})`)
  }
}
