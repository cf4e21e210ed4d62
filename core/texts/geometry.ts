/** Which texts does geometry say? One row a text; {name} stands for what is filled in. */
export const geometryTexts = {
  "geometry.clearance-sheets.air-on-each-side-to-the": "Air on each side, to the guard where there is one",
  "geometry.clearance-sheets.air-to-each-bridge-or-crown": "Air to each bridge or crown",
  "geometry.clearance-sheets.bb-drop-front-radius-rear-radius": "BB drop + front radius - rear radius.",
  "geometry.clearance-sheets.bead-seat-diameter": "Bead seat diameter",
  "geometry.clearance-sheets.brake-bridge": "brake bridge",
  "geometry.clearance-sheets.bridges-and-crown": "Bridges and crown",
  "geometry.clearance-sheets.clear-width-there": "Clear width there",
  "geometry.clearance-sheets.crank-length": "Crank length",
  "geometry.clearance-sheets.distance-from-the-axle-and-the":
    "Distance from the axle, and the clear width between the inner faces there.",
  "geometry.clearance-sheets.does-this-tyre-pass-between-the":
    "Does this tyre pass between the stays or blades, and with how much air?",
  "geometry.clearance-sheets.from-the-axle": "From the axle",
  "geometry.clearance-sheets.front-axle-above-the-bb": "Front axle above the BB",
  "geometry.clearance-sheets.front-axle-ahead-of-the-bb": "Front axle ahead of the BB, level",
  "geometry.clearance-sheets.guard-stands-over-the-tyre-by": "Guard stands over the tyre by",
  "geometry.clearance-sheets.guard-width": "Guard width",
  "geometry.clearance-sheets.how-far-is-the-toe-from":
    "How far is the toe from the front tyre or guard when the wheel is turned?",
  "geometry.clearance-sheets.inner-gap": "Inner gap",
  "geometry.clearance-sheets.inner-gaps": "Inner gaps",
  "geometry.clearance-sheets.inner-rim-width": "Inner rim width",
  "geometry.clearance-sheets.leave-out-without-a-guard": "Leave out without a guard.",
  "geometry.clearance-sheets.loaded-radius-if-measured": "Loaded radius, if measured",
  "geometry.clearance-sheets.loaded-radius-used": "Loaded radius used",
  "geometry.clearance-sheets.measured-straight-forward-from-the-pedal":
    "Measured straight forward from the pedal centre, crank level, parallel to the bicycle, over all turns of the bar up to 70 deg. Tyre and guard are rings of round section. Shoe, toe clip and a loose guard are not in it.",
  "geometry.clearance-sheets.nearest-face-from-the-axle": "Nearest face from the axle",
  "geometry.clearance-sheets.pedal-centre-from-the-centre-plane": "Pedal centre from the centre plane",
  "geometry.clearance-sheets.refuse-under-4-flag-from-4": "refuse under 4, flag from 4 to 6, else no problem found",
  "geometry.clearance-sheets.shortest-line-in-any-direction": "Shortest line in any direction",
  "geometry.clearance-sheets.side-gap-at-the-tyre-s":
    "Side gap at the tyre's widest radius, read between measured stations by straight line and never beyond them; radial gap to bridges and crown. Wanted 6, least 4, to the guard where there is one. A wheel out of true or dish is not in it.",
  "geometry.clearance-sheets.straight-forward-negative-where-they-overlap":
    "Straight forward, negative where they overlap, null where they never meet",
  "geometry.clearance-sheets.the-least-of-them": "The least of them",
  "geometry.clearance-sheets.turn-of-the-bar-at-which": "Turn of the bar at which it is least",
  "geometry.clearance-sheets.turn-of-the-bar-at-which-2": "Turn of the bar at which that is least",
  "geometry.clearance-sheets.tyre-width": "Tyre width",
  "geometry.clearance-sheets.tyre-width-as-named": "Tyre width, as named",
  "geometry.clearance-sheets.usually-half-the-q-plus-50": "Usually half the Q plus 50.",
  "geometry.clearance-sheets.where-the-tyre-is-widest-from": "Where the tyre is widest, from the axle",
  "geometry.clearance-sheets.width-on-this-rim": "Width on this rim",
  "geometry.fork-swap-bands.95-from-how-surely-the-frame": "95 %, from how surely the frame is measured",
  "geometry.fork-swap-bands.95-from-the-usual-spread-of":
    "95 %, from the usual spread of workshop measuring (M2), both tyres on the ground when measured",
  "geometry.fork-swap-sheet.bb-centre-above-the-ground": "BB centre above the ground",
  "geometry.fork-swap-sheet.frame-fork-and-wheels-as-they": "Frame, fork and wheels as they are",
  "geometry.fork-swap-sheet.head-angle-after-the-swap": "Head angle after the swap",
  "geometry.fork-swap-sheet.height-of-the-head-tube-top": "Height of the head-tube top above the BB",
  "geometry.fork-swap-sheet.its-level-part": "Its level part",
  "geometry.fork-swap-sheet.level-distance-between-the-axles": "Level distance between the axles",
  "geometry.fork-swap-sheet.level-distance-of-the-head-tube": "Level distance of the head-tube top ahead of the BB",
  "geometry.fork-swap-sheet.level-from-the-head-tube-top":
    "Level, from the head-tube top back to the seat-tube centre line",
  "geometry.fork-swap-sheet.new-parts": "New parts",
  "geometry.fork-swap-sheet.rear-axle-height-minus-bb-height": "Rear axle height minus BB height",
  "geometry.fork-swap-sheet.seat-angle-after-the-swap": "Seat angle after the swap",
  "geometry.fork-swap-sheet.side-view-x-forward-y-up":
    "Side view, x forward, y up, BB centre at the origin, level ground. The frame is rigid; the whole bicycle turns about the BB until both tyres, taken at their loaded radii, stand on level ground. What is left out under `new` stays as before. Bands come from the usual spread of measuring the frame; the new parts are taken as exact. Flex, tyre squash beyond the loaded radius and the strength of the fork are not judged here.",
  "geometry.fork-swap-sheet.straight-bb-to-front-axle": "Straight, BB to front axle",
  "geometry.fork-swap-sheet.the-same-from-the-crossing-of": "The same from the crossing of top tube and head tube",
  "geometry.fork-swap-sheet.trail-on-the-ground": "Trail on the ground",
  "geometry.fork-swap-sheet.trail-sin-h-cos-h": "trail sin H cos H",
  "geometry.fork-swap-sheet.trail-square-to-the-steering-axis": "Trail square to the steering axis",
  "geometry.fork-swap-sheet.turn-of-the-whole-bicycle-positive":
    "Turn of the whole bicycle, positive when the head rises",
  "geometry.fork-swap-sheet.what-do-another-fork-other-wheels":
    "What do another fork, other wheels or another lower headset do to it?",
  "geometry.fork-swap.a-head-angle-of-deg-is":
    "A head angle of {headAngleDeg} deg is outside 60 to 80. Check the figures that went in.",
  "geometry.fork-swap.a-number": "a number",
  "geometry.fork-swap.by-these-measures-the-old-front":
    "By these measures the old front tyre stands {gapMm} mm {aboveOrBelow} the ground. {turnDeg} deg of the turn is in the measurements, not in the new parts. Measure again or use the survey.",
  "geometry.fork-swap.measures-that-put-the-front-axle":
    "measures that put the front axle ahead of the BB and let both tyres touch level ground",
  "geometry.fork-swap.the-swap-needs-the-frame-fill":
    "The swap needs the {label} (frame.{key}). Fill gaps with the sheet side-view first.",
  "geometry.fork-swap.the-tyre-touches-the-ground-ahead":
    "The tyre touches the ground ahead of the steering axis: the wheel will not centre itself. Do not ride it so.",
  "geometry.fork-swap.with-these-measures-the-bicycle-cannot":
    "With these measures the bicycle cannot stand on level ground on both wheels. Measure the frame again.",
  "geometry.frame-measures.along-the-head-tube-from-its":
    "Along the head tube, from its top face down to the crossing of the centre lines.",
  "geometry.frame-measures.axle-to-crown": "Axle to crown",
  "geometry.frame-measures.bb-centre-to-where-the-centre":
    "BB centre to where the centre lines of seat tube and top tube cross.",
  "geometry.frame-measures.bb-drop": "BB drop",
  "geometry.frame-measures.bb-height": "BB height",
  "geometry.frame-measures.bb-to-head-tube-top": "BB to head-tube top",
  "geometry.frame-measures.between-the-crossings-with-the-seat":
    "Between the crossings with the seat-tube and head-tube centre lines.",
  "geometry.frame-measures.bottom-face-of-the-head-tube": "Bottom face of the head tube to the fork's crown seat.",
  "geometry.frame-measures.bottom-face-to-top-face-no": "Bottom face to top face, no headset.",
  "geometry.frame-measures.fork-rake": "Fork rake",
  "geometry.frame-measures.front-axle-to-the-steering-axis":
    "Front axle to the steering axis, square to the axis; positive ahead of it.",
  "geometry.frame-measures.front-tyre-radius": "Front tyre radius",
  "geometry.frame-measures.ground-to-axle-under-load": "Ground to axle, under load.",
  "geometry.frame-measures.ground-to-bb-centre": "Ground to BB centre.",
  "geometry.frame-measures.head-angle": "Head angle",
  "geometry.frame-measures.head-tube": "Head tube",
  "geometry.frame-measures.level-distance-between-the-axles": "Level distance between the axles.",
  "geometry.frame-measures.lower-headset-stack": "Lower headset stack",
  "geometry.frame-measures.rear-axle-height-minus-bb-height":
    "Rear-axle height minus BB height; negative where the BB is higher.",
  "geometry.frame-measures.rear-tyre-radius": "Rear tyre radius",
  "geometry.frame-measures.seat-angle": "Seat angle",
  "geometry.frame-measures.seat-tube-centre-to-centre": "Seat tube, centre to centre",
  "geometry.frame-measures.seat-tube-to-level-ground-measured": "Seat tube to level ground, measured behind the tube.",
  "geometry.frame-measures.steering-axis-to-level-ground-measured":
    "Steering axis to level ground, measured behind the tube.",
  "geometry.frame-measures.straight-bb-centre-to-front-axle": "Straight, BB centre to front-axle centre.",
  "geometry.frame-measures.straight-bb-centre-to-rear-axle": "Straight, BB centre to rear-axle centre.",
  "geometry.frame-measures.straight-bb-centre-to-the-centre":
    "Straight, BB centre to the centre of the head tube's top face.",
  "geometry.frame-measures.straight-from-the-front-axle-centre":
    "Straight, from the front-axle centre to the crown seat on the steering axis.",
  "geometry.frame-measures.to-level-ground-positive-when-the":
    "To level ground; positive when the front end is higher.",
  "geometry.frame-measures.top-tube-along-the-tube": "Top tube, along the tube",
  "geometry.frame-measures.top-tube-below-head-tube-top": "Top tube below head-tube top",
  "geometry.frame-measures.top-tube-slope": "Top-tube slope",
  "geometry.frame-problems.as-given": "as given",
  "geometry.frame-problems.axle-to-crown-mm-is-not":
    "Axle to crown {axleToCrownMm} mm is not longer than the rake {rakeMm} mm: such a fork cannot exist. Measure both again.",
  "geometry.frame-problems.by-bb-height-and-rear-radius": "by BB height and rear radius",
  "geometry.frame-problems.chainstay-mm-is-not-longer-than":
    "Chainstay {stay} mm is not longer than the BB drop {drop} mm ({where}): the rear axle cannot be reached.",
  "geometry.frame-problems.front-centre-mm-is-not-longer":
    "Front-centre {frontCentreMm} mm is not longer than the height of the front axle from the BB, {riseMm} mm.",
  "geometry.frame-problems.is-allowed-is": "{label} ({prefix}{key}) is {given}; allowed is {allowed}.",
  "geometry.frame-problems.more-than-mm-the-front-axle": "more than {rise} mm, the front axle's height from the BB",
  "geometry.frame-problems.more-than-the-bb-drop-mm": "more than the BB drop, {drop} mm",
  "geometry.frame-problems.more-than-the-rake-mm": "more than the rake, {rake} mm",
  "geometry.frame-problems.to": "{min} to {max} {unit}",
  "geometry.side-view-doubt.any-of-these-may-be-the":
    "Any of these may be the wrong one (|w| {size}), nothing else tells them apart: {names}. Repeat them, or add one more measure.",
  "geometry.side-view-doubt.by-these-measures-the-front-tyre":
    "By these measures the front tyre would stand {byMm} mm {aboveOrBelow} the ground. Angles, fork, BB drop and radii do not agree.",
  "geometry.side-view-doubt.reads-the-others-foretell-off-by":
    "{label} ({key}) reads {reading}, the others foretell {foretold}: off by {off}, and {limitSd} is what its own spread allows.",
  "geometry.side-view-doubt.taken-all-together-the-readings-still":
    "Taken all together the readings still agree within their usual spread (no |w| over 3.29). Repeat the one that is named.",
  "geometry.side-view-doubt.the-likeliest-wrong-reading-is-the":
    "The likeliest wrong reading is the {names} (|w| {size}, limit 3.29). Measure it again.",
  "geometry.side-view-sheet.every-measure-that-the-set-fixes": "Every measure that the set fixes, given or not",
  "geometry.side-view-sheet.readings-that-were-not-needed-with":
    "Readings that were not needed, with what the others foretell",
  "geometry.side-view-sheet.side-view-x-forward-y-up":
    "Side view, x forward, y up, BB centre at the origin, both tyres on level ground. Any sufficient set will do. The fourteen frame measures lay the bicycle out where they are given, then level ground, then the whole-bicycle measures; every reading that is not needed is checked against the rest and named where it is off by more than 3.29 of its standard deviation. Where the first readings fix the bicycle only roughly, all of them count by their spread; where only the ground disagrees, the readings stand. For many readings that should share the blame, use the survey.",
  "geometry.side-view-sheet.trail-on-the-ground-positive-behind": "Trail on the ground, positive behind the axis",
  "geometry.side-view-sheet.what-is-the-geometry-of-this":
    "What is the geometry of this frame and fork, from the measurements given?",
  "geometry.side-view-solve.the-fork-would-point-up": "the fork would point up",
  "geometry.side-view-solve.the-front-axle-would-lie-behind": "the front axle would lie behind the BB",
  "geometry.side-view-solve.the-head-tube-would-lie-behind": "the head tube would lie behind the rear axle",
  "geometry.side-view-solve.the-head-tube-would-lie-below": "the head tube would lie below the BB",
  "geometry.side-view-solve.the-rear-axle-would-lie-ahead": "the rear axle would lie ahead of the BB",
  "geometry.side-view-solve.the-would-be-outside-to": "the {label} would be {value} {unit}, outside {low} to {high}",
  "geometry.side-view.95-from-the-usual-spread-of": "95 %, from the usual spread of workshop measuring (M2)",
  "geometry.side-view.it-would-be-enough-to-measure": "It would be enough to measure {sets}.",
  "geometry.side-view.measure-as-well": "Measure as well: {measureLabel}.",
  "geometry.side-view.measures-that-close-to-one-bicycle": "measures that close to one bicycle",
  "geometry.side-view.no-bicycle-has-the-first-of":
    "No bicycle has the first of these readings exactly. Shown is the least-squares fit of all of them.",
  "geometry.side-view.no-bicycle-has-these-measures-together":
    "No bicycle has these measures together: {measureLabel}. One of them is wrong; the triangle does not close.",
  "geometry.side-view.on-this-bicycle-these-measures-leave":
    "On this bicycle these measures leave open: {open}. It would be enough to measure {measureLabel}.",
  "geometry.side-view.one-of": "one of: {settles}",
  "geometry.side-view.one-of-2": "one of: {words}",
  "geometry.side-view.or": "; or ",
  "geometry.side-view.over-1000": "over 1000",
  "geometry.side-view.the-first-readings-alone-would-fix":
    "The first readings alone would fix this bicycle only roughly, so all of them count here, each by its usual spread. That moved a figure by up to {movedMm} mm.",
  "geometry.side-view.these-as-well": "these as well: {words}",
  "geometry.side-view.these-measures-fit-no-bicycle-measure":
    "These measures fit no bicycle: {senseless}. Measure again, one more length than before.",
  "geometry.side-view.these-measures-hardly-fix-mm-measure":
    "These measures hardly fix: {weak} mm. Measure an angle, the BB height or the wheelbase as well.",
  "geometry.side-view.these-measures-leave-open": "These measures leave open: {open}. ",
  "geometry.side-view.two-bicycles-fit-these-readings-shown":
    "Two bicycles fit these readings. Shown is the more ordinary one; the other has stack {stackMm}, reach {reachMm}, BB height {bbHeightMm}. Measure the BB height or an angle to decide.",
  "geometry.toe-clearance.a-tyre-mm-wide-does-not":
    "A tyre {tyreWidthMm} mm wide does not fit on a wheel of radius {frontRadiusMm} mm.",
  "geometry.toe-clearance.is-it-must-be-more-than": "{key} is {given}; it must be more than 0.",
  "geometry.toe-clearance.more-than-0": "more than 0",
  "geometry.toe-clearance.toe-to-is-mm-at-deg": "Toe to {to} is {gap} mm at {atSteerDeg} deg of turn",
  "geometry.toe-clearance.under-100-which-new-city-bicycles":
    "{shown}, under 100, which new city bicycles must keep without foot retention (from memory, not re-read). Not for a novice or with a child on board.",
  "geometry.toe-clearance.under-89-which-new-bicycles-must":
    "{shown}, under 89, which new bicycles must keep even with foot retention (from memory, not re-read). A foot can catch the wheel at walking pace. Shorter crank, smaller tyre or another fork.",
  "geometry.toe-clearance.under-the-front-radius-mm": "under the front radius, {frontRadiusMm} mm",
  "geometry.tyre-gap.a-tyre-mm-wide-does-not":
    "A tyre {tyreWidthMm} mm wide does not belong on a wheel of radius {radius} mm.",
  "geometry.tyre-gap.bsd-2-width-is-good-to":
    "BSD/2 + width is good to ± 3 (common practice, no source); a roll-out under the rider to ± 1",
  "geometry.tyre-gap.mm-to-the-new-bicycles-keep":
    "{leastGapMm} mm to the {to}: new bicycles keep 6 (from memory, not re-read). Clean dry roads only, and look at it again when the wheel has run a while.",
  "geometry.tyre-gap.more-than-0-and-less-than": "more than 0 and less than twice the radius",
  "geometry.tyre-gap.only-mm-to-the-under-4":
    "Only {leastGapMm} mm to the {to}: under 4 a stone or a flexing wheel can jam it. Smaller tyre, or no guard there.",
  "geometry.tyre-gap.rim-width-not-stated-the-tyre":
    "Rim width not stated: the tyre is taken as wide as its name says. It grows about 0.4 mm per mm of inner rim width; put a calliper on it at pressure.",
  "geometry.tyre-gap.stations-on-both-sides-of-mm": "stations on both sides of {widest} mm from the axle",
  "geometry.tyre-gap.the-tyre-is-widest-mm-from":
    "The tyre is widest {widest} mm from the axle, and no gap was measured around there. Measure the inner gap at that radius.",
} as const;
