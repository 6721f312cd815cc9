import type { SourceKey } from '../sources'

/** A word of the trade, as the project uses it. */
export interface Term {
  readonly id: string
  /** As the glossary lists it. */
  readonly term: string
  /** Other forms that running text has of it; the term itself is found without being listed, and so is its plural in -s. */
  readonly forms: readonly string[]
  /** One or two sentences that stand by themselves. */
  readonly meaning: string
  readonly sourceKey: SourceKey
}

const practice = (id: string, term: string, meaning: string, forms: readonly string[] = []): Term => ({
  id,
  term,
  forms,
  meaning,
  sourceKey: 'commonPractice',
})

const sourced = (
  sourceKey: SourceKey,
  id: string,
  term: string,
  meaning: string,
  forms: readonly string[] = [],
): Term => ({
  id,
  term,
  forms,
  meaning,
  sourceKey,
})

const TERMS: readonly Term[] = [
  practice(
    'adhesiveless',
    'adhesiveless laminate',
    'Copper foil and base film joined without an adhesive between them: thinner, and better in heat than a laminate with adhesive.',
    ['adhesiveless clad', 'adhesiveless'],
  ),
  practice(
    'anchor',
    'anchor',
    'A spur of copper on a pad that runs under the coverlay and holds the pad down when it is soldered.',
    ['anchor spur', 'anchored'],
  ),
  practice(
    'annular-ring',
    'annular ring',
    'The copper that is left around a hole: half of the difference between the pad and the drilled hole, less what they are off each other.',
  ),
  practice(
    'aspect-ratio',
    'aspect ratio',
    'Of a hole: the thickness that is drilled through over the diameter of the drill. Deep narrow holes are hard to plate.',
  ),
  sourced(
    'compositeBeam',
    'bending-stiffness',
    'bending stiffness',
    'The moment that a section asks for, for each unit of curvature. It grows with the square of the distance of copper from the neutral axis.',
    ['stiffness'],
  ),
  practice(
    'bend-radius',
    'inside radius',
    'Radius of the face that lies on the inside of a bend. The radius of the middle of the part is larger by half of its thickness.',
    ['inside bend radius'],
  ),
  sourced(
    'bowAndTwist',
    'bow-and-twist',
    'bow and twist',
    'How far a flat part curves along an edge (bow) or has one corner off the plane of the other three (twist), as a share of its length.',
  ),
  practice(
    'controlled-impedance',
    'controlled impedance',
    'A line whose impedance the fabricator is to hold within a tolerance, and to prove on a coupon.',
    ['impedance-controlled'],
  ),
  practice(
    'coupon',
    'coupon',
    'A piece of the panel, made with the part, on which is measured or cut up what cannot be on the part itself.',
    ['test coupon'],
  ),
  sourced(
    'ipc4203',
    'coverlay',
    'coverlay',
    'A film with adhesive that covers the conductors of a flexible part, with openings where they are to be reached. It bends; a rigid board’s solder mask does not.',
    ['cover film'],
  ),
  practice(
    'crosstalk',
    'crosstalk',
    'What a signal on one line brings about on a line beside or below it: at the near end by the sum of capacitive and inductive coupling, at the far end by their difference.',
  ),
  practice(
    'dam',
    'web',
    'The strip of coverlay or solder mask that is left between two openings. A narrow one tears or lifts.',
    ['dam'],
  ),
  practice('datum', 'datum', 'The edge, hole or plane that dimensions of a drawing are measured from.'),
  practice(
    'developed-length',
    'developed length',
    'Length of a bend along the neutral axis: what the flat part must have so that it reaches around.',
    ['arc length'],
  ),
  sourced(
    'foilFatigueTest',
    'ductility',
    'ductility',
    'How far copper stretches before it breaks. The fatigue ductility, which a foil’s bending test gives, decides how many large bends it stands.',
    ['fatigue ductility'],
  ),
  sourced(
    'flexUses',
    'dynamic-bend',
    'dynamic bend',
    'A bend that moves in service, again and again. One that is formed once and stays is static.',
    ['dynamic flexing', 'dynamic use'],
  ),
  sourced(
    'ipc4562',
    'electrodeposited',
    'electrodeposited foil',
    'Copper foil that was plated onto a drum. Its grain stands upright, and it breaks sooner in a moving bend than rolled-annealed foil.',
    ['electrodeposited'],
  ),
  practice(
    'encapsulation',
    'encapsulation',
    'Adhesive that fills the room between the conductors under a coverlay without a void. Thick copper needs thick adhesive.',
  ),
  practice('fiducial', 'fiducial', 'A mark of copper that an assembly machine finds its place by.'),
  practice(
    'first-article',
    'first article',
    'The first parts that a process makes, measured in full before the rest is made.',
  ),
  practice('flex-zone', 'flex zone', 'An area of the part that has no rigid layer and may bend.'),
  sourced(
    'ipc2223',
    'rigid-flex',
    'rigid-flex',
    'A part of rigid boards joined by flexible layers that run through all of them, made in one lamination and not by connectors.',
  ),
  practice(
    'hatched-plane',
    'hatched plane',
    'A plane of crossed bars in place of solid copper, so that it bends more easily. Impedance over it is higher than over a solid one.',
    ['hatched'],
  ),
  practice(
    'leaf',
    'unbonded leaf',
    'One of several flexible layers that lie over each other without being joined in the bend, so that each bends about its own neutral axis.',
    ['unbonded leaves', 'loose leaf', 'loose leaves'],
  ),
  sourced(
    'miner',
    'damage-sum',
    'damage sum',
    'Each kind of motion uses up its cycles over the cycles that it would last alone; where the shares add up to one, the life is used up.',
  ),
  sourced(
    'compositeBeam',
    'neutral-axis',
    'neutral axis',
    'The level in a bent section that gets neither longer nor shorter. Strain grows with the distance from it; copper belongs close to it.',
    ['neutral fibre', 'neutral surface'],
  ),
  practice(
    'netlist',
    'netlist',
    'The list of which lands and holes are connected, against which the copper of the artwork is compared and the finished part is tested.',
  ),
  practice(
    'no-flow-prepreg',
    'no-flow prepreg',
    'A bonding sheet of rigid boards whose resin hardly flows in the press, so that little runs out onto the flex zone.',
    ['low-flow prepreg'],
  ),
  practice(
    'pads-only-plating',
    'pads-only plating',
    'Copper is plated into the holes and onto their pads alone, so that conductors in a bend keep the rolled foil without plated copper on it.',
    ['pads-only'],
  ),
  practice(
    'panel-plating',
    'panel plating',
    'Copper is plated onto the whole face of the panel, conductors in bends included: thicker and less ductile there.',
  ),
  practice(
    'prepreg',
    'prepreg',
    'Glass cloth with resin that is not fully cured, which joins the layers of a rigid board in the press.',
  ),
  practice(
    'resin-squeeze-out',
    'squeeze-out',
    'Adhesive or resin that the press drives out past the edge of its layer, over a pad or onto the flex zone.',
    ['adhesive squeeze-out', 'resin squeeze-out'],
  ),
  sourced(
    'ipc4562',
    'rolled-annealed',
    'rolled-annealed foil',
    'Copper foil that was rolled thin and made soft by heat. Its grain lies along the foil and stands many bends, best along the direction of rolling.',
    ['rolled-annealed copper', 'rolled-annealed'],
  ),
  sourced(
    'skinEffect',
    'skin-depth',
    'skin depth',
    'How deep current runs in a conductor at a frequency. Of copper that is much thicker than that, resistance grows with the square root of the frequency.',
    ['skin effect'],
  ),
  sourced(
    'springback',
    'springback',
    'springback',
    'How far a bend opens again when it is let go: what was elastic of the bending comes back.',
  ),
  practice(
    'staggered',
    'staggered conductors',
    'Conductors of two layers that lie beside each other, seen from above, rather than over each other. Stacked ones make a bend stiffer and strain both.',
    ['staggered', 'stacked conductors'],
  ),
  sourced(
    'flexUses',
    'static-bend',
    'static bend',
    'A bend that is formed once, or a few times in assembly, and then stays.',
    ['bend to install', 'flex to install'],
  ),
  practice(
    'stiffener',
    'stiffener',
    'A sheet that is bonded onto a flexible part where it carries components or goes into a connector. It carries no conductors.',
  ),
  practice(
    'strain',
    'strain',
    'Stretch over length, in per cent. On the outside of a bend it is about half of the thickness over the radius of the middle.',
  ),
  practice(
    'tear-stop',
    'tear stop',
    'Copper, film or a round hole at an inside corner or the end of a slit, which keeps a tear from going on.',
  ),
  practice(
    'teardrop',
    'teardrop',
    'A conductor that grows wider towards a land, so that it does not break where it meets it.',
  ),
  practice('tooling-hole', 'tooling hole', 'A hole by which the panel or the part is held in place in the process.'),
  practice(
    'transition',
    'transition',
    'The line along which a rigid area ends and the flexible layers go on alone. Bends and holes keep away from it.',
    ['transition zone'],
  ),
  sourced(
    'weibull',
    'weibull-slope',
    'Weibull slope',
    'How far lives of like parts differ: a steep slope means that they fail close together. It decides how much earlier the first of many fails than the middle one.',
  ),
]

/** The one glossary, by the alphabet: screens explain a term with these words, and the glossary page lists them. */
export const GLOSSARY: readonly Term[] = TERMS.toSorted((a, b) => a.term.localeCompare(b.term, 'en'))
