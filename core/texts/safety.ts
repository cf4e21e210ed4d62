/** Which texts does safety say? One row a text; {name} stands for what is filled in. */
export const safetyTexts = {
  "safety.child-seat.a-child-is-to-be-carried":
    "A child is to be carried: only parts rated for it, by their own sheets and the local law.{openCount}",
  "safety.child-seat.a-child-is-to-be-carried-2": "A child is to be carried on a frame of {name}.",
  "safety.child-seat.a-child-is-to-be-carried-3": "A child is to be carried on a frame with bonded joints.",
  "safety.child-seat.a-tube-that-nobody-has-identified": "a tube that nobody has identified",
  "safety.child-seat.bags": "bags {bags}",
  "safety.child-seat.child": "child {childKg}",
  "safety.child-seat.child-seat": "child seat",
  "safety.child-seat.harness-foot-rests-spoke-guard-and": "harness, foot rests, spoke guard and helmet",
  "safety.child-seat.how-the-seat-is-held": "how the seat {seat} is held",
  "safety.child-seat.how-wide-the-rack-is": "how wide the rack is",
  "safety.child-seat.no-child-seat-is-chosen": "no child seat is chosen",
  "safety.child-seat.not-judged-here": " Not judged here: {open}.",
  "safety.child-seat.open-springs-under-the-saddle": "open springs under the saddle {saddle}",
  "safety.child-seat.seat": "seat {mass}",
  "safety.child-seat.the-child-is-months-old-under":
    "The child is {childMonths} months old; under {leastChildMonths} months none is carried.",
  "safety.child-seat.the-child-s-age-is-not": "the child's age is not entered",
  "safety.child-seat.the-child-s-weight-is-not": "the child's weight is not entered",
  "safety.child-seat.the-child-weighs-is-the-least": "The child weighs {childKg}; {least} is the least.",
  "safety.child-seat.the-child-weighs-the-seat-carries":
    "The child weighs {childKg}; the seat {seat} carries {most} at most.",
  "safety.child-seat.the-class-of-the-rack": "the class of the rack {rack}",
  "safety.child-seat.the-rack-is-wide-the-seat":
    "The rack {rack} is {width} wide; the seat {seat} wants {rackWidthMin} to {rackWidthMax}.",
  "safety.child-seat.the-rack-would-carry-its-class":
    "The rack {rack} would carry {load} ({what}); its class is {most}: {overBy} over.",
  "safety.child-seat.the-saddle-has-open-springs-in":
    "The saddle {saddle} has open springs in front of the child's hands, and no cover is among the parts.",
  "safety.child-seat.the-seat-clamps-a-tube-of":
    "The seat {seat} clamps a tube of {low} to {high}; the seat tube is {od}.",
  "safety.child-seat.the-seat-stands-on-a-rack": "The seat {seat} stands on a rack, and no rack is chosen.",
  "safety.child-seat.the-seat-tube-s-diameter": "the seat tube's diameter",
  "safety.child-seat.the-seat-wants-a-rack-of":
    "The seat {seat} wants a rack of class {rackClassKg}; {rack} is of class {classKg}.",
  "safety.child-seat.the-weight-of-the-bags-is": "the weight of the bags is not entered",
  "safety.child-seat.what-the-seat-carries": "what the seat {seat} carries",
  "safety.child-seat.what-the-seat-itself-weighs": "what the seat itself weighs",
  "safety.child-seat.what-tyres-wheels-and-frame-may": "what tyres, wheels and frame may carry",
  "safety.child-seat.whether-of-the-seat-tube-is": "whether {tubeFree} of the seat tube is free for the clamp",
  "safety.child-seat.whether-the-seat-s-sheet-allows": "whether the seat's sheet allows a frame of {frame}",
  "safety.fire-rules.a-crack-is-suspected-look-with":
    "A crack is suspected; look with dye before anything else is spent.",
  "safety.fire-rules.a-crack-was-found-in-the": "A crack was found in the frame.",
  "safety.fire-rules.drills-never-in-steerer-blade-bar":
    "{operation} ({what}) drills: never in steerer, blade, bar, stem or post, no hole over 9, none within 30 of a joint.",
  "safety.work-on-tube.air-hardening-steel": "air-hardening steel",
  "safety.work-on-tube.cold-setting": "cold setting",
  "safety.work-on-tube.heat-treated-steel": "heat-treated steel",
  "safety.work-on-tube.plain-chrome-moly": "plain chrome-moly",
  "safety.work-on-tube.plain-steel": "plain steel",
  "safety.work-on-tube.stainless-steel": "stainless steel",
  "safety.work-on-tube.the-chainstay-wall-is-under-cold":
    "The chainstay wall is {chainstayWall}, under {thinWallMm}: cold setting is refused here.",
  "safety.work-on-tube.the-frame-is-cold-setting-is":
    "The frame is {name}: cold setting is refused here; a frame builder may.",
  "safety.work-on-tube.the-frame-is-no": "The frame is {name}: no {doing}.",
  "safety.work-on-tube.the-frame-is-no-heat-before": "The frame is {name}: no heat before a builder has identified it.",
  "safety.work-on-tube.the-joints-are-bonded-no": "The joints are bonded: no {doing}.",
  "safety.work-on-tube.unknown-tube-counts-as-heat-treated":
    "unknown tube (counts as heat-treated and thin until it is identified)",
} as const;
