/** Which texts does mechanics say? One row a text; {name} stands for what is filled in. */
export const mechanicsTexts = {
  "mechanics.brake-end-sheets.between-the-dropout-faces-as-set": "Between the dropout faces as set",
  "mechanics.brake-end-sheets.both-together": "Both together",
  "mechanics.brake-end-sheets.brake-force-at-the-tyre": "Brake force at the tyre",
  "mechanics.brake-end-sheets.braking-parts-of-g": "Braking, parts of g",
  "mechanics.brake-end-sheets.can-the-disc-brake-push-the": "Can the disc brake push the front wheel out of its slots?",
  "mechanics.brake-end-sheets.clamp-force-of-the-axle": "Clamp force of the axle",
  "mechanics.brake-end-sheets.dropout-from-the-centre-plane": "Dropout from the centre plane",
  "mechanics.brake-end-sheets.force-of-the-pads-on-the": "Force of the pads on the rotor",
  "mechanics.brake-end-sheets.force-out-of-the-other-slot": "Force out of the other slot",
  "mechanics.brake-end-sheets.force-out-of-the-rotor-side": "Force out of the rotor-side slot, negative = seats itself",
  "mechanics.brake-end-sheets.friction-at-the-clamped-faces": "Friction at the clamped faces",
  "mechanics.brake-end-sheets.from-the-centre-plane-in-the":
    "From the centre plane, in the width that the hub ends touch. Usual six-bolt hubs; a measured rotor seat wins.",
  "mechanics.brake-end-sheets.front-tyre-radius": "Front tyre radius",
  "mechanics.brake-end-sheets.gap-used": "Gap used",
  "mechanics.brake-end-sheets.hub-width-the-planes-are-laid": "Hub width the planes are laid out for",
  "mechanics.brake-end-sheets.one-steady-stop-no-bumps-rotor":
    "One steady stop, no bumps. Rotor on the left. A warning, never a proof; a fork not made for a disc stays refused.",
  "mechanics.brake-end-sheets.pads-above-straight-back": "Pads above straight back",
  "mechanics.brake-end-sheets.part-of-the-weight-on-the": "Part of the weight on the front wheel",
  "mechanics.brake-end-sheets.reference-plane-of-the-tab-from": "Reference plane of the tab from the centre plane",
  "mechanics.brake-end-sheets.rider-load-and-bicycle": "Rider, load and bicycle",
  "mechanics.brake-end-sheets.rotor-diameter": "Rotor diameter",
  "mechanics.brake-end-sheets.rotor-from-the-centre-plane": "Rotor from the centre plane",
  "mechanics.brake-end-sheets.rotor-seat-from-the-centre-plane": "Rotor seat from the centre plane",
  "mechanics.brake-end-sheets.rotor-seat-inside-the-hub-s": "Rotor seat inside the hub's face",
  "mechanics.brake-end-sheets.seats-itself-held-by-the-clamp":
    "seats itself, held by the clamp only, clamp cannot hold it, clamp not stated",
  "mechanics.brake-end-sheets.slot-opening-forward-from-straight-down": "Slot opening, forward from straight down",
  "mechanics.brake-end-sheets.that-plane-inside-the-dropout-face": "That plane inside the dropout face",
  "mechanics.brake-end-sheets.weight-on-the-front-wheel": "Weight on the front wheel",
  "mechanics.brake-end-sheets.what-the-clamp-holds-by-friction": "What the clamp holds by friction at one end",
  "mechanics.brake-end-sheets.where-does-the-rotor-run-and":
    "Where does the rotor run, and how far inside the dropout face does the tab's plane lie?",
  "mechanics.brake-end-sheets.which-end": "Which end",
  "mechanics.front-retention.0-n-or-more": "0 N or more",
  "mechanics.front-retention.0-to-1": "0 to 1",
  "mechanics.front-retention.0-to-under-dropout-from-centre": "0 to under dropout_from_centre_mm",
  "mechanics.front-retention.100-to-300-mm": "100 to 300 mm",
  "mechanics.front-retention.braking-pushes-the-end-of-the":
    "Braking pushes the {side} end of the axle out of its slot with {worst} N. Only the clamp holds it.",
  "mechanics.front-retention.is-allowed-is": "{at} is {given}; allowed is {allowed}.",
  "mechanics.front-retention.more-than-0-mm": "more than 0 mm",
  "mechanics.front-retention.more-than-0-to-1": "more than 0, to 1",
  "mechanics.front-retention.more-than-0-to-1-2": "more than 0, to 1.2",
  "mechanics.front-retention.more-than-0-to-400-kg": "more than 0, to 400 kg",
  "mechanics.front-retention.that-is-more-than-the-n":
    "That is more than the {gripPerEndN} N which this clamp holds by friction at one end. Do not ride it.",
  "mechanics.front-retention.the-usual-pull-out-test-gives":
    "The usual pull-out test gives each end 1150 N (from memory, not re-read): it proves nothing for this load.",
  "mechanics.front-retention.this-is-a-warning-not-a":
    "This is a warning, not a proof. Use a fork made for a disc, with closed or forward-opening ends and a second retention.",
  "mechanics.rotor-plane.0-to-under-mm": "0 to under {oln} mm",
  "mechanics.rotor-plane.60-to-250-mm": "60 to 250 mm",
  "mechanics.rotor-plane.a-rotor-seat-mm-inside-the":
    "A rotor seat {seat} mm inside the hub's face would lie beyond the centre; allowed is under {oln} mm.",
  "mechanics.rotor-plane.dropouts-mm-apart-hold-no-hub":
    "Dropouts {gap} mm apart hold no hub; allowed is 60 to 250 mm.",
  "mechanics.rotor-plane.the-rotor-seat-is-taken-where":
    "The rotor seat is taken where hubs usually have it (from memory, not re-read). Measure this hub before any metal is cut.",
  "mechanics.rotor-plane.the-tab-plane-lies-mm-the":
    "The tab plane lies {inside} mm {inside2} the dropout face. A tab laid flush with the dropout would put the caliper out of reach of its slots.",
} as const;
