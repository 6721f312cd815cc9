import type { Design } from '../design'
import { makeDoubleSided, makeDoubleSidedOneLayerInBend, makeSingleSided } from './flexible-circuits'
import { markProposed } from './marks'
import { makeFourLayerInnerFlex, makeSixLayerUnbondedLeaves, makeThreeLayerOuterFlex } from './rigid-flex-circuits'

/** A construction to begin from. What it decides is thickness and order; the brief stays for people to fill. */
export interface StartingConstruction {
  /** Stable. */
  readonly id: string
  readonly name: string
  /** When one would choose it, in a sentence. */
  readonly purpose: string
  readonly conductorLayerCount: number
  readonly makeDesign: (name: string) => Design
}

const STARTING_CONSTRUCTIONS: readonly StartingConstruction[] = [
  {
    id: 'single-sided',
    name: 'Single-sided flex',
    purpose: 'Cheapest and most flexible: one copper layer near the middle of the section, with a connector end.',
    conductorLayerCount: 1,
    makeDesign: makeSingleSided,
  },
  {
    id: 'double-sided',
    name: 'Double-sided flex',
    purpose: 'Two plated layers throughout, for parts that are bent to install and then left alone.',
    conductorLayerCount: 2,
    makeDesign: makeDoubleSided,
  },
  {
    id: 'double-sided-one-layer-in-bend',
    name: 'Double-sided flex, one layer in the bend',
    purpose: 'Two layers where parts are placed, one layer without plating where it moves.',
    conductorLayerCount: 2,
    makeDesign: makeDoubleSidedOneLayerInBend,
  },
  {
    id: 'three-layer-outer-flex',
    name: 'Three-layer rigid-flex, outer flex',
    purpose:
      'Both outer layers run through as flex, one rigid layer inside. Its coverlay openings need tight registration.',
    conductorLayerCount: 3,
    makeDesign: makeThreeLayerOuterFlex,
  },
  {
    id: 'four-layer-inner-flex',
    name: 'Four-layer rigid-flex, inner flex',
    purpose: 'The common rigid-flex: components on rigid outer layers, two flexible layers protected inside.',
    conductorLayerCount: 4,
    makeDesign: makeFourLayerInnerFlex,
  },
  {
    id: 'six-layer-unbonded-leaves',
    name: 'Six-layer rigid-flex, unbonded leaves',
    purpose: 'Four flexible layers in two leaves that bend separately, so that the section stays thin.',
    conductorLayerCount: 6,
    makeDesign: makeSixLayerUnbondedLeaves,
  },
]

const MARKED: readonly StartingConstruction[] = STARTING_CONSTRUCTIONS.map((construction) => ({
  ...construction,
  makeDesign: (name) => markProposed(construction.makeDesign(name)),
}))

export function listStartingConstructions(): readonly StartingConstruction[] {
  return MARKED
}

export function findStartingConstruction(id: string): StartingConstruction | null {
  return MARKED.find((construction) => construction.id === id) ?? null
}
