import type { Outcome } from '../../results'
import { inSentence } from '../../units'
import { TERMS_HELP } from './terms-help'

/**
 * What helps where an item is not met, cheapest first. `{by}` stands for how far the worst outcome misses its limit, where it has a number and a
 * limit. Common practice, no published source.
 */
export const WHAT_HELPS: Readonly<Record<string, readonly string[]>> = {
  ...TERMS_HELP,
  'contact-finish': [
    'Order plated hard gold on the contacts.',
    'Ask the connector’s maker which finishes its contacts go with.',
    'Reduce the matings, by a test adapter that stays on.',
  ],
  'requirement-range': [
    'Correct the figure or its unit, by the specification that it comes from.',
    'Leave it blank until somebody knows it: what rests on it is then asked for.',
    'Record in a waiver why this part needs the figure.',
  ],
  'impedance-given': [
    'State tolerance, reference, line and coupon on the drawing.',
    'Name a layer with a plane as the reference.',
  ],
  'impedance-value': [
    'Change the width of the line to the one named with the result.',
    'Change the dielectric to its reference: a thinner one lowers the impedance.',
    'Measure permittivity and thickness of the build, so that the range gets narrower.',
    'Agree on a wider tolerance, and qualify by coupon.',
  ],
  'line-crosstalk': [
    'Widen the space to the one named with the result.',
    'Stagger lines on adjacent layers by the offset named with the result.',
    'Bring the reference nearer: coupling falls, and so does the impedance.',
    'Lay a grounded conductor between the lines, or a plane between the layers.',
  ],
  'return-path': [
    'Carry the reference plane through the zone, hatched where it bends.',
    'Route the line where its reference goes on.',
  ],
  'solder-heat': [
    'Bond the stiffener after soldering.',
    'Take a bond that bears the profile.',
    'Ask the assembler for a lower peak.',
  ],
  'handling-count': [
    'Test with a connector saver, so that the bend stays still.',
    'State the bend as dynamic, at the count that handling takes.',
    'Enlarge the radius.',
  ],
  'floor-life': [
    'Ask the assembler for the three numbers, and put them on the drawing.',
    'Order dry packs with an indicator card.',
  ],
  'zone-joints': [
    'Let base film and copper of the flex run through the board.',
    'Name the layers alike that are one layer.',
  ],
  'outer-cover': [
    'Let coverlay or mask run over the zone, with openings where it is soldered.',
    'Say in a waiver why the copper may lie bare.',
  ],
  'sheet-bonds': ['Add the adhesive that the zone lacks.', 'State a gap where the sheets are meant to be loose.'],
  'shield-ground': ['Add ground points at both ends of the shield.', 'Show the openings on the coverlay drawing.'],
  'contact-geometry': [
    'Correct the dimension to the middle of what the connector accepts.',
    'Ask the fabricator for a tighter tolerance, by laser or hard die.',
    'Take a connector with wider limits.',
  ],
  'contact-strain': [
    'Move the first bend away from the end{by}.',
    'Hatch the plane, or end it, before the first bend.',
    'Turn the connector so that the person inserting the end sees it.',
  ],
  forming: [
    'Make a former with the radius that was checked.',
    'Bend over by the springback that was computed.',
    'Have the assembler form it before the product.',
  ],
  'free-length': ['Bond, clip or tape the film down beside the bend.', 'Count the bend as dynamic.'],
  'combined-motion': [
    'Lead the film so that it bends in one plane.',
    'Split the film along its length.',
    'Test the very motion on parts.',
  ],
  'enclosure-fit': [
    'Put the formed part into the model of the enclosure at both ends of travel.',
    'Try a film model in the housing.',
  ],
  wear: ['Lead the film round a guide with a radius.', 'Leave clearance over the whole travel.'],
  'holes-in-flex': [
    'Move the hole under the stiffener or into the rigid zone.',
    'Route on one layer through the flex.',
  ],
  'hole-to-stiffener-edge': ['Move the hole{by}.', 'Enlarge or shorten the stiffener.'],
  'stiffener-holes': [
    'Enlarge the hole in the stiffener{by}.',
    'Leave the stiffener closed there, where nothing passes through.',
  ],
  'open-land': [
    'Enlarge the opening or the land.',
    'Take a coverlay adhesive of less flow.',
    'Open by laser, which shifts less.',
  ],
  'bead-beside-moving-bend': [
    'Call out material, width and height of the bead.',
    'Carry the coverlay under the rigid edge, and say on the drawing that there is no bead.',
  ],
  bead: ['Call out material, width and height of the bead.', 'Say on the drawing that there is no bead.'],
  'tolerances-given': [
    'Fill in the tolerance, from the fabricator’s matrix.',
    'Widen the tolerance{by}.',
    'Place datums on rigid parts, and state the condition of measuring.',
  ],
  carrier: ['Ask the assembler what holds the part.', 'Order arrays with a frame.'],
  'array-drawing': ['Fill in the array with the assembler.', 'Move tabs from flexible to rigid or stiffened edges.'],
  'prepreg-set-back': ['Ask the fabricator for set-back and squeeze-out.', 'Take a prepreg of less flow.'],
  'annular-ring': [
    'Enlarge the land{by}, twice that in diameter.',
    'Take the next smaller drill, if the hole aspect allows it.',
    'Move to laser-drilled holes.',
  ],
  'feature-lists': [
    'Mark the list as having none of the kind, where that is so.',
    'List what there is, beginning with what lies nearest to a bend.',
    'Take back the mark where the construction needs such a feature.',
  ],
  'statements-agree': [
    'Correct the place that is out of date.',
    'Take the figure out of the note or the name, and let the field carry it.',
    'Rename the file by part number, revision and layer.',
  ],
  'package-contents': [
    'Upload the file, or say on the artwork page which file it is.',
    'Draw bends and stiffeners in plan: the package then holds them.',
  ],
  netlist: [
    'Export artwork and netlist again from one state of the layout.',
    'Mend the layout where the copper is open or short.',
    'Add the netlist in the IPC-D-356 format.',
  ],
  'artwork-agreement': ['Correct whichever of design and artwork is wrong.', 'Export the artwork again and upload it.'],
  'bend-call-out': [
    'Fill in what the bend table of the sheet does not state.',
    'Add radius, angle, side, cycles and temperature to the team’s own drawing.',
  ],
  'bend-on-plan': [
    'Draw the line of each bend across its area, from edge to edge.',
    'Move the line into the zone that bends, or name that zone in the bend.',
  ],
  'plan-agreement': [
    'Clear or correct the value that was typed: the plan gives it.',
    'Move what is drawn in the wrong place.',
    'Draw dividing lines from border to border, and mark each area with its zone.',
  ],
  'bend-cover': [
    'Run the coverlay through the bend, on each bare face.',
    'Move the opening out of the bend.',
    'Waive it where the bare layer lies at the neutral axis on purpose, and nothing touches it.',
  ],
  'bend-fit': [
    'Lengthen the flex zone{by}.',
    'Reduce the angle of the bend.',
    'Form to a smaller radius, where strain and life allow it.',
  ],
  'bend-strain': [
    'Enlarge the radius.',
    'Take a thinner cover or base film, so that copper lies nearer the neutral axis.',
    'Keep plating out of the bend, or use thinner foil.',
  ],
  'straight-film': [
    'Move the start of the bend away from the edge{by}.',
    'Lengthen the flex zone.',
    'Shorten the stiffener or the rigid zone.',
    'Move openings, lands and changes of width out of the film beside the bend.',
  ],
  'bend-use': [
    'State the uses that cover what each bend does.',
    'Limit the bend to its installation, if it need not move in service.',
  ],
  'buildable-construction': [
    'Ask the fabricator which lay-up they would quote instead.',
    'Start from one of the fabricator’s usual constructions.',
  ],
  'capability-match': [
    'Relax the dimension to the fabricator’s ordinary range{by}.',
    'Ask for a stretch quotation.',
    'Invite another fabricator.',
  ],
  'circuit-type': [
    'State the type that the layers and holes make it.',
    'Change the layer count or the plated holes to fit the type.',
  ],
  'clad-adhesive': ['Take a clad without adhesive.', 'Take a thinner adhesive.'],
  'component-support': ['Move the component over a stiffener or into a rigid zone.', 'Add a stiffener under it.'],
  'component-to-bend': [
    'Move the component away from the bend{by}.',
    'Add a stiffener that keeps the bend away from it.',
  ],
  'conductor-corners': [
    'Draw arcs in place of corners, in the flex zones first.',
    'Let the layout tool round all corners of the net class.',
  ],
  'conductor-current': [
    'Widen the conductor.',
    'Carry the current on two conductors or layers.',
    'Take heavier foil outside of bends.',
  ],
  'conductor-layers-in-bend': ['Route the bend on fewer layers.', 'Separate the layers into unbonded leaves.'],
  'conductor-space': [
    'Widen the space{by}.',
    'Narrow the conductors, where current allows it.',
    'Thinner copper allows finer space.',
  ],
  'conductor-spacing': [
    'Space the conductors evenly across the bend.',
    'Fill gaps with conductors that carry nothing.',
  ],
  'conductor-width': [
    'Widen the conductor{by}.',
    'Take thinner foil, or plate lands alone: thinner copper allows finer conductors.',
  ],
  'construction-cost': [
    'Compare with the cheapest alternative that keeps every verdict.',
    'Drop a layer or a step that nothing needs.',
  ],
  'contact-person': ['Name the person and how to reach them, and put it on the drawing.'],
  'copper-encapsulation': ['Extend the cover over the copper.', 'Plate or finish what has to stay bare.'],
  'copper-to-outline': ['Pull copper back from the outline{by}.', 'Cut the outline by laser.'],
  'copper-yield': [
    'Enlarge the radius.',
    'Move copper nearer the neutral axis.',
    'Measure the constants of the films that are used.',
  ],
  'corner-radius': ['Enlarge the inside radius{by}.', 'Add a tear stop of copper or a second cover there.'],
  'coupon-test': ['Ask for coupons on the drawing.', 'Agree with the fabricator on their standard coupon.'],
  'coverlay-adhesive': ['Take the next thicker cover adhesive{by}.', 'Thin the copper that it has to fill.'],
  'coverlay-detail': [
    'Fill in what the layer table of the sheet does not state for the cover.',
    'Draw cover and adhesive in section on the team’s own drawing.',
  ],
  'coverlay-edge-in-bend': ['Move the edge of cover or stiffener out of the bend.', 'Move the bend.'],
  'coverlay-opening': ['Enlarge the opening{by}.', 'Cut the opening by laser.', 'Join neighbouring openings into one.'],
  'coverlay-web': ['Widen the web{by}.', 'Join both openings into one.', 'Cut the openings by laser.'],
  'crossing-angle': ['Turn the conductor square to the bend axis{by}.', 'Turn the bend axis.'],
  'damage-sum': ['Take cycles out of the bend that uses up most.', 'Enlarge the radius of that bend.'],
  'ends-in-bend': [
    'Move the via, pad or branch past the border of the bend.',
    'Let the conductor run through and end on flat ground.',
    'Move the bend.',
  ],
  'direction-change-in-bend': [
    'Move the change of direction out of the bend.',
    'Turn the conductor before it enters the flex zone.',
  ],
  'electrical-test': ['Ask for an electrical test on the drawing, to a net list.'],
  'engineering-queries': ['Answer the open queries.', 'Share the revision, so that a fabricator can look.'],
  'etch-traps': [
    'Let the layout program remove slivers and fill slits when planes are poured.',
    'Give the plane a border of its own, and lead conductors into lands square to the rim or in a teardrop.',
    'Ask the fabricator what is mended in tooling.',
  ],
  'fabricator-currency': ['Ask the fabricator to look again at what changed.'],
  'fatigue-life': [
    'Enlarge the radius.',
    'One thin rolled-annealed layer near the neutral axis, without plating.',
    'Reduce the cycles that are asked for.',
  ],
  'film-strain': ['Enlarge the radius.', 'Take thinner films at the faces.'],
  'finger-support': ['Put a stiffener under the contacts.', 'Lengthen the stiffener past the insertion length.'],
  'finished-copper': [
    'Ask the fabricator how much copper their processing takes, and enter that.',
    'Ask for more plating{by}.',
    'Take the next heavier foil.',
  ],
  'finger-thickness': ['Change the stiffener film at the connector end{by}.', 'Take another connector.'],
  'flex-test-terms': ['State rate, travel, mandrel and points of application on the drawing.'],
  'folded-clearance': [
    'Move the component, or change which face it is on.',
    'Fold in another order, or give the bend more radius{by}.',
    'Move the axis of the bend, or change its angle.',
  ],
  'folded-envelope': [
    'Bend at a smaller radius where strain and life allow it, or move the axis{by}.',
    'Move or turn the component that stands highest.',
    'Ask for more room.',
  ],
  'connector-targets': [
    'Lengthen or shorten the arm, or move the axis of a bend{by}.',
    'Give the arm a loop that takes up what is off.',
    'Hold radii and places of bends by a tool, and state closer tolerances for them.',
  ],
  'flex-length': ['Lengthen the flex zone{by}.', 'Ask the fabricator for the shortest flex length that they make.'],
  'flexible-adhesive-in-rigid': [
    'End the coverlay and its adhesive just under the rigid edge, outside of the holes.',
    'Take adhesiveless clad, and epoxy where adhesive is needed.',
  ],
  'flexible-adhesive-in-rigid-class-three': [
    'End the coverlay and its adhesive just under the rigid edge, outside of the holes.',
    'Take adhesiveless clad, and epoxy where adhesive is needed.',
    'Show by cycled coupons that the barrels hold.',
  ],
  'foil-type': ['Take rolled-annealed foil where the part moves.', 'Keep the plating on lands alone.'],
  'foil-weight': ['Take the next lighter foil.', 'Widen conductors that need the copper.'],
  'fold-model': [
    'Print the outline at full size, fold it, and keep it in the enclosure.',
    'Fold a sample of film of the same thickness.',
  ],
  'fold-order-model': [
    'Print the outline at full size, fold it in order, and keep it in the enclosure.',
    'Fold a sample of film of the same thickness.',
  ],
  'fold-test': ['Ask for the fold or flex test of the use on the drawing.'],
  'hazardous-voltage-space': ['Widen the space{by}.', 'Cover the conductors all along.'],
  'hole-life': ['Ask for more copper on the wall.', 'Thin the rigid zone.', 'Take a stack that expands less.'],
  'hole-aspect': [
    'Take a larger drill.',
    'Thin the zone, or join fewer layers by blind holes.',
    'Ask the fabricator whether they plate this depth.',
  ],
  'hole-plating': ['Ask for more copper on the wall{by}.', 'Thin the rigid zone, so that plating reaches the middle.'],
  'hole-to-bend': ['Move the hole away from the bend{by}.', 'Move the bend.', 'Put the hole into a rigid zone.'],
  'layer-names': ['Name each layer by number, place and use.'],
  'land-hold': [
    'Narrow the opening, so that the cover reaches further over the land{by}.',
    'Add spurs to the land.',
    'Enlarge the land.',
  ],
  'layer-stagger': ['Shift the conductors of one layer into the gaps of the other.', 'Route the bend on one layer.'],
  'layer-table': ['Name every layer, and place it in a zone.', 'Add the layer table to the team’s own drawing.'],
  'leaf-pull': [
    'Step the lengths of the leaves by the difference that the bend needs.',
    'Give the inner leaves room to buckle.',
    'Leave more unbonded length between the ends.',
  ],
  'leaf-length': ['State equal or stepped lengths.', 'Leave room for the loop of the outer leaf.'],
  'manufacturing-review': ['Move the review before the layout freeze{by}.', 'Move the layout freeze.'],
  'material-call-outs': ['State specification, sheet number and thickness for each material.'],
  'neutral-axis': ['Thicken the cover on the thinner side.', 'Thin the base film on the thicker side.'],
  'opening-to-bend': [
    'Move the opening away from the bend{by}.',
    'Close the opening, if nothing has to reach the copper.',
  ],
  'operating-temperature': ['Take an adhesive with a higher rating{by}.', 'Take a construction without adhesive.'],
  packing: ['State packing and handling on the drawing: flat, dry, held where nothing bends.'],
  'panel-form': ['Order in arrays with a carrier.', 'Agree on the form with the assembler.'],
  'parts-per-panel': [
    'Nest the parts, or turn them where the rolling direction allows it.',
    'Change the outline, so that arms interleave.',
  ],
  'performance-class': ['State the class of IPC-6013 with the product owner.'],
  'plane-in-fold': ['Hatch the plane in the fold, where no impedance needs it solid.'],
  'plane-in-bend': ['Hatch the plane in the bend.', 'End the plane before the bend.'],
  'plating-in-bend': ['Plate the lands alone.', 'Mask the bend during plating.'],
  'radius-holder': ['Add a former, clip or channel that holds the radius.', 'Let the enclosure hold it.'],
  'radius-rules': ['Enlarge the radius{by}.', 'Thin the section.'],
  'registration-features': [
    'List the pairs of features that have to fit, with the need of each.',
    'Cut both by the same tool or pass.',
  ],
  'rolling-direction-moving': [
    'Lay the part on the panel along the rolling direction.',
    'Mark the direction on the outline.',
  ],
  'rolling-direction': ['Lay the part on the panel along the rolling direction.', 'Mark the direction on the outline.'],
  'shield-stiffness': ['End the shield before the bend.', 'Take a thinner shield film.'],
  'slit-end-relief': ['Enlarge the relief at the end of the slit{by}.', 'Add copper or a second cover around it.'],
  'solder-mask-in-bend': [
    'Cover the bend with coverlay, and keep the mask on the boards.',
    'End the mask before the bend.',
  ],
  'stack-symmetry': [
    'Make laminate and prepreg of both halves equally thick.',
    'Match the copper weight of mirrored layers.',
    'Agree bow and twist with the fabricator, where the stack must stay as it is.',
  ],
  'thermal-curl': [
    'Make the stack symmetric: the same film, adhesive and copper above and below.',
    'Spread the copper of both faces alike, hatched or filled.',
    'Choose a stiffener that expands as copper does.',
    'Hold the zone flat by its fixing, and tell the mechanical engineer.',
  ],
  'stated-thickness': ['Correct the figure to what the layers come to.', 'Correct the layers.'],
  'stiffener-detail': [
    'State adhesive, overlap and position of each stiffener.',
    'Draw each stiffener on the team’s own drawing.',
  ],
  'stiffener-overlap': [
    'Lengthen the stiffener over the end of the cover{by}.',
    'Extend the cover under the stiffener.',
  ],
  'stock-materials': ['Take a material that is on the shelf and keeps every verdict.', 'Order the material at once.'],
  'surface-finish': ['Take a finish without nickel near bends.', 'Move the openings away from bends{by}.'],
  'tear-stop': ['Add a copper bar inside the corner.', 'Enlarge the corner radius.'],
  teardrop: ['Let the layout tool add teardrops on the flex layers.'],
  'thickness-tolerance': [
    'Ask the fabricator what they hold, and take that.',
    'Thin or drop the layer that brings most of the spread.',
  ],
  'fitted-thickness': [
    'Ask the fabricator what they hold, and take that.',
    'Thin or drop the layer that brings most of the spread.',
  ],
  'transition-strip-class-three': [
    'Move the hole or component away from the transition{by}.',
    'Lengthen the rigid zone.',
  ],
  'transition-strip': ['Move the hole or component away from the transition{by}.', 'Lengthen the rigid zone.'],
  'transition-relief': ['Run a flexible bead along the edge.', 'Let the cover run under the edge.'],
  'unbonded-leaves': ['Separate the layers where the part bends.', 'Route the bend on fewer layers.'],
  'voltage-space': ['Widen the space{by}.', 'Cover the conductors all along.'],
  'voltage-drop': ['Widen the conductor.', 'Carry the current on two conductors.', 'Shorten the path.'],
  'width-change-in-bend': ['Move the change of width out of the bend.', 'Carry the narrower width through.'],
  'width-step': ['Lengthen the taper.', 'Reduce the step.'],
}

/** What helps with an item, as delivered; empty for one that a workspace added. */
export function readWhatHelps(itemId: string): readonly string[] {
  return Object.hasOwn(WHAT_HELPS, itemId) ? (WHAT_HELPS[itemId] ?? []) : []
}

/**
 * The same with how far the worst outcome misses its limit. A figure that no person can act on by that amount (a share, a count, a strain, a life) is left out.
 *
 * @example fillWhatHelps(['Move the hole away from the bend{by}.'], outcomes) gives ['Move the hole away from the bend by 0.4 mm.']
 */
export function fillWhatHelps(texts: readonly string[], outcomes: readonly Outcome[]): string[] {
  let worst: { readonly margin: number; readonly text: string } | null = null
  for (const outcome of outcomes) {
    if (outcome.kind !== 'decided' || outcome.verdict === 'meets') continue
    const { limit } = outcome
    if (!ACTED_ON.has(limit.unit)) continue
    // Over the range the end that misses decides; at nominal the value itself.
    const margin = outcome.decidingEnd?.margin ?? outcome.margin
    if (margin >= 0 || (worst !== null && margin >= worst.margin)) continue
    worst = { margin, text: inSentence(-margin, limit.unit) }
  }
  const by = worst === null ? '' : ` by ${worst.text}`
  return texts.map((text) => text.replace('{by}', by))
}

/** Units of what somebody can move, widen or wait for by the amount. */
const ACTED_ON: ReadonlySet<string> = new Set(['mm', 'um', 'deg', 'degC', 'days'])
