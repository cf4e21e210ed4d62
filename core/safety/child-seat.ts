/**
 * May this child be carried in this seat, on this rack and frame? Rule S13, as far as what is entered decides it.
 * Inputs: the build's rider, intent and load, with the parts in their places (a candidate may stand in for a chosen one).
 * Answer: refusals with what is over by how much; and one flag that names what nobody has entered and what only the seat's
 *   own sheet, the local law and a look at the seat can say.
 * Load on the rack: bags that hang on it, and a rack seat with its child, against the rack's class. The seat's own mass is
 *   the part's. Sources: common practice, no source (S13); limits of a seat by its sheet (EN 14344, from memory).
 */
import { say } from "../texts/say.js";
import { carriesChild, type Part, type PartOfKind, type Place, type ResolvedBuild } from "../workshop/index.js";
import type { RuleFinding } from "./fire-rules.js";

/** Under this nobody carries a child on a bicycle, whatever the seat says. */
export const LEAST_CHILD_MONTHS = 9;
export const LEAST_CHILD_KG = 9;

type Said = Pick<RuleFinding, "level" | "here">;
type At = Readonly<Partial<Record<Place, Part>>>;
const RULE = "S13";

/** What stands on the chosen parts, and what each seat, rack or saddle shown beside them would bring of its own. */
export function childSeatFindings(build: ResolvedBuild): readonly RuleFinding[] {
  if (!carriesChild(build.intent, build.at)) return [];
  const chosen = childSeat(build, build.at);
  const beside = (["child_seat", "rack", "saddle"] as const).flatMap((place) =>
    (build.build.consider?.[place] ?? []).flatMap((id) => {
      const part = build.parts.get(id);
      if (part === undefined || part.id === build.build.chosen[place]) return [];
      return childSeat(build, { ...build.at, [place]: part })
        .filter((f) => f.level === "refuse" && !chosen.some((c) => c.here === f.here))
        .map((f): RuleFinding => ({ ...f, rule: RULE, about: part.id, onChosen: false }));
    }),
  );
  const about = build.at.child_seat?.id ?? say("safety.child-seat.child-seat");
  return [...chosen.map((f): RuleFinding => ({ ...f, rule: RULE, about, onChosen: true })), ...beside];
}

export function childSeat(build: ResolvedBuild, at: At): readonly Said[] {
  const seat = at.child_seat?.kind === "child_seat" ? at.child_seat : undefined;
  const refused = [
    ...frameBarred(build),
    ...childBarred(build, seat),
    ...(seat === undefined ? [] : mountBarred(build, seat, at)),
    ...rackOverloaded(build, seat, at),
    ...saddleBarred(build, at),
  ];
  const open = notDecided(build, seat, at);
  return [
    // One refusal with all its reasons: a rule stands once on each thing.
    ...(refused.length === 0 ? [] : [{ level: "refuse" as const, here: refused.join(" ") }]),
    {
      level: "flag",
      here: say("safety.child-seat.a-child-is-to-be-carried", {
        openCount: open.length === 0 ? "" : say("safety.child-seat.not-judged-here", { open: open.join("; ") }),
      }),
    },
  ];
}

function frameBarred(build: ResolvedBuild): readonly string[] {
  const { tube } = build.donor;
  const barred = ["aluminium", "carbon", "heat_treated", "air_hardening", "unknown"];
  const name =
    tube.class === "unknown"
      ? say("safety.child-seat.a-tube-that-nobody-has-identified")
      : tube.class.replaceAll("_", " ");
  return [
    ...(barred.includes(tube.class) ? [say("safety.child-seat.a-child-is-to-be-carried-2", { name })] : []),
    ...(tube.joints === "bonded" ? [say("safety.child-seat.a-child-is-to-be-carried-3")] : []),
  ];
}

function childBarred(build: ResolvedBuild, seat: PartOfKind<"child_seat"> | undefined): readonly string[] {
  const { child_kg, child_months } = build.rider;
  const least = Math.max(LEAST_CHILD_KG, seat?.ports.child_min_kg ?? 0);
  const most = seat?.ports.child_max_kg;
  return [
    ...(child_months !== undefined && child_months < LEAST_CHILD_MONTHS
      ? [
          say("safety.child-seat.the-child-is-months-old-under", {
            childMonths: child_months,
            leastChildMonths: LEAST_CHILD_MONTHS,
          }),
        ]
      : []),
    ...(child_kg !== undefined && child_kg < least
      ? [say("safety.child-seat.the-child-weighs-is-the-least", { childKg: kg(child_kg), least: kg(least) })]
      : []),
    ...(child_kg !== undefined && most !== undefined && child_kg > most
      ? [
          say("safety.child-seat.the-child-weighs-the-seat-carries", {
            childKg: kg(child_kg),
            seat: seat?.id,
            most: kg(most),
          }),
        ]
      : []),
  ];
}

function mountBarred(build: ResolvedBuild, seat: PartOfKind<"child_seat">, at: At): readonly string[] {
  const { mount, tube_od_min: low, tube_od_max: high, rack_class_kg, rack_width_min, rack_width_max } = seat.ports;
  if (mount === "seat_tube") {
    const od = build.donor.interfaces.seat_tube_od;
    return od !== undefined && ((low !== undefined && od < low) || (high !== undefined && od > high))
      ? [say("safety.child-seat.the-seat-clamps-a-tube-of", { seat: seat.id, low: low ?? "?", high: high ?? "?", od })]
      : [];
  }
  if (mount !== "rack") return [];
  const rack = at.rack?.kind === "rack" ? at.rack : undefined;
  if (rack === undefined) return [say("safety.child-seat.the-seat-stands-on-a-rack", { seat: seat.id })];
  const { class_kg, width } = rack.ports;
  return [
    ...(rack_class_kg !== undefined && class_kg !== undefined && class_kg < rack_class_kg
      ? [
          say("safety.child-seat.the-seat-wants-a-rack-of", {
            seat: seat.id,
            rackClassKg: kg(rack_class_kg),
            rack: rack.id,
            classKg: kg(class_kg),
          }),
        ]
      : []),
    ...(width !== undefined &&
    ((rack_width_min !== undefined && width < rack_width_min) ||
      (rack_width_max !== undefined && width > rack_width_max))
      ? [
          say("safety.child-seat.the-rack-is-wide-the-seat", {
            rack: rack.id,
            width,
            seat: seat.id,
            rackWidthMin: rack_width_min ?? "?",
            rackWidthMax: rack_width_max ?? "?",
          }),
        ]
      : []),
  ];
}

/** What hangs on the rack, in kg; undefined where something that hangs there is not known. */
export function rackLoadKg(build: ResolvedBuild, at: At): number | undefined {
  const seat = at.child_seat?.kind === "child_seat" ? at.child_seat : undefined;
  const bags = bagsOnRackKg(build);
  if (seat?.ports.mount !== "rack") return bags;
  const { child_kg } = build.rider;
  return child_kg === undefined || seat.mass === undefined || bags === undefined
    ? undefined
    : child_kg + seat.mass / 1000 + bags;
}

function bagsOnRackKg(build: ResolvedBuild): number | undefined {
  const on = build.build.load_model?.bags_on ?? "rack";
  return on === "rack" ? build.rider.bags_kg : 0;
}

function rackOverloaded(build: ResolvedBuild, seat: PartOfKind<"child_seat"> | undefined, at: At): readonly string[] {
  const rack = at.rack?.kind === "rack" ? at.rack : undefined;
  const load = rackLoadKg(build, at);
  const most = rack?.ports.class_kg;
  if (rack === undefined || load === undefined || most === undefined || load <= most) return [];
  const bags = bagsOnRackKg(build) ?? 0;
  const what = [
    ...(seat?.ports.mount === "rack"
      ? [
          say("safety.child-seat.child", { childKg: kg(build.rider.child_kg ?? 0) }),
          say("safety.child-seat.seat", { mass: kg((seat.mass ?? 0) / 1000) }),
        ]
      : []),
    ...(bags > 0 ? [say("safety.child-seat.bags", { bags: kg(bags) })] : []),
  ].join(", ");
  return [
    say("safety.child-seat.the-rack-would-carry-its-class", {
      rack: rack.id,
      load: kg(load),
      what,
      most: kg(most),
      overBy: kg(load - most),
    }),
  ];
}

function saddleBarred(build: ResolvedBuild, at: At): readonly string[] {
  const saddle = at.saddle?.kind === "saddle" ? at.saddle : undefined;
  const covered = build.also.some((row) => row.part.kind === "spring_cover");
  return saddle?.ports.springs === "open" && !covered
    ? [say("safety.child-seat.the-saddle-has-open-springs-in", { saddle: saddle.id })]
    : [];
}

/** Said on the flag: each thing that is not entered, or that no figure can say. */
function notDecided(build: ResolvedBuild, seat: PartOfKind<"child_seat"> | undefined, at: At): readonly string[] {
  const { rider } = build;
  const rack = at.rack?.kind === "rack" ? at.rack : undefined;
  const saddle = at.saddle?.kind === "saddle" ? at.saddle : undefined;
  const onRack = seat?.ports.mount === "rack";
  const frame = build.donor.tube.class;
  return [
    ...(seat === undefined ? [say("safety.child-seat.no-child-seat-is-chosen")] : []),
    ...(["magnesium", "titanium", "stainless"].includes(frame)
      ? [say("safety.child-seat.whether-the-seat-s-sheet-allows", { frame })]
      : []),
    ...(seat !== undefined && seat.ports.mount === undefined
      ? [say("safety.child-seat.how-the-seat-is-held", { seat: seat.id })]
      : []),
    ...(seat !== undefined && seat.ports.child_max_kg === undefined
      ? [say("safety.child-seat.what-the-seat-carries", { seat: seat.id })]
      : []),
    ...(seat?.ports.mount === "seat_tube"
      ? [
          say("safety.child-seat.whether-of-the-seat-tube-is", {
            tubeFree: seat.ports.tube_free === undefined ? "enough" : `${seat.ports.tube_free} mm`,
          }),
          ...(build.donor.interfaces.seat_tube_od === undefined
            ? [say("safety.child-seat.the-seat-tube-s-diameter")]
            : []),
        ]
      : []),
    ...(rider.child_kg === undefined ? [say("safety.child-seat.the-child-s-weight-is-not")] : []),
    ...(rider.child_months === undefined ? [say("safety.child-seat.the-child-s-age-is-not")] : []),
    ...(rider.bags_kg === undefined ? [say("safety.child-seat.the-weight-of-the-bags-is")] : []),
    ...(rack !== undefined && rack.ports.class_kg === undefined
      ? [say("safety.child-seat.the-class-of-the-rack", { rack: rack.id })]
      : []),
    ...(onRack && rack?.ports.width === undefined ? [say("safety.child-seat.how-wide-the-rack-is")] : []),
    ...(onRack && seat?.mass === undefined ? [say("safety.child-seat.what-the-seat-itself-weighs")] : []),
    ...(saddle !== undefined && saddle.ports.springs === undefined
      ? [say("safety.child-seat.open-springs-under-the-saddle", { saddle: saddle.id })]
      : []),
    say("safety.child-seat.what-tyres-wheels-and-frame-may"),
    say("safety.child-seat.harness-foot-rests-spoke-guard-and"),
  ];
}

const kg = (value: number) => `${Math.round(value * 10) / 10} kg`;
