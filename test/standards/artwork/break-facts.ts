import type { ArtworkFacts, ArtworkFileFacts } from '@/lib/artwork'
import type { Design } from '@/lib/engine'
import { type Change, factsOf, type SetName, truthOf } from './matching-designs'

/** One fact made wrong, and what has to be found: where the design states it, or which file does. */
interface Break {
  readonly what: string
  readonly change: Change
  readonly facts: readonly string[]
  /** Name of a file that states it, as part of where. */
  readonly file?: string
  readonly path?: readonly string[]
}

type Files = ArtworkFacts['files']
const drawn = (files: Files, role: string, side?: 'top' | 'bottom' | null) =>
  files.filter(
    (file) => file.role.role === role && (file.objectCount ?? 0) > 0 && (side === undefined || file.role.side === side),
  )
const edit =
  (name: string, change: (file: ArtworkFileFacts) => void): NonNullable<Change['files']> =>
  ({ files }) => {
    const file = files.find((each) => each.name === name)
    if (file === undefined) throw new Error(`the set has no ${name}`)
    change(file)
  }

/** Each fact of the closed list that the set states, broken by itself: in the design, or in the file. */
export function breaksOf(set: SetName): Break[] {
  const { files } = factsOf(set)
  return [
    ...breakConductors(set, files),
    ...breakOutline(set, files),
    ...breakHoles(set, files),
    ...breakCovers(files),
    ...breakPart(files),
    ...breakJob(files),
  ]
}

const layersOf = ({ construction }: Design) => construction.layers

function breakConductors(set: SetName, files: Files): Break[] {
  const { layers } = truthOf(set)
  const path = ['construction', 'layers']
  const count = 'Number of conductor layers'
  const copper = drawn(files, 'copper')
  const numbered = copper.filter(({ role }) => role.layerNumber !== null)
  const [top] = numbered.filter(({ role }) => role.side === 'top')
  const [topUnnumbered] = copper.filter(({ role }) => role.side === 'top' && role.layerNumber === null)
  const [bottomUnnumbered] = copper.filter(({ role }) => role.side === 'bottom' && role.layerNumber === null)
  return [
    // Where the set lacks layers in any case, one less is the same contradiction with other numbers.
    {
      what: 'a conductor layer less',
      change: { design: (design) => void layersOf(design).splice(1, 1) },
      facts: [count],
      path,
    },
    {
      what: 'a conductor layer more',
      change: { design: (design) => void layersOf(design).splice(1, 0, layersOf(design)[1] as never) },
      facts: [count],
      path,
    },
    ...(top === undefined
      ? []
      : [
          {
            what: 'a top layer with the number of another',
            change: { files: edit(top.name, ({ role }) => void Object.assign(role, { layerNumber: 2 })) },
            facts: [`Side of ${top.name}`],
            file: top.name,
            path,
          },
          {
            what: 'a layer with a number that the construction lacks',
            change: { files: edit(top.name, ({ role }) => void Object.assign(role, { layerNumber: layers + 5 })) },
            facts: [`Place of ${top.name}`],
            file: top.name,
            path,
          },
        ]),
    ...(topUnnumbered === undefined || bottomUnnumbered === undefined
      ? []
      : [
          {
            what: 'two files of the top layer',
            change: { files: edit(bottomUnnumbered.name, ({ role }) => void Object.assign(role, { side: 'top' })) },
            facts: ['Which file is copper at the top'],
            file: bottomUnnumbered.name,
          },
        ]),
    ...drawn(files, 'holes')
      .slice(0, 1)
      .map(({ name }) => ({
        what: 'holes down to a layer that is not there',
        change: { files: edit(name, ({ role }) => void Object.assign(role, { span: [1, layers + 1] })) },
        facts: [`Layers that the holes of ${name} join`],
        file: name,
        path,
      })),
  ]
}

function breakOutline(set: SetName, files: Files): Break[] {
  const { outlineMm } = truthOf(set)
  const [profile, another] = drawn(files, 'profile')
  if (outlineMm === null || profile === undefined) return []
  const facts = ['Size of the outline']
  const path = ['features', 'outline']
  return [
    {
      what: 'an outline that is 1 % longer',
      change: {
        design: ({ features }) => {
          for (const corner of features.outline?.verticesMm ?? []) corner[0] *= 1.01
        },
      },
      facts,
      file: profile.name,
      path,
    },
    {
      what: 'a profile that is 0.2 mm wider',
      change: {
        files: edit(profile.name, ({ outline }) => {
          if (outline !== null) outline.extentMm[3] += 0.2
        }),
      },
      facts,
      file: profile.name,
      path,
    },
    // With a second profile nobody knows which one the layers go with.
    ...(another === undefined ? breakPlacement(files) : []),
  ]
}

function breakPlacement(files: Files): Break[] {
  return drawn(files, 'copper')
    .slice(0, 1)
    .map(({ name }) => ({
      what: 'a layer that lies elsewhere',
      change: {
        files: edit(name, (file) => {
          const [minX, minY, maxX, maxY] = file.extentMm ?? [0, 0, 0, 0]
          file.extentMm = [minX + 5000, minY, maxX + 5000, maxY]
        }),
      },
      facts: [`Where ${name} lies`],
      file: name,
    }))
}

/** As results write a size. */
const write = (mm: number): string => `${mm} mm`

function breakHoles(set: SetName, files: Files): Break[] {
  const { holes } = truthOf(set)
  const names = drawn(files, 'holes').map(({ name }) => name)
  const isAlone = (mm: number) => holes.filter((hole) => hole.mm === mm).length === 1
  const fileOf = (mm: number) =>
    files.find(
      ({ name, tools }) =>
        names.includes(name) && tools?.some(({ diameterMm, hits }) => hits > 0 && Math.abs(diameterMm - mm) < 1e-3),
    )?.name ?? 'none'
  return holes.flatMap(({ mm, isPlated }, at): Break[] => [
    ...(isAlone(mm)
      ? [
          {
            what: `another size for the holes of ${mm} mm`,
            change: {
              design: ({ features }: Design) => void Object.assign(features.holes[at] ?? {}, { drillMm: 7.77 }),
            },
            facts: [`Holes of ${write(mm)}`, 'Holes of 7.77 mm'],
            path: ['features', 'holes'],
          },
          {
            what: `the other plating for the holes of ${mm} mm`,
            change: {
              design: ({ features }: Design) => void Object.assign(features.holes[at] ?? {}, { plated: !isPlated }),
            },
            facts: [`Plating of holes of ${write(mm)}`],
            file: fileOf(mm),
            path: ['features', 'holes'],
          },
        ]
      : []),
    {
      what: `one more of the holes of ${mm} mm${isPlated ? '' : ', not plated'}`,
      change: {
        design: ({ plan }: Design) => {
          const drawnHoles = plan?.holes[at]
          if (drawnHoles !== undefined) drawnHoles.columns += 1
        },
      },
      facts: [`Number of holes of ${write(mm)}`],
      file: fileOf(mm),
      path: ['plan', 'holes'],
    },
  ])
}

function breakCovers(files: Files): Break[] {
  const path = ['construction', 'layers']
  const without = (id: string): Change => ({
    design: ({ construction }) => {
      construction.layers = construction.layers.filter((layer) => layer.id !== id)
    },
  })
  const covers = (['top', 'bottom'] as const).flatMap((side): Break[] => {
    const [first] = [...drawn(files, 'coverlay', side), ...drawn(files, 'solder mask', side)]
    if (first === undefined) return []
    return [
      {
        what: `no cover at the ${side}`,
        change: without(side),
        facts: [`Cover at the ${side}`],
        file: first.name,
        path,
      },
    ]
  })
  return [
    ...covers,
    ...drawn(files, 'stiffener').map(({ name, role: { side } }) => ({
      what: 'no stiffener',
      change: without('stiffener'),
      facts: [side === null ? 'Stiffener' : `Stiffener at the ${side}`],
      file: name,
      path,
    })),
  ]
}

/** The last file that names its project says another. */
function breakPart(files: Files): Break[] {
  const named = files.filter(({ project }) => project !== null)
  const last = named.at(-1)
  if (last?.project == null || named.length < 2) return []
  const { name, project } = last
  const say = (what: string, fact: string, change: Partial<typeof project>): Break => ({
    what,
    change: { files: edit(name, (file) => void Object.assign(file.project ?? {}, change)) },
    facts: [fact],
    file: name,
  })
  return [
    say('a file of another project', 'Project of the files', { name: 'another' }),
    ...(project.mark === null ? [] : [say('a file with another mark', 'Mark of the project', { mark: 'another' })]),
    ...(project.revision === null
      ? []
      : [say('a file of another revision', 'Revision of the project', { revision: 'another' })]),
  ]
}

function breakJob(files: Files): Break[] {
  const found = files.find(({ job }) => job !== null)
  if (found?.job == null) return []
  const { name } = found
  const inJob = (
    what: string,
    fact: string,
    change: Partial<NonNullable<ArtworkFileFacts['job']>>,
    zoneMm?: number,
  ): Break => ({
    what,
    change: {
      files: edit(name, (file) => void Object.assign(file.job ?? {}, change)),
      ...(zoneMm === undefined ? {} : { zones: zonesOf(zoneMm) }),
    },
    facts: [fact],
    file: name,
  })
  const { thicknessMm, stackThicknessMm, copperLayerCount, sizeMm } = found.job
  return [
    ...(copperLayerCount === null
      ? []
      : [inJob('a job of more layers', 'Number of conductor layers', { copperLayerCount: 6 })]),
    ...(sizeMm === null
      ? []
      : [inJob('a job of another size', 'Size of the outline', { sizeMm: [sizeMm[0] + 3, sizeMm[1]] })]),
    ...(thicknessMm === null ? [] : [inJob('zones of another thickness', 'Thickness', {}, thicknessMm * 1.3)]),
    ...(thicknessMm === null || stackThicknessMm === null
      ? []
      : [
          inJob(
            'materials that add up to something else',
            'Thickness within the job file',
            {
              stackThicknessMm: stackThicknessMm * 1.3,
            },
            thicknessMm,
          ),
        ]),
  ]
}

/** The comparison asks a zone for its name and thickness alone. */
export const zonesOf = (thicknessMm: number): NonNullable<Change['zones']> =>
  [{ zoneId: 'zone', name: 'Zone', thicknessUm: thicknessMm * 1000 }] as unknown as NonNullable<Change['zones']>
