/** Which texts does position say? One row a text; {name} stands for what is filled in. */
export const positionTexts = {
  "position.best-cockpit.a-bar-does-not-belong-in": "a {clampMm} bar does not belong in a {barClampMm} clamp",
  "position.best-cockpit.measure-the-clamp-of-and-before":
    "Measure the clamp of {stem} and {bar} before you rely on this pair.",
  "position.best-cockpit.no-headset-with-a-known-upper": "no {headset} headset with a known upper stack",
  "position.best-cockpit.no-stem-and-bar-of-the":
    "No stem and bar of the bin belong together on this headset. See the reasons.",
  "position.best-cockpit.the-nearest-pair-leaves-the-hands":
    "The nearest pair leaves the hands {errorMm} mm from the target.",
  "position.cockpit-sheet.how-many-different-combinations-were-tried": "how many different combinations were tried",
  "position.cockpit-sheet.stem-length-and-spacer-sum-in":
    "stem length and spacer sum in mm that would hit the target, for each angle",
  "position.cockpit-sheet.the-combination-whose-hand-is-nearest":
    "the combination whose hand is nearest to the target: stem, spacers, error, hand; mm and deg",
  "position.cockpit-sheet.true-when-the-best-leaves-the":
    "true when the best leaves the hands within 10 mm of the target",
  "position.cockpit-sheet.up-to-ten-that-follow-nearest": "up to ten that follow, nearest first",
  "position.cockpit-sheet.which-stem-and-spacers-put-the": "Which stem and spacers put the hands where they belong?",
  "position.cockpit-sheet.x-forward-y-up-from-the":
    "x forward, y up, from the BB centre, ground level. Up the steering axis from the head tube: headset, spacers, stem; the stem's centre line leaves the axis at half its clamp height, at 90 - head angle + stem angle to the ground. Every length is tried with every angle and every spacer sum. Errors in x and y are hand minus target. Whether the steerer is long enough is the sheet steerer.",
  "position.cockpit.bar-clamp-to-hand-forward": "Bar clamp to hand, forward",
  "position.cockpit.bar-clamp-to-hand-up": "Bar clamp to hand, up",
  "position.cockpit.centre-of-the-head-tube-s": "Centre of the head tube's top face, up from the BB.",
  "position.cockpit.centre-of-the-head-tube-s-2": "Centre of the head tube's top face, forward of the BB.",
  "position.cockpit.each-is-a-whole-stack-quill":
    "Each is a whole stack. Quill stem: how far it is raised from right down.",
  "position.cockpit.hand-wanted-above-the-bb": "Hand wanted, above the BB",
  "position.cockpit.hand-wanted-forward-of-the-bb": "Hand wanted, forward of the BB",
  "position.cockpit.head-angle": "Head angle",
  "position.cockpit.headset-above-the-head-tube": "Headset above the head tube",
  "position.cockpit.in-ground-axes-bar-turned-as": "In ground axes, bar turned as it will be ridden.",
  "position.cockpit.middle-of-the-palm": "Middle of the palm.",
  "position.cockpit.negative-for-a-swept-bar": "Negative for a swept bar.",
  "position.cockpit.quill-stem-up-to-the-top": "Quill stem: up to the top of the locknut.",
  "position.cockpit.spacer-sums-allowed-below-the-stem": "Spacer sums allowed below the stem",
  "position.cockpit.steering-axis-to-bar-clamp-centre": "Steering axis to bar clamp centre, along the stem.",
  "position.cockpit.steering-axis-to-level-ground-90": "Steering axis to level ground; 90 is upright.",
  "position.cockpit.stem-angles-at-hand": "Stem angles at hand",
  "position.cockpit.stem-clamp-height": "Stem clamp height",
  "position.cockpit.stem-lengths-at-hand": "Stem lengths at hand",
  "position.cockpit.the-nearest-of-these-stems-leaves":
    "The nearest of these stems leaves the hands {errorMm} mm from the target, more than {cockpitWithinMm} mm. Look at the exact stems, another bar, or another fork.",
  "position.cockpit.the-next-combination-is-as-good":
    "The next combination is as good within 0.05 mm. Choose by looks, steerer length or what is in the bin.",
  "position.cockpit.the-stem-s-centre-line-leaves": "The stem's centre line leaves the axis at half of it.",
  "position.cockpit.to-the-perpendicular-of-the-steering":
    "To the perpendicular of the steering axis, positive up. A stem that may be turned over counts twice.",
  "position.cockpit.with-none-of-these-angles-is":
    "With none of these angles is there a stem and a spacer stack of positive length that hits the target.",
  "position.out-of-range.a-list-of-to-numbers": "a list of {minItems} to {maxItems} numbers",
  "position.out-of-range.is-it-must-lie-in": "{label} ({at}) is {number}{unit}; it must lie in {allowed}.",
  "position.out-of-range.must-be": "{label} ({key}) must be {wanted}.",
  "position.out-of-range.must-be-a-number-in": "{label} ({at}) must be a number in {allowed}.",
  "position.out-of-range.to": "{min} to {max}{unit}{whole}",
  "position.out-of-range.whole": ", whole",
  "position.post-insertion.is-mm-it-must-lie-in": "{what} ({at}) is {given} mm; it must lie in {allowed}.",
  "position.post-insertion.only-mm-would-be-in-the":
    "Only {inserted} mm would be in the tube, {needed} mm are needed. Do not ride it: a longer post.",
  "position.post-insertion.the-clamp-would-have-to-sit":
    "The clamp would have to sit {exposed} mm below the top of the seat tube: the frame is too tall.",
  "position.post-insertion.the-extension": "The extension",
  "position.post-insertion.the-least-insertion": "The least insertion",
  "position.post-insertion.the-post-is-longer-than-the":
    "The post is longer than the seat tube is deep. It would strike the BB shell.",
  "position.post-insertion.the-post-s-diameter": "The post's diameter",
  "position.post-insertion.the-post-s-length": "The post's length",
  "position.post-insertion.the-post-s-own-mark-has":
    "The post's own mark has not been read. It wins where it asks for more than twice the diameter.",
  "position.post-insertion.the-post-should-also-end-below":
    "The post should also end below the joint of the top tube. That depth has not been measured.",
  "position.post-insertion.the-seat-tube": "The seat tube",
  "position.post-insertion.the-top-tube-joint": "The top tube joint",
  "position.post-insertion.to-mm": "{low} to {high} mm",
  "position.saddle-height.0-883-x-inseam": "0.883 x inseam",
  "position.saddle-height.1-09-x-inseam-crank": "1.09 x inseam - crank",
  "position.saddle-height.a-rule-of-thumb-from-the":
    "A rule of thumb from the inseam. Start there, ride, and change it in small steps; a height the rider likes wins.",
  "position.saddle-height.is-mm-it-must-lie-in": "{what} ({at}) is {given} mm; it must lie in {low} to {high} mm.",
  "position.saddle-height.lowest-and-highest-of-the-published":
    "lowest and highest of the published rules, not a confidence band",
  "position.saddle-height.the-crank": "The crank",
  "position.saddle-height.the-inseam": "The inseam",
  "position.saddle-sheet.extension-in-mm-push-of-the":
    "extension in mm, push of the rails in mm (back is positive), inside the range or not",
  "position.saddle-sheet.setback-in-mm-that-would-leave": "setback in mm that would leave the rails in the middle",
  "position.saddle-sheet.straight-line-from-the-bb-to": "straight line from the BB to the saddle's reference point, mm",
  "position.saddle-sheet.the-setback-that-needs-the-least":
    "the setback that needs the least push of the rails; the nearest if none reaches",
  "position.saddle-sheet.true-when-the-best-lies-inside": "true when the best lies inside the rail range",
  "position.saddle-sheet.which-seatpost-setback-and-extension-put":
    "Which seatpost setback and extension put the saddle where it belongs?",
  "position.saddle-sheet.x-forward-y-up-from-the":
    "x forward, y up, from the BB centre, ground level. Clamp centre = extension up the seat tube axis, then setback square to it, rearwards and down. Saddle = clamp centre + its height straight up + rails pushed back. Read how deep the post then sits before you cut or ride: at least to its mark and twice its diameter.",
  "position.saddle.above-mm-the-saddle-s-own":
    "above {saddleHeightAboveClampMm} mm, the saddle's own height over its clamp",
  "position.saddle.no-post-puts-the-saddle-there":
    "No post puts the saddle there: the nearest would need the rails {railShiftBackMm} mm {way}. A setback of {centred} mm would centre them.",
  "position.saddle.rails-can-be-clamped-this-far": "Rails can be clamped this far from centred",
  "position.saddle.saddle-top-above-the-clamp-centre": "Saddle top above the clamp centre",
  "position.saddle.saddle-wanted-above-the-bb": "Saddle wanted, above the BB",
  "position.saddle.saddle-wanted-forward-of-the-bb": "Saddle wanted, forward of the BB",
  "position.saddle.seat-angle": "Seat angle",
  "position.saddle.seat-tube-axis-to-level-ground": "Seat tube axis to level ground.",
  "position.saddle.setbacks-of-the-posts-at-hand": "Setbacks of the posts at hand",
  "position.saddle.square-to-the-seat-tube-rearwards":
    "Square to the seat tube, rearwards; a post turned round counts as negative.",
  "position.saddle.the-saddle-wanted-at-mm-would":
    "The saddle wanted at {targetYMm} mm would put its clamp at or below the BB (target_y_mm).",
  "position.saddle.to-each-side": "To each side.",
  "position.saddle.top-of-the-saddle-over-the":
    "Top of the saddle over the middle of its rails; behind the BB is negative.",
  "position.saddle.top-of-the-saddle-over-the-2": "Top of the saddle over the middle of its rails.",
  "position.steerer-sheet.all-along-the-steering-axis-in":
    "All along the steering axis in mm; the steerer is measured from the crown seat of the fork. Unthreaded steerers. The clamped length is given for the steerer as it will be cut, or as it is where it is too short. Put the real parts on the fork, mark, measure again, then cut. A steerer is never lengthened.",
  "position.steerer-sheet.available-minus-needed-mm-negative-is": "available minus needed, mm; negative is too short",
  "position.steerer-sheet.crown-seat-to-the-steerer-s": "crown seat to the steerer's end, mm",
  "position.steerer-sheet.false-too-short-even-with-no": "false: too short even with no spacer below the stem",
  "position.steerer-sheet.how-much-of-the-clamp-s": "how much of the clamp's height has steerer inside it, mm",
  "position.steerer-sheet.how-much-to-cut-off-mm": "how much to cut off, mm; 0 when too short",
  "position.steerer-sheet.is-the-steerer-long-enough-and": "Is the steerer long enough and where do I cut it?",
  "position.steerer-sheet.middle-of-the-stem-clamp-above": "middle of the stem clamp above the crown seat, mm",
  "position.steerer-sheet.most-spacer-below-the-stem-with":
    "most spacer below the stem with the same parts, within the limit, mm",
  "position.steerer-sheet.true-when-nothing-is-missing": "true when nothing is missing",
  "position.steerer-threaded.all-along-the-steering-axis-in":
    "All along the steering axis in mm; the steerer is measured from the crown seat of the fork.",
  "position.steerer-threaded.face-to-face-as-it-is": "Face to face, as it is now.",
  "position.steerer-threaded.how-long-must-a-threaded-steerer":
    "How long must a threaded steerer be and how much thread does it need?",
  "position.steerer-threaded.less-than-mm-the-stack-without":
    "less than {threadedUpperStackMm} mm, the stack without the locknut's cover",
  "position.steerer-threaded.locknut-cover-and-unthreaded-part-together":
    "Locknut cover and unthreaded part together leave no thread in the upper stack.",
  "position.steerer-threaded.so-that-the-locknut-s-lip": "So that the locknut's lip closes it.",
  "position.steerer-threaded.steerer-end-below-the-top-of": "Steerer end below the top of the locknut",
  "position.steerer-threaded.the-quill-s-wedge-must-grip":
    "The quill's wedge must grip below the last thread. Where it cannot, do not cut more thread.",
  "position.steerer-threaded.thread-downwards-from-the-steerer-s": "thread downwards from the steerer's end, mm",
  "position.steerer-threaded.unthreaded-part": "Unthreaded part",
  "position.steerer-threaded.up-to-the-top-of-the": "Up to the top of the locknut.",
  "position.steerer-threaded.upper-cup-below-the-screwed-race": "Upper cup below the screwed race.",
  "position.steerer.both-ends-together": "Both ends together.",
  "position.steerer.crown-seat-to-the-head-tube": "Crown seat to the head tube's bottom face.",
  "position.steerer.facing-takes-off-mm-faced-off":
    "Facing takes off {facedOffMm} mm (faced_off_mm), but the head tube is only {headTubeMm} mm long.",
  "position.steerer.from-the-crown-seat-to-its": "From the crown seat to its end.",
  "position.steerer.head-tube": "Head tube",
  "position.steerer.head-tube-s-top-face-to": "Head tube's top face to the first spacer.",
  "position.steerer.headset-below-the-head-tube": "Headset below the head tube",
  "position.steerer.less-than-stem-clamp-and-spacers": "less than stem clamp and spacers above it, {stemClampMm} mm",
  "position.steerer.less-than-the-head-tube-s": "less than the head tube's {headTubeMm} mm",
  "position.steerer.mm-of-spacers-below-the-stem":
    "{spacersBelowMm} mm of spacers below the stem are over the limit of {limitSpacersMm} mm.",
  "position.steerer.most-spacers-below-the-stem-allowed": "Most spacers below the stem allowed",
  "position.steerer.of-the-clamp-s-mm-sit":
    "{clamped} of the clamp's {stemClampMm} mm sit on the steerer. A spacer of 3 mm or more above the stem lets it be clamped over its whole height; read the stem's sheet.",
  "position.steerer.so-that-the-cap-can-load": "So that the cap can load the bearings.",
  "position.steerer.spacers-above-the-stem": "Spacers above the stem",
  "position.steerer.spacers-below-the-stem": "Spacers below the stem",
  "position.steerer.steerer-end-below-the-top-of": "Steerer end below the top of the last part",
  "position.steerer.steerer-of-the-fork": "Steerer of the fork",
  "position.steerer.taken-off-by-facing": "Taken off by facing",
  "position.steerer.the-fork-s-sheet-wins-30": "The fork's sheet wins; 30 to 40 is usual.",
  "position.steerer.the-steerer-is-mm-too-short":
    "The steerer is {spare} mm too short, and still {carries} mm with no spacer at all. Another fork or a lower headset; a steerer is never lengthened.",
  "position.steerer.the-steerer-is-mm-too-short-2":
    "The steerer is {spare} mm too short for these spacers; it carries {carries} mm below the stem. A steerer is never lengthened.",
  "position.steerer.with-a-gap-of-mm-gap": "With a gap of {gapMm} mm (gap_mm) the steerer would end below the stem.",
} as const;
