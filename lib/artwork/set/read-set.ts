import type { ExtentNm } from '../apertures/aperture'
import { extentOfLayer } from '../shape/extents'
import { guessRole, type SetHints } from './guess-role'
import { type FileReading, kindOfFile, readArtworkFile } from './read-file'
import type { RoleGuess } from './role'
import { type NamedFile, type RefusedFile, unpackFiles } from './unpack'

/** A set of files: archives unpacked, each file read, and what each layer is for. */
export interface ArtworkSet {
  readonly files: readonly SetFile[]
  readonly refused: readonly RefusedFile[]
}
export interface SetFile {
  readonly name: string
  readonly bytes: number
  readonly reading: FileReading
  readonly role: RoleGuess
}

export interface SetOptions {
  /** What somebody said that a file is for, by its name in the set. It is believed. */
  readonly roles?: ReadonlyMap<string, SaidRole>
  /** Called after each file. @param fraction  of all bytes, 0 to 1 */
  readonly onProgress?: (fraction: number) => void
}
export type SaidRole = Pick<RoleGuess, 'role' | 'side' | 'layerNumber'>

/** Reads many files at once. Drills are read last, as where the circuit lies may decide how their numbers are meant. */
export function readSet(given: readonly NamedFile[], options: SetOptions = {}): ArtworkSet {
  const { files, refused } = unpackFiles(given)
  const wholeBytes = files.reduce((sum, { bytes }) => sum + bytes.length, 0)
  let doneBytes = 0
  const keep = (file: NamedFile, reading: FileReading) => {
    readings.set(file, reading)
    doneBytes += file.bytes.length
    options.onProgress?.(wholeBytes === 0 ? 1 : doneBytes / wholeBytes)
  }
  const roleOf = (file: NamedFile, reading: FileReading, hints: SetHints): RoleGuess =>
    withSaid(guessRole(file.name, reading, hints), options.roles?.get(file.name))
  const readings = new Map<NamedFile, FileReading>()
  const drills = files.filter(({ bytes }) => kindOfFile(bytes) === 'drill')
  for (const file of files) if (!drills.includes(file)) keep(file, readArtworkFile(file.bytes))
  const hints = makeHints(files, readings)
  const circuitNm = findCircuit(files, readings, (file, reading) => roleOf(file, reading, hints))
  for (const file of drills)
    keep(file, readArtworkFile(file.bytes, { name: file.name, ...(circuitNm === null ? {} : { circuitNm }) }))
  return {
    files: files.flatMap((file): SetFile[] => {
      const reading = readings.get(file)
      return reading === undefined
        ? []
        : [{ name: file.name, bytes: file.bytes.length, reading, role: roleOf(file, reading, hints) }]
    }),
    refused,
  }
}

function withSaid(guess: RoleGuess, said: SaidRole | undefined): RoleGuess {
  if (said === undefined) return guess
  const before = guess.role === null ? '' : ` in place of ${guess.role} (${guess.reason})`
  return { ...guess, ...said, from: 'person', reason: `a person said so${before}` }
}

const MOST_LIST_BYTES = 100_000

function makeHints(files: readonly NamedFile[], readings: ReadonlyMap<NamedFile, FileReading>): SetHints {
  const jobFunctions = new Map<string, string>()
  const descriptions = new Map<string, string>()
  for (const file of files) {
    const reading = readings.get(file)
    if (reading?.kind === 'job') {
      for (const { path, fileFunction } of reading.files)
        if (fileFunction !== null) jobFunctions.set(path.split(/[\\/]/).at(-1) ?? path, fileFunction)
    } else if (reading?.kind === 'other' && file.bytes.length < MOST_LIST_BYTES) {
      // A list of extensions, as some programs put beside their files: `.GTL    Top Layer`.
      const text = new TextDecoder().decode(file.bytes)
      if (!/^\s*\.?Layer Extension\b|Extension\b.*\bDescription/im.test(text)) continue
      for (const [, extension, description] of text.matchAll(/^(\.\w+)[ \t]{2,}(\S.*?)[ \t]*\r?$/gm))
        descriptions.set((extension ?? '').toLowerCase(), description ?? '')
    }
  }
  return { jobFunctions, descriptions }
}

/** What copper covers, or the profile where there is no copper. */
function findCircuit(
  files: readonly NamedFile[],
  readings: ReadonlyMap<NamedFile, FileReading>,
  roleOf: (file: NamedFile, reading: FileReading) => RoleGuess,
): ExtentNm | null {
  for (const wanted of ['copper', 'profile']) {
    let whole: ExtentNm | null = null
    for (const file of files) {
      const reading = readings.get(file)
      if (reading?.kind !== 'gerber' || roleOf(file, reading).role !== wanted) continue
      const extent = extentOfLayer(reading.objects)
      if (extent === null) continue
      whole =
        whole === null
          ? extent
          : [
              Math.min(whole[0], extent[0]),
              Math.min(whole[1], extent[1]),
              Math.max(whole[2], extent[2]),
              Math.max(whole[3], extent[3]),
            ]
    }
    if (whole !== null) return whole
  }
  return null
}
