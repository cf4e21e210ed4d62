/** Which texts does survey say? One row a text; {name} stands for what is filled in. */
export const surveyTexts = {
  "survey.checkability.measuring-as-well-would-make-it":
    "{start} Measuring {measureAlso} as well would make it checkable ({redundancyThen}).",
  "survey.checkability.read-it-a-second-time-starting": "{start} Read it a second time, starting afresh.",
  "survey.checkability.the-others-cannot-check-redundancy":
    "The others cannot check {measurement} ({label}; redundancy {redundancy}).",
  "survey.explain-blunder.none-of-the-usual-slips-brings":
    "None of the usual slips brings these readings together. More than one may be off, or the frame is bent or out of plane. Measure the suspects again.",
  "survey.explain-blunder.would-be": "{name} {before}, would be {corrected}",
  "survey.leave-out.or-it-is-the-numbers-cannot": " Or it is {equals}: the numbers cannot tell them apart.",
  "survey.leave-out.reads-but-the-others-agree-among":
    "{keys} reads {value}, but the others agree among themselves and say about {predicted}.{pair} Check the unit and measure again.",
  "survey.measurement-kinds.along-the-down-tube-from-the":
    "Along the down tube, from the BB centre to where its centre line crosses that of the head tube.",
  "survey.measurement-kinds.along-the-head-tube-from-its":
    "Along the head tube, from its top face to the centre line of the top tube.",
  "survey.measurement-kinds.along-the-head-tube-from-its-2":
    "Along the head tube, from its bottom face to the centre line of the down tube.",
  "survey.measurement-kinds.along-the-seat-tube-from-the":
    "Along the seat tube, from the BB centre to where the centre line of the top tube crosses it.",
  "survey.measurement-kinds.along-the-top-tube-from-seat":
    "Along the top tube, from seat-tube centre to head-tube centre: inside edge to inside edge plus half of each tube.",
  "survey.measurement-kinds.axle-to-axle-along-the-floor": "Axle to axle along the floor, wheels straight, both sides.",
  "survey.measurement-kinds.bb-centre-to-front-axle": "BB centre to front axle",
  "survey.measurement-kinds.bb-centre-to-head-tube-bottom": "BB centre to head tube bottom",
  "survey.measurement-kinds.bb-centre-to-head-tube-top": "BB centre to head tube top",
  "survey.measurement-kinds.bb-height-above-the-floor": "BB height above the floor",
  "survey.measurement-kinds.bicycle-upright-on-a-level-floor":
    "Bicycle upright on a level floor, digital level along the tube, both ways round, mean of the two.",
  "survey.measurement-kinds.calliper-over-both-faces-with-the": "Calliper over both faces with the headset cups out.",
  "survey.measurement-kinds.chainstay-bb-centre-to-rear-axle": "chainstay, BB centre to rear axle",
  "survey.measurement-kinds.down-tube-bb-centre-to-head": "down tube, BB centre to head-tube centre line",
  "survey.measurement-kinds.down-tube-joint-above-the-head": "down-tube joint above the head tube bottom",
  "survey.measurement-kinds.fork-axle-to-crown": "fork, axle to crown",
  "survey.measurement-kinds.fork-rake": "fork rake",
  "survey.measurement-kinds.front-axle-height-loaded-tyre-radius": "front axle height (loaded tyre radius)",
  "survey.measurement-kinds.front-axle-to-head-tube-top": "front axle to head tube top",
  "survey.measurement-kinds.front-axle-to-seat-cluster": "front axle to seat cluster",
  "survey.measurement-kinds.head-angle": "head angle",
  "survey.measurement-kinds.head-tube-face-to-face": "head tube, face to face",
  "survey.measurement-kinds.rear-axle-height-loaded-tyre-radius": "rear axle height (loaded tyre radius)",
  "survey.measurement-kinds.rear-axle-to-head-tube-top": "rear axle to head tube top",
  "survey.measurement-kinds.rear-axle-to-seat-cluster": "rear axle to seat cluster",
  "survey.measurement-kinds.seat-angle": "seat angle",
  "survey.measurement-kinds.seat-tube-bb-centre-to-top": "seat tube, BB centre to top-tube centre",
  "survey.measurement-kinds.slope-of-the-top-tube": "slope of the top tube",
  "survey.measurement-kinds.square-on-the-level-floor-rider":
    "Square on the level floor, rider's load or the loaded radius, tyres at riding pressure.",
  "survey.measurement-kinds.steerer-in-v-blocks-level-height":
    "Steerer in V-blocks, level: height of the axle centre above or below the steerer centre.",
  "survey.measurement-kinds.straight-from-the-middle-of-the":
    "Straight from the middle of the crown seat to the middle of the axle.",
  "survey.measurement-kinds.tape-or-trammel-from-the-front":
    "Tape or trammel from the front axle to where the centre lines of seat tube and top tube cross, both sides.",
  "survey.measurement-kinds.tape-or-trammel-from-the-front-2":
    "Tape or trammel from the front axle to the centre of the top face of the head tube, both sides.",
  "survey.measurement-kinds.tape-or-trammel-from-the-rear":
    "Tape or trammel from the rear axle to the centre of the top face of the head tube, both sides.",
  "survey.measurement-kinds.top-tube-centre-to-centre": "top tube, centre to centre",
  "survey.measurement-kinds.top-tube-joint-below-the-head": "top-tube joint below the head tube top",
  "survey.measurement-kinds.trammel-from-the-bb-centre-to":
    "Trammel from the BB centre to the centre of the top face of the head tube.",
  "survey.measurement-kinds.trammel-from-the-bb-centre-to-2":
    "Trammel from the BB centre to the centre of the bottom face of the head tube.",
  "survey.measurement-kinds.trammel-from-the-rear-axle-to":
    "Trammel from the rear axle to where the centre lines of seat tube and top tube cross.",
  "survey.measurement-kinds.trammel-or-long-calliper-between-turned":
    "Trammel or long calliper between turned pins in the centres, both sides, mean of the two.",
  "survey.next-reading.measure-again-expected": "Measure again: {kinds}.{pair} Expected {wanted} {unit}.",
  "survey.next-reading.the-numbers-cannot-tell-it-from":
    " The numbers cannot tell it from {sharesResidualWith}, so measure both.",
  "survey.other-frames.a-second-frame-fits-these-measurements":
    "A second frame fits these measurements as well: stack {stackMm}, reach {reachMm} mm. The more ordinary one is shown. Measuring {best} as well would decide.",
  "survey.side-model.axle-to-crown": "axle to crown",
  "survey.side-model.bb-height": "BB height",
  "survey.side-model.head-tube": "head tube",
  "survey.side-model.rear-axle-behind-the-bb": "rear axle behind the BB",
  "survey.side-model.rear-axle-height": "rear axle height",
  "survey.side-model.seat-tube": "seat tube",
  "survey.side-model.top-tube": "top tube",
  "survey.slip-trials.read-to-the-top-of-the":
    "read to the top of the seat tube, about {collar} above the centre of the top tube{proof}",
  "survey.slip-trials.the-floor-or-the-level-leans":
    "the floor (or the level) leans by about {leansDeg} deg: every angle reads {tooMuchOrLittle} by that",
  "survey.slip-trials.the-seat-tube-measures-to-its": "; the seat tube measures {topLength} to its top",
  "survey.slip-trials.too-little": "too little",
  "survey.slip-trials.too-much": "too much",
  "survey.slips.100-was-taken-off-although-the": "100 was taken off although the tape began at nought",
  "survey.slips.centimetres-written-in-the-column-for": "centimetres written in the column for mm",
  "survey.slips.down-tube": "down tube",
  "survey.slips.half-of-and-of": "half of {one} ({oneOd}{oneAssumed}) and of {two} ({twoOd}{twoAssumed})",
  "survey.slips.half-of-the": "half of the {tube} ({od}{assumed})",
  "survey.slips.half-of-the-radius-was-written": "half of the radius was written",
  "survey.slips.inches-written-in-the-column-for": "inches written in the column for mm",
  "survey.slips.one-nought-too-many": "one nought too many",
  "survey.slips.read-to-the-top-of-the": "read to the top of the top tube: half of its {topTubeOdMm} too much",
  "survey.slips.taken-edge-to-edge-not-centre": "taken edge to edge, not centre to centre: {of} are missing",
  "survey.slips.taken-over-both-tubes-not-centre": "taken over both tubes, not centre to centre: {of} are too much",
  "survey.slips.taken-to-the-tube-s-edge": "taken to the tube's edge, not its centre: {of} is missing",
  "survey.slips.taken-to-the-tube-s-far": "taken to the tube's far edge, not its centre: {of} is too much",
  "survey.slips.the-angle-was-taken-on-the": "the angle was taken on the other side of the tube: 180 minus the reading",
  "survey.slips.the-diameter-of-the-wheel-was": "the diameter of the wheel was written for its radius",
  "survey.slips.the-level-showed-the-angle-from": "the level showed the angle from upright: 90 minus the reading",
  "survey.slips.the-scale-was-misread-too-little": "the scale was misread, {step} too little",
  "survey.slips.the-scale-was-misread-too-much": "the scale was misread, {step} too much",
  "survey.slips.the-tape-began-at-its-100": "the tape began at its 100 mark and 100 was not taken off",
  "survey.slips.turned-from-inches-into-mm-although": "turned from inches into mm although it was mm already",
  "survey.slips.two-digits-swapped-written-as": "two digits swapped: {swapped} written as {reading}",
  "survey.solve-survey.about-as-the-others-say": "about {predicted}, as the others say",
  "survey.solve-survey.lengths-that-close-every-triangle-of": "lengths that close every triangle of the frame",
  "survey.solve-survey.measurements-of-one-frame": "measurements of one frame",
  "survey.solve-survey.no-frame-was-found-that-comes":
    "No frame was found that comes near all of these measurements. Some must be far off: check units, and which line was written where.",
  "survey.solve-survey.no-frame-was-found-that-comes-2":
    "No frame was found that comes near all of these measurements. {read}",
  "survey.solve-survey.these-figures-close-no-frame-somewhere":
    "These figures close no frame: somewhere one length is longer than the other two sides of its triangle together. Measure again, and add a check length.",
  "survey.survey-input.0-000001-to-1000": "0.000001 to 1000",
  "survey.survey-input.0-to-500-mm": "0 to 500 mm",
  "survey.survey-input.200-to-1000-mm-here-or": "-200 to 1000 mm, here or among the measurements",
  "survey.survey-input.a-rake-of-mm-is-no":
    "A rake of {rakes} mm is no fork with {crowns} mm from axle to crown. One of the two is wrong.",
  "survey.survey-input.did-you-mean": "Did you mean {near}?",
  "survey.survey-input.down-tube-cc-mm-needs-the":
    "down_tube_cc_mm needs the place of its joint: measure down_tube_joint_above_head_tube_bottom_mm.",
  "survey.survey-input.is-it-must-be-a-number": "{key} is {value}; it must be a number from {low} to {high} mm.",
  "survey.survey-input.lower-stack-mm-is-known-without":
    "lower_stack_mm is known without error here: give it among the constants.",
  "survey.survey-input.lower-stack-mm-is-missing-measure":
    "lower_stack_mm is missing. Measure from the bottom face of the head tube to the crown seat of the fork.",
  "survey.survey-input.rake-mm-smaller-than-axle-to": "rake_mm smaller than axle_to_crown_mm",
  "survey.survey-input.reads-it-must-be-a-number": "{name} reads {value}; it must be a number in {range}.",
  "survey.survey-input.see-the-list-of-names": "See the list of names.",
  "survey.survey-input.stands-among-the-constants-and-among":
    "{name} stands among the constants and among the measurements. The constant ({exact}) is taken as exact; the reading is only checked against it.",
  "survey.survey-input.the-standard-deviation-of-is-it":
    "The standard deviation of {name} is {sd}; it must be greater than nought (a careful workshop has {usualSd}).",
  "survey.survey-input.the-survey-knows-no-measurement-named": 'The survey knows no measurement named "{name}". {hint}',
  "survey.survey-input.to": "{low} to {high} {unit}",
  "survey.survey-input.to-mm": "{low} to {high} mm",
  "survey.survey-input.top-tube-below-head-tube-top":
    "top_tube_below_head_tube_top_mm stands neither among the constants nor among the measurements. It is worked out from the other readings, which costs one of them as a check. Better measure it.",
  "survey.survey-sheet.0-nothing-checks-it-1-the": "0: nothing checks it, 1: the others know it fully",
  "survey.survey-sheet.a-name-may-come-more-than": "A name may come more than once: a repeat reading.",
  "survey.survey-sheet.along-the-head-tube-leave-out":
    "Along the head tube. Leave out where it is among the measurements.",
  "survey.survey-sheet.by-how-much-that-reading-seems": "by how much that reading seems to be wrong, mm or degrees",
  "survey.survey-sheet.chi-square-is-within-the-limit": "chi-square is within the limit",
  "survey.survey-sheet.covariance-of-stack-and-reach-mm2": "covariance of stack and reach, mm2",
  "survey.survey-sheet.down-tube-joint-above-the-head": "Down-tube joint above the head tube bottom",
  "survey.survey-sheet.every-reading-against-the-rest-the": "every reading against the rest, the worst first",
  "survey.survey-sheet.from-the-bottom-face-of-the":
    "From the bottom face of the head tube to the crown seat of the fork.",
  "survey.survey-sheet.further-figures-of-the-bicycle-mm": "further figures of the bicycle, mm",
  "survey.survey-sheet.known-without-error": "Known without error",
  "survey.survey-sheet.limit-of-chi-square-at-95": "limit of chi-square at 95 %",
  "survey.survey-sheet.lower-headset-stack": "Lower headset stack",
  "survey.survey-sheet.measured-adjusted-mm-or-degrees": "measured - adjusted, mm or degrees",
  "survey.survey-sheet.measurements-more-than-needed": "measurements more than needed",
  "survey.survey-sheet.mm-or-degrees-as-the-name": "mm or degrees, as the name ends.",
  "survey.survey-sheet.needed-with-down-tube-cc-mm": "Needed with down_tube_cc_mm, here or among the measurements.",
  "survey.survey-sheet.one-sigma-in-the-unit-of":
    "One sigma in the unit of the reading; left out, the careful workshop's is taken.",
  "survey.survey-sheet.one-standard-deviation-of-each": "one standard deviation of each",
  "survey.survey-sheet.one-standard-deviation-of-each-mm": "one standard deviation of each, mm or degrees",
  "survey.survey-sheet.one-standard-deviation-of-each-mm-2": "one standard deviation of each, mm",
  "survey.survey-sheet.readings-with-redundancy-under-0-1":
    "readings with redundancy under 0.1, and what to measure as well",
  "survey.survey-sheet.residual-in-its-own-standard-deviation":
    "residual in its own standard deviation; beyond 3.29 the reading is off",
  "survey.survey-sheet.side-view-x-forward-y-up":
    "Side view, x forward, y up from the BB centre, level ground under both tyres. Give more measurements than the 11 that a frame needs: the extra ones check the rest. Standard deviations are one sigma and independent; the covariance is not scaled. Residual = measured - adjusted. A normalised residual beyond 3.29 names a reading as off. The second reading of one name is keyed name#2. Where nothing checks a reading, its normalised residual and smallest blunder are null. Readings with redundancy under 0.1 cannot be checked. Frame in one plane; one blunder at a time is named surely.",
  "survey.survey-sheet.smallest-slip-that-would-be-noticed":
    "smallest slip that would be noticed (0.1 %, power 80 %), mm or degrees",
  "survey.survey-sheet.stack-mm-reach-mm-trail-mm": "stack_mm, reach_mm, trail_mm, head_angle_deg, seat_angle_deg",
  "survey.survey-sheet.standard-deviation": "Standard deviation",
  "survey.survey-sheet.sum-of-residual-sd-squared": "sum of (residual / sd) squared",
  "survey.survey-sheet.that-agree-best-with-all-measurements": "{headline} that agree best with all measurements",
  "survey.survey-sheet.the-answer-without-that-reading-where":
    "the answer without that reading, where the global test fails",
  "survey.survey-sheet.the-fourteen-figures-of-the-frame":
    "the fourteen figures of the frame that fork-swap takes, mm and degrees",
  "survey.survey-sheet.the-reading-that-is-furthest-off": "the reading that is furthest off, and its signed value",
  "survey.survey-sheet.their-correlation-1-to-1": "their correlation, -1 to 1",
  "survey.survey-sheet.top-tube-joint-below-the-head": "Top-tube joint below the head tube top",
  "survey.survey-sheet.what-do-all-my-measurements-together":
    "What do all my measurements together say, how surely, and which one is wrong?",
  "survey.survey-sheet.what-each-measurement-reads-on-the":
    "what each measurement reads on the adjusted frame, mm or degrees",
  "survey.survey.disagrees-with-the-rest-of-its":
    "{measurement} ({measured}) disagrees with the rest: {normalisedResidual} of its standard deviation, allowed {flagLimit}. If it alone is wrong, it is off by about {estimatedBlunder}.{pair}",
  "survey.survey.it-shares-its-residual-with-measure": " It shares its residual with {shared}: measure both again.",
  "survey.survey.taken-together-the-measurements-disagree-more":
    "Taken together the measurements disagree more than their standard deviations allow: chi-square {chiSquare}, limit {chiSquareLimit95}. The adjusted figures are not to be built on before that is cleared up.",
  "survey.survey.the-adjusted-frame-has-an-unusual":
    "The adjusted frame has an unusual shape (head {head}, seat {seat} deg, stack {stack}, reach {reach} mm). Check names and units of the readings.",
  "survey.survey.the-measurements-settle-the-frame-only":
    "The measurements settle the frame only loosely: stack ± {ninetyFive}, reach ± {ninetyFive2} mm, head angle ± {ninetyFive3} deg.",
  "survey.survey.there-are-just-enough-measurements-nothing":
    "There are just enough measurements: nothing checks them, and a wrong one would not be noticed. Measure a few more.",
  "survey.undetermined.measurements-do-not-settle-the-frame":
    "{keysCount} measurements do not settle the frame. Still open: {open}. Measure as well: {measure}.",
  "survey.undetermined.or-more-measurements-that-settle-every":
    "{activeCount} or more measurements that settle every part of the frame",
} as const;
