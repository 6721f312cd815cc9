import type { ItemProse } from '../define-item'

export const FABRICATION_PROSE: Readonly<Record<string, ItemProse>> = {
  'feature-lists': {
    why: 'An empty list looks like a part without holes, pads or slits. Unless somebody says that there are none, every question about them stays open, or is passed over.',
    howToCheck:
      'Fill each list from the layout, or mark it as having none of the kind. Plated layers, a connector end, soldering and copper in a bend each say that something belongs on a list.',
  },
  'statements-agree': {
    why: 'Two places that say different things are the first cause of questions from fabricators: the shop has to stop and ask which one holds, or builds by the wrong one.',
    howToCheck:
      'Read drawing notes, table, file names and brief side by side. Let each fact stand in one place, and have the other refer to it. What drawings and artwork hold inside is not read here.',
  },
  'package-contents': {
    why: 'A shop begins with what it has, or stops and asks: a set without a coverlay file, a stiffener outline or a bend line comes back as a query, or is built by guess.',
    howToCheck:
      'Go through outline, each copper, each coverlay, mask, holes, legend, stiffeners and bends; say on the artwork page what each file is for. The stack stands in the drawing sheet; netlist and array have items of their own.',
  },
  netlist: {
    why: 'The shop tests what the artwork says. Where that has an open or a short that the design does not, every part fails in the field and passes at the tester.',
    howToCheck:
      'Export the netlist (IPC-D-356) from the schematic together with the artwork. Have both compared before the first panel: connected copper, also through plated holes, against the nets. Follow conductors that no net names, and those that end nowhere; strokes that reach less than 5 mm are not looked at.',
  },
  'artwork-agreement': {
    why: 'Where they differ the shop stops and asks, or builds the one that it believes. File headers are no proof: a tool may write its default thickness and material.',
    howToCheck:
      'Compare layer count, order, names, sides and outline of the files with the construction; read the drawing against both.',
  },
  'bend-call-out': {
    why: 'The shop chooses foil, grain direction and coverlay by what the bend must do; without the call-out it builds a flat part that happens to be thin.',
    howToCheck:
      'Bend line, inside radius, angle, direction, order, once or how many cycles, and the temperature at which it moves.',
  },
  'bend-on-plan': {
    why: 'A bend table says how a bend is made and not where. Without its line the shop cannot place coverlay edges, stiffeners and test clamps.',
    howToCheck:
      'One line for each place at which the bend is made, in the middle of its band, across the flexible area from edge to edge.',
  },
  'buildable-construction': {
    why: 'Only the shop knows its presses, its film movement and the order of its laminations. Asked after release, the answer costs a revision.',
    howToCheck: 'The fabricator walks through the lamination steps and says where registration or material is tight.',
  },
  'capability-match': {
    why: 'Outside the matrix nobody has promised to build it; in the stretch column it costs yield, which the quotation will show.',
    howToCheck:
      'Set each dimension and material against the matrix: comfortable, stretch, outside or not stated. A stretch is a thin margin; what is not stated is answered by the fabricator, by name.',
  },
  'circuit-type': {
    why: 'A type that contradicts the layer table puts the wrong acceptance tables in force.',
    howToCheck:
      'Type 1 one conductor layer, 2 two with plated holes, 3 three or more with plated holes, 4 rigid-flex with plated holes, 5 two or more without plated holes.',
  },
  'construction-cost': {
    why: 'Cost follows the process steps more than the count of layers: openings cut by laser, tight registration and extra laminations can outweigh a layer (common practice, no published source).',
    howToCheck:
      'Put the process steps of each construction side by side; what counts is the ratio, and which step makes it.',
  },
  'contact-person': {
    why: 'A question that reaches the right person the same day gets an answer; otherwise somebody guesses.',
    howToCheck: 'Name, and a way to reach them, on the drawing and in the review.',
  },
  'coupon-test': {
    why: 'Plating and drilling of film differ from rigid board, and the part itself cannot be cut.',
    howToCheck: 'Ask for coupons on every panel, and say what is kept for how long.',
  },
  'coverlay-detail': {
    why: 'Openings, ends and overlaps of the coverlay exist in no standard artwork layer of their own; without a detail they are guessed.',
    howToCheck: 'Look for openings, end lines, film and adhesive thickness on the drawing.',
  },
  'electrical-test': {
    why: 'A cracked or bridged conductor under coverlay shows in no other way.',
    howToCheck: 'Look for continuity and isolation, with their limits, on the drawing or order.',
  },
  'engineering-queries': {
    why: 'A query left open is decided by the operator at the press.',
    howToCheck: 'Every query and every must-change has an answer that the fabricator has accepted.',
  },
  'fabricator-currency': {
    why: "A declaration on last month's construction says nothing about this one.",
    howToCheck:
      'Count the fields that changed since the fabricator last looked, dates and words to people apart, and ask them to look again.',
  },
  'flex-test-terms': {
    why: 'A flex life means something only with its test: how often, how fast, how far, over which mandrel, and where the part is held. The published specification for continuous flexing (use B) puts all of these on the drawing.',
    howToCheck:
      'State required cycles, cycles a minute, travel, mandrel diameter, and where the part is held and moved. A mandrel wider than the bend tests less than service asks for.',
  },
  'fold-test': {
    why: 'Computed life is an order of magnitude. A test of the real section on the real radius is what it is qualified by.',
    howToCheck:
      'Use A, flexed to install: the folding test. Use B, flexed in service: the flexing test. Radius, stroke, number of cycles, sample size and what counts as failure; agree who runs it.',
  },
  'layer-names': {
    why: 'In a rigid-flex part the order of files is not the order of the build. A name that says flex or rigid, top or bottom, saves the question and sometimes the build.',
    howToCheck:
      'Read the layer table aloud to somebody who does not know the part: no bare numbers, no name twice, flex conductor layers called flex.',
  },
  'layer-table': {
    why: 'The table is what the shop builds from. It must show which layers run through the flex, which end at the rigid edge, and how thick each one is.',
    howToCheck: 'Compare the table on the drawing with the one that is generated from the design.',
  },
  'manufacturing-review': {
    why: 'After the freeze it is too late to act on advice about layers, routing and outline.',
    howToCheck:
      'Compare the date of the review with the date of the freeze. Once the day has passed, a fabricator has to have looked.',
  },
  'material-call-outs': {
    why: 'A trade name leaves the shop no choice and a bare word like "polyimide" leaves too much; a sheet of a standard with a thickness says what matters.',
    howToCheck:
      'Each layer of the table names a specification sheet and a thickness: coated films and bonding films by one standard, clads by another, foil by a third.',
  },
  packing: {
    why: 'A part that is creased in its bag is scrap before it is used; a damp one blisters in soldering.',
    howToCheck: 'Flat or on a carrier, dry pack or not, handling points, and what assembly may not do.',
  },
  'panel-form': {
    why: 'Single flexible parts cannot be printed with paste or fed without a carrier; arrays need tabs and tooling that must be drawn before the panel is.',
    howToCheck:
      'Ask the assembler, then put form, rails, tabs and fiducials on the drawing or leave them to the fabricator by name.',
  },
  'parts-per-panel': {
    why: 'The panel is what is paid for. A long arm folded back on itself in the flat, or a corner taken off, may fit twice as many parts.',
    howToCheck: 'Nest the true outline in the panel formats; try the part turned, in pairs, and with arms folded back.',
  },
  'performance-class': {
    why: 'They decide copper, annular ring, inspection and price. One class too high is paid for on every part; one too low is found in the field.',
    howToCheck: 'Ask what a failure costs and who has to repair it; class 1 to 3, type 1 to 5, use A to D.',
  },
  'registration-features': {
    why: 'Fingers to edge, coverlay to pads, stiffener to fingers: each adds a step of registration, and film moves between steps.',
    howToCheck:
      'List the features whose position depends on two processes or more, with what each can bear; ask the fabricator what they hold.',
  },
  'requirement-range': {
    why: 'A requirement is taken at its word: one cycle for a part that moves, a voltage drop of 1000 V or a connector that takes any thickness is met by every design, and sheets without tolerance have no thin margin anywhere. Such figures are slips of the decimal point or the unit, or stand in for one that nobody knew.',
    howToCheck:
      'Ask where the figure comes from: the product specification, the drawing of the connector, the sheet of the material. Correct it there and here. If it is right, record that source in a waiver.',
  },
  'stiffener-detail': {
    why: 'Stiffeners are placed by hand or fixture and held by heat or by tape; each choice changes thickness, position and what soldering does to them.',
    howToCheck: 'Material, thickness, adhesive, side, edges with tolerance, and the reason for it.',
  },
  'stock-materials': {
    why: 'An odd film thickness can add months and a minimum order. A neighbouring thickness that is on the shelf often does as well.',
    howToCheck: 'Ask which materials are held; for the rest take the lead time off the need date.',
  },
  'tolerances-given': {
    why: 'What has no tolerance is held to the shop’s own, and what is tighter than any shop holds comes back as a query. A flexible outline moves with humidity and with the hand that holds it: datums on rigid or stiffened zones measure what matters.',
    howToCheck:
      'A number for outline, holes, hole to edge, stiffener, coverlay and each zone’s thickness. A fabricator’s own limits go before ours. Look for datums on stiffened zones, tolerances within a zone rather than across the flex, and a stated condition of restraint.',
  },
  carrier: {
    why: 'Film does not lie flat by itself: paste smears, parts float and the joint is open.',
    howToCheck: 'Ask the assembler for pallet, frame, plate or tape, and where it takes hold.',
  },
  'array-drawing': {
    why: 'A tab on a flexible edge tears it when parts are broken out; without fiducials and marks assembly stops.',
    howToCheck: 'Look at the drawing of the array with the assembler.',
  },
  'prepreg-set-back': {
    why: 'Resin on the film is a sharp, hard edge; prepreg that ends too far inside leaves a gap that delaminates.',
    howToCheck: 'Ask the fabricator for both figures, and measure them on the first section.',
  },
}
