import type { ItemProse } from '../define-item'

export const GEOMETRY_PROSE: Readonly<Record<string, ItemProse>> = {
  'voltage-space': {
    why: 'Spacing that is safe when clean and dry can leak or arc over when dirty or wet, and current between conductors can grow metal across the gap.',
    howToCheck:
      'State the highest working voltage to the nearest conductor and whether film or mask covers both all along. Published spacing covers a few voltages only; nothing is interpolated between them.',
  },
  'hazardous-voltage-space': {
    why: 'Above this voltage a failure can injure somebody or start a fire. The standard that the product must meet decides, not this figure.',
    howToCheck:
      'As for lower voltages; have the person responsible for safety name the standard, the category and the spacing required.',
  },
  'annular-ring': {
    why: 'Film moves in lamination more than rigid board does, so hole and pad miss each other by more.',
    howToCheck: 'Half of land less drill. Lands as large as there is room for are good practice on film.',
  },
  'bend-fit': {
    why: 'An arc longer than its zone starts in the rigid part or ends in the next bend: the radius that was drawn cannot form.',
    howToCheck:
      'Arc length is the radius of the neutral axis times the angle, for the longest leaf; several bends of a zone add up. The axis is no longer than the part is wide there.',
  },
  'plan-agreement': {
    why: 'A shop builds from the drawing. Where a table says otherwise, it stops and asks, or builds the one that it believes.',
    howToCheck:
      'Every dimension that the plan draws is held against what was typed of it; areas, marks and dividing lines must fit together. What the plan draws decides.',
  },
  'straight-film': {
    why: 'Right at an edge the radius is whatever the film can take: it goes from rigid to flexible in no length at all. A few millimetres of straight film let the bend find the radius that was drawn.',
    howToCheck:
      'Straight length from the start of each bend to the nearest rigid or stiffened edge, and from the edge of each stiffener to its nearest bend: no stiffener can lie nearer than the nearest edge. Then look for what stiffens or weakens that film: openings, lands without a board under them, steps of width.',
  },
  'component-support': {
    why: 'Film flexes under the part and its joints crack, on the line before anything else. A rigid board carries them.',
    howToCheck:
      'State zone and face of each component: laminate in the zone, or a stiffener on the other face, carries it. A person judges whether the load or the connector asks for more.',
  },
  'component-to-bend': {
    why: 'Solder joints are stiff; the film beside them bends twice as hard and the joint cracks.',
    howToCheck: 'From the edge of each component or its pads to the nearest edge of the bend, in the flat.',
  },
  'conductor-corners': {
    why: 'Strain gathers at a corner, in handling as much as in bending; a curve costs nothing.',
    howToCheck: 'Look over every layer that reaches a flex zone for corners of 45 or 90 degrees.',
  },
  'conductor-space': {
    why: 'Too little space leaves copper bridges after etching, and adhesive cannot flow in.',
    howToCheck: 'Narrowest space of each group, finished, against the thickest finished copper of its layer.',
  },
  'conductor-spacing': {
    why: 'A section that is stiff here and soft there bends in the soft place, at a smaller radius than drawn.',
    howToCheck: 'Look across each bend: even spacing, uniform width, dummy conductors where a gap would be left.',
  },
  'conductor-width': {
    why: 'Narrow conductors lose a larger share to etching and break sooner in handling; heavier or plated copper needs more width.',
    howToCheck: 'Narrowest conductor of each group, finished, against the thickest finished copper of its layer.',
  },
  'copper-to-outline': {
    why: 'The outline is punched or cut after lamination and wanders by tenths of a millimetre; copper at the edge is nicked, and a nick is where a crack starts.',
    howToCheck:
      'Smallest distance of any copper from outline and cut-outs; tear stops are meant to be near and are left out.',
  },
  'corner-radius': {
    why: 'Film tears from a sharp inside corner, and once begun a tear runs. 30 mil is common practice; a design magazine of 2023 prints 0.75 mm.',
    howToCheck: 'Measure every inside corner of outline, notches and cut-outs.',
  },
  'coverlay-edge-in-bend': {
    why: 'Where a film ends, the stiffness steps; the curvature concentrates along that edge.',
    howToCheck: 'Lay coverlay, plating and finish outlines over the bend zones.',
  },
  'coverlay-opening': {
    why: 'Openings are drilled, punched or cut with a laser before lamination, and adhesive squeezes into them by a tenth of a millimetre or two.',
    howToCheck: 'Smallest side of each opening; say how it will be made.',
  },
  'coverlay-web': {
    why: 'A narrow strip tears, curls or floats on its adhesive during lamination. One larger opening over several pads is often the better drawing.',
    howToCheck: 'Narrowest strip beside each opening.',
  },
  'crossing-angle': {
    why: 'A conductor that crosses at a slant is twisted as well as bent, and its edge cracks first.',
    howToCheck: 'Measure each conductor against the bend axis; 90° is right.',
  },
  'ends-in-bend': {
    why: 'Where a conductor ends, branches or widens into a pad the copper is stiffer on one side than on the other: strain gathers at the step, and the conductor cracks there first.',
    howToCheck:
      'Look at each copper layer inside the border of each bend. Nothing but conductors that run through belongs there: no via, no pad, no branch, no stub.',
  },
  'etch-traps': {
    why: 'A sliver of copper lifts off in the etch and lies across conductors elsewhere; a narrow slit or an acute corner holds etchant, which undercuts the copper beside it. On film the necks that this leaves are where copper cracks.',
    howToCheck:
      'Look at each copper layer for copper narrower than the least conductor, for slits narrower than the least space, and for corners sharper than 45°, in copper and between its edges: at borders of planes, round holes in hatches, where conductors meet lands aslant.',
  },
  'direction-change-in-bend': {
    why: 'A corner inside the bend is stretched on one flank and crumpled on the other.',
    howToCheck: 'Follow each conductor through the bend from edge to edge; corners and branches belong outside.',
  },
  'finger-support': {
    why: 'Without a stiffener the end buckles when it is pushed in, and is seldom as thick as the connector needs.',
    howToCheck: 'See whether a stiffener is among the layers of each finger zone.',
  },
  'fold-model': {
    why: 'Ten minutes with scissors find the fold that cannot be made, the length that is short and the connector that faces the wrong way.',
    howToCheck:
      'Cut the outline from film of about the right stiffness, fold it in order into the enclosure, keep the model.',
  },
  'fold-order-model': {
    why: 'With two folds and more the order decides: one fold closes the way of the next, and a length that is right for each alone is short for both.',
    howToCheck:
      'Cut the whole outline from film of about the right stiffness, fold it in the order of assembly into the enclosure, keep the model and say where it is.',
  },
  'folded-clearance': {
    why: 'A part that is drawn flat meets itself in space: a stiffener under a leaf, a component in the way of an arm. Nobody sees it in plan.',
    howToCheck:
      'Fold the plan with true thickness, radius and angle, bend by bend; take the least distance at the end and along the way. Cut it from paper at true scale where in doubt.',
  },
  'folded-envelope': {
    why: 'A part that folds well on the bench and is a millimetre too large meets the lid: the film is then pressed tighter than it was checked for.',
    howToCheck:
      'Take the box of the folded part along the area that stays, components included; compare with the room in the model of the enclosure, its own tolerances taken off.',
  },
  'connector-targets': {
    why: 'An arm that ends a millimetre short is pulled, one that ends too far pushes itself out of its contacts, and one that points elsewhere is twisted by whoever assembles it.',
    howToCheck:
      'Take place and direction of each connector from the mechanical model; fold the plan and compare, with every radius, bend position and edge at its worst.',
  },
  'flex-length': {
    why: 'Between two rigid parts the film has to be freed, covered and handled. Below a few millimetres resin from both edges meets in the middle, and no bend finds room.',
    howToCheck: 'Take the length between the facing edges; compare with what the fabricator makes.',
  },
  'hole-aspect': {
    why: 'Plating solution hardly flows in a deep narrow hole: the copper is thinnest in the middle of the wall, where the board pulls on it most.',
    howToCheck:
      'Divide the depth, from outermost copper to outermost copper, by the drill. Blind and buried holes are shallower: take the layers that they join.',
  },
  'hole-plating': {
    why: 'The wall carries the current from layer to layer and takes the strain when what surrounds it expands more than copper does; acrylic adhesive strains it more than epoxy or polyimide does.',
    howToCheck:
      'Take the minimum that the fabricator guarantees on the wall, not what lies on the surface. Plate holes alone near dynamic zones.',
  },
  'hole-to-bend': {
    why: 'A plated barrel is a stiff post in a flexing film: copper cracks around it. Even an unplated hole makes the bend kink there.',
    howToCheck: 'From the edge of each hole to the nearest edge of the bend, in the flat.',
  },
  'transition-strip': {
    why: 'Adhesive of the flexible part squeezes and grows there in heat and pulls barrels apart; the prepreg edge is neither flat nor clean, and the joint takes the load of every flexing. Nothing but straight conductors belongs in the strip. Guides say from 0.5 to 1.9 mm; 3.18 mm is remembered from the design standard, not read.',
    howToCheck:
      'From the edge of each hole and component to the edge of the rigid part, on either side of it; holes must not pierce coverlay that runs under it.',
  },
  'transition-strip-class-three': {
    why: 'What cracks at a rigid edge does so after some hundred temperature cycles, in parts that must not fail. In class 3 the strip is kept free, or a waiver says what shows that it holds.',
    howToCheck:
      'From the edge of each hole and component to the edge of the rigid part, on either side of it; sections of coupons that were cycled are the evidence for less.',
  },
  'land-hold': {
    why: 'Heat softens the adhesive, and a land that nothing holds lifts off the film. Its rim under the coverlay, or spurs that reach under it, do the work of the hole that is not there. The coverlay shifts, so that the overlap must be there on paper first.',
    howToCheck:
      'For each land on film without a plated hole: overlap of the coverlay over its rim per side as drawn, or the spurs that reach under the coverlay. A handbook asks for 270 degrees of the rim. Boards hold their lands.',
  },
  'layer-stagger': {
    why: 'Conductors directly above one another act as the flanges of a beam: the bend is stiffer, and they are strained more. Staggering also takes conductors away from the one below, which changes crosstalk and impedance: keep both in view.',
    howToCheck: 'Lay adjacent conductor layers over each other in each bend.',
  },
  'leaf-length': {
    why: 'The outer leaf has the longer way round. If all are cut alike the inner ones buckle. The rule of 1.5 times the pitch is right at 86° only: a half turn needs twice that.',
    howToCheck: 'Difference of developed length is the distance between leaves times the bend angle in radians.',
  },
  'opening-to-bend': {
    why: 'The edge of an opening is a step in stiffness, and the bare copper inside it has nothing to keep it near the neutral axis.',
    howToCheck: 'From the edge of each opening to the start of the nearest bend.',
  },
  'plane-in-fold': {
    why: 'A solid plane makes the film stiff, so that the fold springs back and the radius is hard to form. Once it is folded nothing more happens to it.',
    howToCheck: 'Look at the plane in the fold: hatch, split, or end it where no impedance needs it.',
  },
  'plane-in-bend': {
    why: 'A solid plane stiffens the bend and draws the neutral axis to itself, so that the conductors on the other side stretch more. Hatching also moves impedance: check the conductors that refer to it.',
    howToCheck: 'See how each plane layer is drawn in the zone of each bend.',
  },
  'radius-holder': {
    why: 'Strain, life and force are computed at the stated radius. If nothing keeps the part at that radius, handling can bend it tighter, and the copper then sees more strain than was checked.',
    howToCheck: 'Name the former, stop, channel or bond, and who applies it when; show it in assembly and in service.',
  },
  'slit-end-relief': {
    why: 'Without a relief hole, the end of a slit is the start of a tear.',
    howToCheck: 'Measure the hole or full round at each end of every slit and narrow cut-out.',
  },
  'stiffener-overlap': {
    why: 'Where both end in one line the conductors stand bare across a hinge. 30 to 50 mil of overlap is common practice, no published source.',
    howToCheck: 'How far the stiffener reaches past the end of the coverlay, on the other face.',
  },
  'tear-stop': {
    why: 'A strip of copper, a relief hole or a patch at an inside corner stops the tear that a radius did not prevent.',
    howToCheck:
      'Go round the outline: inside corners, ends of slits, edges that people pull on. A person judges which of them need stitching or a patch.',
  },
  teardrop: {
    why: 'Where a narrow conductor meets a wide pad it cracks first; a teardrop also keeps the ring closed when hole and pad miss each other a little.',
    howToCheck: 'Look at every junction of pad and conductor on flexible zones.',
  },
  'transition-relief': {
    why: 'A bead along the edge, or coverlay carried a little way under the rigid part, spreads the bending over some length.',
    howToCheck: 'Look at the transition beside each bend: bead, coverlay under the edge, or a rounded edge.',
  },
  'width-change-in-bend': {
    why: 'A step inside the bend gathers the strain of the whole arc in one line across the conductor.',
    howToCheck: 'Follow each conductor through the bend from edge to edge; width steps belong outside.',
  },
  'width-step': {
    why: 'At a step the stress in the narrow part is a multiple of its mean. A taper three times as long as the step is high brings the factor near 1.3; common practice simply asks for a taper.',
    howToCheck:
      'For each change of width take the largest fillet that fits in its taper and read the handbook factor for a stepped bar.',
  },
  'contact-geometry': {
    why: 'An end that is right at nominal and wrong at its tolerances does not go in, or makes contact on one side.',
    howToCheck:
      'Take limits from the connector’s own drawing and tolerances from the fabricator. Thickness is an item of its own.',
  },
  'contact-strain': {
    why: 'Fingers crack where a stiff end, a solid plane, a hole or nickel meets the first bend, and pushing in blind bends them there.',
    howToCheck:
      'See how the end is inserted and what lies between contacts and first bend. A trade magazine of 2019 shows all of it in one part.',
  },
  forming: {
    why: 'A bend made by hand is as tight as the thumb makes it; a bend without springback allowed for opens again.',
    howToCheck: 'Name tool or former, who does it, and how far it is bent over. By hand alone, only gentle radii.',
  },
  'free-length': {
    why: 'Shock and vibration flex a free loop millions of times; what was judged as one fold then lives as a hinge.',
    howToCheck: 'Look at what holds the film on both sides of each bend that stands, in the product and in transport.',
  },
  'combined-motion': {
    why: 'Twist and a second direction put the edge of the film in tension; a place that was folded has used up its ductility.',
    howToCheck: 'Move the model or the product through its travel and watch the film from the side and from its end.',
  },
  'enclosure-fit': {
    why: 'Flex is often fitted last: it is then too short, too long, or caught by a cover that nobody drew with it.',
    howToCheck: 'Take a picture of the model at both ends of travel, with slack and clearance.',
  },
  wear: {
    why: 'Film that rubs wears through its cover to the copper, long before it fatigues.',
    howToCheck: 'Look for edges and surfaces along the whole travel. A guide has a radius and no burr.',
  },
  'holes-in-flex': {
    why: 'A plated hole is a stiff rivet in film: where the film moves, its land cracks.',
    howToCheck: 'Each plated hole by its zone, and that zone by its bends.',
  },
  'hole-to-stiffener-edge': {
    why: 'Film bends hardest just off the edge of a stiffener; a hole there cracks.',
    howToCheck:
      'From the edge of the hole to the nearest edge of the stiffener. Holes of rigid zones without a stiffener are not asked.',
  },
  'stiffener-holes': {
    why: 'A stiffener shifts when it is bonded: a hole of the same size covers part of the land or closes the hole.',
    howToCheck: 'Difference of both diameters; 0 stands for a hole that the stiffener is meant to close.',
  },
  'open-land': {
    why: 'Adhesive squeezes into the opening and the film shifts: what is left of a small land is too small to solder.',
    howToCheck:
      'Land and opening share a middle; adhesive comes in from both edges and the coverlay shifts to one side. The rest must be as large as the joint needs.',
  },
  'bead-beside-moving-bend': {
    why: 'Film that moves works at the edge it leaves: without a bead it cracks there, and with one that nobody dimensioned it cracks at the end of the bead.',
    howToCheck:
      'Find material, width and height on the drawing, or the sentence that there is none and what relieves the edge instead.',
  },
  bead: {
    why: 'Without a bead film creases at the edge; with one that nobody dimensioned it creases at the end of the bead.',
    howToCheck: 'Find material, width and height on the drawing, or the sentence that there is none.',
  },
}
