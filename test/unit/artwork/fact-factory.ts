import type { ArtworkFacts, ArtworkFileFacts } from '@/lib/artwork'

const NO_ROLE = { role: null, side: null, layerNumber: null, span: null, from: null, reason: 'nothing says' } as const

/** A file of which nothing is known but what is given. */
export function makeFile(
  name: string,
  { role, ...change }: Partial<Omit<ArtworkFileFacts, 'role'>> & { role?: Partial<ArtworkFileFacts['role']> } = {},
): ArtworkFileFacts {
  return {
    name,
    sizeBytes: 100,
    sha256: 'a'.repeat(64),
    kind: 'gerber',
    role: { ...NO_ROLE, ...role },
    objectCount: 10,
    extentMm: null,
    outline: null,
    narrowestStrokeMm: null,
    copper: null,
    openings: null,
    tools: null,
    job: null,
    stackGroups: null,
    conductorCount: null,
    project: null,
    errorCount: 0,
    noteCount: 0,
    issues: [],
    questions: [],
    unreadReason: null,
    ...change,
  }
}

export const makeFacts = (files: readonly ArtworkFileFacts[]): ArtworkFacts => ({
  readerVersion: '5',
  files: [...files],
  refused: [],
  nets: null,
})

/** Layers of copper as they come, `L1` at the top. */
export const makeCopper = (count: number): ArtworkFileFacts[] =>
  Array.from({ length: count }, (_, at) =>
    makeFile(`L${at + 1}.gbr`, {
      role: {
        role: 'copper',
        layerNumber: at + 1,
        side: at === 0 ? 'top' : at === count - 1 ? 'bottom' : 'inner',
        from: 'attribute',
        reason: 'its attribute says so',
      },
    }),
  )
