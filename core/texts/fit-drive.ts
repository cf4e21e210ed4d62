/** Which texts does fit-drive say? One row a text; {name} stands for what is filled in. */
export const fitDriveTexts = {
  "fit-drive.chain-numbers.as-measured": "as measured",
  "fit-drive.chain-numbers.chainstay": "chainstay, {from}",
  "fit-drive.chain-numbers.chance-that-fits": "chance that {ring}/{cog} fits",
  "fit-drive.chain-numbers.from-the-survey": "from the survey",
  "fit-drive.chain-numbers.slack-of-on-links": "slack of {ring}/{cog} on {links} links",
  "fit-drive.chain-numbers.to-for": "{fitsIfChainstayFromMm} to {fitsIfChainstayToMm} for {ring}/{cog}",
  "fit-drive.chain-remedies.how-the-tensioner-is-fixed-is": "How the tensioner is fixed is not known.",
  "fit-drive.chain-remedies.the-frame-has-no-m10-hanger": "The frame has no M10 hanger.",
  "fit-drive.chain-remedies.the-hanger-s-thread-is-not":
    "The hanger's thread is not known: measure it first (donor.interfaces.hanger).",
  "fit-drive.crank-clearance.find-out-for-which-spindle-the":
    "Find out for which spindle the crank's Q and chainline hold",
  "fit-drive.crank-clearance.measure-again": "Measure again: {first}",
  "fit-drive.crank-clearance.measure-q-pedal-face-to-pedal": "Measure Q, pedal face to pedal face",
  "fit-drive.crank-clearance.measure-the-arm-s-inner-face":
    "Measure the arm's inner face at the spindle from the centre plane",
  "fit-drive.crank-clearance.measure-the-arm-s-thickness-at": "Measure the arm's thickness at the pedal",
  "fit-drive.crank-clearance.measure-the-chainstay-rear-axle-to": "Measure the chainstay, rear axle to BB axis",
  "fit-drive.crank-clearance.measure-the-chainstay-s-outer-face":
    "Measure the chainstay's outer face from the centre plane, every 15 mm from 50 to 185 of the BB axis",
  "fit-drive.crank-clearance.measure-the-gap-between-the-rear":
    "Measure the gap between the rear dropouts, nothing clamped",
  "fit-drive.crank-clearance.measure-the-ring-to-the-side":
    "Measure the {several}ring to the side of the seat tube, and add half the tube",
  "fit-drive.crank-clearance.measure-the-spindle-from-end-to": "Measure the spindle from end to end",
  "fit-drive.crank-clearance.read-the-crank-s-length": "Read the crank's length",
  "fit-drive.crank-clearance.the-crank-and-the-stay-contradict": "the crank and the stay contradict each other",
  "fit-drive.dimple.a-dimple-is-deep-at-most": "A dimple is {dimpleDeepestMm} deep at most.",
  "fit-drive.dimple.only-bare-plain-steel-is-dimpled": "Only bare plain steel is dimpled.",
  "fit-drive.dimple.too-near-the-shell-s-joint": "Too near the shell's joint: {fromJointMm} is the least.",
  "fit-drive.j19-rotor-on-hub.1-5-or-more-the-rotor": "1.5 or more; the rotor's own mark wins",
  "fit-drive.j19-rotor-on-hub.look-how-the-hub-takes-a": "Look how the {end} hub takes a rotor",
  "fit-drive.j19-rotor-on-hub.look-how-the-rotor-is-held": "Look how the {end} rotor is held",
  "fit-drive.j19-rotor-on-hub.measure-the-rotor-s-thickness-where":
    "Measure the {end} rotor's thickness where the pads run",
  "fit-drive.j19-rotor-on-hub.no-disc-brake-is-planned": "No disc brake is planned.",
  "fit-drive.j19-rotor-on-hub.no-rotor-mount": "no rotor mount",
  "fit-drive.j19-rotor-on-hub.only-one-end-is-judged-no": "Only one end is judged: no {empty} is chosen yet.",
  "fit-drive.j19-rotor-on-hub.rotor-and-hub-both": "{end} rotor and hub both {mount}",
  "fit-drive.j19-rotor-on-hub.rotor-mount-as-on-the-hub": "{end} rotor mount as on the hub",
  "fit-drive.j19-rotor-on-hub.rotor-thickness": "{end} rotor thickness",
  "fit-drive.j19-rotor-on-hub.the-hub-has-no-rotor-mount": "The {end} hub has no rotor mount.",
  "fit-drive.j19-rotor-on-hub.the-rotor-is-the-hub": "The {end} rotor is {mount}, the hub {hub}.",
  "fit-drive.j19-rotor-on-hub.the-rotor-is-thick-worn-under": "The {end} rotor is {thickness} thick: worn, under 1.5.",
  "fit-drive.j19-rotor-on-hub.the-same-six-bolts-on-44": "the same: six bolts on 44.0, or the spline",
  "fit-drive.j20-rotor-plane.1-5-measured-when-tacked": "{face} ± 1.5, measured when tacked",
  "fit-drive.j20-rotor-plane.a-rotor-spacer-up-to-only":
    "A rotor spacer up to {mostRotorSpacerMm} only; {shim} would be needed.",
  "fit-drive.j20-rotor-plane.as-designed-there-is-no-tab":
    "As designed: there is no tab yet, its face is made {face} from the centre plane, over a rotor flange at {rotorPlane}.",
  "fit-drive.j20-rotor-plane.look-at-the-rear-dropouts-slot": "Look at the rear dropouts: slot or closed bore",
  "fit-drive.j20-rotor-plane.look-whether-the-rear-dropout-has":
    "Look whether the rear dropout has a tab for a disc brake",
  "fit-drive.j20-rotor-plane.look-which-axle-the-rear-hub": "Look which axle the rear hub has",
  "fit-drive.j20-rotor-plane.measure-rotor-flange-and-tab-face":
    "Measure rotor flange and tab face from the centre plane when the tab is tacked",
  "fit-drive.j20-rotor-plane.measure-the-gap-between-the-rear": "Measure the gap between the rear dropouts",
  "fit-drive.j20-rotor-plane.measure-the-rear-hub-between-the":
    "Measure the rear hub between the faces that the dropouts touch",
  "fit-drive.j20-rotor-plane.no-disc-brake-is-planned-at": "No disc brake is planned at the rear.",
  "fit-drive.j20-rotor-plane.rotor-flange-from-centre": "rotor flange from centre",
  "fit-drive.j20-rotor-plane.so-much-off-the-tab-leaves": "So much off the tab leaves less than 6 of it.",
  "fit-drive.j20-rotor-plane.straight-edge-and-calliper": "straight edge and calliper",
  "fit-drive.j20-rotor-plane.tab-face-from-centre-to-be": "tab face from centre, to be made",
  "fit-drive.j20-rotor-plane.tab-over-rotor-outward": "tab over rotor, outward",
  "fit-drive.j20-rotor-plane.the-flange-is-taken-15-3":
    "The flange is taken 15.3 inside the hub's reference face, as six-bolt hubs since 2000 have it. Measure the real hub before the tab is cut.",
  "fit-drive.j20-rotor-plane.the-tab-s-face-is-taken":
    "The tab's face is taken flush with the dropout's inner face. Measure rotor to tab on the frame.",
  "fit-drive.j20-rotor-plane.the-tab-stands-off-the-rotor": "The tab stands {mid} off the rotor's place: inside 1.5.",
  "fit-drive.j20-rotor-plane.the-tab-stands-too-far-for": "The tab stands {offByMm} too far {outOrIn} for this rotor.",
  "fit-drive.j20-rotor-plane.washers-up-to-only-would-be": "Washers up to {mostShimMm} only; {shim} would be needed.",
  "fit-drive.j20-rotor-plane.wheel-clamped-rotor-on-the-tab":
    "wheel clamped, rotor on; the tab's face stands 15.3 outside the flange, ± 1.5",
  "fit-drive.j20-rotor-plane.within-1-5": "within 1.5",
  "fit-drive.j21-hub-gear-axle.0-to-0-2-by-calliper": "0 to 0.2, by calliper",
  "fit-drive.j21-hub-gear-axle.a-hub-gear": "a hub gear",
  "fit-drive.j21-hub-gear-axle.axle-needed": "axle needed",
  "fit-drive.j21-hub-gear-axle.axle-to-spare": "axle to spare",
  "fit-drive.j21-hub-gear-axle.hub-dropouts-washers-and-nuts-all": "hub, dropouts, washers and nuts all on the axle",
  "fit-drive.j21-hub-gear-axle.look-at-the-rear-dropouts-which": "Look at the rear dropouts: which way the slot runs",
  "fit-drive.j21-hub-gear-axle.look-for-which-slot-the-non": "Look for which slot the non-turn washers are",
  "fit-drive.j21-hub-gear-axle.look-whether-the-rear-hub-is": "Look whether the rear hub is a hub gear",
  "fit-drive.j21-hub-gear-axle.measure-how-thick-the-rear-dropout": "Measure how thick the rear dropout is",
  "fit-drive.j21-hub-gear-axle.measure-the-axle-across-its-flats": "Measure the axle across its flats",
  "fit-drive.j21-hub-gear-axle.measure-the-bore-of-the-non": "Measure the bore of the non-turn washers",
  "fit-drive.j21-hub-gear-axle.measure-the-hub-gear-s-axle": "Measure the hub gear's axle from end to end",
  "fit-drive.j21-hub-gear-axle.measure-the-non-turn-washers-across": "Measure the non-turn washers across their flats",
  "fit-drive.j21-hub-gear-axle.rear-hub-is-a-hub-gear": "rear hub is a hub gear",
  "fit-drive.j21-hub-gear-axle.tab-of-the-washer-in-the": "tab of the washer in the direction of the slot",
  "fit-drive.j21-hub-gear-axle.the-axle-has-to-spare-and":
    "The axle has {spareWords} to spare and the washers hold it from turning.",
  "fit-drive.j21-hub-gear-axle.the-axle-is-too-short-for":
    "The axle is {spareWords} too short for dropouts, washers and nuts.",
  "fit-drive.j21-hub-gear-axle.the-non-turn-washers-do-not": "The non-turn washers do not suit this axle and slot.",
  "fit-drive.j21-hub-gear-axle.the-rear-hub-is-no-hub": "The rear hub is no hub gear.",
  "fit-drive.j21-hub-gear-axle.the-same-axle": "the same axle",
  "fit-drive.j21-hub-gear-axle.washer-flats-over-axle-flats": "washer flats over axle flats",
  "fit-drive.j21-hub-gear-axle.washers-for-this-axle": "washers for this axle",
  "fit-drive.j21-hub-gear-axle.washers-for-this-slot": "washers for this slot",
  "fit-drive.j22-caliper-on-mount.51-tab": "51 tab",
  "fit-drive.j22-caliper-on-mount.74-post-mount": "74 post mount",
  "fit-drive.j22-caliper-on-mount.adapter": "adapter {adapter}",
  "fit-drive.j22-caliper-on-mount.adapter-does-not-join-a-to":
    "{end}: adapter {adapter} does not join a {what} to a {on}.",
  "fit-drive.j22-caliper-on-mount.adapter-on-the-mount": "{end} adapter on the mount",
  "fit-drive.j22-caliper-on-mount.by-on": "by {adapter} on",
  "fit-drive.j22-caliper-on-mount.caliper-for-a": "caliper for a {mountWords}",
  "fit-drive.j22-caliper-on-mount.caliper-on-the-adapter": "{end} caliper on the adapter",
  "fit-drive.j22-caliper-on-mount.caliper-rotor": "{end} caliper {way} {toBeMade}, {diameter} rotor",
  "fit-drive.j22-caliper-on-mount.caliper-straight-on-the-mount": "{end} caliper straight on the mount",
  "fit-drive.j22-caliper-on-mount.flat-mount": "flat mount",
  "fit-drive.j22-caliper-on-mount.look-how-the-caliper-is-bolted": "Look how the {end} caliper is bolted on",
  "fit-drive.j22-caliper-on-mount.look-which-caliper-the-adapter-takes": "Look which caliper the {end} adapter takes",
  "fit-drive.j22-caliper-on-mount.look-which-disc-mount-the-has": "Look which disc mount the {end} has",
  "fit-drive.j22-caliper-on-mount.look-which-mount-the-adapter-goes": "Look which mount the {end} adapter goes on",
  "fit-drive.j22-caliper-on-mount.measure-the-rotor-across": "Measure the {end} rotor across",
  "fit-drive.j22-caliper-on-mount.no-mount": "no mount",
  "fit-drive.j22-caliper-on-mount.on-a": "{end}: {what} on a {on}.",
  "fit-drive.j22-caliper-on-mount.one-kind": "one kind",
  "fit-drive.j22-caliper-on-mount.read-for-which-rotor-the-mount": "Read for which rotor the {end} mount is made",
  "fit-drive.j22-caliper-on-mount.read-on-the-adapter-its-end": "Read on the {end} adapter its end and its rotor",
  "fit-drive.j22-caliper-on-mount.rotor-over-what-the-mount-gives": "{end} rotor over what the mount gives",
  "fit-drive.j22-caliper-on-mount.rotor-the-puts-the-caliper-at":
    "{end} rotor {diameter}, the {adapter} puts the caliper at {gives}.",
  "fit-drive.j22-caliper-on-mount.straight-on": "straight on",
  "fit-drive.j22-caliper-on-mount.the": "the {kind}",
  "fit-drive.j22-caliper-on-mount.the-adapter-s-own-price-is": "the adapter's own price is not known",
  "fit-drive.j22-caliper-on-mount.the-has-no-disc-mount": "The {end} has no disc mount.",
  "fit-drive.j22-caliper-on-mount.the-rear-tab-does-not-exist":
    "The rear tab does not exist yet: this holds once the tab of J23 is made, tacked and measured.",
  "fit-drive.j22-caliper-on-mount.the-same-rotor": "the same rotor",
  "fit-drive.j22-caliper-on-mount.the-tab-to-be-made-j23": "the tab to be made (J23)",
  "fit-drive.j23-tab-on-frame.39-9-0-1-to-be": "39.9 ± 0.1, to be made",
  "fit-drive.j23-tab-on-frame.51-0-0-1-to-be": "51.0 ± 0.1, to be made",
  "fit-drive.j23-tab-on-frame.6-to-9-thick": "6 to 9 thick",
  "fit-drive.j23-tab-on-frame.79-1-0-1-to-be": "79.1 ± 0.1, to be made",
  "fit-drive.j23-tab-on-frame.a-clamped-tab-holds-only-as":
    "A clamped tab holds only as well as its torque path into the stay.",
  "fit-drive.j23-tab-on-frame.a-tab-is-added-at-the":
    "A tab is added at the rear: load, heat and brace are looked at by a qualified person first.",
  "fit-drive.j23-tab-on-frame.a-tab-straight-and-without-cracks": "a tab, straight and without cracks",
  "fit-drive.j23-tab-on-frame.a-tab-would-stand-within-15":
    "A tab would stand within 15 of the stays' silver joints: that is for a frame builder.",
  "fit-drive.j23-tab-on-frame.angle-between-the-stays": "angle between the stays",
  "fit-drive.j23-tab-on-frame.angle-between-the-stays-over-the": "angle between the stays over the tab's",
  "fit-drive.j23-tab-on-frame.both-holes-between-the-stays-at":
    "both holes between the stays: {tabAngleDeg}° at the axle",
  "fit-drive.j23-tab-on-frame.far-hole-from-axle": "far hole from axle",
  "fit-drive.j23-tab-on-frame.holes-apart": "holes apart",
  "fit-drive.j23-tab-on-frame.how-far-the-tab-is-turned":
    "How far the tab is turned about the axle is decided on a traced outline with caliper, adapter and bolt tools, both stays clear.",
  "fit-drive.j23-tab-on-frame.keep-the-weld-15-or-more":
    "Keep the weld 15 or more from brazed joints, never on brass, silver, zinc or chrome; short beads, cooling between.",
  "fit-drive.j23-tab-on-frame.measure-its-holes-from-the-axle":
    "Measure its holes from the axle before you trust it: 39.9 and 79.1 on a 51 tab, ± 0.1.",
  "fit-drive.j23-tab-on-frame.measure-the-angles-of-chainstay-and":
    "Measure the angles of chainstay and seat stay at the rear axle",
  "fit-drive.j23-tab-on-frame.measure-the-plate-for-the-tab": "Measure the plate for the tab",
  "fit-drive.j23-tab-on-frame.near-hole-from-axle": "near hole from axle",
  "fit-drive.j23-tab-on-frame.no-silver-joint-within-15-of": "no silver joint within 15 of the heat",
  "fit-drive.j23-tab-on-frame.only-where-a-person-has-proven":
    "Only where a person has proven the path of the torque into the stay and the build names it: never taken by itself.",
  "fit-drive.j23-tab-on-frame.plate-for-the-tab": "plate for the tab",
  "fit-drive.j23-tab-on-frame.stays-joints-bear-the-heat-of": "stays' joints bear the heat of a tab",
  "fit-drive.j23-tab-on-frame.tab-frame-rear": "tab – frame rear",
  "fit-drive.j23-tab-on-frame.tab-on-the-frame": "tab on the frame",
  "fit-drive.j23-tab-on-frame.the-frame-has-a": "The frame has a {tab}.",
  "fit-drive.j23-tab-on-frame.the-frame-has-no-tab-and":
    "The frame has no tab, and {between}° between the stays leaves no room for one.",
  "fit-drive.j23-tab-on-frame.the-frame-has-no-tab-one":
    "The frame has no tab: one is made, holes 39.9 and 79.1 from the axle, between stays {between}° apart.",
  "fit-drive.j23-tab-on-frame.the-stays-are-brazed-in-with":
    "The stays are brazed in with silver: heat for a tab between them would open their joints.",
  "fit-drive.j23-tab-on-frame.the-stays-stand-too-close-together":
    "The stays stand too close together for the tab's holes.",
  "fit-drive.j23-tab-on-frame.trace-the-dropout-and-both-stays":
    "trace the dropout and both stays on card, axle marked, and measure on the card",
  "fit-drive.j23-tab-on-frame.weld-quality-and-the-stay-s":
    "Weld quality and the stay's life cannot be known from your measurements: a qualified welder tacks and welds, dye check afterwards and at every wear check.",
  "fit-drive.j24-tab-on-fork.a-disc-brake-is-planned-on":
    "A disc brake is planned on {fork}, which was not made for one.",
  "fit-drive.j24-tab-on-fork.a-mount-made-with-the-fork": "a mount made with the fork",
  "fit-drive.j24-tab-on-fork.disc-mount-on-the-fork": "disc mount on the fork",
  "fit-drive.j24-tab-on-fork.find-out-whether-the-fork-was":
    "Find out whether the fork was made for a disc: its sheet or its marking",
  "fit-drive.j24-tab-on-fork.fork-made-and-rated-for-a": "fork made and rated for a disc",
  "fit-drive.j24-tab-on-fork.has-no-disc-mount": "{fork} has no disc mount.",
  "fit-drive.j24-tab-on-fork.is-made-for-a-disc-with": "{fork} is made for a disc, with a {mount}.",
  "fit-drive.j24-tab-on-fork.look-which-disc-mount-the-fork": "Look which disc mount the fork has",
  "fit-drive.j24-tab-on-fork.made-for-a-disc": "made for a disc",
  "fit-drive.j24-tab-on-fork.no-disc-brake-is-planned-at": "No disc brake is planned at the front.",
  "fit-drive.j24-tab-on-fork.the-fork-end-is-an-open":
    "The fork end is an open slot: J12 says what that means with a disc.",
  "fit-drive.j24-tab-on-fork.was-not-made-for-a-disc": "{fork} was not made for a disc.",
  "fit-drive.j28-lever-and-cable-caliper.a-cable-lever-cannot-work-the":
    "A cable lever cannot work the {end}hydraulic caliper {part}.",
  "fit-drive.j28-lever-and-cable-caliper.a-mixed-pair-is-refused-as":
    "A mixed pair is refused as it is; the pulley counts once the build names it.",
  "fit-drive.j28-lever-and-cable-caliper.both-by-cable": "both by cable",
  "fit-drive.j28-lever-and-cable-caliper.lever-and-caliper-both-by-cable": "{end}lever and caliper both by cable",
  "fit-drive.j28-lever-and-cable-caliper.lever-caliper-cable": "lever – caliper cable",
  "fit-drive.j28-lever-and-cable-caliper.lever-pull-minus-caliper-pull": "{end}lever pull minus caliper pull",
  "fit-drive.j28-lever-and-cable-caliper.lever-pulls-the-caliper-wants":
    "{end}lever pulls {leverPull}, the caliper wants {caliperPull}",
  "fit-drive.j28-lever-and-cable-caliper.look-whether-the-caliper-works-by":
    "Look whether the {end}caliper works by cable or by fluid",
  "fit-drive.j28-lever-and-cable-caliper.look-whether-the-levers-work-by":
    "Look whether the levers work by cable or by fluid",
  "fit-drive.j28-lever-and-cable-caliper.measure-how-much-cable-the-lever":
    "Measure how much cable the lever pulls, grip to bar",
  "fit-drive.j28-lever-and-cable-caliper.pull-on-a-caliper-for":
    "{end}{leverWord} pull {lever} on a caliper for {caliper}.",
  "fit-drive.j28-lever-and-cable-caliper.read-or-measure-the-pull-that":
    "Read or measure the pull that the {end}caliper wants",
  "fit-drive.j28-lever-and-cable-caliper.the-levers-are-hydraulic-j29-judges":
    "The levers are hydraulic: J29 judges them.",
  "fit-drive.j28-lever-and-cable-caliper.within-2-both-short-7-or": "within 2: both short (7) or both long (14)",
  "fit-drive.j29-lever-and-hydraulic-caliper.a-hydraulic-lever-cannot-work-the":
    "A hydraulic lever cannot work the {end}cable caliper {part}.",
  "fit-drive.j29-lever-and-hydraulic-caliper.another-fitting-may-mean-other-pistons":
    "Another fitting may mean other pistons: read both sheets before you buy ends.",
  "fit-drive.j29-lever-and-hydraulic-caliper.both-by-fluid": "both by fluid",
  "fit-drive.j29-lever-and-hydraulic-caliper.caliper-fitting-as-the-lever-s": "{end}caliper fitting as the lever's",
  "fit-drive.j29-lever-and-hydraulic-caliper.caliper-fluid-as-the-lever-s": "{end}caliper fluid as the lever's",
  "fit-drive.j29-lever-and-hydraulic-caliper.front-and-rear": "front and rear",
  "fit-drive.j29-lever-and-hydraulic-caliper.hose-fitting-as-the-lever-s": "hose fitting as the lever's",
  "fit-drive.j29-lever-and-hydraulic-caliper.hose-fluid-as-the-lever-s": "hose fluid as the lever's",
  "fit-drive.j29-lever-and-hydraulic-caliper.hydraulic-lever-caliper": "hydraulic lever – caliper",
  "fit-drive.j29-lever-and-hydraulic-caliper.lever-and-caliper-both-by-fluid": "{end}lever and caliper both by fluid",
  "fit-drive.j29-lever-and-hydraulic-caliper.lever-and-caliper-fluid-fitting":
    "Lever, {hose}and caliper: {fluid} fluid, fitting {fitting}.",
  "fit-drive.j29-lever-and-hydraulic-caliper.lever-fitting-caliper-fitting":
    "Lever fitting {fitting}, {end}caliper fitting {fitting2}.",
  "fit-drive.j29-lever-and-hydraulic-caliper.look-which-fittings-come-with-the":
    "Look which fittings come with the hose",
  "fit-drive.j29-lever-and-hydraulic-caliper.look-which-hose-fitting-the-caliper":
    "Look which hose fitting the {end}caliper has",
  "fit-drive.j29-lever-and-hydraulic-caliper.look-which-hose-fitting-the-levers":
    "Look which hose fitting the levers have",
  "fit-drive.j29-lever-and-hydraulic-caliper.no-hose-is-chosen-judge-the":
    "No hose is chosen: judge the hoses that hang on the parts by fluid, fitting and length.",
  "fit-drive.j29-lever-and-hydraulic-caliper.one-fitting": "one fitting",
  "fit-drive.j29-lever-and-hydraulic-caliper.one-fluid": "one fluid",
  "fit-drive.j29-lever-and-hydraulic-caliper.read-the-caliper-s-fluid-on":
    "Read the {end}caliper's fluid on its body or sheet; never guess it",
  "fit-drive.j29-lever-and-hydraulic-caliper.read-the-fluid-on-the-lever":
    "Read the fluid on the lever's cap or sheet; never guess it",
  "fit-drive.j29-lever-and-hydraulic-caliper.read-the-fluid-that-the-hose": "Read the fluid that the hose is for",
  "fit-drive.j29-lever-and-hydraulic-caliper.the-hose-has-fitting-the-levers":
    "The hose has fitting {fitting}, the levers {fitting2}.",
  "fit-drive.j29-lever-and-hydraulic-caliper.the-hose-is-for-the-levers":
    "The hose {hose} is for {hoseFluid}, the levers are for {leverFluid}: fluids are never mixed.",
  "fit-drive.j29-lever-and-hydraulic-caliper.the-levers-are-for-the-caliper":
    "The levers {lever} are for {leverFluid}, the {end}caliper {part} for {caliperFluid}: fluids are never mixed.",
  "fit-drive.j29-lever-and-hydraulic-caliper.the-levers-work-by-cable-j28":
    "The levers work by cable: J28 judges them.",
  "fit-drive.j31-bb-in-shell.0-5-or-less": "0.5 or less",
  "fit-drive.j31-bb-in-shell.cups-in-a-shell": "{thread} cups in a {shellThread} shell.",
  "fit-drive.j31-bb-in-shell.cups-made-wider-than-the-shell": "cups made wider than the shell",
  "fit-drive.j31-bb-in-shell.for-the-shell": "for the shell",
  "fit-drive.j31-bb-in-shell.hand-of-the-right-side": "hand of the right side",
  "fit-drive.j31-bb-in-shell.in-both-right-side-shell-made":
    "{size} in both, right side {rightSide}; shell {width}, made for {shellWidth}.",
  "fit-drive.j31-bb-in-shell.look-which-hand-the-right-cup":
    "Look which hand the right cup has, and write it behind the thread: LH or RH",
  "fit-drive.j31-bb-in-shell.look-which-hand-the-shell-s":
    "Look which hand the shell's right side has, and write it behind the thread: LH or RH",
  "fit-drive.j31-bb-in-shell.made-for-a-shell-this-one": "Made for a {shellWidth} shell, this one is {width}.",
  "fit-drive.j31-bb-in-shell.measure-the-shell-from-face-to": "Measure the shell from face to face",
  "fit-drive.j31-bb-in-shell.one-hand": "one hand",
  "fit-drive.j31-bb-in-shell.one-thread": "one thread",
  "fit-drive.j31-bb-in-shell.read-for-which-shell-the-bottom": "Read for which shell the bottom bracket is made",
  "fit-drive.j31-bb-in-shell.read-or-measure-the-shell-s":
    "Read or measure the shell's thread: diameter and threads per inch",
  "fit-drive.j31-bb-in-shell.read-the-thread-on-the-cups": "Read the thread on the cups",
  "fit-drive.j31-bb-in-shell.shell-and-cups-have-right-sides": "Shell and cups have right sides of different hand.",
  "fit-drive.j31-bb-in-shell.take-a-cup-out-thread-gauge": "take a cup out; thread gauge",
  "fit-drive.j31-bb-in-shell.turn-the-cup-in-by-hand":
    "Turn the cup in by hand first. Chase and face where it does not run free; never force it.",
  "fit-drive.j32-crank-on-spindle.another-spindle": "another spindle",
  "fit-drive.j32-crank-on-spindle.arm-and-spindle-of-one-system": "arm and spindle of one system",
  "fit-drive.j32-crank-on-spindle.both": "Both {arm}{moved}.",
  "fit-drive.j32-crank-on-spindle.chainline-as-fitted": "chainline as fitted",
  "fit-drive.j32-crank-on-spindle.how-much-longer-or-shorter-the":
    "How much longer or shorter the spindle is than the crank was made for is not known: Q and chainline cannot be told.",
  "fit-drive.j32-crank-on-spindle.look-which-spindle-the-bottom-bracket": "Look which spindle the bottom bracket has",
  "fit-drive.j32-crank-on-spindle.look-which-spindle-the-crank-takes": "Look which spindle the crank takes",
  "fit-drive.j32-crank-on-spindle.q-as-fitted": "Q as fitted",
  "fit-drive.j32-crank-on-spindle.spindle-longer-than-the-crank-was": "spindle longer than the crank was made for",
  "fit-drive.j32-crank-on-spindle.square-taper-iso": "square taper ISO",
  "fit-drive.j32-crank-on-spindle.square-taper-jis": "square taper JIS",
  "fit-drive.j32-crank-on-spindle.than-it-was-made-for": ", {longer} {longer2} than it was made for",
  "fit-drive.j32-crank-on-spindle.the-crank-is-for-the-spindle": "The crank is for {arm}, the spindle is {spindle}.",
  "fit-drive.j32-crank-on-spindle.the-same": "the same",
  "fit-drive.j33-arm-at-chainstay.1-until-the-dry-fit-common": "± 1 until the dry fit, common practice",
  "fit-drive.j33-arm-at-chainstay.3-is-the-least-4-wanted": "3 is the least, 4 wanted; frame flex takes 1 to 2",
  "fit-drive.j33-arm-at-chainstay.from-50-mm-of-the-bb": "from 50 mm of the BB axis to the pedal",
  "fit-drive.j33-arm-at-chainstay.gap-at-the-chainstay": "gap at the chainstay",
  "fit-drive.j33-arm-at-chainstay.gap-at-the-chainstay-from-the":
    "gap at the chainstay, {armGapAtRadiusMm} from the BB axis",
  "fit-drive.j33-arm-at-chainstay.gap-of-the-left-arm": "gap of the left arm",
  "fit-drive.j33-arm-at-chainstay.gap-of-the-right-arm": "gap of the right arm",
  "fit-drive.j33-arm-at-chainstay.look-at-the-arms-gap-at": "Look at the arms' gap at the dry fit, both sides",
  "fit-drive.j33-arm-at-chainstay.measure-the-rest-of-the-chainstay": "Measure the rest of the chainstay along the arm",
  "fit-drive.j33-arm-at-chainstay.not-known-yet-the-arms-gap": "Not known yet: the arms' gap at the chainstays.",
  "fit-drive.j33-arm-at-chainstay.stay-measured-along-the-whole-arm": "stay measured along the whole arm",
  "fit-drive.j33-arm-at-chainstay.stay-set-out-per-side": "stay set out per side",
  "fit-drive.j33-arm-at-chainstay.the-arm-passes-the-stay-with":
    "The arm passes the stay with {smaller} mm ± {gapBandMm}; 4 are wanted. Prove it at the dry fit.",
  "fit-drive.j33-arm-at-chainstay.the-arms-pass-the-stays-with":
    "The arms pass the stays with {smaller} mm to spare, nearest {armGapAtRadiusMm} from the BB axis.",
  "fit-drive.j33-arm-at-chainstay.the-arms-pass-the-stays-with-2":
    "The arms pass the stays with only {smaller} mm; 3 is the least.",
  "fit-drive.j33-arm-at-chainstay.wheel-clamped-arms-turned-past-the":
    "wheel clamped, arms turned past the stays, the smallest gap",
  "fit-drive.j34-ring-at-chainstay.choose-a-ring": "Choose a ring",
  "fit-drive.j34-ring-at-chainstay.gap-of-the-ring": "gap of the ring",
  "fit-drive.j34-ring-at-chainstay.gap-of-the-ring-from-the": "gap of the {teeth} ring, {radius} from the BB axis",
  "fit-drive.j34-ring-at-chainstay.look-at-the-ring-s-gap": "Look at the ring's gap at the dry fit",
  "fit-drive.j34-ring-at-chainstay.measure-the-chainstay-s-outer-face":
    "Measure the chainstay's outer face where the ring passes it",
  "fit-drive.j34-ring-at-chainstay.nobody-has-measured-the-ring-s":
    "Nobody has measured the ring's teeth: the gap of {widest} mm holds for 3/32, {nearest} for 1/8.",
  "fit-drive.j34-ring-at-chainstay.not-known-yet-the-ring-s": "Not known yet: the ring's gap at the chainstay.",
  "fit-drive.j34-ring-at-chainstay.teeth": ": {ring}, {teeth} teeth",
  "fit-drive.j34-ring-at-chainstay.the-left-arm-would-pass-its":
    "The left arm would pass its stay with only {left} mm.",
  "fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with":
    "The {teeth} ring passes the stay with {nearest} mm ± {gapBandMm}; 3 are wanted. Prove it at the dry fit.",
  "fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with-2":
    "The {teeth} ring passes the stay with {widest} mm to spare{others}.",
  "fit-drive.j34-ring-at-chainstay.the-ring-passes-the-stay-with-3":
    "The {teeth} ring passes the stay with {nearest} mm: too near, 3 are needed.",
  "fit-drive.j34-ring-at-chainstay.the-with": ", the {teeth} with {widest}",
  "fit-drive.j34-ring-at-chainstay.wanted": "{name}, wanted",
  "fit-drive.j35-ring-on-spider.a-bolt-circle-of-is-not":
    "A bolt circle of {spider} is not in the list: look whether the chain clears the bolts.",
  "fit-drive.j35-ring-on-spider.a-ring-is-too-small-for": "A {teeth} ring is too small for a {spider} bolt circle.",
  "fit-drive.j35-ring-on-spider.between-two-neighbouring-bolts-divided-by":
    "between two neighbouring bolts, divided by sin(180/arms)",
  "fit-drive.j35-ring-on-spider.count-the-small-ring-s-teeth": "Count the small ring's teeth",
  "fit-drive.j35-ring-on-spider.is-the-smallest-on": "{least} is the smallest on {circle}",
  "fit-drive.j35-ring-on-spider.is-the-usual-smallest-on-look":
    "{usual} is the usual smallest on {circle}: look whether the chain clears the bolts.",
  "fit-drive.j35-ring-on-spider.measure-the-ring-s-bolt-circle": "Measure the ring's bolt circle",
  "fit-drive.j35-ring-on-spider.measure-the-small-ring-s-bolt": "Measure the small ring's bolt circle",
  "fit-drive.j35-ring-on-spider.measure-the-spider-s-bolt-circle": "Measure the spider's bolt circle",
  "fit-drive.j35-ring-on-spider.measure-the-spider-s-small-bolt": "Measure the spider's small bolt circle",
  "fit-drive.j35-ring-on-spider.on": ", {teeth} on {boltCircle}",
  "fit-drive.j35-ring-on-spider.ring-for-spider-for": "Ring for {circle}, spider for {spider}.",
  "fit-drive.j35-ring-on-spider.ring-on-a-bolt-circle": "{teeth} ring on a {spider} bolt circle{inner}.",
  "fit-drive.j35-ring-on-spider.ring-s-bolt-circle-minus-the": "ring's bolt circle minus the spider's",
  "fit-drive.j35-ring-on-spider.small-ring-s-bolt-circle-minus": "small ring's bolt circle minus the spider's",
  "fit-drive.j35-ring-on-spider.small-ring-s-teeth": "small ring's teeth",
  "fit-drive.j35-ring-on-spider.the-ring-that-is-on-the": "The {teeth} ring that is on the crank stays.",
  "fit-drive.j35-ring-on-spider.the-rings-are-riveted-to-the":
    "The rings are riveted to the crank: they stay, and none can be changed.",
  "fit-drive.j35-ring-on-spider.the-rings-that-are-on-the": "The {rings} rings that are on the crank stay.",
  "fit-drive.j35-ring-on-spider.the-small-ring-is-for-the":
    "The small ring is for {boltCircle}, the spider's small circle is {boltCircleInner}.",
  "fit-drive.j36-chainline.1-5-or-less-with-one": "1.5 or less with one ring and one cog",
  "fit-drive.j36-chainline.2-or-less": "2 or less",
  "fit-drive.j36-chainline.4-or-less-with-a-derailleur": "4 or less with a derailleur",
  "fit-drive.j36-chainline.at-sprockets-at": "{rings} at {frontMm}, sprockets at {rearMm}: {offByMm} {side}.",
  "fit-drive.j36-chainline.count-the-sprockets": "Count the sprockets",
  "fit-drive.j36-chainline.find-out-for-which-spindle-the": "Find out for which spindle the crank's chainline holds",
  "fit-drive.j36-chainline.front-chainline": "front chainline",
  "fit-drive.j36-chainline.front-minus-rear": "front minus rear",
  "fit-drive.j36-chainline.look-what-drives-the-rear-hub":
    "Look what drives the rear hub: hub gear, cassette, freewheel or one sprocket",
  "fit-drive.j36-chainline.measure-from-one-sprocket-s-middle": "Measure from one sprocket's middle to the next",
  "fit-drive.j36-chainline.measure-from-the-right-locknut-to":
    "Measure from the right locknut to the middle of the smallest sprocket",
  "fit-drive.j36-chainline.measure-ring-and-sprocket-from-the": "Measure ring and sprocket from the centre plane",
  "fit-drive.j36-chainline.measure-the-ring-to-the-side":
    "Measure the ring to the side of the seat tube, and add half the tube",
  "fit-drive.j36-chainline.mm-of-predicted-from-the-parts":
    "{off} mm of {most}: predicted from the parts' own figures. Measure ring and sprocket from the centre plane at the dry fit.",
  "fit-drive.j36-chainline.rear-chainline": "rear chainline",
  "fit-drive.j36-chainline.ring-stands": "ring stands",
  "fit-drive.j36-chainline.rings-stand": "rings stand",
  "fit-drive.j36-chainline.the-mm-the-sprockets-is-the":
    "The {ringsStand} {offByMm} mm {side} the sprockets; {mostMm} is the most.",
  "fit-drive.j37-chain-on-teeth.3-32-or-1-8-teeth": "3/32 or 1/8 teeth, not measured",
  "fit-drive.j37-chain-on-teeth.a-1-8-chain-inside-runs": "A 1/8 chain, {inner} inside, runs on 3/32 and on 1/8 teeth.",
  "fit-drive.j37-chain-on-teeth.a-chain-inside-does-not-go": "A chain {inner} inside does not go over these teeth.",
  "fit-drive.j37-chain-on-teeth.a-chain-is-not-of-this": "A {word} chain is not of this cassette's class.",
  "fit-drive.j37-chain-on-teeth.as-the-cassette-asks": "as the cassette asks",
  "fit-drive.j37-chain-on-teeth.chain-inside-goes-over-the-teeth": "Chain {inner} inside goes over the teeth.",
  "fit-drive.j37-chain-on-teeth.chain-inside-over-the-ring-s": "chain inside over the ring's teeth",
  "fit-drive.j37-chain-on-teeth.chain-inside-over-the-small-ring": "chain inside over the small ring's teeth",
  "fit-drive.j37-chain-on-teeth.chain-inside-over-the-sprocket-s": "chain inside over the sprocket's teeth",
  "fit-drive.j37-chain-on-teeth.chain-of-the-cassette-s-class": "chain of the cassette's class",
  "fit-drive.j37-chain-on-teeth.count-the-cassette-s-sprockets": "Count the cassette's sprockets",
  "fit-drive.j37-chain-on-teeth.measure-how-wide-the-teeth-are":
    "Measure how wide the teeth are: 2.1 (3/32) or 3.0 (1/8)",
  "fit-drive.j37-chain-on-teeth.measure-the-chain-between-its-inner": "Measure the chain between its inner plates",
  "fit-drive.j37-chain-on-teeth.not-known-yet-how-wide-the":
    "Not known yet: how wide the teeth are. A chain {inner} inside goes over 3/32, not over 1/8.",
  "fit-drive.j37-chain-on-teeth.teeth-no-wider-than-the-chain": "teeth no wider than the chain inside",
  "fit-drive.j37-chain-on-teeth.the-class-of-the-cassette": "the class of the cassette",
  "fit-drive.j42-chain-on-fixed-centres.0-to-0-8-of-centre": "0 to 0.8 of centre distance",
  "fit-drive.j42-chain-on-fixed-centres.a-derailleur-takes-up-the-chain": "A derailleur takes up the chain.",
  "fit-drive.j42-chain-on-fixed-centres.as-it-is-known-now-that":
    " As it is known now, {chance} % that it runs without a tensioner.",
  "fit-drive.j42-chain-on-fixed-centres.as-the-hub-gear-asks": "as the hub gear asks",
  "fit-drive.j42-chain-on-fixed-centres.at-0-5-of-wear-the":
    "At 0.5 % of wear the slack of {ring}/{cog} grows to {slackWhenWornMm} mm: plan a tensioner or a new chain sooner.",
  "fit-drive.j42-chain-on-fixed-centres.count-the-chain-s-links": "Count the chain's links",
  "fit-drive.j42-chain-on-fixed-centres.count-the-sprocket-s-teeth": "Count the sprocket's teeth",
  "fit-drive.j42-chain-on-fixed-centres.drive-without-a-derailleur": "drive without a derailleur",
  "fit-drive.j42-chain-on-fixed-centres.dropouts-hold-the-axle-in-one": "dropouts hold the axle in one place",
  "fit-drive.j42-chain-on-fixed-centres.enough-links": "enough links",
  "fit-drive.j42-chain-on-fixed-centres.hub-gear-or-one-sprocket": "hub gear or one sprocket",
  "fit-drive.j42-chain-on-fixed-centres.links-to-spare": "links to spare",
  "fit-drive.j42-chain-on-fixed-centres.look-at-the-rear-dropouts-vertical":
    "Look at the rear dropouts: vertical or horizontal slot",
  "fit-drive.j42-chain-on-fixed-centres.on-links-has-mm-of-slack":
    "{gear} on {links} links has {slackMm} mm of slack: no tensioner while the chain is new.",
  "fit-drive.j42-chain-on-fixed-centres.on-links-mm-of-slack-0":
    "{gear} on {links} links: {slackMm} mm of slack, 0 to 0.8 fits.",
  "fit-drive.j42-chain-on-fixed-centres.or-more-as-the-hub-gear": "{leastRatio} or more, as the hub gear asks",
  "fit-drive.j42-chain-on-fixed-centres.or-more-as-the-hub-gear-2": "{leastCog} or more, as the hub gear asks",
  "fit-drive.j42-chain-on-fixed-centres.plan-a-tensioner-for-the-worn": "Plan a tensioner for the worn chain",
  "fit-drive.j42-chain-on-fixed-centres.read-on-the-hub-gear-s":
    "Read on the hub gear's sheet the least ring over sprocket",
  "fit-drive.j42-chain-on-fixed-centres.read-on-the-hub-gear-s-2": "Read on the hub gear's sheet the smallest sprocket",
  "fit-drive.j42-chain-on-fixed-centres.rear-axle-to-bb-axis-along":
    "rear axle to BB axis along each stay with trammel or long calliper between two turned pins, both sides, three times",
  "fit-drive.j42-chain-on-fixed-centres.ring-over-sprocket": "ring over sprocket",
  "fit-drive.j42-chain-on-fixed-centres.slack-of-the-chain": "slack of the chain",
  "fit-drive.j42-chain-on-fixed-centres.sprocket-teeth": "sprocket teeth",
  "fit-drive.j42-chain-on-fixed-centres.the-chain": "The chain",
  "fit-drive.j42-chain-on-fixed-centres.the-chain-has-too-few-links": "The chain has too few links.",
  "fit-drive.j42-chain-on-fixed-centres.the-chainstay-is-not-known-to":
    "{gear}: the chainstay, {chainstayMm}, is not known to ± {chainstayNeededMm} mm yet.{odds}",
  "fit-drive.j42-chain-on-fixed-centres.the-hub-gear-does-not-allow": "The hub gear does not allow {gear}.",
  "fit-drive.j42-chain-on-fixed-centres.the-slots-are-horizontal-the-axle":
    "The slots are horizontal: the axle tightens the chain. Look that it stays in the slot with a new and with a worn chain.",
  "fit-drive.j42-chain-on-fixed-centres.vertical-slot-or-closed-bore": "vertical slot or closed bore",
  "fit-drive.j43-post-in-seat-tube.2-x-in-the-tube": "2 x {od} = {twice} in the tube",
  "fit-drive.j43-post-in-seat-tube.as-the-saddle-height-asks": "as the saddle height asks",
  "fit-drive.j43-post-in-seat-tube.below-the-top-tube-s-joint": "below the top tube's joint",
  "fit-drive.j43-post-in-seat-tube.find-the-saddle-height-the-post":
    "Find the saddle height: the post's extension is not worked out yet",
  "fit-drive.j43-post-in-seat-tube.from-the-post-s-lower-end": "from the post's lower end to the mark",
  "fit-drive.j43-post-in-seat-tube.inserted-over-the-post-s-mark": "inserted over the post's mark",
  "fit-drive.j43-post-in-seat-tube.inserted-over-twice-the-diameter": "inserted over twice the diameter",
  "fit-drive.j43-post-in-seat-tube.mark-at-in-the-tube": "mark at {mark}, in the tube",
  "fit-drive.j43-post-in-seat-tube.mark-in-the-tube": "mark in the tube",
  "fit-drive.j43-post-in-seat-tube.measure-from-the-seat-tube-s":
    "Measure from the seat tube's top down to the lower edge of the top tube",
  "fit-drive.j43-post-in-seat-tube.measure-the-post-from-the-clamp":
    "Measure the post from the clamp's centre to its lower end",
  "fit-drive.j43-post-in-seat-tube.measure-the-post-s-diameter": "Measure the post's diameter",
  "fit-drive.j43-post-in-seat-tube.measure-the-seat-tube-from-the": "Measure the seat tube from the BB axis to its top",
  "fit-drive.j43-post-in-seat-tube.measure-the-size-of-post-that": "Measure the size of post that the seat tube takes",
  "fit-drive.j43-post-in-seat-tube.one-size-by-calliper-within-0":
    "one size, by calliper within 0.1; slides with 0.05 to 0.1",
  "fit-drive.j43-post-in-seat-tube.only-of-the-post-would-be":
    "Only {kind} of the post would be in the tube; {needed} are needed.",
  "fit-drive.j43-post-in-seat-tube.only-of-would-be-in-the":
    "Only {kind} of {post} would be in the tube; {needed} are needed.",
  "fit-drive.j43-post-in-seat-tube.or-more-in-the-tube": "{joint} or more in the tube",
  "fit-drive.j43-post-in-seat-tube.post-in-a-tube-for": "{od} post in a tube for {bore}.",
  "fit-drive.j43-post-in-seat-tube.post-in-a-tube-inserted-needed":
    "{od} post in a {bore} tube: {kind} inserted, {needed} needed.",
  "fit-drive.j43-post-in-seat-tube.post-inserted-needed-its-mark-has":
    "{od} post, {kind} inserted, {needed} needed; its mark has not been read yet.",
  "fit-drive.j43-post-in-seat-tube.post-minus-tube-size": "post minus tube size",
  "fit-drive.j43-post-in-seat-tube.post-s-end-below-the-top": "post's end below the top tube",
  "fit-drive.j43-post-in-seat-tube.post-seat-tube": "post – seat tube",
  "fit-drive.j43-post-in-seat-tube.read-the-post-s-mark-how": "Read the post's mark: how much must be in the tube",
  "fit-drive.j43-post-in-seat-tube.the-clamp-would-have-to-sit":
    "The clamp would have to sit {exposed} below the top of the seat tube: the frame is too tall for this saddle height.",
  "fit-drive.j43-post-in-seat-tube.the-old-post-is-stuck-nothing":
    "The old post is stuck: nothing fits until it is out.",
  "fit-drive.j43-post-in-seat-tube.the-post-is-longer-than-the":
    "The post is longer than the seat tube is deep: it would strike the shell.",
  "fit-drive.j43-post-in-seat-tube.the-post-should-reach-into-the":
    "The post should reach {joint} into the tube, below the top tube's joint.",
  "fit-drive.j43-post-in-seat-tube.whether-the-post-ends-below-the":
    "Whether the post ends below the top tube's joint is not known: look at it.",
  "fit-drive.ring-on-crank.count-the-ring-s-teeth": "Count the ring's teeth",
  "fit-drive.ring-on-crank.count-the-teeth-of-the-ring": "Count the teeth of the ring on the crank",
} as const;
