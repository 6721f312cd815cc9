import type { DrillAnswers, DrillReading } from '../drill/drill-reading'
import { readDrill } from '../drill/read-drill'
import type { GerberAnswers, GerberReading } from '../gerber/gerber-reading'
import { readGerber } from '../gerber/read-gerber'
import { type Ipc2581Reading, readIpc2581 } from '../ipc2581/read-ipc2581'
import { type JobReading, readJob } from '../job/read-job'
import { MOST_FILE_BYTES } from '../limits'
import { type NetlistReading, readNetlist } from '../netlist/read-netlist'

export type FileReading = GerberReading | DrillReading | JobReading | NetlistReading | Ipc2581Reading | OtherFile
/** A file that no reader here is for. */
interface OtherFile {
  readonly kind: 'other'
  readonly reason: string
  readonly issues: readonly []
}

/** Which reader a file is for, by what it holds; names are not asked. */
export type FileKind = Exclude<FileReading['kind'], 'other'> | 'dxf' | 'unknown'

const LOOKED_AT = 20_000

export function kindOfFile(bytes: Uint8Array): FileKind {
  const text = new TextDecoder().decode(bytes.subarray(0, LOOKED_AT)).replace(/^\uFEFF/, '')
  if (/^\s*(<\?xml[^>]*>\s*)?(<!--[\s\S]*?-->\s*|<!DOCTYPE[^>]*>\s*)*<(\w+:)?IPC-2581\b/.test(text)) return 'ipc2581'
  if (/^\s*\{/.test(text) && /"(GeneralSpecs|FilesAttributes|MaterialStackup)"/.test(text)) return 'job'
  if (/^\s*(%\s*)?M48\b/m.test(text)) return 'drill'
  if (
    /%\s*(FS[LTD]?[AI]|MO(MM|IN)|ADD\d|AM|AB|SR|LP[DC]|T[FAOD])/.test(text) ||
    /^\s*G0?4[^\n]*\*/.test(text) ||
    /\bX-?\d+Y-?\d+D0?[123]\*/.test(text)
  )
    return 'gerber'
  if (/^P\s+UNITS\b/m.test(text) || /^P\s+JOB\b/m.test(text) || /^3[12]7.{14} {3}/m.test(text)) return 'netlist'
  if (/^\s*0\r?\n\s*SECTION\r?\n/m.test(text)) return 'dxf'
  return /^\s*T\d+C[\d.]+/m.test(text) && /^X-?[\d.]+Y-?[\d.]+\s*$/m.test(text) ? 'drill' : 'unknown'
}

export function readArtworkFile(bytes: Uint8Array, answers: GerberAnswers & DrillAnswers = {}): FileReading {
  if (bytes.length > MOST_FILE_BYTES)
    return { kind: 'other', reason: `it has more than ${MOST_FILE_BYTES} bytes`, issues: [] }
  switch (kindOfFile(bytes)) {
    case 'gerber':
      return readGerber(bytes, answers)
    case 'drill':
      return readDrill(bytes, answers)
    case 'job':
      return readJob(bytes)
    case 'netlist':
      return readNetlist(bytes)
    case 'ipc2581':
      return readIpc2581(bytes)
    case 'dxf':
      return { kind: 'other', reason: 'a drawing (DXF): outlines are taken from it where a plan is drawn', issues: [] }
    default:
      return { kind: 'other', reason: 'no format that is read here', issues: [] }
  }
}
