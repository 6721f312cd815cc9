import { quote } from '../audit'
import type { FileReading } from './read-file'
import { type RoleGuess, roleOfExtension, roleOfFileFunction, roleOfWords } from './role'

/** What other files of the set say of a file. */
export interface SetHints {
  /** Functions of files by the job file. */
  readonly jobFunctions: ReadonlyMap<string, string>
  /** Descriptions by extension, from a list of extensions in the set. */
  readonly descriptions: ReadonlyMap<string, string>
}

/** The role of a file, from the surest that says one: its attribute, the job file, the list of extensions, its name. */
export function guessRole(name: string, reading: FileReading, hints: SetHints): RoleGuess {
  const isLayer = reading.kind === 'gerber' || reading.kind === 'drill'
  if (!isLayer) return { role: null, side: null, layerNumber: null, span: null, from: null, reason: 'no layer' }
  const own = reading.fileAttributes.get('.FileFunction') ?? null
  const base = name.split('/').at(-1) ?? name
  const job = hints.jobFunctions.get(base) ?? null
  const extension = base.slice(base.lastIndexOf('.')).toLowerCase()
  const description = hints.descriptions.get(extension) ?? null
  const order = reading.comments
    .map((comment) => /Layer_Physical_Order\s*=\s*(\d+)/.exec(comment)?.[1])
    .find((found) => found !== undefined)
  const finish = (found: Omit<RoleGuess, 'from' | 'reason'>, from: RoleGuess['from'], reason: string): RoleGuess => {
    const empty = reading.objects.count === 0 ? '; it holds nothing' : ''
    const layerNumber = found.role === 'copper' && order !== undefined ? Number(order) : found.layerNumber
    const byOrder = layerNumber !== found.layerNumber ? `, layer ${layerNumber} by a comment` : ''
    return { ...found, layerNumber, from, reason: `${reason}${byOrder}${empty}` }
  }
  const byOwn = own === null ? null : roleOfFileFunction(own)
  if (byOwn !== null) return finish(byOwn, 'attribute', `its attribute says ${quote(own ?? '')}`)
  const byJob = job === null ? null : roleOfFileFunction(job)
  if (byJob !== null) return finish(byJob, 'job file', `the job file says ${quote(job ?? '')}`)
  const silent = own === null ? '' : `its attribute says only ${quote(own)}, and `
  const byList = description === null ? null : roleOfWords(description)
  if (byList !== null)
    return finish(byList, 'extension list', `${silent}the list of extensions says ${quote(description ?? '')}`)
  if (reading.kind === 'drill')
    return finish({ role: 'holes', side: null, layerNumber: null, span: null }, 'name', `${silent}it is a drill file`)
  // A known extension says more than words: names of projects hold any word.
  const byExtension = roleOfExtension(base)
  const byWords = roleOfWords(base.slice(0, base.lastIndexOf('.')))
  const byName = byExtension ?? byWords
  if (byName !== null && byName.role !== null) {
    const what = byExtension !== null ? `extension ${quote(extension)}` : `name ${quote(base)}`
    return finish(byName, 'name', `${silent}its ${what} is usual for that`)
  }
  const nothing = { role: null, side: null, layerNumber: null, span: null } as const
  return finish(nothing, null, `${silent}neither attribute nor name says what it is: please say`)
}
