import { Auditor, type Issue, quote } from '../audit'

/** What a Gerber job file says of the circuit. Null is what it does not say. */
export interface JobReading {
  readonly kind: 'job'
  readonly name: string | null
  readonly revision: string | null
  readonly sizeMm: readonly [x: number, y: number] | null
  readonly copperLayerCount: number | null
  readonly thicknessMm: number | null
  readonly files: readonly JobFile[]
  /** From the top downwards. */
  readonly layers: readonly JobLayer[]
  /** Widths and spacings that the design keeps to, by the layers they are about. */
  readonly rules: readonly { readonly layers: string; readonly valuesMm: Readonly<Record<string, number>> }[]
  readonly issues: readonly Issue[]
}
interface JobFile {
  readonly path: string
  readonly fileFunction: string | null
  readonly filePolarity: string | null
}
interface JobLayer {
  readonly type: string
  readonly name: string | null
  readonly thicknessMm: number | null
  readonly material: string | null
}

const MOST_JOB_BYTES = 16 * 1024 * 1024
const MOST_ENTRIES = 5000

/** Reads a Gerber job file (Gerber job format specification, from memory): JSON, lengths in mm. */
export function readJob(bytes: Uint8Array): JobReading {
  const auditor = new Auditor()
  const text = new TextDecoder().decode(bytes.subarray(0, MOST_JOB_BYTES))
  const finish = (found: Partial<JobReading>): JobReading => ({
    ...{ kind: 'job', name: null, revision: null, sizeMm: null, copperLayerCount: null, thicknessMm: null },
    ...{ files: [], layers: [], rules: [] },
    ...found,
    issues: auditor.finish(),
  })
  if (bytes.length > MOST_JOB_BYTES)
    auditor.error(1, 1, `the job file has more than ${MOST_JOB_BYTES} bytes: cut off there`)
  let root: unknown
  try {
    root = JSON.parse(text)
  } catch (problem) {
    const at = Number(/position (\d+)/.exec(problem instanceof Error ? problem.message : '')?.[1] ?? 0)
    auditor.error(...placeAt(text, at), 'this is not JSON from here on: nothing of the job file is read')
    return finish({})
  }
  if (!isRecord(root)) {
    auditor.error(1, 1, 'the job file holds no object')
    return finish({})
  }
  const reader = new FieldReader(text, auditor)
  const general = reader.record(root, 'GeneralSpecs') ?? {}
  const project = reader.record(general, 'ProjectId') ?? {}
  const size = reader.record(general, 'Size') ?? {}
  const [x, y] = [reader.number(size, 'X'), reader.number(size, 'Y')]
  const files = reader.list(root, 'FilesAttributes').flatMap((entry): JobFile[] => {
    const path = reader.text(entry, 'Path')
    if (path === null) return []
    return [
      { path, fileFunction: reader.text(entry, 'FileFunction'), filePolarity: reader.text(entry, 'FilePolarity') },
    ]
  })
  const layers = reader.list(root, 'MaterialStackup').flatMap((entry): JobLayer[] => {
    const type = reader.text(entry, 'Type')
    if (type === null) return []
    const [name, material] = [reader.text(entry, 'Name'), reader.text(entry, 'Material')]
    return [{ type, name, thicknessMm: reader.number(entry, 'Thickness'), material: material === '' ? null : material }]
  })
  const rules = reader.list(root, 'DesignRules').map((entry) => ({
    layers: reader.text(entry, 'Layers') ?? '',
    valuesMm: Object.fromEntries(
      Object.entries(entry).filter((pair): pair is [string, number] => typeof pair[1] === 'number'),
    ),
  }))
  return finish({
    name: reader.text(project, 'Name'),
    revision: reader.text(project, 'Revision'),
    sizeMm: x === null || y === null ? null : [x, y],
    copperLayerCount: reader.number(general, 'LayerNumber'),
    thicknessMm: reader.number(general, 'BoardThickness'),
    ...{ files, layers, rules },
  })
}

type Fields = Readonly<Record<string, unknown>>
const isRecord = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value)

/** Takes fields of the right kind; of another kind they are told with the place where their name stands first. */
class FieldReader {
  constructor(
    private readonly source: string,
    private readonly auditor: Auditor,
  ) {}

  record(from: Fields, key: string): Fields | null {
    return this.#take(from, key, isRecord, 'an object')
  }

  text(from: Fields, key: string): string | null {
    return this.#take(from, key, (value): value is string => typeof value === 'string', 'a text')
  }

  number(from: Fields, key: string): number | null {
    const isNumber = (value: unknown): value is number =>
      typeof value === 'number' && Number.isFinite(value) && value >= 0
    return this.#take(from, key, isNumber, 'a number of 0 or more')
  }

  list(from: Fields, key: string): Fields[] {
    const list = this.#take(from, key, (value): value is unknown[] => Array.isArray(value), 'a list') ?? []
    if (list.length > MOST_ENTRIES) this.#tell(key, `has more than ${MOST_ENTRIES} entries: the rest is not read`)
    return list.slice(0, MOST_ENTRIES).filter((entry): entry is Fields => {
      if (isRecord(entry)) return true
      this.#tell(key, 'has an entry that is not an object')
      return false
    })
  }

  #take<T>(from: Fields, key: string, is: (value: unknown) => value is T, what: string): T | null {
    const value = from[key]
    if (value === undefined || value === null) return null
    if (is(value)) return value
    this.#tell(key, `is ${quote(JSON.stringify(value).slice(0, 60))} and not ${what}: left out`)
    return null
  }

  #tell(key: string, what: string): void {
    this.auditor.error(...placeAt(this.source, Math.max(0, this.source.indexOf(`"${key}"`))), `${key} ${what}`)
  }
}

function placeAt(text: string, at: number): [line: number, column: number] {
  const before = text.slice(0, at).split('\n')
  return [before.length, (before.at(-1) ?? '').length + 1]
}
