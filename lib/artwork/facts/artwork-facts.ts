import { z } from 'zod'
import { LAYER_ROLES } from '../set/role'

/** Raised whenever a reader finds something else in the same file: kept readings of the version before are then made again. */
export const ARTWORK_READER_VERSION = '5'

const extentSchema = z.tuple([z.number(), z.number(), z.number(), z.number()])
const sideSchema = z.enum(['top', 'bottom', 'inner']).nullable()

/** What a file of a set is for, and what says so. */
const roleSchema = z.object({
  role: z.enum(LAYER_ROLES).nullable(),
  side: sideSchema,
  /** Of copper, 1 at the top. */
  layerNumber: z.number().nullable(),
  /** Of holes: which copper layers they join. */
  span: z.tuple([z.number(), z.number()]).nullable(),
  from: z.enum(['attribute', 'job file', 'extension list', 'name', 'person']).nullable(),
  reason: z.string(),
})

const outlineSchema = z.object({
  isClosed: z.boolean(),
  extentMm: extentSchema,
  loops: z.array(z.object({ areaMm2: z.number(), extentMm: extentSchema, depth: z.number() })),
  looseEndsMm: z.array(z.tuple([z.number(), z.number()])),
})

/** Holes of one tool. */
const toolSchema = z.object({
  number: z.number(),
  diameterMm: z.number(),
  plating: z.enum(['plated', 'not plated']).nullable(),
  hits: z.number(),
  slots: z.number(),
  routedMoves: z.number(),
})

const jobSchema = z.object({
  name: z.string().nullable(),
  revision: z.string().nullable(),
  sizeMm: z.tuple([z.number(), z.number()]).nullable(),
  copperLayerCount: z.number().nullable(),
  thicknessMm: z.number().nullable(),
  /** Of its own list of materials, from the top downwards; null where a layer has no thickness there. */
  stackThicknessMm: z.number().nullable(),
  stackCopperCount: z.number().nullable(),
})

const placeSchema = z.tuple([z.number(), z.number()])
/** A least figure with where it was found, in the file's coordinates. */
const leastSchema = z.object({ mm: z.number(), atMm: placeSchema })

const cornerSchema = z.object({ deg: z.number(), atMm: placeSchema })

/** Where copper etches unevenly; each null where nothing is as narrow or as sharp as is looked for: 0.25 mm, 80°. Widths within 2 um, angles within 2.5°. */
const etchingSchema = z.object({
  /** The narrowest copper between two borders of one piece, or of a dot. */
  leastCopper: leastSchema.nullable(),
  /** The narrowest gap within one piece of copper. */
  leastSlot: leastSchema.nullable(),
  sharpestTip: cornerSchema.nullable(),
  sharpestGap: cornerSchema.nullable(),
})

/** What a copper layer covers. */
const copperSchema = z.object({
  areaMm2: z.number(),
  /** Pieces of copper that hang together on this layer. */
  islandCount: z.number(),
  /** The narrowest stroke with no copper beside it; null where every stroke only fills a plane. */
  narrowest: leastSchema.nullable(),
  /** Between two islands; null where none is nearer than 0.25 mm to another, or there is too much to measure. */
  leastSpace: leastSchema.nullable(),
  /** Land round plated holes, from the wall to the nearest edge; null where no plated hole meets copper. Below 0 the hole breaks out. */
  leastRing: leastSchema.extend({ holeMm: z.number(), holeCount: z.number() }).nullable(),
  /** Null where there is too much to measure. */
  etching: etchingSchema.nullable(),
})

/** What a file of a coverlay draws, read as openings in it. */
const openingsSchema = z.object({
  areaMm2: z.number(),
  count: z.number(),
  /** The narrowest strip between two openings; null where none is narrower than 1 mm. */
  leastWeb: leastSchema.nullable(),
  /** The narrowest opening, or part of one, by its least width; null where each is 3 mm wide. */
  leastOpening: leastSchema.nullable(),
})

const netPlaceSchema = z.object({ name: z.string(), atMm: placeSchema })
/** Conductors of some kind: how many, and one of them at most. */
const conductorsSchema = z.object({ count: z.number(), first: z.array(netPlaceSchema) })
const netSourceSchema = z.object({
  /** A netlist; null for the nets that objects of the copper layers name themselves. */
  fileName: z.string().nullable(),
  netCount: z.number(),
  placeCount: z.number(),
  /** Places where there is copper to be compared. */
  onCopperCount: z.number(),
  firstOffCopper: netPlaceSchema.extend({ net: z.string() }).nullable(),
  /** Drawn conductors on which none of its places lies. */
  unnamed: conductorsSchema,
  openCount: z.number(),
  shortCount: z.number(),
  /** The first few. */
  opens: z.array(z.object({ net: z.string(), parts: z.number(), places: z.array(netPlaceSchema) })),
  shorts: z.array(z.object({ nets: z.array(z.string()), places: z.array(netPlaceSchema) })),
})

/** Nets against copper; null where there is no copper, or nothing names a net. */
const netsSchema = z.object({
  sources: z.array(netSourceSchema),
  /** Drawn conductors that join fewer than two lands, holes or areas. */
  loose: conductorsSchema,
  platedHoleCount: z.number(),
  /** Holes of which nobody says whether they are plated: none is taken to join layers. */
  unknownHoleCount: z.number(),
  /** Why nobody knows the order of the copper layers; null where it is known. */
  unorderedReason: z.string().nullable(),
})

const stackGroupSchema = z.object({ name: z.string(), thicknessMm: z.number().nullable() })

const fileSchema = z.object({
  name: z.string(),
  sizeBytes: z.number(),
  sha256: z.string(),
  kind: z.enum(['gerber', 'drill', 'job', 'netlist', 'ipc2581', 'other']),
  role: roleSchema,
  /** Objects of a layer, holes and slots of a drill file; null of other files. */
  objectCount: z.number().nullable(),
  /** What its objects cover at most; null where it draws nothing. */
  extentMm: extentSchema.nullable(),
  /** Of a profile. */
  outline: outlineSchema.nullable(),
  /** Of copper: the narrowest stroke of a round aperture. */
  narrowestStrokeMm: z.number().nullable(),
  /** Of copper that was worked out; null of other files, and where a layer has more objects than a circuit has. */
  copper: copperSchema.nullable(),
  /** Of a coverlay; null of other files, and where there is nothing or too much. */
  openings: openingsSchema.nullable(),
  /** Of a drill file. */
  tools: z.array(toolSchema).nullable(),
  job: jobSchema.nullable(),
  /** Of an IPC-2581 file. */
  stackGroups: z.array(stackGroupSchema).nullable(),
  conductorCount: z.number().nullable(),
  /** What the file says that it is a part of (`.ProjectId`): its name and its mark. */
  project: z.object({ name: z.string(), mark: z.string().nullable(), revision: z.string().nullable() }).nullable(),
  /** Counts over all; of the issues themselves the first are kept, errors before notes. */
  errorCount: z.number(),
  noteCount: z.number(),
  issues: z.array(
    z.object({ severity: z.enum(['error', 'note']), line: z.number(), column: z.number(), reason: z.string() }),
  ),
  questions: z.array(z.object({ text: z.string(), taken: z.string().nullable() })),
  /** Why nothing of the file was read; null where it was. */
  unreadReason: z.string().nullable(),
})

/** What a set of artwork files says, small enough to be kept beside a revision: no object is in it. */
export const artworkFactsSchema = z.object({
  readerVersion: z.string(),
  files: z.array(fileSchema),
  refused: z.array(z.object({ name: z.string(), reason: z.string() })),
  nets: netsSchema.nullable(),
})

export type ArtworkFacts = z.infer<typeof artworkFactsSchema>
export type ArtworkFileFacts = z.infer<typeof fileSchema>
export type ArtworkNetsFacts = z.infer<typeof netsSchema>

/** The role that a person gave to a file; it holds for these very bytes. */
export interface GivenRole {
  readonly fileName: string
  readonly sha256: string
  readonly role: NonNullable<ArtworkFileFacts['role']['role']>
  readonly side: ArtworkFileFacts['role']['side']
  readonly layerNumber: number | null
}
