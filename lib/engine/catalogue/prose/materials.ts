import type { ItemProse } from '../define-item'
import { BAKE_TEMPERATURE_DEGC, describeFinishCoats, POLYIMIDE_WATER_PCT } from '../process-figures'

export const MATERIALS_PROSE: Readonly<Record<string, ItemProse>> = {
  'hole-life': {
    why: 'A stack expands several times as much through its thickness as copper does. Each cycle stretches the wall of a plated hole past yield, and it cracks in the middle.',
    howToCheck:
      'State the cycles and their ends, the zone, drill and wall of each hole, and what was measured on the stack: expansion and modulus through the thickness, glass transition. Soldering passes count beside them.',
  },
  'bend-cover': {
    why: 'Bare copper in a bend cracks from its edge, corrodes, and touches what it rubs on. The cover also keeps the copper near the neutral axis.',
    howToCheck:
      'Go outwards from each conductor layer in the zone of the bend: a film has to come before the outside, or before the air between leaves. Adhesive alone does not count, and a solder mask cracks.',
  },
  'bend-strain': {
    why: 'Strain at the copper is what breaks it; radius and thickness only stand in for it. Copper passes its yield point early, and the axis of the section moves with it.',
    howToCheck:
      'Find the axis of the section as it is formed, copper past yield included, take strain at both faces of every conductor at the worst corner of tolerances and material constants, and compare with the least that the constants of the foil allow.',
  },
  'bend-use': {
    why: 'Foil, layers and radius all follow from the stated use. If a bend moves in service and the part is specified for flexing at installation only, it is built for the wrong life.',
    howToCheck:
      'Ask what moves, how far and how often over the life of the product, service and repair included. Then compare with the installation use of the part.',
  },
  'clad-adhesive': {
    why: 'Adhesive between foil and film adds thickness, creeps when warm, and expands more than the copper of plated holes. Where a part only folds once, adhesive clad is cheaper and does well.',
    howToCheck:
      'Look between foil and base film in the zone of each dynamic bend. A person weighs cost, temperature and availability.',
  },
  'conductor-current': {
    why: 'A thin film spreads heat worse than the rigid boards that the published charts were measured on, and hot adhesive creeps.',
    howToCheck: 'Compare the stated current with what finished width and thickness carry at the allowed rise.',
  },
  'conductor-layers-in-bend': {
    why: 'Stiffness grows with the cube of thickness, and two layers cannot both lie on the neutral axis. Routing all conductors on one layer through the bend is the cheapest remedy there is.',
    howToCheck:
      'Count conductor layers in each bend, leaf by leaf where leaves are not bonded; see whether they could share one layer for that length.',
  },
  'copper-encapsulation': {
    why: 'Adhesive flows into the gaps of the copper. If there is not enough of it, voids stay beside the conductors: they trap chemistry, blister in soldering and open at the bend.',
    howToCheck:
      'Volume of adhesive against volume of gaps, from copper thickness and coverage; finished copper counts, plating included.',
  },
  'copper-yield': {
    why: 'Past yield the copper works plastically at every cycle and the section does not spring back fully; below it, life is longer than strain figures alone suggest.',
    howToCheck: 'Compare the peak strain of each conductor with yield strength over modulus of its foil.',
  },
  'film-strain': {
    why: 'The faces of a bend strain more than its copper. Film that yields at every cycle whitens, cracks or comes off, and a hard fold creases it, whatever the copper bears.',
    howToCheck:
      'Take the strain at both faces at the worst corner of tolerances and material constants. Flexed films stay below their yield; folded ones far below tearing. Below a radius of five times the thickness fold samples and section them.',
  },
  'coverlay-adhesive': {
    why: 'The shop knows the rule of a mil of adhesive to an ounce of copper and will question less; far more than that is stiffness bought for nothing.',
    howToCheck:
      'Divide the adhesive of each coverlay by the finished copper beneath it. The volume balance of the encapsulation item is the better answer.',
  },
  'damage-sum': {
    why: 'A conductor that runs through two bends breaks once. Shares of life that bends use up add; each bend alone may pass while the sum does not.',
    howToCheck: 'Divide required cycles by life for each bend on the layer and add.',
  },
  'fatigue-life': {
    why: 'Half the parts fail before the median life. Strain of 0.3 %, which is often quoted, does not mean endless life: at that strain the relation gives about ten thousand to a hundred thousand cycles.',
    howToCheck:
      'Put the strain range into the fatigue-ductility relation, which is printed for plated holes and assumed for bent foil, take the percentile from the scatter, and qualify by test: the figure is an order of magnitude.',
  },
  'finished-copper': {
    why: 'Cleaning and etching take copper, plating adds it. The performance specifications say how little may be left of each foil, by class where it is plated; below that a conductor carries less and a lot is refused.',
    howToCheck:
      'Take the foil at its least, add the plating at its least where the conductors are plated, take the processing loss off, and compare with the row of the specification in force for that foil and class. Conductors of a layer that is plated on its pads alone count as not plated. Walls of holes are asked for apart.',
  },
  'finger-thickness': {
    why: 'Too thin and the contacts lift; too thick and the latch will not close or breaks. The window is about a tenth of the thickness, so tolerances decide.',
    howToCheck:
      'Take the window from the connector drawing and compare with the finished thickness at both ends of its worst case.',
  },
  'flexible-adhesive-in-rigid': {
    why: 'Acrylic expands several times as much as laminate when it is soldered, smears in drilling, and pulls on the barrel of every hole that passes through it. Barrels crack at corner and wall.',
    howToCheck:
      'Look at every adhesive and bondply that runs into a rigid zone. Coverlay is usually cut so that it ends a short way under the rigid edge, outside of the holes.',
  },
  'flexible-adhesive-in-rigid-class-three': {
    why: 'In a part that must not fail, acrylic in the barrel of a hole is the first thing to crack in temperature cycles: it expands several times as much as laminate.',
    howToCheck:
      'Look at every adhesive and bondply that runs into a rigid zone. End the coverlay a short way under the rigid edge, or show sections of coupons that bore the cycles.',
  },
  'foil-type': {
    why: 'Rolled-annealed foil stretches further and bears repeated bending better than electrodeposited foil. The fatigue relation must not be used to rank the two at long life, where it follows strength alone.',
    howToCheck: 'Look up the foil of every conductor layer that passes through a dynamic or install bend.',
  },
  'foil-weight': {
    why: 'Copper costs flexibility twice: by its own thickness, and by that of the coverlay that must cover it. Heavier foil out of habit is the commonest avoidable stiffness. Rigid layers are left out.',
    howToCheck:
      'For each layer take the lightest foil that carries its stated currents within their allowed rise and drop, and compare with the foil that is specified.',
  },
  'leaf-pull': {
    why: 'Leaves that are not bonded pass a bend on arcs of different length. Held at both ends, the one that is too short is pulled; its copper, past yield in the bend already, gives way there first.',
    howToCheck:
      'Take what the leaf lacks (pitch of the leaves times the angle, less the step of their lengths), share it out over bend and straight part by their stiffness, and add the stretch to the strain of bending.',
  },
  'neutral-axis': {
    why: 'On the neutral axis nothing stretches. A film made a little thicker on one side often does more for life than a larger radius.',
    howToCheck:
      'Compute the neutral axis of each bonded leaf with the real coverage of copper; measure from it to the middle of each conductor.',
  },
  'operating-temperature': {
    why: 'Adhesives are the weak part: they soften long before film does, and a bend held warm creeps out of shape.',
    howToCheck:
      'Compare the highest operating temperature, own heating included, with the service temperature of each material.',
  },
  'plating-in-bend': {
    why: 'Plated copper is less ductile than rolled foil and can double the conductor thickness. Panel and pattern plating reach every conductor of a plated layer; pads-only plating stays on the pads.',
    howToCheck:
      'Name the plating process for each layer; in the bend, finished copper should be foil less the processing loss.',
  },
  'radius-rules': {
    why: 'These are the figures that fabricators and inspectors know. The handbook formula assumes where the neutral axis lies and has no floor; tables of ratios differ by a factor of two to five and know nothing of where the copper lies. The strain of the real section goes before both.',
    howToCheck:
      'Work the formula for the conductor layers and the use of each bend; divide inside radius by finished thickness and compare with the chosen table, by its name. Where they disagree with the strain, read the reason given with the bend.',
  },
  'rolling-direction-moving': {
    why: 'Rolled foil bears bending best along its grain. A hinge that lies across it has a shorter life than the figures say.',
    howToCheck:
      'Mark the direction on the drawing, square to the axis of each bend that moves, and see on the panel drawing how the part lies. Fewer parts per panel are the price.',
  },
  'rolling-direction': {
    why: 'Rolled foil bears bending best along its grain. On a panel the parts may be turned to save material, and then the grain runs the wrong way.',
    howToCheck: 'Put an arrow on the drawing, and ask how the fabricator turns the parts on the panel.',
  },
  'shield-stiffness': {
    why: 'Shielding sits on the outside, where it stiffens most. A shield film costs less than a copper plane; a hatched plane lies between.',
    howToCheck: "Take each shield's share of the bending rigidity of its leaf.",
  },
  'solder-mask-in-bend': {
    why: 'Mask cracks before film does, and a crack in the mask starts one in the copper under it. Coverlay film belongs on what bends; flexible mask bears a gentle fold at most.',
    howToCheck: 'See which layers cover the zone of each bend.',
  },
  'stack-symmetry': {
    why: 'Laminate, resin and copper shrink differently as they cool. A rigid zone that is heavier on one side bows, and parts do not solder on a bowed board.',
    howToCheck:
      'Fold the stack at its middle: laminate, prepreg and copper of both halves should match. Where they cannot, agree the bow with the fabricator.',
  },
  'thermal-curl': {
    why: 'Layers that expand differently bend a stack that is not symmetric as a bimetal strip bends. A zone that was flat when parts were placed then pulls at their joints, and a connector end misses its slot.',
    howToCheck:
      'Lay a part of this build on a plate, find the temperature at which it is flat, and measure how far it stands off at the coldest and hottest of service.',
  },
  'stated-thickness': {
    why: 'A total that its own layers do not add up to means that one of them is wrong, and nobody can say which.',
    howToCheck: 'Add the finished layers of the zone and compare with the total that a drawing or data sheet states.',
  },
  'surface-finish': {
    why: 'Nickel under gold cracks where the circuit bends and takes the copper along. Thin or phosphorus-rich nickel is kinder, but thin nickel risks weak solder joints.',
    howToCheck: `With a nickel finish, measure from every opening that gets it to the nearest bend; otherwise any finish bends. Thicknesses as the standards are quoted, to be checked in the edition in force: nickel under gold, ${describeFinishCoats('immersion-gold-over-electroless-nickel')}; with palladium, ${describeFinishCoats('immersion-gold-over-palladium-nickel')}; immersion silver, ${describeFinishCoats('immersion-silver')}; immersion tin, ${describeFinishCoats('immersion-tin')}.`,
  },
  'thickness-tolerance': {
    why: 'A zone that nothing clamps may spread; more than its drawing says, or much more than usual, still shows a layer that is ill chosen or ill controlled.',
    howToCheck:
      'Add the layers of the zone as finished; compare half the statistical spread, and half the worst case, with the tolerance on the drawing, else with what is usual for films and boards.',
  },
  'fitted-thickness': {
    why: 'Finished thickness grows from foil, plating, films and adhesive flow; a drawing that only adds up catalogue thicknesses is wrong where it matters most, at connectors.',
    howToCheck:
      'Add the layers of the zone as finished; compare half the statistical spread, and half the worst case, with the tolerance that the drawing carries.',
  },
  'unbonded-leaves': {
    why: 'Bonded together, four layers bend as one thick beam; left unbonded, each pair bends about its own neutral axis at a fraction of the strain.',
    howToCheck: 'Count conductor layers between air gaps in the zone of each bend.',
  },
  'voltage-drop': {
    why: 'Thin foil is good for bending and bad for resistance; hot copper is worse still. Both needs must be met on the same numbers.',
    howToCheck:
      'Resistance at operating temperature from finished copper, times current; double it where the return is as long.',
  },
  'contact-finish': {
    why: 'Bare copper and organic coats wear and oxidise in a socket; thin gold is through after a few matings, and the contact fails in the field.',
    howToCheck:
      'Enter the finish of each end and how often it is mated, tests included. Tin, silver and solder are for the connector’s maker to accept.',
  },
  'impedance-given': {
    why: 'A number alone lets the fabricator choose reference, tolerance and line: the line is then right by luck.',
    howToCheck:
      'State tolerance, reference layer, single or pair, and whether a coupon is measured. Ten per cent is usual. Whether the build gives that impedance is another question.',
  },
  'impedance-value': {
    why: 'Designers thin the dielectric for flexibility and lose their impedance; a cover lowers it by 7 to 10 %, and closed forms are up to 37 % off at the proportions of a flex.',
    howToCheck:
      'Worked out from the stated build in each zone that the line runs through, over tolerances and material constants. With a hatched plane it can only be bounded: measure a coupon.',
  },
  'line-crosstalk': {
    why: 'A thin cover and conductors on adjacent layers couple lines more than a board does; one above the other they also stiffen the bend, so one offset serves both.',
    howToCheck:
      'Worked out for a line of the same width at the stated space, and for listed conductors on the layer beside it, one above the other. The offset across the part is looked up in the artwork.',
  },
  'return-path': {
    why: 'Where the reference ends, the return current goes round and the line radiates; a transition is where planes end.',
    howToCheck:
      'The layers of each crossed zone are looked at by calculation; gaps within a zone are looked for in the artwork.',
  },
  'solder-heat': {
    why: 'Tapes and acrylic bonds let go or blister at solder temperature, after the expensive part is on.',
    howToCheck:
      'Compare the peak on the part with what the makers’ sheets allow for coverlay adhesive and for each stiffener with its bond, if it is on by then.',
  },
  'handling-count': {
    why: 'Test fixtures, rework and service calls bend a part more often than its one fold; ten times is another load case.',
    howToCheck:
      'Count every bending and straightening before and beside service. Above the limit the bend counts as dynamic at that count.',
  },
  'floor-life': {
    why: `Polyimide takes up water within hours, ${POLYIMIDE_WATER_PCT.immersed.low} to ${POLYIMIDE_WATER_PCT.immersed.high} % by weight, and water turns to steam under solder: layers part. Guides contradict each other, from ${BAKE_TEMPERATURE_DEGC.low} to ${BAKE_TEMPERATURE_DEGC.high} °C and from minutes to hours of waiting; some finishes must not be baked at all. "Bake before use" is no instruction.`,
    howToCheck:
      'Take temperature, time and hours to soldering from the makers of film and finish and from the handling standard (IPC-1601), and agree them with the assembler.',
  },
  'zone-joints': {
    why: 'A board is part of a rigid-flex circuit by the film and copper that run through both. Where a table gives a board no layer of the flex, the shop builds two parts, or asks.',
    howToCheck:
      'Go through the table of layers zone by zone: at least one layer of copper, and the film under it, is ticked on both sides of each edge.',
  },
  'outer-cover': {
    why: 'Copper that nothing covers takes finish over its whole face, bridges in soldering, tarnishes and creeps under dirt and moisture.',
    howToCheck:
      'Look at the outermost layers of each board and of film that stays flat: coverlay, laminate, stiffener or mask lies over the copper, with openings for lands and contacts.',
  },
  'sheet-bonds': {
    why: 'Film does not stick to copper, nor a stiffener to film: what a drawing leaves out is built as the shop guesses, or parts in soldering.',
    howToCheck:
      'Go through the layers of each zone: between two sheets lies adhesive, bondply or prepreg, or air where they are meant to be loose. Foil is bonded to the one sheet that it was bought on.',
  },
  'shield-ground': {
    why: 'A shield that floats couples noise instead of stopping it; one point of high resistance is as good as none.',
    howToCheck:
      'Count the ground points, find their openings on the drawing, and state the resistance at which a part is refused. The film maker says how large openings must be.',
  },
}
