import { solveRoughly, type ZoneLine } from '../lines'
import { createRandomStream } from '../numerics'
import type { LineSection } from '../signals'

type Solvable = Extract<ZoneLine, { kind: 'solvable' }>

/** What moves by itself from part to part: each from the section at one end of the range, with everything else at nominal. */
const MOVERS = ['width', 'distance', 'copper', 'cover', 'permittivity'] as const
type Mover = (typeof MOVERS)[number]
type Place = Readonly<Record<Mover, number>>

const NOMINAL: Place = { width: 0, distance: 0, copper: 0, cover: 0, permittivity: 0 }
/** The ends of the range are three standard deviations out, as for thickness. Our choice: nobody publishes how etched widths and films scatter. */
const SIGMAS_TO_THE_END = 3
const DRAWS = 20_000
const SEED = 18
/** Sections that the fitted response is held against. */
const CHECKS = 8

export interface ShareInBand {
  /** Parts whose impedance lies within the band, by the fitted response. */
  readonly shareFraction: number
  /** The same if the response were off by its error everywhere, for worse and for better. */
  readonly lowFraction: number
  readonly highFraction: number
  /** Largest difference between the fitted response and field solutions at drawn places. */
  readonly responseErrorPct: number
  readonly meanOhm: number
  readonly sigmaOhm: number
  readonly draws: number
  /** Which of what moves costs most of the band: largest change of the impedance alone, either way. */
  readonly effects: readonly { readonly mover: Mover; readonly lowOhm: number; readonly highOhm: number }[]
}

/**
 * Share of parts within a band: seeded draws on a response that is fitted to field solutions, one for each end of each thing that moves, in proportion between; effects multiply. What that
 * leaves out, bends of the response and effects on each other, is measured at drawn places and stated.
 *
 * Model  each thing that moves is normal by itself; a layer's tolerances move together
 * @returns null where a section has no solution or layers vanish at an end
 */
export function findShareInBand(
  line: Solvable,
  widthMm: number,
  band: { low: number; high: number },
): ShareInBand | null {
  const sections = {
    nominal: line.makeSection('nominal', widthMm),
    low: line.makeSection('low', widthMm),
    high: line.makeSection('high', widthMm),
  }
  const counts = Object.values(sections).map(({ slabs }) => slabs.length)
  if (new Set(counts).size > 1) return null
  const impedanceAt = (place: Place): number | null => {
    const answer = solveRoughly(mix(sections, place))
    return 'faults' in answer ? null : answer.impedanceOhm
  }
  const nominalOhm = impedanceAt(NOMINAL)
  if (nominalOhm === null) return null
  const slopes: { mover: Mover; low: number; high: number }[] = []
  for (const mover of MOVERS) {
    const [low, high] = [impedanceAt({ ...NOMINAL, [mover]: -1 }), impedanceAt({ ...NOMINAL, [mover]: 1 })]
    if (low === null || high === null) return null
    slopes.push({ mover, low: Math.log(low / nominalOhm), high: Math.log(high / nominalOhm) })
  }
  const respond = (place: Place): number =>
    nominalOhm *
    Math.exp(
      slopes.reduce((sum, { mover, low, high }) => {
        const at = place[mover]
        return sum + (at < 0 ? -at * low : at * high)
      }, 0),
    )
  const random = createRandomStream(SEED)
  const drawPlace = (): Place => {
    const draw = () => Math.max(-1.5, Math.min(1.5, random.nextNormal() / SIGMAS_TO_THE_END))
    return { width: draw(), distance: draw(), copper: draw(), cover: draw(), permittivity: draw() }
  }
  let error = 0
  for (let check = 0; check < CHECKS; check += 1) {
    const place = drawPlace()
    const solved = impedanceAt(place)
    if (solved === null) return null
    error = Math.max(error, Math.abs(respond(place) / solved - 1))
  }
  let [within, narrow, wide, sum, squares] = [0, 0, 0, 0, 0]
  for (let draw = 0; draw < DRAWS; draw += 1) {
    const ohm = respond(drawPlace())
    sum += ohm
    squares += ohm * ohm
    if (ohm >= band.low && ohm <= band.high) within += 1
    if (ohm * (1 - error) >= band.low && ohm * (1 + error) <= band.high) narrow += 1
    if (ohm * (1 + error) >= band.low && ohm * (1 - error) <= band.high) wide += 1
  }
  const meanOhm = sum / DRAWS
  return {
    shareFraction: within / DRAWS,
    lowFraction: narrow / DRAWS,
    highFraction: wide / DRAWS,
    responseErrorPct: 100 * error,
    meanOhm,
    sigmaOhm: Math.sqrt(Math.max(0, squares / DRAWS - meanOhm * meanOhm)),
    draws: DRAWS,
    effects: slopes.map(({ mover, low, high }) => ({
      mover,
      lowOhm: nominalOhm * Math.exp(low),
      highOhm: nominalOhm * Math.exp(high),
    })),
  }
}

/** A section between nominal and the ends, each thing that moves at its own place: -1 and 1 are the ends with the least and the greatest impedance. */
function mix({ nominal, low, high }: Record<'nominal' | 'low' | 'high', LineSection>, place: Place): LineSection {
  const pick = (at: number, read: (section: LineSection) => number): number => {
    const middle = read(nominal)
    return at < 0 ? middle - at * (read(low) - middle) : middle + at * (read(high) - middle)
  }
  const bottomOf = ({ conductors }: LineSection) => conductors[0]?.bottomUm ?? 0
  const levelAt = nominal.slabs.findIndex((_, index) => heightOf(nominal, index) >= bottomOf(nominal) - 1e-9)
  const slabs = nominal.slabs.map((_, index) => {
    const mover: Mover = index < levelAt ? 'distance' : index === levelAt ? 'copper' : 'cover'
    return {
      thicknessUm: pick(place[mover], ({ slabs: of }) => of[index]?.thicknessUm ?? Number.NaN),
      relativePermittivity: Math.max(
        1,
        pick(place.permittivity, ({ slabs: of }) => of[index]?.relativePermittivity ?? Number.NaN),
      ),
    }
  })
  const bottomUm = slabs.slice(0, levelAt).reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
  return {
    ...nominal,
    slabs,
    conductors: nominal.conductors.map((each, index) => ({
      ...each,
      bottomUm,
      thicknessUm: pick(place.copper, ({ conductors }) => conductors[index]?.thicknessUm ?? Number.NaN),
      bottomWidthUm: pick(place.width, ({ conductors }) => conductors[index]?.bottomWidthUm ?? Number.NaN),
      topWidthUm: pick(place.width, ({ conductors }) => conductors[index]?.topWidthUm ?? Number.NaN),
    })),
  }
}

const heightOf = ({ slabs }: LineSection, index: number): number =>
  slabs.slice(0, index).reduce((sum, { thicknessUm }) => sum + thicknessUm, 0)
